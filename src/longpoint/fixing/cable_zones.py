"""Where cables may run behind a wall's face, as one published rule has it.

References:
    BS 7671, regulation 522.6.202, as summarised in guides to it; read. A cable less than 50 mm deep
    lies within 150 mm of the top of the wall, within 150 mm of a corner of walls, or straight up,
    down or across from a switch, socket or other accessory; on walls up to 100 mm thick the zone
    holds through to the other face. It is a rule for those who lay cables. It was not always kept,
    and old work is older than it.
"""

from dataclasses import dataclass
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house import Dialect

CABLE_DEPTH_MM: Final = 50.0
ZONE_MM: Final = 150.0
THIN_WALL_MM: Final = 100.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CableRule:
    """Which rule on cables is shown in a country.

    Attributes:
        depth_mm: Cables less deep than this keep to the zones; None: no rule was read.
        said: The rule in a sentence or two.
    """

    depth_mm: float | None
    said: str


def cable_rule(country: Dialect) -> CableRule:
    """Return the rule that is shown in a country.

    Example:
        >>> cable_rule(Dialect.UK).depth_mm, cable_rule(Dialect.US).depth_mm
        (50.0, None)
    """
    match country:
        case Dialect.UK:
            return CableRule(depth_mm=CABLE_DEPTH_MM, said=_THE_RULE)
        case Dialect.IE:
            return CableRule(
                depth_mm=CABLE_DEPTH_MM,
                said=say(
                    "{the_rule} That is the rule next door: the Irish one was not read, so ask.",
                    the_rule=_THE_RULE,
                ),
            )
        case _:
            return CableRule(
                depth_mm=None,
                said=say(
                    "No rule on cables of this country was read: how deep they "
                    "lie, and where, is for the local code to say. Take every "
                    "wall to hold them."
                ),
            )


_THE_RULE: Final = say(
    "Cables less than 50 mm below the wall's face are to run within 150 mm of the "
    "wall's top or of a corner, or straight up, down or across from a switch or "
    "socket, on walls up to 100 mm thick from one on the other face too (BS 7671, "
    "522.6.202). A nail past 50 mm can meet a cable anywhere; one that is shorter "
    "can meet it in those zones, and wherever the rule was not kept."
)


def is_in_zone(
    from_corner_mm: float, from_top_mm: float, *, in_line_with_accessory: bool = False
) -> bool:
    """Tell whether a spot on a wall lies in one of the zones.

    Args:
        from_corner_mm: From the nearest corner of walls. [mm]
        from_top_mm: From the top of the wall. [mm]
        in_line_with_accessory: True straight up, down or across from a switch or socket.

    Example:
        >>> is_in_zone(140, 1000), is_in_zone(160, 1000)
        (True, False)
    """
    is_near_edge = from_corner_mm <= ZONE_MM or from_top_mm <= ZONE_MM
    return is_near_edge or in_line_with_accessory

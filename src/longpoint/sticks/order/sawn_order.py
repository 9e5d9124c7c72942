"""All packings laid and put in the order in which the saw is set anew least often."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.demand import PER_MM
from longpoint.sticks.lay.fit import Filled, Packing
from longpoint.sticks.lay.laying import Workload, left_over
from longpoint.sticks.order.saw_order import ABOUT_AS_LONG_MM
from longpoint.sticks.order.saw_sequence import saw_sequence
from longpoint.sticks.order.saw_setting import SawSetting, end_settings
from longpoint.sticks.order.stick_ways import Cuttable, Ends, Setting, ways_of
from longpoint.survey.instruments import Saw

_GIVEN_UP: Final = 2 * PER_MM
"""What a stick may lose of what is left on it, so that a mitre may stand where a square cut stood;
the longest offcut of a profile loses nothing. Our choice, no source."""
_ROUNDING_MM: Final = 1e-6


@dataclass(frozen=True, slots=True)
class SawnOrder:
    """All profiles in the order of sawing.

    Attributes:
        packings: The packing of each profile, its sticks laid as they are cut and in their order.
        fewest_changes: No order of these sticks, and of the pieces on them, sets the saw anew less
            often.
    """

    packings: tuple[Packing, ...]
    fewest_changes: int


def sawn_order(
    profiles: Sequence[tuple[Workload, Bars, Packing]], pieces: Mapping[str, Piece], saw: Saw
) -> SawnOrder:
    """Return the packings in the order of sawing; no piece goes to another stick.

    Args:
        profiles: Pieces, lengths and packing of each profile, in the order in which they are sawn.
        pieces: The pieces by mark.
        saw: The saw in use.
    """
    numbers = dict[SawSetting, Setting]()
    settings = {
        mark: (_numbered(piece, saw, numbers), _numbered(piece, saw, numbers, turned=True))
        for mark, piece in pieces.items()
    }
    found = saw_sequence(
        [_cuttable(*profile, settings) for profile in profiles],
        ABOUT_AS_LONG_MM - _ROUNDING_MM,
    )
    packings = tuple(
        replace(
            packing,
            sticks=tuple(
                Filled(packing.sticks[number].bar, way.places, way.used) for number, way in order
            ),
        )
        for (_, _, packing), order in zip(profiles, found.profiles, strict=True)
    )
    return SawnOrder(packings, found.limit)


def _cuttable(
    work: Workload, bars: Bars, packing: Packing, known: Mapping[str, tuple[Ends, Ends]]
) -> list[Cuttable]:
    settings = [known[demand.mark] for demand in work.demands]
    rooms = [bars.bars[stick.bar].room for stick in packing.sticks]
    left = [
        left_over(work, stick.places, room)
        for stick, room in zip(packing.sticks, rooms, strict=True)
    ]
    longest = max(left, default=0)
    return [
        Cuttable(
            number,
            max(_tip_to_tip_mm(work, place.piece) for place in stick.places),
            ways_of(
                work,
                settings,
                stick,
                rooms[number],
                longest if left[number] == longest else left[number] - _GIVEN_UP,
            ),
        )
        for number, stick in enumerate(packing.sticks)
    ]


def _numbered(
    piece: Piece, saw: Saw, numbers: dict[SawSetting, Setting], *, turned: bool = False
) -> Ends:
    left, right = (
        numbers.setdefault(setting, len(numbers))
        for setting in end_settings(piece, saw, turned=turned)
    )
    return left, right


def _tip_to_tip_mm(work: Workload, piece: int) -> float:
    demand = work.demands[piece]
    return demand.mid / PER_MM + abs(demand.left.lean_mm) + abs(demand.right.lean_mm)

"""A side that wasn't read, when the readings say that it is far from as long as the one opposite.

Five readings give a shape and leave none to check them. That opposite sides are about as long is
then all there is to hold them to: a slip of a few millimetres in a diagonal asks for a side that no
opening has.
"""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.shape.fitted import FittedOpening, UnreadSide
from longpoint.shape.network import Distance, Network
from longpoint.shape.sightings import ENDS
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.readings import SIDES

LIMIT: Final = 4.0
"""Standard uncertainties, the assumption's own among them, from which the two contradict: ours.

One clean opening in 16,000 gets there if openings taper as is assumed.
"""


def unread_side(network: Network) -> UnreadSide | None:
    """Return the side that the readings contradict what was assumed of, None where they don't.

    Args:
        network: The fit with what was assumed besides the readings.
    """
    read = {(s.start, s.end) for s in network.sightings if isinstance(s, Distance)}
    assumed, over_u = max(network.idle(), key=lambda each: each[1], default=(None, 0.0))
    if assumed is None or over_u <= LIMIT:
        return None
    first, second = assumed.first, assumed.second
    unread, opposite = (second, first) if first in read else (first, second)
    place_of = {ends: place.value for place, ends in ENDS.items()}
    return UnreadSide(place=place_of[unread], opposite=place_of[opposite], over_u=over_u)


def unread_side_finding(house: House, fitted: FittedOpening, unread: UnreadSide) -> Finding:
    """Return the stop of an opening that such a side was found of."""
    units = house.units
    figures = joined(
        ", ",
        (
            say("{place} {value}", place=r.name, value=format_length(r.read, units))
            for r in fitted.residuals
        ),
    )
    side_mm = dict(zip((place.value for place in SIDES), fitted.side_mm, strict=True))
    longer_mm = side_mm[unread.place] - side_mm[unread.opposite]
    apart = format_with_unit(abs(longer_mm), units)
    by_these = (
        say(
            "By these the {unread}, which wasn't read, would be {apart} longer than the "
            "{opposite}, and nothing checks them.",
            unread=unread.place,
            apart=apart,
            opposite=unread.opposite,
        )
        if longer_mm > 0.0
        else say(
            "By these the {unread}, which wasn't read, would be {apart} shorter than the "
            "{opposite}, and nothing checks them.",
            unread=unread.place,
            apart=apart,
            opposite=unread.opposite,
        )
    )
    return Finding(
        code="side-unlikely",
        severity=Severity.STOP,
        place=fitted.mark,
        read=say("Read: {figures} {units}.", figures=figures, units=units.value),
        wrong=by_these,
        do=say(
            "Read the {unread} as well; if it isn't so, read the diagonals again.",
            unread=unread.place,
        ),
    )

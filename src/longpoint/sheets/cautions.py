"""What stands at the foot of a sheet so that nobody is hurt.

Our own words. They set no limit: the law of the place and the instructions of the tool do.

References:
    Cables run straight up, down and across from switches and sockets, along wall corners and wall
    tops: the safe zones of BS 7671, 522.6.202, from memory. Guard, run-down and clamping: the
    health and safety regulator's leaflets on chop saws, read in part.
"""

from collections.abc import Iterable

from longpoint.pieces.piece import Piece
from longpoint.quantities.length import Units
from longpoint.sheets.cut_sheet import SHORT_PIECE_MM

_DEFER = (
    "The rules of the place and the instructions of the tool come first; this list is not all "
    "there is to know."
)


def saw_cautions(pieces: Iterable[Piece], units: Units) -> tuple[str, ...]:
    """Return what to mind at the saw, with the short pieces by name."""
    short = [piece.mark for piece in pieces if piece.long_mm < SHORT_PIECE_MM]
    limit = "150 mm" if units is Units.MM else "6 in"
    named = f" Here: {', '.join(short)}." if short else ""
    return (
        "Eyes and ears covered. Guard on and working; hold or clamp the piece; let the blade stop "
        "before you reach in or lift it.",
        f"Never hold a short piece at the blade: cut those under {limit} off a longer stick "
        f"(our choice, no source).{named}",
        "Dust of MDF and of hardwood harms the lungs: extract it and wear a mask that fits.",
        _DEFER,
    )


def common_cautions() -> tuple[str, ...]:
    """Return what to mind in all of the work, for sheets that are read before it starts."""
    return (
        "At the saw: guard on, eyes and ears covered, no short piece held by hand, dust drawn off. "
        "On the wall: look for cables and pipes before nailing; old paint may hold lead.",
        _DEFER,
    )


def fixing_cautions() -> tuple[str, ...]:
    """Return what to mind when pieces go on the wall."""
    return (
        "Look for cables and pipes before nailing: above, below and beside every switch and "
        "socket, in corners and at wall tops. Nails by a door are often right there.",
        "Old paint may hold lead: test it or treat it as lead before sanding or pulling old trim.",
        _DEFER,
    )

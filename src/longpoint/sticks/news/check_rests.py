"""The last word on a piece that is cut from what is left of another one.

As in `check`, solids are laid and measured, and none of the sums of `remains` is used.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from longpoint.pieces.piece import SQUARE_CUT, Piece
from longpoint.speech.said import say
from longpoint.sticks.laid_solids import (
    TOLERANCE_MM,
    Solid,
    check_gaps,
    laid_solid,
    refuse,
    solid_of,
)
from longpoint.sticks.news.at_the_saw import StickAtSaw
from longpoint.sticks.news.remains import Remains
from longpoint.sticks.plan import CutStick
from longpoint.survey.house import House

NO_EDGE_MM: Final = 1e6
SAME_CUT_MM: Final = 0.05
"""A cut kept for another piece may differ by this along any edge: half a mark of the pencil."""


def check_on_rest(stick: StickAtSaw, by_mark: Mapping[str, Piece], house: House) -> None:
    """Make sure that what is laid on the rest of a spoiled piece can be cut from it.

    Args:
        stick: Such a rest that nothing is cut from yet; nothing is said of any other stick.
        by_mark: The pieces.
        house: The profiles and the saw.

    Raises:
        StockError: It can't.
    """
    rest, laid = stick.rest, stick.next
    if rest is None or not laid:
        return
    as_cut = CutStick(
        name=stick.name,
        profile=stick.profile,
        length_mm=stick.length_mm,
        source=stick.source,
        laid=laid,
        used_mm=0.0,
        left_mm=0.0,
    )
    solids = [laid_solid(as_cut, each, by_mark[each.piece], house) for each in laid]
    check_gaps(as_cut, solids, house.saw.kerf_mm)
    there = _solid(rest, stick.length_mm, by_mark[laid[0].piece])
    first, last, kerf_mm = solids[0], solids[-1], house.saw.kerf_mm
    left = [mine - edge for mine, edge in zip(first.lefts_mm, there.lefts_mm, strict=True)]
    right = [edge - mine for mine, edge in zip(last.rights_mm, there.rights_mm, strict=True)]
    for rooms, cut, side in ((left, rest.left, "left"), (right, rest.right, "right")):
        is_kept = cut is not None and max(map(abs, rooms)) <= SAME_CUT_MM
        if not is_kept and min(rooms) < kerf_mm - TOLERANCE_MM:
            raise refuse(
                say("rest {stick}", stick=stick.name),
                say(
                    "At its {side} end a cut needs {kerf_mm:.2f} mm, and {rooms:.2f} are there.",
                    side=side,
                    kerf_mm=kerf_mm,
                    rooms=min(rooms),
                ),
            )


def _solid(rest: Remains, length_mm: float, section: Piece) -> Solid:
    """The rest itself, its leftmost point at 0 and its rightmost at its length."""
    # The outer edge is then the one that the angles give, never the one of the record.
    bare = replace(section, inner_mm=0.0, outer_mm=-NO_EDGE_MM)
    shape = solid_of(replace(bare, left=rest.left or SQUARE_CUT, right=rest.right or SQUARE_CUT))
    shift_left, shift_right = min(shape.lefts_mm), length_mm - max(shape.rights_mm)
    return Solid(
        tuple(x - shift_left for x in shape.lefts_mm),
        tuple(x + shift_right for x in shape.rights_mm),
        shape.left_stretch,
        shape.right_stretch,
    )

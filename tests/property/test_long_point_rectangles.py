"""Why mitred pieces aren't planned as rectangles of their long length with the saw's plain kerf.

A blade at 45 degrees takes kerf x sqrt 2 of the stick: 3.54 mm for a kerf of 2.5. A plan that
counts 2.5 has sticks that look full and hold too little. The sums here are the test's own: two
edges of each piece, one after the other, and nothing of the nester's.
"""

import itertools
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import pytest

from longpoint.errors import StockError
from longpoint.pieces.piece import Piece
from longpoint.sticks.check import check_laid
from longpoint.sticks.effort import Effort
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import positions_mm, used_length, workload
from longpoint.sticks.lay.ordering import best_order
from longpoint.sticks.plan import CutPlan, CutStick, Laid
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, house_pieces

KERF_MM = 2.5
TRIM_MM = 10.0
ROUNDED_UP_MM = 0.3
"""The nester rounds each of a stick's pieces and cuts up to hundredths; no stick has ten pieces."""
TIGHT = Effort(refills=1500)


def rectangle(piece: Piece) -> Piece:
    return architrave_piece(piece.mark, max(piece.inner_mm, piece.outer_mm), 0, 0)


def rectangle_plan(pieces: Iterable[Piece], kerf_mm: float) -> CutPlan:
    """Best fit and its moves, with no solver: the same on every machine."""
    return plan_sticks(tuple(map(rectangle, pieces)), house_of(kerf_mm=kerf_mm), effort=TIGHT)


@dataclass(frozen=True)
class Edges:
    """Both ends of a piece on its inner and its outer edge, and what a blade along them takes."""

    lefts_mm: tuple[float, float]
    rights_mm: tuple[float, float]
    left_cut_mm: float
    right_cut_mm: float


def edges(piece: Piece, *, turned: bool = False) -> Edges:
    left_deg, right_deg = piece.left.mitre_deg, piece.right.mitre_deg
    start_mm = -piece.width_mm * math.tan(math.radians(left_deg))
    lefts_mm, rights_mm = (0.0, start_mm), (piece.inner_mm, start_mm + piece.outer_mm)
    cuts_mm = [KERF_MM / math.cos(math.radians(deg)) for deg in (left_deg, right_deg)]
    if turned:
        lefts_mm, rights_mm = (-rights_mm[1], -rights_mm[0]), (-lefts_mm[1], -lefts_mm[0])
        cuts_mm.reverse()
    return Edges(lefts_mm, rights_mm, *cuts_mm)


def needed_mm(laid: Sequence[Edges]) -> float:
    """Length of a stick that gives pieces in this order, each pushed against the cut before it."""
    at_mm = TRIM_MM - min(laid[0].lefts_mm)
    for first, second in itertools.pairwise(laid):
        cut_mm = max(first.right_cut_mm, second.left_cut_mm)
        at_mm += cut_mm + max(
            right - left for right, left in zip(first.rights_mm, second.lefts_mm, strict=True)
        )
    return at_mm + max(laid[-1].rights_mm) + TRIM_MM


def least_needed_mm(pieces: Sequence[Piece]) -> float:
    """The same, in the best of all orders; as moulded pieces lie, never turned."""
    return min(needed_mm(order) for order in itertools.permutations(map(edges, pieces)))


def truly_laid(stick: CutStick, pieces: Sequence[Piece], house: House) -> CutStick:
    """The pieces of a stick, as they are and not as rectangles, in their best order."""
    work = workload(profile_demand(pieces, house.profiles[0], KERF_MM).demands)
    places = best_order(work, range(len(pieces)))
    ends_mm = positions_mm(work, places, round(TRIM_MM * 100))
    laid = tuple(
        Laid(piece=work.demands[n].mark, turned=turned, start_mm=start_mm, end_mm=end_mm)
        for (n, turned), (start_mm, end_mm) in zip(places, ends_mm, strict=True)
    )
    used_mm = used_length(work, places) / 100 + 2 * TRIM_MM
    return replace(stick, laid=laid, used_mm=used_mm)


@pytest.mark.parametrize(
    ("seed", "sticks", "too_short", "most_over_mm"), [(1, 33, 4, 3.74), (3, 33, 1, 1.21)]
)
def test_rectangles_with_the_plain_kerf_give_sticks_that_can_not_be_cut(
    seed: int, sticks: int, too_short: int, most_over_mm: float
) -> None:
    """Moulded architraves, face 66, ends 45 or square: 108 pieces of one house.

    The nester's own laying and the checker agree with the test's sums, stick by stick.
    """
    by_mark = {piece.mark: piece for piece in house_pieces(seed, odd_deg=0.0)}
    house = house_of(reversible=False, kerf_mm=KERF_MM, end_trim_mm=TRIM_MM)
    plan = rectangle_plan(by_mark.values(), KERF_MM)
    assert plan.unplaced == ()
    over_mm = []
    for stick in plan.sticks:
        pieces = [by_mark[laid.piece] for laid in stick.laid]
        over_mm.append(least_needed_mm(pieces) - stick.length_mm)
        true = truly_laid(stick, pieces, house)
        assert true.used_mm - stick.length_mm == pytest.approx(over_mm[-1], abs=ROUNDED_UP_MM)
        if over_mm[-1] > 0:
            with pytest.raises(StockError, match="reaches into the right trim"):
                check_laid(true, by_mark, house)
        elif over_mm[-1] < -ROUNDED_UP_MM:
            check_laid(true, by_mark, house)
    assert len(over_mm) == sticks
    assert sum(over > 0 for over in over_mm) == too_short
    assert max(over_mm) == pytest.approx(most_over_mm, abs=0.01)


def test_rectangles_with_the_kerf_of_the_mitre_can_all_be_cut() -> None:
    """kerf / cos 45 is the right sum for moulded pieces: dear, and never unsafe."""
    by_mark = {piece.mark: piece for piece in house_pieces(1, odd_deg=0.0)}
    plan = rectangle_plan(by_mark.values(), KERF_MM / math.cos(math.radians(45)))
    for stick in plan.sticks:
        assert least_needed_mm([by_mark[laid.piece] for laid in stick.laid]) <= stick.length_mm


def test_turned_pieces_of_a_reversible_section_take_less_than_their_rectangles() -> None:
    """Two heads of 1000 and face 66: turned, the second shares the first one's cut."""
    one, other = (architrave_piece(f"W{n}-head", 1000.0, 45, 45) for n in (1, 2))
    apart_mm = needed_mm([edges(one), edges(other)])
    shared_mm = needed_mm([edges(one), edges(other, turned=True)])
    assert apart_mm == pytest.approx(20 + 2 * 1132 + 2.5 * math.sqrt(2))
    assert apart_mm - shared_mm == pytest.approx(66)

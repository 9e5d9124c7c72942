from collections.abc import Callable
from dataclasses import replace

import pytest

from longpoint.errors import StockError
from longpoint.pieces.piece import Piece
from longpoint.sticks.check import check_plan
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, house_pieces, skirting_piece

pytestmark = pytest.mark.no_cover


def planned(
    *, reversible: bool = True, counts: tuple[int | None, ...] = ()
) -> tuple[CutPlan, tuple[Piece, ...], House]:
    pieces = house_pieces(5, openings=6)
    house = house_of(reversible=reversible, counts=counts)
    return plan_sticks(pieces, house), pieces, house


def with_stick(plan: CutPlan, change: Callable[[CutStick], CutStick], index: int = 0) -> CutPlan:
    sticks = list(plan.sticks)
    sticks[index] = change(sticks[index])
    return replace(plan, sticks=tuple(sticks))


def moved(stick: CutStick, place: int, by_mm: float) -> CutStick:
    laid = list(stick.laid)
    laid[place] = replace(
        laid[place], start_mm=laid[place].start_mm + by_mm, end_mm=laid[place].end_mm + by_mm
    )
    return replace(stick, laid=tuple(laid))


def test_a_sound_plan_passes() -> None:
    check_plan(*planned())
    check_plan(*planned(reversible=False))


@pytest.mark.parametrize("by_mm", [0.05, -0.05])
def test_a_piece_moved_by_five_hundredths_is_found(by_mm: float) -> None:
    plan, pieces, house = planned()
    index = next(i for i, stick in enumerate(plan.sticks) if len(stick.laid) > 2)
    with pytest.raises(StockError, match="Between"):
        check_plan(with_stick(plan, lambda s: moved(s, 1, by_mm), index), pieces, house)


def test_a_piece_in_the_left_trim_is_found() -> None:
    plan, pieces, house = planned()
    with pytest.raises(StockError, match="left trim"):
        check_plan(with_stick(plan, lambda s: moved(s, 0, -0.05)), pieces, house)


def test_a_piece_in_the_right_trim_is_found() -> None:
    plan, pieces, house = planned()

    def pushed(stick: CutStick) -> CutStick:
        free_mm = stick.length_mm - 10.0 - stick.laid[-1].end_mm
        return moved(stick, -1, free_mm + 0.05)

    with pytest.raises(StockError, match="right trim"):
        check_plan(with_stick(plan, pushed), pieces, house)


def test_a_missing_piece_is_found() -> None:
    plan, pieces, house = planned()
    short = with_stick(plan, lambda s: replace(s, laid=s.laid[:-1]))
    with pytest.raises(StockError, match="missing"):
        check_plan(short, pieces, house)


def test_a_piece_cut_twice_is_found() -> None:
    plan, pieces, house = planned()
    first = plan.sticks[0]
    twice = replace(plan, sticks=(*plan.sticks, replace(first, name="again")))
    with pytest.raises(StockError, match="2 times"):
        check_plan(twice, pieces, house)


def test_a_piece_nobody_asked_for_is_found() -> None:
    plan, pieces, house = planned()
    with pytest.raises(StockError, match="no such piece"):
        check_plan(plan, pieces[1:], house)


def test_more_sticks_than_there_are_is_found() -> None:
    plan, pieces, house = planned()
    with pytest.raises(StockError, match="are there"):
        check_plan(
            plan,
            pieces,
            replace(house, stock=tuple(replace(entry, count=0) for entry in house.stock)),
        )


def test_a_stick_that_is_not_in_the_list_is_found() -> None:
    plan, pieces, house = planned()
    longer = with_stick(plan, lambda s: replace(s, length_mm=s.length_mm + 1.0))
    with pytest.raises(StockError, match="no such stick"):
        check_plan(longer, pieces, house)


def test_two_sticks_of_one_name_are_found() -> None:
    plan, pieces, house = planned()
    same = with_stick(plan, lambda s: replace(s, name=plan.sticks[1].name))
    with pytest.raises(StockError, match="this name"):
        check_plan(same, pieces, house)


def test_a_turned_piece_of_a_moulded_section_is_found() -> None:
    pieces = (architrave_piece("W1-head", 1000.0, 45, 45),)
    plan = plan_sticks(pieces, house_of(reversible=False))

    def turned(stick: CutStick) -> CutStick:
        return replace(stick, laid=(replace(stick.laid[0], turned=True),))

    with pytest.raises(StockError, match="turned"):
        check_plan(with_stick(plan, turned), pieces, house_of(reversible=False))
    check_plan(with_stick(plan, turned), pieces, house_of(reversible=True))


def test_a_cost_that_does_not_add_up_is_found() -> None:
    plan, pieces, house = planned()
    proof = replace(plan.proofs[0], cost=plan.proofs[0].cost - 0.3)
    with pytest.raises(StockError, match="cost"):
        check_plan(replace(plan, proofs=(proof,)), pieces, house)


def test_a_bound_above_the_cost_is_found() -> None:
    plan, pieces, house = planned()
    proof = replace(plan.proofs[0], lower_bound=plan.proofs[0].cost + 0.3)
    with pytest.raises(StockError, match="bound"):
        check_plan(replace(plan, proofs=(proof,)), pieces, house)


def test_a_plan_called_the_best_below_its_bound_is_found() -> None:
    plan, pieces, house = planned()
    proof = replace(plan.proofs[0], lower_bound=plan.proofs[0].cost - 0.3, optimal=True)
    with pytest.raises(StockError, match="best"):
        check_plan(replace(plan, proofs=(proof,)), pieces, house)


def test_a_wrong_used_length_and_a_wrong_rest_are_found() -> None:
    plan, pieces, house = planned()
    with pytest.raises(StockError, match="said to be used"):
        check_plan(with_stick(plan, lambda s: replace(s, used_mm=s.used_mm - 1.0)), pieces, house)
    with pytest.raises(StockError, match="left over"):
        check_plan(with_stick(plan, lambda s: replace(s, left_mm=s.length_mm)), pieces, house)


def test_pieces_that_touch_at_the_back_only_are_found() -> None:
    pieces = (
        skirting_piece("S1", 1000.0, 0, 45),
        skirting_piece("S2", 900.0, 0, 0),
    )
    house = house_of(profile="SK", width_mm=95.0)
    plan = plan_sticks(pieces, house)
    check_plan(plan, pieces, house)

    def nearer(stick: CutStick) -> CutStick:
        return moved(stick, 0, 0.5)

    with pytest.raises(StockError):
        check_plan(with_stick(plan, nearer), pieces, house)


def test_rectangles_laid_with_the_plain_kerf_overfill_sticks() -> None:
    """Long-point rectangles a plain 2.5 mm apart: a 45 degree cut takes 3.54 mm of the stick."""
    house = house_of(reversible=False)
    overfull = 0
    for stick, marks in rectangles_with_the_plain_kerf(house_pieces(3), 2.5):
        pieces = tuple(piece for piece in house_pieces(3) if piece.mark in marks)
        try:
            check_plan(CutPlan(sticks=(stick,)), pieces, house)
        except StockError:
            overfull += 1
    assert overfull > 0
    for stick, marks in rectangles_with_the_plain_kerf(house_pieces(3), 2.5 * 1.45):
        pieces = tuple(piece for piece in house_pieces(3) if piece.mark in marks)
        check_plan(CutPlan(sticks=(stick,)), pieces, house)


def rectangles_with_the_plain_kerf(
    pieces: tuple[Piece, ...], kerf_mm: float
) -> list[tuple[CutStick, set[str]]]:
    """First fit of long points on 5400 sticks, every piece a rectangle, tightly laid."""
    room_mm = 5400.0 - 20.0
    sticks: list[list[Piece]] = []
    for piece in sorted(pieces, key=lambda p: -p.long_mm):
        for stick in sticks:
            if sum(p.long_mm + kerf_mm for p in stick) + piece.long_mm <= room_mm:
                stick.append(piece)
                break
        else:
            sticks.append([piece])
    made = []
    for number, stick in enumerate(sticks):
        laid, at_mm = [], 10.0
        for piece in stick:
            laid.append(Laid(piece=piece.mark, start_mm=at_mm, end_mm=at_mm + piece.long_mm))
            at_mm += piece.long_mm + kerf_mm
        end_mm = laid[-1].end_mm
        made.append(
            (
                CutStick(
                    name=f"R{number}",
                    profile="OG",
                    length_mm=5400.0,
                    source=StickSource.STOCK,
                    laid=tuple(laid),
                    used_mm=end_mm + 10.0,
                    left_mm=0.0,
                ),
                {piece.mark for piece in stick},
            )
        )
    return made

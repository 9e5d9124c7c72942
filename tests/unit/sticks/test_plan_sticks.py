from dataclasses import replace

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import Piece
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.effort import QUICK
from longpoint.sticks.order.saw_order import ABOUT_AS_LONG_MM
from longpoint.sticks.plan import StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.profiles import Profile, Stock
from tests.random_sticks import architrave_piece, house_of, house_pieces, skirting_piece
from tests.unit.sticks.tight_sticks import PlainTables

pytestmark = pytest.mark.no_cover


def squares(*lengths_mm: float) -> tuple[Piece, ...]:
    return tuple(
        architrave_piece(f"W{number}-head", length_mm, 0, 0)
        for number, length_mm in enumerate(lengths_mm, 1)
    )


def test_no_pieces_make_an_empty_plan() -> None:
    plan = plan_sticks((), house_of())
    assert (plan.sticks, plan.proofs, plan.findings, plan.unplaced) == ((), (), (), ())


def test_one_head_takes_the_shortest_stick_that_gives_it() -> None:
    plan = plan_sticks((architrave_piece("W1-head", 2400.0, 45, 45),), house_of())
    stick = plan.sticks[0]
    assert (stick.name, stick.length_mm) == ("OG-1", 2700.0)
    assert stick.laid[0].start_mm == pytest.approx(10.0, abs=0.02)
    assert stick.used_mm == pytest.approx(2532.0 + 20.0, abs=0.05)
    assert stick.left_mm == pytest.approx(2700.0 - stick.used_mm - 2.5 * 2**0.5, abs=0.05)


def test_a_price_for_every_length_makes_the_cheapest_plan_not_the_shortest() -> None:
    pieces = squares(1000.0)
    metres = plan_sticks(pieces, house_of(lengths_mm=(1100.0, 2400.0)))
    money = plan_sticks(pieces, house_of(lengths_mm=(1100.0, 2400.0), prices=("9.00", "7.50")))
    assert metres.sticks[0].length_mm == 1100.0
    assert (metres.proofs[0].cost, metres.proofs[0].unit) == (1.1, "m")
    assert money.sticks[0].length_mm == 2400.0
    assert (money.proofs[0].cost, money.proofs[0].unit) == (7.5, "price")


def test_prices_far_above_what_plain_tables_hold_are_planned_with_them() -> None:
    prices = ("1234567.89", "1634567.85", "1934567.83", "2134567.81", "2434567.79")
    house, pieces = house_of(prices=prices), house_pieces(4, openings=5)
    plain, fine = (plan_sticks(pieces, house, s) for s in (PlainTables(), HighsSolver()))
    assert plain.proofs[0].optimal
    assert plain.proofs[0].cost == fine.proofs[0].cost > 1e7


def test_offcuts_are_used_first_and_cost_nothing() -> None:
    plan = plan_sticks(squares(1000.0, 900.0), house_of(offcuts=((1310.0, 1), (950.0, 1))))
    assert {stick.source for stick in plan.sticks} == {StickSource.OFFCUT}
    assert plan.proofs[0].cost == 0.0
    assert plan.proofs[0].optimal


def test_a_piece_longer_than_every_stick_holds_its_opening_and_the_rest_goes_on() -> None:
    pieces = (
        architrave_piece("W1-head", 5600.0, 45, 45),
        architrave_piece("W1-left-leg", 900.0, 0, 45),
        architrave_piece("W2-head", 900.0, 45, 45),
    )
    plan = plan_sticks(pieces, house_of())
    stop = next(f for f in plan.findings if f.severity is Severity.STOP)
    assert (stop.code, stop.place) == ("longer-than-stock", "W1")
    assert "W1-head" in stop.read
    assert "5752" in stop.read
    assert "5400" in stop.wrong
    assert "one OG stick of 5752" in stop.do
    assert "A scarf is no remedy: in a head it shows or is weak." in stop.do
    assert plan.unplaced == ("W1-head", "W1-left-leg")
    assert [one.piece for stick in plan.sticks for one in stick.laid] == ["W2-head"]


def test_a_run_longer_than_every_stick_is_held_too() -> None:
    plan = plan_sticks(
        (skirting_piece("S1", 6000.0, 45, 45),), house_of(profile="SK", width_mm=95.0)
    )
    assert [(f.code, f.place) for f in plan.findings] == [("longer-than-stock", "S1")]
    # 6000 on the face, 18 more on the back at each end; 5380 between the trims, 1 kept in hand:
    # 5379 - 18 of the face to the first part, and 5379 + 675 = 6036 + 18.
    said = plan.findings[0].do
    assert "scarf S1 in 2 parts, 5379 mm + 675 mm long point to long point" in said
    assert "they lap 18 mm, 45 degrees through the thickness" in said
    assert "put each joint over one" in said


def test_parts_of_the_scarf_that_is_named_go_on_the_sticks() -> None:
    house = house_of(profile="SK", width_mm=95.0)
    parts = (skirting_piece("S1", 5379.0, 0, 0), skirting_piece("S2", 675.0, 0, 0))
    assert plan_sticks(parts, house).unplaced == ()


def test_a_piece_exactly_as_long_as_the_stick_allows_is_cut() -> None:
    assert plan_sticks(squares(5380.0), house_of()).unplaced == ()
    assert plan_sticks(squares(5380.02), house_of()).unplaced == ("W1-head",)


def test_a_profile_without_stock_is_named_with_its_metres_and_the_others_go_on() -> None:
    house = house_of()
    house = replace(
        house,
        profiles=(*house.profiles, Profile(name="SK", width_mm=95.0, thickness_mm=18.0)),
    )
    pieces = (*squares(1000.0), skirting_piece("S1", 2000.0, 0, 0))
    plan = plan_sticks(pieces, house)
    warning = next(f for f in plan.findings if f.code == "no-stock")
    assert warning.severity is Severity.WARNING
    assert "SK" in warning.read
    assert "2.0 m" in warning.read
    assert plan.unplaced == ("S1",)
    assert len(plan.sticks) == 1


@pytest.mark.parametrize("solver", [None, HighsSolver()])
def test_counted_sticks_that_run_out_leave_pieces_over_and_say_which(
    solver: HighsSolver | None,
) -> None:
    house = house_of(lengths_mm=(2700.0,), counts=(2,))
    plan = plan_sticks(squares(2000.0, 1900.0, 1800.0, 600.0), house, solver)
    warning = next(f for f in plan.findings if f.code == "stock-short")
    assert len(plan.sticks) == 2
    assert len(plan.unplaced) == 1
    assert plan.unplaced[0] in warning.wrong
    assert "best" in next(f for f in plan.findings if f.code == "sticks-bought").wrong


def test_counted_sticks_just_enough_are_enough() -> None:
    house = house_of(lengths_mm=(2020.0,), counts=(3,), end_trim_mm=10.0, kerf_mm=2.5)
    lengths_mm = (1197.5, 800.0, 997.5, 1000.0, 1397.5, 600.0)
    plan = plan_sticks(squares(*lengths_mm), house, HighsSolver())
    assert plan.unplaced == ()
    assert len(plan.sticks) == 3


def test_every_profile_is_planned_by_itself_in_the_house_s_order() -> None:
    house = house_of(profile="OG")
    house = replace(
        house,
        profiles=(Profile(name="SK", width_mm=95.0, thickness_mm=18.0), *house.profiles),
        stock=(*house.stock, Stock(profile="SK", length_mm=4800.0)),
    )
    pieces = (*squares(1000.0, 2000.0), skirting_piece("S1", 3000.0, 45, -45))
    plan = plan_sticks(pieces, house)
    assert [proof.profile for proof in plan.proofs] == ["SK", "OG"]
    assert [stick.name for stick in plan.sticks] == ["SK-1", "OG-1"]


def test_a_stick_with_about_the_biggest_piece_comes_first() -> None:
    plan = plan_sticks(house_pieces(13, openings=8), house_of(reversible=True), HighsSolver())
    biggest = [max(one.end_mm - one.start_mm for one in stick.laid) for stick in plan.sticks]
    assert biggest[0] >= max(biggest) - ABOUT_AS_LONG_MM


def test_of_equal_costs_the_plan_with_fewer_sticks_is_taken() -> None:
    plan = plan_sticks(squares(2600.0, 2600.0), house_of(lengths_mm=(2700.0, 5400.0)))
    assert [stick.length_mm for stick in plan.sticks] == [5400.0]


def test_the_proof_names_who_found_it() -> None:
    pieces = house_pieces(13, openings=8)
    plain = plan_sticks(pieces, house_of(reversible=True), effort=QUICK)
    solved = plan_sticks(pieces, house_of(reversible=True), HighsSolver())
    assert "best fit" in plain.proofs[0].solver
    assert "HiGHS" in solved.proofs[0].solver
    assert solved.proofs[0].cost <= plain.proofs[0].cost
    assert solved.proofs[0].lower_bound >= plain.proofs[0].lower_bound


def test_the_same_house_gives_the_same_plan_whatever_was_solved_before() -> None:
    pieces, house = house_pieces(14, openings=8), house_of(reversible=True)
    solver = HighsSolver()
    first = plan_sticks(pieces, house, solver)
    plan_sticks(house_pieces(15, openings=5), house, solver)
    assert plan_sticks(tuple(reversed(pieces)), house, solver) == first


def test_metres_bought_and_metres_needed_at_least_are_said() -> None:
    plan = plan_sticks(house_pieces(13, openings=8), house_of(), effort=QUICK)
    note = next(f for f in plan.findings if f.code == "sticks-bought")
    assert note.severity is Severity.NOTE
    assert f"{plan.proofs[0].cost:.1f} m of OG" in note.read

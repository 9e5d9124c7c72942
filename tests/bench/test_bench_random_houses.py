"""The houses that the nester is measured at have their sizes, and the runs by hand still run."""

import pytest

from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.demand import Demand, End, profile_demand
from longpoint.sticks.plan_sticks import plan_sticks
from tests.bench import run_again, run_batch
from tests.bench.random_houses import batch, random_house, skirting_pieces
from tests.bench.rectangles import as_rectangle, planned_as_rectangles
from tests.bench.run_houses import Planned, summary
from tests.random_sticks import architrave_piece, house_of, house_pieces


@pytest.mark.parametrize("seed", range(8))
def test_a_random_house_has_100_to_300_pieces_of_a_few_profiles(seed: int) -> None:
    pieces, house = random_house(seed)
    assert 100 <= len(pieces) <= 300
    assert 2 <= len(house.profiles) <= 4
    assert len({piece.mark for piece in pieces}) == len(pieces)
    assert {piece.profile for piece in pieces} == {profile.name for profile in house.profiles}
    for profile in house.profiles:
        assert sum(entry.profile == profile.name for entry in house.stock) == 5
    assert random_house(seed) == (pieces, house)


def test_a_batch_has_200_pieces_a_house() -> None:
    pieces, house = batch(3)
    assert len({piece.mark for piece in pieces}) == len(pieces) == 600
    assert {piece.profile for piece in pieces} == {profile.name for profile in house.profiles}


def test_a_batch_of_one_house_is_planned(capsys: pytest.CaptureFixture[str]) -> None:
    run_batch.main(["--houses", "1", "--without-solver"])
    said = capsys.readouterr().out
    assert "1 houses, 200 pieces" in said
    assert "SK: 92 pieces" in said


def test_two_accidents_at_a_small_house(capsys: pytest.CaptureFixture[str]) -> None:
    run_again.main(["--accidents", "2", "--openings", "4"])
    assert "2 accidents" in capsys.readouterr().out


def test_what_came_of_houses_is_told() -> None:
    planned = [_planned(0, gap_m=0.0), _planned(0, gap_m=0.5), _planned(1, gap_m=0.0)]
    lines = summary(planned)
    assert lines[0] == "2 houses, plan = bound in 1 (50 %)"
    assert "in 2, more than one step of 0.3 m above in 1" in lines[1]


def _planned(house: int, *, gap_m: float) -> Planned:
    return Planned(
        house=house,
        profile="P0",
        pieces=100,
        reversible=False,
        cost=100.0 + gap_m,
        bound=100.0,
        unit="m",
        gap_m=gap_m,
        first_s=0.1,
        seconds=1.0,
        cpu_seconds=1.0,
    )


def test_a_rectangle_is_as_long_as_the_long_point() -> None:
    """1000 inside and two mitres of 45 on a face of 66: 1132 over the points."""
    pieces = [architrave_piece("W1-head", 1000.0, 45.0, 45.0)]
    house = house_of()
    demand = profile_demand(pieces, house.profiles[0], 2.5).demands[0]
    square = End(lean=0, lean_mm=0.0, kerf=354)
    assert as_rectangle(demand, 354) == Demand(
        mark="W1-head",
        # A hundredth for the rounding of each leaning end.
        mid=113_200 + 2,
        low=113_200,
        left=square,
        right=square,
        can_turn=False,
    )


def test_true_leans_never_need_more_than_rectangles() -> None:
    solver = linear_solver()
    house = house_of(reversible=True)
    pieces = house_pieces(3, openings=6)
    before = planned_as_rectangles(pieces, house, solver, QUICK)
    ours = plan_sticks(pieces, house, solver, QUICK).proofs[0]
    assert ours.lower_bound <= before.cost
    assert ours.cost <= before.cost


def test_runs_of_skirting_fit_the_longest_stick() -> None:
    pieces = skirting_pieces(1, 50)
    assert len(pieces) == 50
    assert max(max(piece.inner_mm, piece.back_mm) for piece in pieces) < 5400 - 2 * 10

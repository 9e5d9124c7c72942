"""Sticks of houses as they may come out."""

import random
from dataclasses import replace

import pytest

from longpoint.pieces.openings import plan_openings
from longpoint.pieces.runs import plan_runs
from longpoint.pipeline import plan_house
from longpoint.pricing.drawn_sizes import SizeDoubt, drawn_pieces
from longpoint.pricing.timber import imagined_timber
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import SurveyResult
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window
from tests.priced_jobs import STOCK, as_read, counted

pytestmark = pytest.mark.no_cover

NO_SLIPS = {"walls": "new", "refit": 12, "batch_saves": 1.2, "slips": 0}


def test_read_sizes_and_no_slips_take_what_the_plan_takes() -> None:
    plan = plan_house(read_house(house(openings=[window()], stock=STOCK, crew=NO_SLIPS)))
    timber = imagined_timber(plan.pieces, plan.house, None, nests=3)

    assert len({tuple(draw.sticks.items()) for draw in timber.draws}) == 1
    bought = sum(timber.at(0.5).sticks.values())
    assert bought == len(plan_sticks(plan.pieces, plan.house).sticks)


def test_an_opening_that_comes_out_wider_has_its_head_and_sill_piece_longer_alike() -> None:
    job = counted(crew=None)
    shapes = Shapes(openings=fit_openings(job.house)[0])
    pieces = plan_openings(job.house, shapes, frozenset())[0]
    doubt = SizeDoubt(opening_mm=5.0, wall_mm=0.0)
    drawn = {p.mark: p for p in drawn_pieces(pieces, job.house, doubt, random.Random(1))}
    before = {p.mark: p for p in pieces}

    def grown(mark: str) -> float:
        return round(drawn[mark].inner_mm - before[mark].inner_mm, 6)

    assert grown("W1-head") == grown("W1-sill") != 0
    assert grown("W1-left-leg") == grown("W1-right-leg") != grown("W1-head")
    assert grown("W2-head") != grown("W1-head")
    assert all(
        round(p.outer_mm - p.inner_mm, 6) == round(before[m].outer_mm - before[m].inner_mm, 6)
        for m, p in drawn.items()
        if m in before
    )


def test_runs_of_a_room_share_its_length_and_none_is_lost() -> None:
    job = counted()
    pieces = plan_runs(job.house, Shapes())[0]
    doubt = SizeDoubt(opening_mm=0.0, wall_mm=0.0, shared=(("S1-1", "S1-2", "S1-3", "S1-4"),))
    drawn = drawn_pieces(pieces, job.house, doubt, random.Random(2))
    whole = [p for p in drawn if "again" not in p.mark]

    before, after = (sum(p.back_mm for p in each) for each in (pieces, whole))
    assert abs(before - after) < 1e-6
    assert len({round(p.back_mm) for p in whole}) > 1


def test_a_run_longer_than_a_stick_is_cut_in_parts_that_fit() -> None:
    job = counted(skirting=[{"length": 15000}])

    assert all(draw.without == 0 for draw in job.estimate.timber.draws)
    assert (
        sum(
            length * count
            for (profile, length), count in job.estimate.timber.at(0.5).sticks.items()
            if profile == "SK95"
        )
        > 15000
    )


def test_more_slips_never_take_less_timber() -> None:
    costs = []
    for slips in (0, 10, 40):
        job = as_read(window(), window(mark="W2"), crew=None)
        slipping = replace(job.house, crew=replace(job.house.crew, slips=float(slips)))
        plan = plan_house(SurveyResult(house=slipping, findings=()))
        timber = imagined_timber(plan.pieces, slipping, None, nests=6)
        costs.append(sum(draw.cost for draw in timber.draws))
    assert costs == sorted(costs)
    assert costs[0] < costs[-1]


def test_sticks_without_a_price_are_named() -> None:
    unpriced = counted(stock=[{"profile": "OG57", "length": 5400}, *STOCK[2:]]).estimate.timber

    assert unpriced.unpriced == (("OG57", 5400.0),)


def test_pieces_that_no_stick_can_give_are_counted() -> None:
    short = counted(stock=[{"profile": "OG57", "length": 900, "price": 3}, *STOCK[2:]])

    assert short.estimate.timber.draws[0].without > 0

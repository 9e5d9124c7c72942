"""Random whole houses, from exact readings to sticks: every piece once, no stick over-filled."""

import random
from collections import Counter
from dataclasses import replace

import pytest

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.shape.point import interior_angles_deg
from longpoint.survey.house import House, SurveyResult
from longpoint.survey.openings import Layout, Opening, OpeningKind
from longpoint.survey.profiles import Offcut, Profile, Stock
from longpoint.survey.rooms import Room, Run, RunEnd, Wall
from tests.fitted_houses import Corners, house, opening, quad

HOUSES = 1000
AT_A_TIME = 50
ONE_IN = 10
"""One block of so many is always planned; the others by `make long`."""


def near_square(draw: random.Random, width_mm: float, height_mm: float) -> Corners:
    """Return an opening as walls leave it: a few millimetres out, the bottom along the axis."""
    return quad(
        (0.0, 0.0),
        (width_mm, 0.0),
        (width_mm + draw.gauss(0, 2), height_mm + draw.gauss(0, 1)),
        (draw.gauss(0, 2), height_mm + draw.gauss(0, 1)),
    )


def random_opening(draw: random.Random, number: int, width_mm: float) -> tuple[Opening, Corners]:
    if draw.random() < 0.4:
        corners = near_square(draw, draw.uniform(650, 950), draw.uniform(1950, 2100))
        door = opening(
            corners,
            mark=f"D{number}",
            kind=OpeningKind.DOOR,
            layout=Layout.LEGS_AND_HEAD,
            width_mm=width_mm,
            faces=draw.choice((1, 2)),
        )
        return door, corners
    corners = near_square(draw, draw.uniform(420, 2300), draw.uniform(420, 1500))
    layout = draw.choice((Layout.ALL_ROUND, Layout.BOARD_AND_APRON))
    return opening(corners, mark=f"W{number}", layout=layout, width_mm=width_mm), corners


def random_house(draw: random.Random) -> tuple[House, dict[str, Corners]]:
    """Return a house of one to nine openings and a room with skirting, and its true corners."""
    width_mm = draw.choice((57.0, 66.0, 90.0))
    made = [random_opening(draw, n, width_mm) for n in range(1, draw.randint(2, 10))]
    bare = house(*(o for o, _ in made))
    wide, deep = draw.uniform(1500, 7000), draw.uniform(1500, 7000)
    walls = tuple(
        Wall(mark=m, length_mm=x, corner_deg=90.0, skirting=True, profile="SK")
        for m, x in zip("NESW", (wide, deep, wide, deep), strict=True)
    )
    run = Run(
        mark="S1",
        profile="SK",
        length_mm=draw.uniform(300, 9000),
        left=draw.choice(tuple(RunEnd)),
        right=draw.choice(tuple(RunEnd)),
        tape="T1",
    )
    architrave = bare.profiles[0].name
    is_reversible = draw.random() < 0.5
    whole = replace(
        bare,
        profiles=(
            *(replace(p, reversible=is_reversible) for p in bare.profiles),
            Profile(name="SK", width_mm=95.0, thickness_mm=18.0),
        ),
        stock=(
            *(Stock(profile=architrave, length_mm=x) for x in (3000.0, 4200.0, 5400.0)),
            *(Stock(profile="SK", length_mm=x) for x in (4200.0, 5400.0)),
        ),
        offcuts=(Offcut(profile=architrave, length_mm=draw.uniform(600, 2000), count=2),),
        rooms=(Room(name="kitchen", walls=walls, tape="T1"),),
        runs=(run,),
        skirting_profile="SK",
    )
    return whole, {o.mark: corners for o, corners in made}


def plan_of(seed: int) -> tuple[HousePlan, dict[str, Corners]]:
    whole, corners = random_house(random.Random(seed))
    return plan_house(SurveyResult(house=whole, findings=())), corners


def check(seed: int) -> None:
    plan, corners = plan_of(seed)
    stops = [str(f) for f in plan.findings if f.severity is Severity.STOP]
    assert not stops, stops
    for fitted in plan.shapes.openings:
        true = corners[fitted.mark]
        for ours, point in zip(fitted.corners, true, strict=True):
            assert ours.distance_mm(point) < 0.001
        assert fitted.corner_deg == pytest.approx(interior_angles_deg(true), abs=1e-4)
    laid = Counter(piece.piece for stick in plan.cut_plan.sticks for piece in stick.laid)
    assert laid == Counter(p.mark for p in plan.pieces)
    assert set(laid.values()) <= {1}
    assert {p.opening for p in plan.pieces if p.opening} == set(corners)
    for stick in plan.cut_plan.sticks:
        assert stick.used_mm <= stick.length_mm + 1e-6
        ends = [(piece.start_mm, piece.end_mm) for piece in stick.laid]
        assert all(0 <= start < end <= stick.length_mm for start, end in ends)
    for proof in plan.cut_plan.proofs:
        assert proof.lower_bound <= proof.cost + 1e-9


@pytest.mark.parametrize(
    "block",
    [
        pytest.param(block, marks=() if block % ONE_IN == 0 else pytest.mark.long)
        for block in range(HOUSES // AT_A_TIME)
    ],
)
def test_random_houses_are_planned_whole(block: int) -> None:
    for seed in range(AT_A_TIME * block, AT_A_TIME * (block + 1)):
        check(seed)

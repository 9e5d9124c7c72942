"""What holds for every set of pieces, drawn at random."""

import itertools
import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Polygon

from longpoint.pieces.piece import Piece
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bar, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import cost_of, first_packing
from longpoint.sticks.lay.laying import Place, Workload, positions_mm, used_length, workload
from longpoint.sticks.lay.ordering import best_order
from longpoint.sticks.plan import CutPlan, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, skirting_piece

ANGLES_DEG = st.one_of(
    st.sampled_from([0.0, 45.0, 22.5, -45.0]),
    st.floats(43.0, 47.0).map(lambda deg: round(deg, 2)),
    st.floats(-1.0, 1.0).map(lambda deg: round(deg, 2)),
)


@st.composite
def architraves(draw: st.DrawFn, most: int, shortest_mm: float = 150.0) -> tuple[Piece, ...]:
    count = draw(st.integers(1, most))
    return tuple(
        architrave_piece(
            f"W{number}-head",
            round(draw(st.floats(shortest_mm, 2300.0)), 1),
            draw(ANGLES_DEG),
            draw(ANGLES_DEG),
        )
        for number in range(count)
    )


@st.composite
def houses(draw: st.DrawFn) -> House:
    lengths_mm = draw(
        st.lists(
            st.sampled_from([2700.0, 3000.0, 3600.0, 4200.0, 5400.0]),
            min_size=1,
            max_size=3,
            unique=True,
        )
    )
    priced = draw(st.booleans())
    prices = tuple(str(draw(st.integers(700, 1500)) / Decimal(100)) for _ in lengths_mm)
    offcuts = draw(
        st.lists(st.tuples(st.sampled_from([500.0, 1310.0, 2050.0]), st.integers(1, 2)), max_size=2)
    )
    return house_of(
        reversible=draw(st.booleans()),
        lengths_mm=tuple(lengths_mm),
        prices=prices if priced else (),
        offcuts=tuple(offcuts),
        kerf_mm=draw(st.sampled_from([1.8, 2.5, 3.0])),
        end_trim_mm=draw(st.sampled_from([0.0, 10.0, 20.0])),
    )


def work_of(pieces: Sequence[Piece], house: House) -> Workload:
    demand = profile_demand(pieces, house.profile(pieces[0].profile), house.saw.kerf_mm)
    return workload(demand.demands)


def all_layings(work: Workload, pieces: Sequence[int]) -> Iterator[tuple[Place, ...]]:
    ways = [(False, True) if work.can_turn[piece] else (False,) for piece in range(len(work.mid))]
    for order in itertools.permutations(pieces):
        for turns in itertools.product(*(ways[piece] for piece in order)):
            yield tuple(map(Place, order, turns))


@given(architraves(5), st.booleans())
def test_the_best_order_is_as_short_as_the_best_of_all_orders_and_turns(
    pieces: tuple[Piece, ...], reversible: bool
) -> None:
    work = work_of(pieces, house_of(reversible=reversible))
    numbers = range(len(pieces))
    shortest = min(used_length(work, laying) for laying in all_layings(work, numbers))
    assert used_length(work, best_order(work, numbers)) == shortest


def outline(piece: Piece, start_mm: float, *, turned: bool) -> Polygon:
    """The face of a piece on its stick, by its two edges alone."""
    tan_left = math.tan(math.radians(piece.left.mitre_deg))
    inner = [(0.0, 0.0), (piece.inner_mm, 0.0)]
    left = -piece.width_mm * tan_left
    outer = [(left + piece.outer_mm, piece.width_mm), (left, piece.width_mm)]
    face = Polygon([*inner, *outer])
    if turned:
        face = affinity.rotate(face, 180, origin=(0.0, piece.width_mm / 2))
    return affinity.translate(face, start_mm - face.bounds[0])


def blade(slope: float, x_mm: float, kerf_mm: float, width_mm: float, *, to_right: bool) -> Polygon:
    """What a cut through (x, half the width) takes on one side of its line."""
    along_mm = kerf_mm * math.hypot(1.0, slope) * (1 if to_right else -1)
    low, high = x_mm - slope * width_mm / 2, x_mm + slope * width_mm / 2
    return Polygon(
        [(low, 0.0), (low + along_mm, 0.0), (high + along_mm, width_mm), (high, width_mm)]
    )


@given(architraves(4), st.booleans(), st.randoms(use_true_random=False))
def test_the_formula_agrees_with_polygons_and_saw_blades(
    pieces: tuple[Piece, ...], reversible: bool, draw: random.Random
) -> None:
    """Laid by the formula no blade touches a neighbour; 0.06 mm nearer, some blade does."""
    house = house_of(reversible=reversible)
    work = work_of(pieces, house)
    by_mark = {piece.mark: piece for piece in pieces}
    numbers = list(range(len(pieces)))
    draw.shuffle(numbers)
    places = [Place(n, reversible and draw.random() < 0.5) for n in numbers]
    ends_mm = positions_mm(work, places, 1000)
    faces = [
        outline(by_mark[work.demands[place.piece].mark], start_mm, turned=place.turned)
        for place, (start_mm, _) in zip(places, ends_mm, strict=True)
    ]
    total_mm = faces[-1].bounds[2] - faces[0].bounds[0]
    assert used_length(work, places) / 100 == pytest.approx(total_mm, abs=0.02 + 0.03 * len(pieces))

    def touched(nearer_mm: float, index: int) -> float:
        first = faces[index]
        second = affinity.translate(faces[index + 1], -nearer_mm)
        right = slope_of(first, at_right=True)
        left = slope_of(second, at_right=False)
        cut_one = blade(*right, 2.5, 66.0, to_right=True)
        cut_two = blade(*left, 2.5, 66.0, to_right=False)
        return float(cut_one.intersection(second).area + cut_two.intersection(first).area)

    for index in range(len(faces) - 1):
        assert touched(0.0, index) < 1e-6
        assert touched(0.06, index) > 1e-6


def slope_of(face: Polygon, *, at_right: bool) -> tuple[float, float]:
    """Slope and x at half the width of one end."""
    low = [x for x, y in face.exterior.coords if abs(y) < 1e-6]
    high = [x for x, y in face.exterior.coords if abs(y - 66.0) < 1e-6]
    choose = max if at_right else min
    return (choose(high) - choose(low)) / 66.0, (choose(high) + choose(low)) / 2


def fingerprint(plan: CutPlan) -> list[tuple[object, ...]]:
    return [
        (stick.name, stick.length_mm, tuple((one.piece, one.turned) for one in stick.laid))
        for stick in plan.sticks
    ]


@given(architraves(14), houses(), st.randoms(use_true_random=False))
def test_every_plan_passes_the_checker_and_keeps_its_bound(
    pieces: tuple[Piece, ...], house: House, draw: random.Random
) -> None:
    plan = plan_sticks(pieces, house, effort=QUICK)
    laid = [one.piece for stick in plan.sticks for one in stick.laid]
    assert sorted([*laid, *plan.unplaced]) == sorted(piece.mark for piece in pieces)
    for stick in plan.sticks:
        assert stick.used_mm <= stick.length_mm + 1e-9
    for proof in plan.proofs:
        assert proof.lower_bound <= proof.cost + 1e-9
    shuffled = list(pieces)
    draw.shuffle(shuffled)
    assert fingerprint(plan_sticks(tuple(shuffled), house, effort=QUICK)) == fingerprint(plan)


@given(architraves(14), houses())
def test_a_plan_is_never_worse_than_first_fit_decreasing(
    pieces: tuple[Piece, ...], house: House
) -> None:
    plan = plan_sticks(pieces, house, effort=QUICK)
    placed = [piece for piece in pieces if piece.mark not in plan.unplaced]
    if not placed or not plan.proofs:
        return
    work = work_of(placed, house)
    bars = bars_of("OG", house.stock, house.offcuts, house.saw)
    for wanted in bars.bars:

        def rule(bar: Bar, _: int, wanted: Bar = wanted) -> tuple[float, ...]:
            return (bool(bar.cost), abs(bar.room - wanted.room))

        packing = first_packing(work, bars.bars, range(len(work.mid)), rule, first_fit=True)
        if not packing.unplaced:
            ours = plan.proofs[0].cost
            assert ours <= cost_of(bars.bars, packing) / bars.per_unit + 1e-9


def least_cost(pieces: Sequence[Piece], house: House) -> float:
    """The cheapest of all ways to share the pieces out, each stick in its best order."""
    work = work_of(pieces, house)
    bars = bars_of("OG", house.stock, (), house.saw)

    def stick_cost(part: tuple[int, ...]) -> float:
        used = min(used_length(work, laying) for laying in all_layings(work, part))
        return min((bar.cost for bar in bars.bars if used <= bar.room), default=math.inf)

    def best(rest: tuple[int, ...]) -> float:
        if not rest:
            return 0.0
        first, others = rest[0], rest[1:]
        return min(
            stick_cost((first, *some)) + best(tuple(piece for piece in others if piece not in some))
            for size in range(len(others) + 1)
            for some in itertools.combinations(others, size)
        )

    return best(tuple(range(len(work.mid)))) / bars.per_unit


@given(architraves(5, shortest_mm=700.0), houses())
def test_tiny_plans_cost_what_the_best_of_all_plans_costs(
    pieces: tuple[Piece, ...], house: House
) -> None:
    house = replace(house, offcuts=())
    plan = plan_sticks(pieces, house, linear_solver())
    if plan.unplaced:
        return
    cheapest = least_cost(pieces, house)
    assert plan.proofs[0].cost == pytest.approx(cheapest)
    assert plan.proofs[0].lower_bound <= cheapest + 1e-9


@given(
    st.lists(st.tuples(st.floats(300.0, 2400.0), st.sampled_from([45, -45, 0, 44.2])), max_size=9)
)
def test_skirting_plans_pass_the_checker_too(runs: list[tuple[float, float]]) -> None:
    pieces = tuple(
        skirting_piece(
            f"S{number}", round(length_mm, 1), angle_deg, -angle_deg if number % 2 else 45
        )
        for number, (length_mm, angle_deg) in enumerate(runs)
    )
    plan = plan_sticks(pieces, house_of(profile="SK", width_mm=95.0), effort=QUICK)
    assert plan.unplaced == ()
    assert all(not one.turned for stick in plan.sticks for one in stick.laid)
    assert all(stick.source is StickSource.STOCK for stick in plan.sticks)

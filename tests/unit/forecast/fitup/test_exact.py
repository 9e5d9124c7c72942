"""Best fit-ups of one frame against closed forms.

1200 x 1050 mm, face 70, quirk 4.5. The closed forms follow from the frame as written beside each;
the rounded figures in the comments were computed beforehand by another program.
"""

import math

import numpy as np
import pytest

from longpoint.forecast.fitup.exact import FitUp, best_fit_up
from longpoint.forecast.fitup.frame import SLOTS, FitLimits, Slot, frame_rows
from longpoint.forecast.fitup.respect import Respect, rows_of
from longpoint.linear.port import LinearSolver
from longpoint.linear.simplex import SimplexSolver
from longpoint.solvers.highs import HighsSolver
from tests.fit_up_draws import Set

FACE_MM, GAP_MM, ROOM_MM = 70.0, 0.5, 2.0
INNER_WIDTH_MM, INNER_HEIGHT_MM = 1209.0, 1059.0
JOINT_MM = math.sqrt(2.0) * FACE_MM
TENTH_DEG = math.radians(0.1)
BOTTOM, RIGHT, HEAD, LEFT = range(4)
ALL = tuple(range(4))
NONE_MM = 1e-6
"""As good as no room at all."""

both = pytest.mark.parametrize("solver", [HighsSolver(), SimplexSolver()], ids=["highs", "simplex"])


def off(*parts: tuple[int, Slot, float]) -> tuple[float, ...]:
    errors = [0.0] * (4 * SLOTS)
    for side, slot, amount in parts:
        errors[SLOTS * side + slot] += amount
    return tuple(errors)


def longer(side: int, by_mm: float) -> tuple[tuple[int, Slot, float], ...]:
    return ((side, Slot.LENGTH_START, by_mm / 2.0), (side, Slot.LENGTH_END, by_mm / 2.0))


def fit(
    solver: LinearSolver,
    errors: tuple[float, ...],
    *,
    room_mm: float = ROOM_MM,
    gap_mm: float = GAP_MM,
    sight_mm: float = 0.5,
    toe_mm: float = 1.0,
    respect: Respect = Respect.IN_PLANE,
) -> FitUp:
    frame = Set(room_in_mm=room_mm, room_out_mm=room_mm).frame()
    limits = FitLimits(gap_mm=gap_mm, sight_step_mm=sight_mm, toe_step_mm=toe_mm)
    return best_fit_up(rows_of(frame_rows(frame, limits), respect), errors, solver)


@both
def test_every_cut_a_tenth_over_opens_every_corner_alike(solver: LinearSolver) -> None:
    over = off(*((i, slot, TENTH_DEG) for i in ALL for slot in (Slot.TURN_START, Slot.TURN_END)))
    # Four corners share 8 errors on joints of sqrt2 w: 2 sqrt2 w b each. 0.346 mm
    assert fit(solver, over).ratio * GAP_MM == pytest.approx(2.0 * JOINT_MM * TENTH_DEG, abs=1e-4)


@both
def test_a_fence_out_of_square_opens_nothing_and_steps_the_outer_corners(
    solver: LinearSolver,
) -> None:
    swung = off(
        *((i, Slot.TURN_START, -TENTH_DEG) for i in ALL),
        *((i, Slot.TURN_END, TENTH_DEG) for i in ALL),
    )
    closed = fit(solver, swung, sight_mm=NONE_MM, gap_mm=NONE_MM)
    # 0.346 mm at the toe while the inner edges are level.
    assert closed.ratio * 1.0 == pytest.approx(2.0 * JOINT_MM * TENTH_DEG, abs=1e-4)


@both
def test_one_cut_a_tenth_over_is_shared_by_four_corners_at_best(solver: LinearSolver) -> None:
    one = off((BOTTOM, Slot.TURN_END, TENTH_DEG))
    free = fit(solver, one, sight_mm=99.0, toe_mm=99.0, respect=Respect.GAPS)
    # m b / 4: 0.043 mm; with steps and quirks to be kept as well 0.079 mm.
    assert free.ratio * GAP_MM == pytest.approx(JOINT_MM * TENTH_DEG / 4.0, abs=1e-4)
    assert fit(solver, one).ratio * GAP_MM == pytest.approx(0.079, abs=5e-4)


@both
def test_pieces_all_too_long_take_quirk_and_open_nothing(solver: LinearSolver) -> None:
    long = off(*(part for side in ALL for part in longer(side, 1.0)))
    # d / 2: 0.5 mm out on each side.
    tight = fit(solver, long, gap_mm=NONE_MM, sight_mm=NONE_MM, toe_mm=NONE_MM)
    assert tight.ratio * ROOM_MM == pytest.approx(0.5, abs=1e-4)
    assert tight.moves[1::3] == pytest.approx((0.5,) * 4, abs=1e-4)


@both
def test_a_head_longer_than_its_sill_piece_hardly_opens_a_corner(solver: LinearSolver) -> None:
    head = off(*longer(HEAD, 1.0))
    level = fit(solver, head, sight_mm=NONE_MM, respect=Respect.GAPS)
    # m d / (2 (B + w)), B the inner edge of a leg: 0.044 mm with no sight-line step, less with one.
    expected_mm = JOINT_MM / (2.0 * (INNER_HEIGHT_MM + FACE_MM))
    assert level.ratio * GAP_MM == pytest.approx(expected_mm, abs=1e-4)
    assert fit(solver, head, respect=Respect.GAPS).ratio < level.ratio


@pytest.mark.parametrize(
    ("room_mm", "sight_mm", "ratio"),
    # 0.76 and 4.96 as computed beforehand; the first takes a sight-line step of 0.5 mm, the second
    # as good as none.
    [(0.3, 0.5, 0.765), (0.1, 0.5, 1.250), (0.3, NONE_MM, 1.667), (0.1, 0.001, 4.965)],
)
def test_a_longer_head_opens_corners_once_the_quirk_has_no_room(
    room_mm: float, sight_mm: float, ratio: float
) -> None:
    found = fit(HighsSolver(), off(*longer(HEAD, 1.0)), room_mm=room_mm, sight_mm=sight_mm)
    assert found.ratio == pytest.approx(ratio, abs=1e-3)


@both
def test_a_square_frame_turns_to_share_an_opening_out_of_square(solver: LinearSolver) -> None:
    lean_mm = 3.0
    out = off(
        (RIGHT, Slot.REVEAL_START, -lean_mm / 2.0),
        (RIGHT, Slot.REVEAL_END, lean_mm / 2.0),
        (LEFT, Slot.REVEAL_START, -lean_mm / 2.0),
        (LEFT, Slot.REVEAL_END, lean_mm / 2.0),
    )
    square = fit(solver, out, gap_mm=NONE_MM, sight_mm=NONE_MM, toe_mm=NONE_MM)
    # s A / (2 (A + B)) over the inner edges: 0.80 mm at the ends of the sides.
    expected_mm = lean_mm * INNER_WIDTH_MM / (2.0 * (INNER_WIDTH_MM + INNER_HEIGHT_MM))
    assert square.ratio * ROOM_MM == pytest.approx(expected_mm, abs=1e-4)
    assert expected_mm == pytest.approx(0.80, abs=5e-3)


@both
def test_the_weights_prove_the_ratio(solver: LinearSolver) -> None:
    rng = np.random.default_rng(8)
    rows = frame_rows(Set().frame(), FitLimits(gap_mm=GAP_MM))
    for _ in range(5):
        errors = rng.normal(size=32) * np.tile((0.5, 0.5, 2e-3, 2e-3, 0.1, 1.0, 1.0, 1.0), 4)
        found = best_fit_up(rows, tuple(errors), solver)
        weights = np.array(found.weights)
        assert weights.min() >= 0.0
        assert weights @ [row.limit_mm for row in rows] == pytest.approx(1.0)
        assert weights @ [row.moves for row in rows] == pytest.approx(np.zeros(12), abs=1e-6)
        assert weights @ [row.errors for row in rows] @ errors == pytest.approx(found.ratio)


@both
def test_a_frame_without_errors_fits_at_nought(solver: LinearSolver) -> None:
    found = fit(solver, (0.0,) * 32)
    assert found.ratio == 0.0
    assert found.weights == (0.0,) * 56


@both
def test_the_moves_found_keep_every_row(solver: LinearSolver) -> None:
    errors = off(*longer(HEAD, 1.0), (LEFT, Slot.TURN_END, TENTH_DEG))
    rows = frame_rows(Set().frame(), FitLimits(gap_mm=GAP_MM))
    found = best_fit_up(rows, errors, solver)
    for row in rows:
        moved = sum(a * x for a, x in zip(row.moves, found.moves, strict=True))
        by_errors = sum(a * x for a, x in zip(row.errors, errors, strict=True))
        assert moved + by_errors <= found.ratio * row.limit_mm + 1e-7

import math

import numpy as np
import pytest

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import FitLimits, Frame, Slot, frame_of, frame_rows
from longpoint.forecast.fitup.lines import (
    Respect,
    fit_lines,
    learned_lines,
    missing_lines,
    ratio_by,
)
from longpoint.forecast.fitup.respect import rows_of
from longpoint.linear.simplex import SimplexSolver
from longpoint.shape.point import Point
from longpoint.solvers.highs import HighsSolver
from longpoint.trims.outline import TrimSide, trim_outline
from tests.fit_up_draws import Floats, Set, Spreads, drawn_errors

pytestmark = pytest.mark.no_cover

LIMITS = FitLimits(gap_mm=0.5)
FRAME = Set().frame()


def exact(frame: Frame, respect: Respect, errors: Floats) -> float:
    rows = rows_of(frame_rows(frame, LIMITS), respect)
    return best_fit_up(rows, tuple(errors), HighsSolver()).ratio


def polygon_frame(sides: int) -> Frame:
    corners = tuple(
        Point(
            600.0 * math.cos(2.0 * math.pi * k / sides), 600.0 * math.sin(2.0 * math.pi * k / sides)
        )
        for k in range(sides)
    )
    outline = trim_outline(corners, (TrimSide(inner_mm=4.0, width_mm=70.0),) * sides)
    return frame_of(outline, (70.0,) * sides, ((2.0, 2.0),) * sides)


@pytest.mark.parametrize("respect", Respect)
@pytest.mark.parametrize("is_door", [False, True])
def test_no_line_of_a_list_reaches_above_the_exact_ratio(respect: Respect, is_door: bool) -> None:
    frame = Set(is_door=is_door, room_in_mm=1.2, lean_mm=3.0).frame()
    lines = fit_lines(frame, LIMITS, respect)
    for errors in drawn_errors(frame, Spreads(saw_bias_deg=0.1), 15, np.random.default_rng(1)):
        assert ratio_by(lines, errors) <= exact(frame, respect, errors) + 1e-6


def test_every_cut_over_by_a_tenth_reads_two_root_two_w_b_over_the_gap() -> None:
    errors = [0.0] * 32
    for side in range(4):
        errors[8 * side + Slot.TURN_START] = errors[8 * side + Slot.TURN_END] = math.radians(0.1)
    expected = 2.0 * math.sqrt(2.0) * 70.0 * math.radians(0.1) / 0.5
    lines = fit_lines(FRAME, LIMITS, Respect.GAPS)
    assert ratio_by(lines, errors) == pytest.approx(expected, abs=2e-4)


def test_errors_of_a_frame_that_fits_anyhow_read_nought() -> None:
    assert ratio_by(fit_lines(FRAME, LIMITS, Respect.IN_PLANE), (0.0,) * 32) == 0.0
    assert ratio_by((), (0.0,) * 32) == 0.0


def test_lines_are_the_same_each_time() -> None:
    again = fit_lines(FRAME, LIMITS, Respect.IN_PLANE)
    assert fit_lines(FRAME, LIMITS, Respect.IN_PLANE) == again
    assert len(set(again)) == len(again)


def test_half_the_gap_allowed_doubles_a_ratio_that_only_gaps_rule() -> None:
    errors = [0.0] * 32
    for side in range(4):
        errors[8 * side + Slot.TURN_START] = errors[8 * side + Slot.TURN_END] = math.radians(0.1)
    half = fit_lines(FRAME, FitLimits(gap_mm=0.25), Respect.GAPS)
    whole = fit_lines(FRAME, LIMITS, Respect.GAPS)
    assert ratio_by(half, errors) == pytest.approx(2.0 * ratio_by(whole, errors))


@pytest.mark.parametrize("respect", Respect)
def test_a_learned_list_gives_the_exact_ratio(respect: Respect) -> None:
    """Draws are added to the list until two dozen in a row bring nothing new."""
    lines = fit_lines(FRAME, LIMITS, respect)
    rng = np.random.default_rng(3)
    pool = drawn_errors(FRAME, Spreads(saw_bias_deg=0.05), 25, rng)
    lines += missing_at_any_ratio(lines, respect, pool)
    for errors in pool:
        assert ratio_by(lines, errors) == pytest.approx(exact(FRAME, respect, errors), abs=1e-4)


def missing_at_any_ratio(
    lines: tuple[tuple[float, ...], ...], respect: Respect, pool: Floats
) -> tuple[tuple[float, ...], ...]:
    """Return what a list lacks, each draw brought to just under a ratio of 1 by the list."""
    scaled = [errors * 0.9 / max(ratio_by(lines, errors), 1e-9) for errors in pool]
    return missing_lines(FRAME, LIMITS, respect, lines, scaled, HighsSolver())


@pytest.mark.parametrize("sides", [3, 6])
def test_a_triangle_and_a_hexagon_are_learned(sides: int) -> None:
    frame = polygon_frame(sides)
    lines = fit_lines(frame, LIMITS, Respect.GAPS, HighsSolver())
    errors = [0.0] * (8 * sides)
    for side in range(sides):
        errors[8 * side + Slot.TURN_START] = errors[8 * side + Slot.TURN_END] = math.radians(0.1)
    # Of every closed frame: sum of (heel - toe) / length is the angle sum, shared by n corners.
    joint_mm = frame.joints[0].length_mm
    expected_mm = joint_mm * 2 * sides * math.radians(0.1) / sides
    assert ratio_by(lines, errors) * LIMITS.gap_mm == pytest.approx(expected_mm, abs=1e-4)


def test_both_solvers_learn_lists_that_give_the_same_ratios() -> None:
    frame = polygon_frame(3)
    learned = [fit_lines(frame, LIMITS, Respect.GAPS, s) for s in (HighsSolver(), SimplexSolver())]
    rng = np.random.default_rng(4)
    sizes = np.tile((0.3, 0.3, 2e-3, 2e-3, 0.1, 1.0, 1.0, 1.0), 3)
    for errors in rng.normal(size=(30, 24)) * sizes:
        true = exact(frame, Respect.GAPS, errors)
        for lines in learned:
            assert 0.97 * true <= ratio_by(lines, errors) <= true + 1e-6


def test_a_list_cut_short_is_found_out_and_mended() -> None:
    lines = fit_lines(FRAME, LIMITS, Respect.IN_PLANE)
    short = lines[: len(lines) // 10]
    pool = drawn_errors(FRAME, Spreads(saw_bias_deg=0.1), 150, np.random.default_rng(6))
    added = missing_lines(FRAME, LIMITS, Respect.IN_PLANE, short, pool, HighsSolver())
    assert added
    assert missing_lines(FRAME, LIMITS, Respect.IN_PLANE, short + added, pool, HighsSolver()) == ()


def test_learning_adds_to_what_is_known() -> None:
    known = fit_lines(FRAME, LIMITS, Respect.QUIRK)[:5]
    learned = learned_lines(FRAME, LIMITS, Respect.QUIRK, HighsSolver(), known)
    assert learned[:5] == known
    assert len(learned) > 5

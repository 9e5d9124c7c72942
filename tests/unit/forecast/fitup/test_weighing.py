import numpy as np
import pytest

from longpoint.forecast.fitup.frame import FitLimits, FrameRow, RowKind, frame_rows
from longpoint.forecast.fitup.weighing import columns_of, line_of, row_weights
from tests.fit_up_draws import Set


def row(moves: tuple[float, ...], limit_mm: float, errors: tuple[float, ...] = ()) -> FrameRow:
    return FrameRow(kind=RowKind.QUIRK, place=0, moves=moves, errors=errors, limit_mm=limit_mm)


def test_two_rows_that_pull_against_each_other_share_the_weight() -> None:
    rows = (row((1.0,), 0.5), row((-1.0,), 1.5))
    # Equal weights cancel the move; limits 0.5 and 1.5 add to 1 at a half each.
    assert row_weights(columns_of(rows), (0, 1)) == ((0, 0.5), (1, 0.5))


def test_rows_that_pull_the_same_way_have_no_weights() -> None:
    assert row_weights(columns_of((row((1.0,), 0.5), row((2.0,), 1.5))), (0, 1)) is None


def test_a_single_row_that_moves_can_take_off_rules_nothing() -> None:
    assert row_weights(columns_of((row((1.0,), 0.5),)), (0,)) is None


def test_rows_with_more_than_one_answer_have_none() -> None:
    rows = (row((1.0,), 1.0), row((-1.0,), 1.0), row((-1.0,), 1.0))
    assert row_weights(columns_of(rows), (0, 1, 2)) is None


def test_the_weights_of_a_frames_rows_cancel_its_moves_and_add_its_limits_to_one() -> None:
    rows = frame_rows(Set().frame(), FitLimits(gap_mm=0.5))
    # Each corner's heel not wider than the gap, each toe not overlapping: the angle sum.
    chosen = tuple(i for joint in range(4) for i in (8 * joint, 8 * joint + 3))
    weights = row_weights(columns_of(rows), chosen)
    assert weights is not None
    assert [weight for _, weight in weights] == pytest.approx([0.5] * 8)
    moves = sum(weight * np.array(rows[i].moves) for i, weight in weights)
    assert moves == pytest.approx(np.zeros(12), abs=1e-9)
    assert sum(weight * rows[i].limit_mm for i, weight in weights) == pytest.approx(1.0)


def test_a_line_adds_up_the_errors_of_its_rows() -> None:
    rows = (row((1.0,), 1.0, (1.0, 0.0)), row((-1.0,), 1.0, (2.0, -4.0)))
    assert line_of(rows, ((0, 0.5), (1, 0.25))) == (1.0, -1.0)

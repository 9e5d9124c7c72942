import math

import numpy as np
import pytest

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import SLOTS, FitLimits, frame_rows
from longpoint.forecast.fitup.mirrored_sets import images, tightness, turned
from longpoint.forecast.fitup.respect import Respect, rows_of
from longpoint.forecast.fitup.weighing import columns_of, row_weights
from longpoint.solvers.highs import HighsSolver
from tests.fit_up_draws import Set, Spreads, drawn_errors

LIMITS = FitLimits(gap_mm=0.5)


@pytest.mark.parametrize("is_door", [False, True])
@pytest.mark.parametrize("respect", Respect)
def test_what_rules_an_upright_frame_rules_its_mirror_images_with_the_same_weights(
    respect: Respect, is_door: bool
) -> None:
    frame = Set(is_door=is_door).frame()
    rows = rows_of(frame_rows(frame, LIMITS), respect)
    solver = HighsSolver()
    count = 0
    for errors in drawn_errors(frame, Spreads(saw_bias_deg=0.1), 12, np.random.default_rng(5)):
        fit = best_fit_up(rows, tuple(errors), solver)
        chosen = tuple(i for i, weight in enumerate(fit.weights) if weight > 1e-9)
        if not chosen:
            continue
        own = sorted(weight for weight in fit.weights if weight > 1e-9)
        for image in images(chosen, is_closed=not is_door, respect=respect):
            weights = row_weights(columns_of(rows), image)
            assert weights is not None
            assert sorted(weight for _, weight in weights) == pytest.approx(own, abs=1e-6)
            count += 1
    assert count > 10


def test_a_set_is_among_its_own_images_and_an_image_has_the_same_images() -> None:
    chosen = (0, 3, 33, 36, 42)
    found = images(chosen, is_closed=True, respect=Respect.IN_PLANE)
    assert found[0] == chosen
    assert len(found) == 4
    for image in found:
        assert set(images(image, is_closed=True, respect=Respect.IN_PLANE)) == set(found)


def test_a_set_that_is_its_own_mirror_image_comes_once() -> None:
    # Every heel not too wide, every toe not under nought.
    chosen = tuple(sorted(i for joint in range(4) for i in (8 * joint, 8 * joint + 3)))
    assert images(chosen, is_closed=True, respect=Respect.GAPS) == (chosen,)


def test_tightness_is_the_least_quirk_room_per_gap() -> None:
    frame = Set(room_in_mm=0.8, room_out_mm=2.0).frame()
    rows = frame_rows(frame, LIMITS)
    assert tightness(rows) == pytest.approx(1.6)
    assert tightness(rows_of(rows, Respect.GAPS)) == math.inf


@pytest.mark.parametrize("respect", Respect)
def test_what_rules_a_wide_frame_rules_the_tall_one_after_a_quarter_turn(respect: Respect) -> None:
    wide = Set(width_mm=1500.0, height_mm=700.0)
    tall = Set(width_mm=700.0, height_mm=1500.0)
    rows, tall_rows = (rows_of(frame_rows(s.frame(), LIMITS), respect) for s in (wide, tall))
    solver = HighsSolver()
    count = 0
    errors = drawn_errors(wide.frame(), Spreads(saw_bias_deg=0.1), 10, np.random.default_rng(5))
    for one in errors:
        # The same errors on the next side each.
        fit = best_fit_up(rows, tuple(one), solver)
        again = best_fit_up(tall_rows, tuple(np.roll(one, SLOTS)), solver)
        assert again.ratio == pytest.approx(fit.ratio, abs=1e-9)
        chosen = tuple(i for i, weight in enumerate(fit.weights) if weight > 1e-9)
        if not chosen:
            continue
        weights = row_weights(columns_of(tall_rows), turned(chosen, respect))
        assert weights is not None
        assert sorted(w for _, w in weights) == pytest.approx(
            sorted(w for w in fit.weights if w > 1e-9), abs=1e-6
        )
        count += 1
    assert count > 3

"""The generator of the known sets of rows, run in miniature."""

import math

import pytest

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import FitLimits, frame_rows
from longpoint.forecast.fitup.known_sets import letters_of
from longpoint.forecast.fitup.lines import Respect
from longpoint.forecast.fitup.mirrored_sets import images
from longpoint.forecast.fitup.respect import rows_of
from longpoint.forecast.fitup.weighing import columns_of, row_weights
from longpoint.solvers.highs import HighsSolver
from tests.fit_up_draws import Set
from tests.frame_errors import saw_scale
from tests.generators.learn_fit_up_sets import Family, learned, module_text

EVERY_ROOM = (0.0, math.inf)


@pytest.mark.parametrize("is_closed", [True, False])
def test_sets_learned_of_two_frames_can_be_weighed_and_spelt(is_closed: bool) -> None:
    family = Family(is_closed, Respect.GAPS, EVERY_ROOM, frames=2, keep=6)
    found = learned(family, seed=1, draws=8)
    assert 0 < len(found) <= 6
    frame = Set(is_door=not is_closed).frame()
    rows = rows_of(frame_rows(frame, FitLimits(gap_mm=0.5)), Respect.GAPS)
    for chosen in found:
        with_mirrors = images(chosen, is_closed=is_closed, respect=Respect.GAPS)
        assert any(row_weights(columns_of(rows), image) for image in with_mirrors)
    text = module_text([(family, found)])
    compile(text, "sets", "exec")
    assert all(letters_of(chosen) in text for chosen in found)


def test_eight_sets_of_gaps_nearly_tell_what_a_saw_scale_does() -> None:
    # The exact ratio: 2 sqrt(2) x 70 x 0.1 degree against 0.5. A list can only be below it.
    found = learned(Family(True, Respect.GAPS, EVERY_ROOM, frames=3, keep=8), seed=1, draws=25)
    frame = Set().frame()
    rows = rows_of(frame_rows(frame, FitLimits(gap_mm=0.5)), Respect.GAPS)
    errors = saw_scale(frame, 0.1)
    exact = best_fit_up(rows, errors, HighsSolver()).ratio
    off = [math.fsum(a * e for a, e in zip(row.errors, errors, strict=True)) for row in rows]
    ratios = [
        math.fsum(weight * off[i] for i, weight in weights)
        for chosen in found
        for image in images(chosen, is_closed=True, respect=Respect.GAPS)
        if (weights := row_weights(columns_of(rows), image))
    ]
    assert 0.9 * exact < max(ratios) < exact + 1e-6
    assert exact == pytest.approx(0.6911, abs=1e-3)

"""Lists of lines against direct linear programmes, over settings drawn at random."""

from dataclasses import dataclass

import numpy as np
import pytest

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import frame_rows
from longpoint.forecast.fitup.lines import Respect, fit_lines, missing_lines, ratio_by
from longpoint.forecast.fitup.mirrored_sets import tightness
from longpoint.forecast.fitup.respect import rows_of
from longpoint.solvers.highs import HighsSolver
from tests.fit_up_draws import Floats, drawn_errors, drawn_limits, drawn_sets, drawn_spreads

ROOMY = 1.9
"""Room of the quirk against the gap, from which a list is held to a hundredth."""
MISJUDGED, TIGHT_MISJUDGED = 0.005, 0.015
"""Below that very many sets of rows take turns; measured, and on the hopeful side only."""
WITHIN, WORST = 0.01, 0.07
"""Of the chance of a fit: held by four settings in five, and by each."""


@dataclass(frozen=True)
class Compared:
    """Ratios of the draws of one setting, by the list and exactly."""

    is_roomy: bool
    by_list: Floats
    exact: Floats

    def chance_off(self) -> float:
        return float((self.by_list <= 1.0).mean() - (self.exact <= 1.0).mean())

    def misjudged(self) -> int:
        return int(((self.by_list <= 1.0) != (self.exact <= 1.0)).sum())


def compared(
    respect: Respect, *, is_door: bool, settings: int, draws: int, seed: int
) -> list[Compared]:
    rng = np.random.default_rng(seed)
    solver = HighsSolver()
    found = []
    for chosen in drawn_sets(settings, rng, is_door=is_door):
        frame, limits = chosen.frame(), drawn_limits(rng)
        rows = rows_of(frame_rows(frame, limits), respect)
        errors = drawn_errors(frame, drawn_spreads(rng), draws, rng)
        lines = np.array(fit_lines(frame, limits, respect))
        exact = [best_fit_up(rows, tuple(one), solver).ratio for one in errors]
        by_list = np.maximum((errors @ lines.T).max(axis=1), 0.0)
        is_roomy = is_door or respect is not Respect.IN_PLANE or tightness(rows) >= ROOMY
        found.append(Compared(is_roomy=is_roomy, by_list=by_list, exact=np.array(exact)))
    return found


def assert_near(found: list[Compared], *, misjudged: float) -> None:
    draws = sum(len(one.exact) for one in found)
    for one in found:
        # A list can only lack lines, so it is never above.
        assert (one.by_list <= one.exact + 1e-6).all()
        assert 0.0 <= one.chance_off() <= WORST
    assert sum(one.misjudged() for one in found) <= misjudged * draws


@pytest.mark.parametrize("respect", Respect)
@pytest.mark.parametrize("is_door", [False, True])
def test_few_draws_are_misjudged(respect: Respect, is_door: bool) -> None:
    found = compared(respect, is_door=is_door, settings=8, draws=80, seed=2)
    roomy = [one for one in found if one.is_roomy]
    assert len(roomy) > 3
    assert_near(roomy, misjudged=MISJUDGED)
    assert_near([one for one in found if not one.is_roomy], misjudged=TIGHT_MISJUDGED)


@pytest.mark.long
@pytest.mark.parametrize("respect", Respect)
@pytest.mark.parametrize("is_door", [False, True])
def test_chances_in_forty_settings(respect: Respect, is_door: bool) -> None:
    found = compared(respect, is_door=is_door, settings=40, draws=1000, seed=31)
    roomy = [one for one in found if one.is_roomy]
    tight = [one for one in found if not one.is_roomy]
    assert_near(roomy, misjudged=MISJUDGED)
    assert_near(tight, misjudged=TIGHT_MISJUDGED)
    # Windows in plane: 0.84 as measured; the rest need exact programmes where a fit is near.
    assert np.mean([one.chance_off() <= WITHIN for one in roomy]) >= 0.8
    assert not is_door or all(one.chance_off() <= WITHIN for one in found)


@pytest.mark.long
@pytest.mark.parametrize("respect", Respect)
def test_ratios_by_a_list_learned_in_full(respect: Respect) -> None:
    rng = np.random.default_rng(7)
    solver = HighsSolver()
    for chosen in drawn_sets(4, rng, is_door=False):
        frame, limits = chosen.frame(), drawn_limits(rng)
        rows = rows_of(frame_rows(frame, limits), respect)
        lines = fit_lines(frame, limits, respect)
        errors = drawn_errors(frame, drawn_spreads(rng), 300, rng)
        near = [tuple(0.95 * one / max(ratio_by(lines, one), 1e-9)) for one in errors]
        lines += missing_lines(frame, limits, respect, lines, near, solver)
        for one in errors:
            exact = best_fit_up(rows, tuple(one), solver).ratio
            assert ratio_by(lines, one) == pytest.approx(exact, rel=1e-4, abs=1e-4)

import math
from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity, ShapeError
from longpoint.shape.arch_fit import best_circle, best_rise_mm
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.opening_fit import fit_openings, mirrored
from longpoint.survey.openings import Arch
from tests.drawn_openings import house_of, opening_of

HALL = opening_of("W10", top=914, bottom=915, left=1012, right=1013)

READ_OFFSETS = (
    (0.0, 0.0),
    (114.0, 153.0),
    (228.0, 232.0),
    (343.0, 273.0),
    (457.0, 286.0),
    (571.0, 273.0),
    (686.0, 232.0),
    (800.0, 153.0),
    (914.0, 0.0),
)
"""The cottage's arch, every eighth of its width."""


def ellipse(rise_mm: float) -> tuple[tuple[float, float], ...]:
    turns = (math.pi * k / 8 for k in range(8, -1, -1))
    return tuple((457.0 + 457.0 * math.cos(t), rise_mm * math.sin(t)) for t in turns)


def fit(arch: Arch) -> tuple[FittedOpening, dict[str, Finding]]:
    fitted, findings = fit_openings(house_of(replace(HALL, arch=arch)))
    return fitted[0], {f.code: f for f in findings if f.code.startswith("arch")}


def test_a_straight_head_has_no_rise() -> None:
    (fitted,), _ = fit_openings(house_of(HALL))
    assert fitted.rise_mm is None


def test_a_rise_alone_is_taken_as_read() -> None:
    assert best_rise_mm(Arch(rise_mm=286.0), 914.0, 1012.5) == 286.0


def test_rise_and_crown_are_weighed_against_each_other() -> None:
    arch = Arch(rise_mm=285.0, crown_mm=1300.0)
    rise_mm = best_rise_mm(arch, 914.0, 1012.0)
    # Weights 1 and 1 / 1.44 of 285 and 288.
    assert rise_mm == pytest.approx((285.0 + 288.0 / 1.44) / (1.0 + 1.0 / 1.44), abs=1e-4)


def test_the_offsets_of_the_cottage_lie_on_the_circle_of_its_rise() -> None:
    x_mm, y_mm, radius_mm, worst_mm = best_circle(READ_OFFSETS)
    assert radius_mm == pytest.approx(508.1, abs=0.7)
    assert y_mm + radius_mm == pytest.approx(286.0, abs=0.5)
    assert x_mm == pytest.approx(457.0, abs=0.5)
    assert worst_mm < 1.0
    fitted, said = fit(Arch(rise_mm=286.0, crown_mm=1298.0, offsets=READ_OFFSETS))
    assert said == {}
    assert fitted.rise_mm == pytest.approx(286.0, abs=0.5)


def test_a_rise_with_swapped_digits_is_named_by_the_offsets() -> None:
    fitted, said = fit(Arch(rise_mm=268.0, offsets=READ_OFFSETS))
    assert said["arch-offsets"].severity is Severity.STOP
    assert "286" in said["arch-offsets"].do
    assert "digits swapped" in said["arch-offsets"].do
    assert fitted.rise_mm == 268.0


def test_a_curve_that_is_no_circle_is_held() -> None:
    _, said = fit(Arch(rise_mm=286.0, offsets=ellipse(286.0)))
    assert said["arch-not-a-circle"].severity is Severity.STOP
    assert "template" in said["arch-not-a-circle"].do


def test_points_on_a_straight_line_are_no_circle_either() -> None:
    line = tuple((100.0 * k, 0.0) for k in range(9))
    try:
        assert best_circle(line)[2] > 1e5
    except ShapeError:
        _, said = fit(Arch(rise_mm=286.0, offsets=line))
        assert "arch-not-a-circle" in said


def test_too_few_points_tell_nothing_of_the_curve_but_weigh_with_the_rise() -> None:
    fitted, said = fit(Arch(rise_mm=286.0, offsets=((457.0, 288.0),)))
    assert said == {}
    assert fitted.rise_mm is not None
    assert 286.0 < fitted.rise_mm < 288.0


def test_a_crown_that_contradicts_the_rise_is_left_out_of_it() -> None:
    fitted, _ = fit(Arch(rise_mm=268.0, crown_mm=1298.0))
    assert fitted.rise_mm == 268.0


def test_the_other_face_has_the_same_rise() -> None:
    fitted, _ = fit(Arch(rise_mm=286.0))
    assert mirrored(fitted).rise_mm == 286.0

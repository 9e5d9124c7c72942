import pytest

from longpoint.errors import Finding, Severity
from longpoint.shape.opening_fit import fit_openings, fit_outlines
from tests.house_documents import the_house

GABLE = {"sides": [900, 1050, 636.5, 636.5, 1050], "angles": [90, 135, 90, 135, 90]}
"""A square with a gable, read whole."""


def said(**shape: object) -> dict[str, Finding]:
    house = the_house(openings=[{"mark": "W1", "kind": "window", "trim": "all-round", **shape}])
    four, of_four = fit_openings(house)
    other, of_other = fit_outlines(house)
    assert len(four) + len(other) <= 1
    return {finding.code: finding for finding in (*of_four, *of_other)}


def test_readings_that_close_are_not_spoken_of() -> None:
    assert said(**GABLE) == {}


def test_corners_are_checked_by_nothing_and_the_sides_to_tape_are_told() -> None:
    found = said(corners=[[0, 0], [900, 0], [900, 1400], [0, 1050]])
    assert set(found) == {"nothing-checks"}
    assert found["nothing-checks"].severity is Severity.NOTE
    assert "900, 1400, 965.5, 1050 mm" in found["nothing-checks"].do


def test_just_enough_readings_are_checked_by_nothing() -> None:
    found = said(sides=GABLE["sides"], angles=[90, 135])
    assert found["nothing-checks"].severity is Severity.NOTE


def test_a_side_that_is_wrong_is_named_with_what_would_fit() -> None:
    across = [{"from": 1, "to": 3, "length": 1383}]
    found = said(**{**GABLE, "sides": [900, 1150, 636.5, 636.5, 1050]}, across=across)
    assert found["misclosure"].severity is Severity.STOP
    assert "Most likely side 2-3 1150 should be 1050" in found["misclosure"].wrong
    assert "started at the 100 mark" in found["misclosure"].wrong


def test_either_of_two_legs_may_be_the_wrong_one_and_both_are_named() -> None:
    wrong = said(**{**GABLE, "sides": [900, 1150, 636.5, 636.5, 1050]})["misclosure"].wrong
    assert "side 2-3 1150 should be 1050" in wrong
    assert "side 5-1 1050 should be 1150" in wrong


def test_a_corner_that_is_wrong_is_named_with_the_sum_of_all_corners() -> None:
    found = said(**{**GABLE, "angles": [90, 153, 90, 135, 90]})
    assert "558.0 degrees, where 540 go round" in found["misclosure"].wrong
    assert "corner 3 153.0 should be 135" in found["misclosure"].wrong


def test_an_error_that_can_not_be_located_names_several() -> None:
    sides = [500, 500, 500, 500]
    across = [{"from": 1, "to": 3, "length": 707}, {"from": 2, "to": 4, "length": 717}]
    found = said(sides=sides, across=across)
    assert "misclosure" in found
    assert "would explain it" in found["misclosure"].wrong
    assert "Most likely" not in found["misclosure"].wrong


@pytest.mark.parametrize(
    ("angles", "number"), [([90, 90, 135, 90, 135], 1), ([135, 90, 135, 90, 90], 3)]
)
def test_a_list_of_corners_begun_one_early_or_late_is_recognised(
    angles: list[float], number: int
) -> None:
    found = said(**{**GABLE, "angles": angles})
    assert f"beginning at corner {number}" in found["misclosure"].wrong


def test_readings_that_close_poorly_are_a_warning() -> None:
    found = said(**{**GABLE, "angles": [90, 135, 90, 135, 91.2]})
    assert found["closes-poorly"].severity is Severity.WARNING


def test_a_corner_that_is_hardly_fixed_is_a_warning() -> None:
    found = said(sides=[500] * 6, angles=[120, 120, 120])
    assert found["outline-loose"].severity is Severity.WARNING
    assert "Corner 6" in found["outline-loose"].read


def test_a_shape_that_is_none_has_no_shape() -> None:
    assert "no-shape" in said(corners=[[0, 0], [450, 400], [900, 0], [900, 900], [0, 900]])
    assert said(sides=[900, 300, 300])["no-shape"].severity is Severity.STOP


def test_four_sides_and_other_counts_are_told_apart() -> None:
    document = [
        {"mark": "W1", "kind": "window", "trim": "all-round", **GABLE},
        {"mark": "W2", "kind": "window", "corners": [[0, 0], [900, 0], [900, 1400], [0, 1050]]},
    ]
    house = the_house(openings=document)
    assert [fitted.mark for fitted in fit_openings(house)[0]] == ["W2"]
    assert [fitted.mark for fitted in fit_outlines(house)[0]] == ["W1"]

"""A series of units whose file has no keys of ours: the marks alone tell what was made alike."""

import pytest

from longpoint.errors import Finding, Severity
from longpoint.pipeline import plan_house
from longpoint.survey.house_file import read_house
from tests.scenarios.houses import document, planned

FORMS = ("{unit}-{part}", "U{unit}-{part}", "K{unit}/{part}", "Unit {unit} {part}", "{unit}.{part}")


def plainly(form: str, *, rooms: bool) -> tuple[Finding, ...]:
    """Return what is said of the series without batch and nominal, its marks written otherwise."""
    series = document("series-k")
    for opening in series["openings"]:
        unit, part = opening["mark"].split("-")
        opening["mark"] = form.format(unit=unit, part=part)
        for key in ("batch", "nominal", *(() if rooms else ("room",))):
            opening.pop(key, None)
    return plan_house(read_house(series)).findings


@pytest.mark.parametrize("rooms", [True, False])
def test_without_batch_and_nominal_the_same_is_said_and_nothing_more(rooms: bool) -> None:
    found = {(f.place, f.code, f.severity) for f in plainly(FORMS[0], rooms=rooms)}
    told = {(f.place, f.code, f.severity) for f in planned("series-k").findings}
    assert found - told == {("Series K", "batch-inferred", Severity.NOTE)}
    assert told - found == set()


@pytest.mark.parametrize("form", FORMS)
def test_however_the_marks_are_written_the_faults_are_named(form: str) -> None:
    def mark(unit: int, part: str) -> str:
        return form.format(unit=unit, part=part)

    findings = plainly(form, rooms=True)
    loud = {(f.place, f.code) for f in findings if f.severity is not Severity.NOTE}
    assert loud == {
        ("Unit 4", "tape-shift"),
        (mark(7, "W1"), "rows-swapped"),
        (mark(7, "W3"), "rows-swapped"),
        ("Series K", "lean-step"),
        (mark(9, "W2"), "misclosure"),
        (mark(9, "W2"), "off-siblings"),
        (mark(12, "D2"), "misclosure"),
        (mark(12, "D2"), "off-siblings"),
    }
    (lean,) = (f for f in findings if f.code == "lean-step")
    assert "From Unit 10 on" in lean.read

"""A cornice from the house file: what its sheet says."""

from tests.house_documents import wall
from tests.unit.catalogue.cornice_houses import planned


def test_what_a_spring_is_measured_from_is_said_when_it_was_assumed() -> None:
    silent, said = planned(), planned(spring_from="wall")
    assert [note.code for note in silent.findings] == ["spring-assumed"]
    assert said.findings == ()
    assert "the house file doesn't say" in silent.trims[0].plan.lines[0]
    assert said.trims[0].plan.lines[0].endswith("measured from the wall.")


def test_another_width_by_drop_and_projection_is_warned_of() -> None:
    codes = [f.code for f in planned(spring=None, drop=80, projection=62.5).findings]
    assert codes == ["cornice-width"]


def test_a_corner_that_was_not_read_is_said() -> None:
    walls = (wall("N", length=2000), wall("E", length=1500))
    plan = planned(walls, closed=False, spring_from="wall")
    fitted = {finding.code for finding in plan.findings}
    assert fitted <= {"run-corner-assumed"}


def test_the_sheet_says_the_conventions_and_the_order() -> None:
    lines = planned().trims[0].plan.lines
    text = " ".join(lines)
    for words in (
        "Spring 38.0 degrees from the wall, 52.0 from the ceiling",
        "71 below the ceiling",
        "the bottom edge of the moulding's back",
        "ceiling edge on the table",
        "Put them up in this order: C1-N, C1-S, C1-E, C1-W.",
    ):
        assert words in text
    mitred = " ".join(planned(corners="mitre").trims[0].plan.lines)
    assert "coped" not in mitred

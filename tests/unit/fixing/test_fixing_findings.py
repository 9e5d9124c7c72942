from longpoint.errors import Finding, Severity
from longpoint.fixing.fixing_findings import nail_findings
from longpoint.fixing.nailing import nail_house
from longpoint.pieces.piece import Role
from tests.house_documents import the_house, window
from tests.unit.fixing.nailed import house, piece


def said(*nails: str, **fixing: object) -> dict[str, Finding]:
    told = house(nails=list(nails), **fixing)
    findings = nail_findings(told, nail_house(told, [piece()]))
    return {finding.code: finding for finding in findings}


def test_a_crew_with_one_nail_is_told_where_it_comes_out_and_where_it_falls_short() -> None:
    found = said("16 x 50")
    assert set(found) == {"nail-too-long", "nail-too-short"}
    assert "reveal's face" in found["nail-too-long"].wrong
    assert "18 gauge x 30 mm" in found["nail-too-long"].do
    assert "5.5 mm too short" in found["nail-too-short"].wrong
    assert "57 mm" in found["nail-too-short"].do
    assert {finding.severity for finding in found.values()} == {Severity.WARNING}


def test_a_crew_that_has_what_it_needs_is_told_nothing() -> None:
    assert said("18 x 30", "16 x 57") == {}


def test_a_crew_that_tells_of_no_nails_is_told_nothing() -> None:
    assert said() == {}


def test_where_no_nail_does_glue_is_named() -> None:
    found = said("16 x 64", lining=10)
    assert "Glue" in found["no-nail"].do


def test_a_nail_that_would_pass_the_stud_says_so() -> None:
    found = said("18 x 30", "16 x 100", stud_depth=40)
    assert "behind the stud" in found["nail-too-long"].wrong


def test_a_stop_s_nail_too_long_comes_out_behind() -> None:
    told = house(nails=["16 x 100"])
    stop = piece(Role.STOP, "DS1", opening=None, trim="DS1", width_mm=32.0, thickness_mm=12.0)
    (finding,) = nail_findings(told, nail_house(told, [stop]))
    assert "come out behind" in finding.wrong


def test_a_gauge_not_held_and_a_box_off_its_gauge_are_noted() -> None:
    found = said("18 x 30", "16 x 57", "19 x 40", "16 x 57 x 2.2")
    assert {code: f.severity for code, f in found.items()} == {
        "nail-gauge-unknown": Severity.NOTE,
        "nail-off-gauge": Severity.NOTE,
    }
    assert "2.20 mm" in found["nail-off-gauge"].read


def test_in_inches_the_box_is_told_in_thousandths() -> None:
    inches = dict.fromkeys(("top", "bottom"), 46.75) | dict.fromkeys(("left", "right"), 18.25)
    told = the_house(
        units="in",
        openings=[window(**inches, rising=None, falling=None)],
        fixing={"nails": ["16 x 2 1/2 x 0.08"]},
    )
    (finding, *_) = nail_findings(told, nail_house(told, []))
    assert "0.080 in" in finding.read
    assert "2 1/2 in" in finding.read


def test_a_brad_is_not_named_at_a_stud_where_the_crew_has_thicker_nails() -> None:
    told = house(nails=["16 x 50", "18 x 30"])
    (finding,) = nail_findings(told, nail_house(told, [piece()]))
    assert "16 gauge x 50 mm" in finding.read
    brads = house(nails=["18 x 30"])
    (finding,) = nail_findings(brads, nail_house(brads, [piece()]))
    assert "18 gauge x 30 mm" in finding.read


def test_one_nail_on_such_lines_of_two_sections_is_warned_of_once() -> None:
    told = house(nails=["16 x 50", "16 x 57", "18 x 30"])
    pieces = [piece(), piece(Role.RIGHT_LEG, "W1-right", profile="OTHER")]
    nailing = nail_house(told, pieces)
    assert len(nailing.sections) == 2
    brief = house(nails=["16 x 50"])
    found = nail_findings(brief, nail_house(brief, pieces))
    assert [finding.code for finding in found] == ["nail-too-long", "nail-too-short"]
    for finding in found:
        assert "of sections A (OG57) and B (OTHER)." in finding.read

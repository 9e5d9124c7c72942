import pytest

from longpoint.errors import Severity, SurveyError
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, nearest, quoted, shown


def test_a_trouble_is_a_survey_error_that_becomes_a_finding() -> None:
    trouble = HouseFileTrouble("Read.", "Wrong.", "Do.", code="x-y")

    finding = trouble.finding("W1")

    assert isinstance(trouble, SurveyError)
    assert (finding.code, finding.place, finding.severity) == ("x-y", "W1", Severity.STOP)
    assert (finding.read, finding.wrong, finding.do) == ("Read.", "Wrong.", "Do.")


@pytest.mark.parametrize(
    ("written", "as_shown"),
    [
        (None, "null"),
        (True, "true"),
        (1187, "1187"),
        (10**40, "a number of over 15 digits"),
        (0.5, "0.5"),
        (1e300, "1.000e+300"),
        ("11x7", '"11x7"'),
        ("a\nb\x00", '"a?b?"'),
        ("z" * 500, '"' + "z" * 37 + '..."'),
        ([1, 2], "a list of 2"),
        ({"x": 1}, "a table"),
        (object(), "a date or another kind of value"),
    ],
)
def test_a_value_is_shown_short_and_printable(written: object, as_shown: str) -> None:
    assert shown(written) == as_shown


def test_the_nearest_name_is_found_whatever_its_case() -> None:
    assert nearest("RISNG", ["top", "rising"]) == "rising"
    assert nearest("zzz", ["top", "rising"]) == ""
    assert nearest("x" * 10_000, ["top"]) == ""


def test_without_a_near_name_the_known_ones_are_listed() -> None:
    assert instead("qqq", ["T1", "T2"]) == 'Known here: "T1", "T2".'
    assert instead("qqq", []) == "None is described yet."
    assert instead("qqq", [f"n{i}" for i in range(20)]).endswith("and others.")


def test_quoted_text_shows_what_cannot_be_printed_as_a_question_mark() -> None:
    assert quoted("\u202eW1") == '"?W1"'

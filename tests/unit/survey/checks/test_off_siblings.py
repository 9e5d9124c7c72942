from longpoint.errors import Finding, Severity
from longpoint.survey.checks.off_siblings import check_off_siblings
from tests.drawn_openings import house_of, opening_of

HEIGHTS = (2040.5, 2041.5, 2040.5, 2041.0)


def said(left: float, batch: str = "D2") -> tuple[Finding, ...]:
    others = (
        opening_of(f"{i}-D2", left=h, right=2041, top=722, bottom=722, batch=batch)
        for i, h in enumerate(HEIGHTS)
    )
    odd = opening_of("12-D2", left=left, right=2042, top=722, bottom=725, batch=batch)
    return check_off_siblings(house_of(*others, odd))


def test_a_reading_off_its_siblings_is_held_with_the_slip_that_mends_it() -> None:
    (found,) = said(2030.5)
    assert (found.place, found.severity) == ("12-D2", Severity.STOP)
    assert "2040.5 mm (one centimetre mark miscounted)" in found.do


def test_a_reading_that_no_slip_explains_is_a_warning() -> None:
    (found,) = said(2056.0)
    assert found.severity is Severity.WARNING


def test_what_openings_made_alike_spread_anyway_is_silent() -> None:
    for left in (2033.0, 2048.0):
        assert not said(left)


def test_openings_that_only_look_alike_raise_no_alarm() -> None:
    assert not said(2030.5, batch="")


def test_two_siblings_are_too_few_to_judge() -> None:
    pair = (opening_of("1", left=600, batch="B"), opening_of("2", left=650, batch="B"))
    assert not check_off_siblings(house_of(*pair))

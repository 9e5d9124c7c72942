from longpoint.errors import Finding, Severity
from longpoint.survey.checks.repeats import check_repeats
from longpoint.survey.instruments import Tape
from tests.drawn_openings import house_of, opening_of


def said(*read: float, resolution_mm: float = 1.0) -> tuple[Finding, ...]:
    tape = Tape(name="T1", resolution_mm=resolution_mm)
    return check_repeats(house_of(opening_of("W1", top=read, bottom=900), tape=tape))


def test_readings_that_differ_by_a_graduation_or_two_agree() -> None:
    assert not said(1187, 1186)
    assert not said(1187, 1185, 1186)


def test_three_apart_is_a_warning_with_both_figures() -> None:
    (found,) = said(1187, 1184)
    assert found.severity is Severity.WARNING
    assert "1187 and 1184" in found.read


def test_more_than_ten_apart_is_a_stop() -> None:
    (found,) = said(1187, 1198)
    assert found.severity is Severity.STOP


def test_the_slip_that_makes_them_agree_is_named_but_not_whose_it_is() -> None:
    (found,) = said(1187, 1179)
    assert found.wrong.endswith("leaves; perhaps by digits swapped.")
    assert found.do == "Read the top a third time and leave the wrong figure out."


def test_a_place_read_once_has_nothing_to_disagree_with() -> None:
    assert not said(1187)

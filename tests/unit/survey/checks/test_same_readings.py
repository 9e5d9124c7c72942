from dataclasses import replace

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.same_readings import check_same_readings
from longpoint.survey.openings import Nominal, Opening
from tests.drawn_openings import house_of, opening_of, readings_of

SIX = {"top": 1199, "bottom": 1196, "left": 906, "right": 901, "rising": 1506, "falling": 1494}
FOUR = {name: SIX[name] for name in ("top", "bottom", "left", "right")}


def said(*openings: Opening) -> tuple[Finding, ...]:
    return check_same_readings(house_of(*openings))


def test_six_equal_readings_hold_the_later_of_the_two() -> None:
    (found,) = said(opening_of("W4", readings_of(**SIX)), opening_of("W4b", readings_of(**SIX)))
    assert (found.place, found.severity) == ("W4b", Severity.STOP)
    assert "W4" in found.read
    assert "not counted" in found.do


def test_a_third_copy_is_held_as_well() -> None:
    found = said(*(opening_of(mark, readings_of(**SIX)) for mark in ("W4", "W5", "W6")))
    assert [f.place for f in found] == ["W5", "W6"]


def test_units_that_the_marks_tell_may_agree_by_chance() -> None:
    others = [opening_of(f"{u}-W1", readings_of(**{**SIX, "left": 906 + u})) for u in range(1, 6)]
    twins = [opening_of(mark, readings_of(**SIX)) for mark in ("6-W1", "7-W1")]
    (found,) = said(*others, *twins)
    assert (found.place, found.severity) == ("7-W1", Severity.NOTE)


def test_one_reading_that_differs_makes_them_two() -> None:
    assert not said(
        opening_of("W4", readings_of(**SIX)), opening_of("W5", readings_of(**{**SIX, "left": 905}))
    )


def test_four_equal_readings_may_be_chance_and_are_a_warning() -> None:
    (found,) = said(opening_of("D1", readings_of(**FOUR)), opening_of("D2", readings_of(**FOUR)))
    assert found.severity is Severity.WARNING


def test_three_equal_readings_are_no_sign() -> None:
    three = {name: SIX[name] for name in ("top", "left", "right")}
    assert not said(opening_of("D1", readings_of(**three)), opening_of("D2", readings_of(**three)))


def test_openings_made_alike_may_agree_in_six_and_it_is_a_note() -> None:
    nominal = Nominal(width_mm=1194.0, height_mm=904.0)
    pair = (opening_of("1-W1", readings_of(**SIX)), opening_of("2-W1", readings_of(**SIX)))
    for alike in ({"batch": "W1"}, {"nominal": nominal}):
        (found,) = said(*(replace(o, **alike) for o in pair))
        assert found.severity is Severity.NOTE


def test_openings_made_alike_that_agree_in_four_are_nothing() -> None:
    assert not said(
        opening_of("1", readings_of(**FOUR), batch="B"),
        opening_of("2", readings_of(**FOUR), batch="B"),
    )

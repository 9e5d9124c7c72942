from dataclasses import replace

from longpoint.forecast.budget.records import BudgetLine, Cause, ErrorName, Standing
from longpoint.forecast.records import Verdict
from longpoint.quantities.length import Units
from longpoint.sheets.outlook_words import (
    chance_words,
    count_words,
    doubt_words,
    error_words,
    misfit_words,
    safe_line,
    size_words,
    standing_words,
    verdicts,
    worse_face,
)
from tests.unit.sheets.outlook_sample import ADVICE
from tests.unit.sheets.sample import FORECAST, OUTLOOK, PLAN

SCALE = BudgetLine(name=ErrorName.SAW_SCALE, cause=Cause.SAW, u=0.03, unit="deg", bias=-0.12)


def test_verdicts_stand_in_house_order_with_the_unread_last() -> None:
    assert list(verdicts(PLAN).items()) == [
        ("W1", Verdict.READ_FIRST),
        ("W2", Verdict.BATCH),
        ("W3", Verdict.HOLD),
        ("D1", Verdict.CUT_LONG),
        ("W4", Verdict.HOLD),
    ]


def test_a_hold_of_the_plan_outweighs_an_older_advice() -> None:
    held = replace(PLAN, held=PLAN.held | {"W2"})
    assert verdicts(held)["W2"] is Verdict.HOLD


def test_an_opening_neither_forecast_nor_held_has_no_verdict() -> None:
    assert set(verdicts(replace(PLAN, outlook=None))) == {"W3", "W4"}


def test_the_safe_openings_are_counted_among_all_that_were_written() -> None:
    assert safe_line(PLAN) == "1 of 5 openings can be cut as planned."


def test_the_worse_face_is_the_one_that_is_told() -> None:
    b = replace(FORECAST.faces[2], face="b")
    a = replace(b, face="a", chances=replace(b.chances, fits=0.5))
    two = replace(FORECAST, faces=(*FORECAST.faces[:2], b, a))
    assert worse_face(replace(PLAN, outlook=replace(OUTLOOK, forecast=two)), "D1") == a
    assert worse_face(PLAN, "W3") is None
    assert worse_face(replace(PLAN, outlook=None), "D1") is None
    assert count_words(two) == "4 faces"
    assert count_words(FORECAST) == "3 openings"


def test_no_figure_is_surer_than_99() -> None:
    assert chance_words(replace(ADVICE[1], chance=1.0)) == "99 in 100"
    assert chance_words(ADVICE[2]) == ""
    share = replace(FORECAST.faces[0].causes[0], share=1.0)
    assert doubt_words((share,)).replace("\N{NO-BREAK SPACE}", " ") == "bow of the reveal, 99 %"
    assert doubt_words(()) == ""


def test_few_misfits_are_never_called_none() -> None:
    assert [misfit_words(mean) for mean in (0.0, 0.09, 0.1, 12.94)] == [
        "under 0.1", "under 0.1", "0.1", "12.9",
    ]  # fmt: skip


def test_what_is_known_of_the_saw_stands_beside_its_doubt_in_either_unit() -> None:
    assert size_words(SCALE, Units.MM) == size_words(SCALE, Units.INCH) == "-0.12 and 0.03°"
    lie = replace(SCALE, unit="mm", u=0.254, bias=0.0)
    assert (size_words(lie, Units.MM), size_words(lie, Units.INCH)) == ("0.25 mm", "0.010 in")


def test_every_error_and_every_standing_has_words_of_its_own() -> None:
    assert len({error_words(name) for name in ErrorName}) == len(ErrorName)
    assert len({standing_words(standing) for standing in Standing}) == len(Standing)

from dataclasses import replace

import pytest

from longpoint.forecast.budget.records import Cause, ErrorBudget
from longpoint.forecast.records import (
    CauseShare,
    Chances,
    FaceForecast,
    HouseForecast,
    Step,
    Verdict,
)
from longpoint.forecast.verdicts import Advice, advise, in_hundred
from longpoint.forecast.worth import Worth
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests import house_documents

HOUSE = read_house(house_documents.house(openings=[house_documents.window()])).house


def advice_on(
    fits: float,
    *worths: Worth,
    cause: Cause = Cause.CUTS,
    share: float = 0.6,
    held: frozenset[str] = frozenset(),
    house: House = HOUSE,
    faces: tuple[float, ...] = (),
) -> Advice:
    forecast = HouseForecast(
        faces=tuple(
            FaceForecast(
                mark="W1",
                face=face,
                chances=Chances(
                    gaps=chance, quirk=0.99, fits=chance, faces=0.98, all=chance, first_order=chance
                ),
                causes=(CauseShare(cause=cause, share=share),),
            )
            for face, chance in zip("ab", faces or (fits,), strict=False)
        ),
        all_fit=fits,
        misfits_mean=1.0 - fits,
        misfits_p90=1,
        draws=1000,
        seed=1,
        budget=ErrorBudget(lines=()),
    )
    (advice,) = advise(house, forecast, {"W1": worths}, held)
    return advice


def worth(step: Step, before: float, after: float, minutes: float = 1.0) -> Worth:
    return Worth(
        step=step, minutes=minutes, before=before, after=after, saved_min=12.0 * (after - before)
    )


def test_a_likely_fit_is_cut_with_the_rest() -> None:
    advice = advice_on(0.93)
    assert advice.verdict is Verdict.BATCH
    assert "93 in 100" in advice.why


def test_the_threshold_is_the_crews_own() -> None:
    slow = replace(HOUSE, crew=replace(HOUSE.crew, batch_saves_min=3.0))
    assert advice_on(0.8).verdict is not Verdict.BATCH
    assert advice_on(0.8, house=slow).verdict is Verdict.BATCH


def test_a_doubtful_saw_is_proved_first() -> None:
    proof = worth(Step.PROOF, 0.7, 0.97, minutes=0.5)
    advice = advice_on(0.7, proof, cause=Cause.SAW, share=0.8)
    assert advice.verdict is Verdict.PROVE_SAW
    assert "80 %" in advice.why
    assert "97 in 100" in advice.why


def test_a_saw_that_a_proof_would_not_help_is_not_blamed() -> None:
    proof = worth(Step.PROOF, 0.7, 0.705)
    diagonals = worth(Step.DIAGONALS, 0.7, 0.95)
    advice = advice_on(0.7, proof, diagonals, cause=Cause.SAW, share=0.8)
    assert advice.verdict is Verdict.READ_FIRST


def test_the_reading_that_saves_most_per_minute_is_named_if_it_is_enough() -> None:
    repeat = worth(Step.REPEAT, 0.8, 0.85, minutes=0.2)
    diagonals = worth(Step.DIAGONALS, 0.8, 0.95)
    advice = advice_on(0.8, repeat, diagonals)
    assert advice.verdict is Verdict.READ_FIRST
    assert "read both diagonals" in advice.why
    assert "95 in 100" in advice.why


def test_where_no_reading_is_enough_the_head_is_cut_long() -> None:
    advice = advice_on(0.6, worth(Step.REPEAT, 0.6, 0.7))
    assert advice.verdict is Verdict.CUT_LONG
    assert "read the same again: 70 in 100" in advice.why


def test_a_held_opening_gets_no_chance() -> None:
    advice = advice_on(0.99, held=frozenset({"W1"}))
    assert advice.verdict is Verdict.HOLD
    assert advice.chance is None


def test_of_two_faces_the_worse_one_counts() -> None:
    advice = advice_on(0.0, faces=(0.97, 0.5))
    assert advice.chance == 0.5
    assert advice.verdict is Verdict.CUT_LONG


def test_the_other_way_of_setting_the_saw_is_told_when_it_does_what_is_wanted() -> None:
    advice = advice_on(0.86, worth(Step.LEAVE_AT_STOP, 0.86, 0.94, minutes=0.0))
    assert 'write mitres = "at-stop"' in advice.why
    little = advice_on(0.5, worth(Step.LEAVE_AT_STOP, 0.5, 0.53, minutes=0.0))
    assert "at-stop" not in little.why


def test_what_is_taken_for_granted_is_said() -> None:
    assert "taken for granted" in advice_on(0.95, cause=Cause.SHAPE, share=0.3).why
    assert "taken for granted" not in advice_on(0.95).why


@pytest.mark.parametrize("thousandths", range(0, 1001, 7))
def test_no_chance_is_told_above_99_or_rounded_up(thousandths: int) -> None:
    told = int(in_hundred(thousandths / 1000.0).removesuffix(" in 100"))
    assert told <= 99
    assert told <= thousandths / 10.0


def test_a_proof_that_does_it_alone_wins_though_the_saw_is_less_than_half_of_the_doubt() -> None:
    proof = worth(Step.PROOF, 0.8, 0.93, minutes=0.5)
    diagonals = worth(Step.DIAGONALS, 0.8, 0.92)
    advice = advice_on(0.8, proof, diagonals, cause=Cause.SAW, share=0.4)
    assert advice.verdict is Verdict.PROVE_SAW
    assert "93 in 100." in advice.why


def test_a_proof_that_saves_most_but_is_not_enough_says_what_then() -> None:
    proof = worth(Step.PROOF, 0.5, 0.8, minutes=0.5)
    advice = advice_on(0.5, proof, worth(Step.REPEAT, 0.5, 0.6), cause=Cause.SAW, share=0.4)
    assert advice.verdict is Verdict.PROVE_SAW
    assert "then plan again" in advice.why


def test_a_cheaper_reading_that_is_enough_stands_before_a_proof() -> None:
    proof = worth(Step.PROOF, 0.8, 0.93, minutes=3.0)
    diagonals = worth(Step.DIAGONALS, 0.8, 0.95)
    advice = advice_on(0.8, proof, diagonals, cause=Cause.SAW, share=0.4)
    assert advice.verdict is Verdict.READ_FIRST

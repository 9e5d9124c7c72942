import math

import pytest

from longpoint.trims.tolerances import (
    NOT_THE_LAW,
    TOLERANCES,
    Guide,
    Jurisdiction,
    Outcome,
    Standing,
    Subject,
    Tolerance,
    tolerances,
    verdict,
)

NSW = tolerances(Jurisdiction.NEW_SOUTH_WALES, "2017")
NHBC_2019 = tolerances(Jurisdiction.UNITED_KINGDOM, "2019")
NHBC_2020 = tolerances(Jurisdiction.UNITED_KINGDOM, "2020")


def test_what_is_only_remembered_is_left_out_unless_asked_for() -> None:
    for place in Jurisdiction:
        read = tolerances(place)
        assert all(t.standing is Standing.READ for t in read)
        assert set(read) < set(tolerances(place, remembered=True)) or all(
            t.standing is Standing.READ for t in TOLERANCES if t.guide.jurisdiction is place
        )
    assert tolerances(Jurisdiction.VICTORIA) == ()
    assert len(tolerances(Jurisdiction.VICTORIA, remembered=True)) == 2


def test_an_edition_gives_its_own_limits_and_no_edition_gives_all() -> None:
    assert {t.guide.edition for t in NHBC_2019} == {"2019"}
    every = tolerances(Jurisdiction.UNITED_KINGDOM)
    assert {t.guide.edition for t in every} == {"2014", "2019", "2020"}
    assert tolerances(Jurisdiction.UNITED_KINGDOM, "1066") == ()


def test_every_limit_carries_its_guide_and_edition_and_is_a_length() -> None:
    for t in TOLERANCES:
        assert t.guide.name in t.source
        assert t.guide.edition in t.source
        assert t.limit_mm is None or 0.0 <= t.limit_mm < 50.0
        assert t.months[0] < t.months[1]
        assert t.heights_mm[0] < t.heights_mm[1]


@pytest.mark.parametrize("month", [0.0, 0.5, 12.0, 12.1, 24.0, 60.0])
def test_one_guide_never_holds_two_limits_of_one_subject_at_one_time(month: float) -> None:
    for guide in {t.guide.name + t.guide.edition for t in TOLERANCES}:
        for subject in Subject:
            for height_mm in (2400.0, 2500.0, 2700.0, 3000.0, 5000.0):
                holding = [
                    t
                    for t in TOLERANCES
                    if t.guide.name + t.guide.edition == guide
                    and t.subject is subject
                    and t.holds(month, height_mm, on_bare_floor=True)
                ]
                assert len(holding) <= 1


@pytest.mark.parametrize(
    ("gap_mm", "month", "outcome"),
    [
        (0.0, 0.0, Outcome.PASSES),
        (0.1, 0.0, Outcome.FAILS),
        (1.0, 12.0, Outcome.PASSES),
        (1.1, 12.0, Outcome.FAILS),
        (1.1, 12.5, Outcome.PASSES),
        (2.0, 240.0, Outcome.PASSES),
        (2.1, 240.0, Outcome.FAILS),
    ],
)
def test_the_limit_of_a_joint_depends_on_the_months_since_handover(
    gap_mm: float, month: float, outcome: Outcome
) -> None:
    assert verdict(Subject.JOINT_GAP, gap_mm, NSW, month=month).outcome is outcome


def test_a_guide_in_words_gives_no_number_and_is_still_named() -> None:
    said = verdict(Subject.JOINT_GAP, 0.8, NHBC_2020)
    assert said.outcome is Outcome.NO_NUMBER
    assert said.by is not None
    assert "9.4.4" in str(said)
    assert "no number" in str(said)


def test_a_guide_that_is_silent_says_nothing() -> None:
    assert verdict(Subject.SKIRTING_GAP, 0.8, NSW, month=25.0).by is None
    said = verdict(Subject.SKIRTING_GAP, 4.0, NHBC_2019)
    assert (said.outcome, said.by) == (Outcome.NO_NUMBER, None)
    assert "None of these guides" in str(said)


def test_a_wall_of_unknown_height_is_judged_by_the_strictest_limit() -> None:
    assert verdict(Subject.WALL_PLUMB, 9.0, NHBC_2019).outcome is Outcome.FAILS
    assert verdict(Subject.WALL_PLUMB, 9.0, NHBC_2019, height_mm=2600.0).outcome is Outcome.PASSES


def test_of_several_guides_the_strictest_decides_whatever_their_order() -> None:
    for among in ((*NHBC_2019, *NHBC_2020), (*NHBC_2020, *NHBC_2019)):
        said = verdict(Subject.WALL_FLATNESS, 4.0, among)
        assert said.outcome is Outcome.FAILS
        assert said.by is not None
        assert said.by.guide.edition == "2020"


def test_every_verdict_with_a_source_says_that_a_guide_is_not_the_law() -> None:
    for t in TOLERANCES:
        said = verdict(t.subject, 1.0, [t], month=min(t.months[1], 1.0), on_bare_floor=True)
        if said.by is not None:
            assert NOT_THE_LAW in str(said)
            assert t.guide.name in str(said)


def test_a_limit_made_by_a_crew_is_judged_in_the_same_way() -> None:
    own = Tolerance(
        guide=Guide(
            jurisdiction=Jurisdiction.UNITED_KINGDOM, name="the crew's own", edition="this job"
        ),
        subject=Subject.JOINT_GAP,
        limit_mm=0.5,
    )
    assert own.months[1] == math.inf
    assert verdict(Subject.JOINT_GAP, 0.5, [own]).outcome is Outcome.PASSES
    assert verdict(Subject.JOINT_GAP, 0.51, [own]).outcome is Outcome.FAILS

from random import Random

from longpoint.errors import Finding, Severity
from longpoint.survey.checks import check_survey
from longpoint.survey.house import House
from longpoint.survey.openings import OpeningKind
from tests.drawn_openings import NEW_LEAN_SD_MM, drawn_opening, house_of, opening_of

BAD = opening_of(
    "W9", top=1187, bottom=1178, left=598, right=(599, 620), rising=322, middle_height=46
)


def good_house() -> House:
    rng = Random(4)
    return house_of(
        *(drawn_opening(rng, f"W{i}", OpeningKind.WINDOW, NEW_LEAN_SD_MM) for i in range(5))
    )


def said(house: House) -> set[Finding]:
    return {f for f in check_survey(house) if f.severity is not Severity.NOTE}


def test_a_good_house_raises_no_alarm() -> None:
    assert said(good_house()) == set()


def test_every_kind_of_trouble_is_told_and_each_at_its_own_place() -> None:
    good = good_house()
    found = said(house_of(*good.openings, BAD))
    assert {f.place for f in found} == {"W9"}
    assert {f.code for f in found} >= {
        "outside-sense",
        "impossible-opening",
        "repeats-disagree",
        "sides-apart",
    }


def test_every_finding_has_three_sentences() -> None:
    for finding in check_survey(house_of(BAD)):
        for sentence in (finding.read, finding.wrong, finding.do):
            assert sentence.strip().endswith((".", "?")), finding


def test_a_house_without_openings_has_nothing_to_say() -> None:
    assert check_survey(house_of()) == ()

from typing import Any

import pytest

from longpoint.fixing.handover.guides import chosen_guides
from longpoint.fixing.handover.judged import Judged, What, judge_house
from longpoint.trims.tolerances import Outcome
from tests.house_documents import the_house, window

OPEN = {
    "gaps": {"bl": [0.3, 0], "br": [1.2, -0.2], "tr": ["?", 0.2]},
    "quirks": {"left": [5, 7.5, 5], "head": [5, 5]},
    "steps": {"tl": 0.8, "tr": 0.5},
}


def judged(month: float = 0.0, **changes: Any) -> list[Judged]:  # noqa: ANN401
    told = the_house(**{"openings": [window(as_built=OPEN, room="Hall")], **changes})
    return list(judge_house(told, chosen_guides(told), month))


def named(found: list[Judged], what: What, where: str) -> Judged:
    return next(each for each in found if each.what is what and each.where == where)


@pytest.mark.parametrize(
    ("month", "outcome"), [(0, Outcome.FAILS), (6, Outcome.FAILS), (18, Outcome.PASSES)]
)
def test_a_joint_is_judged_by_the_guide_and_the_month(month: float, outcome: Outcome) -> None:
    """1.2 mm by the NSW guide 2017: none at handing over, 1 within 12 months, 2 after."""
    joint = named(judged(month, handover={"place": "au-nsw"}), What.JOINT, "bottom right")
    assert (joint.found_mm, joint.by_guide) == (1.2, outcome)
    assert joint.fails_own
    assert joint.room == "Hall"


def test_a_guide_without_a_number_fails_nothing_but_our_own_limit_may() -> None:
    found = judged()
    joint = named(found, What.JOINT, "bottom right")
    assert joint.by_guide is Outcome.NO_NUMBER
    assert not joint.fails_guide
    assert joint.fails_own
    assert not named(found, What.JOINT, "bottom left").fails_own
    assert named(found, What.JOINT, "top right").found_mm == 0.2


def test_where_no_guide_is_held_none_is_asked() -> None:
    assert {each.by_guide for each in judged(dialect="nz")} == {None}


def test_quirks_are_held_against_their_band_and_steps_against_half_a_millimetre() -> None:
    found = judged()
    quirks = [each for each in found if each.what is What.QUIRK]
    assert [(q.where, q.found_mm, q.fails_own) for q in quirks] == [
        ("head", 5.0, False),
        ("left leg", 5.0, False),
        ("left leg", 7.5, True),
    ]
    assert named(found, What.STEP, "top left").fails_own
    assert not named(found, What.STEP, "top right").fails_own


def test_both_faces_are_judged() -> None:
    both = window(faces=2, as_built=OPEN, b={"as_built": {"gaps": {"tl": [0.9, 0]}}})
    assert {each.face for each in judged(openings=[both])} == {"a", "b"}


@pytest.mark.parametrize(
    ("defect", "handover", "outcome"),
    [
        (
            {"kind": "skirting", "found": 4},
            {"contract": "2019-03-01", "bare_floor": True},
            "passes",
        ),
        ({"kind": "skirting", "found": 6}, {"contract": "2019-03-01", "bare_floor": True}, "fails"),
        ({"kind": "skirting", "found": 4}, {"contract": "2019-03-01"}, "no number"),
        ({"kind": "skirting", "found": 4}, {"place": "au-nsw"}, "fails"),
        ({"kind": "plumb", "found": 9, "height": 2800}, {"contract": "2020-03-01"}, "fails"),
        ({"kind": "plumb", "found": 9, "height": 2800}, {"contract": "2019-03-01"}, "passes"),
        ({"kind": "joint", "found": 3.0}, {"place": "us"}, "passes"),
        ({"kind": "joint", "found": 3.4}, {"place": "us"}, "fails"),
    ],
)
def test_defects_are_judged_as_in_the_published_cases(
    defect: dict[str, Any], handover: dict[str, Any], outcome: str
) -> None:
    """Cases 50 to 52 of the published checks."""
    found = judged(
        openings=[], handover=handover, defects=[{"place": "Hall", "what": "x", **defect}]
    )
    assert [each.by_guide for each in found] == [Outcome(outcome)]


def test_a_defect_that_was_not_measured_is_not_judged() -> None:
    (found,) = judged(openings=[], defects=[{"place": "W1", "what": "dent", "kind": "joint"}])
    assert (found.by_guide, found.fails_own, found.found_mm) == (None, False, None)

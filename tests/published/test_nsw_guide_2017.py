"""Gaps of joints and skirting in New South Wales.

Source: NSW Fair Trading, Guide to Standards and Tolerances 2017, clause 11.1. Read second-hand, as
quoted in a public source file of inspection reports; five copies agree. A guide, not the law.

At handover any gap at a joint of mouldings is a defect; in the first 12 months 1 mm is allowed and
later 2 mm, where it shows from a normal place to stand. Skirting may stand 2 mm off the floor
within 24 months.
"""

from pathlib import Path

import pytest

from longpoint.trims.tolerances import Jurisdiction, Outcome, Subject, tolerances, verdict
from tests.published.reference import rows

GUIDE = tolerances(Jurisdiction.NEW_SOUTH_WALES, "2017")

# Published limit [mm], a month for which it holds, what is judged, row of the reference values.
PUBLISHED = [
    (0.0, 0.0, Subject.JOINT_GAP, "TOL-12"),
    (1.0, 6.0, Subject.JOINT_GAP, "TOL-13"),
    (2.0, 18.0, Subject.JOINT_GAP, "TOL-14"),
    (2.0, 18.0, Subject.SKIRTING_GAP, "TOL-15"),
]


@pytest.mark.parametrize(("limit_mm", "month", "subject", "row"), PUBLISHED)
def test_our_limit_is_the_published_one(
    limit_mm: float, month: float, subject: Subject, row: str
) -> None:
    said = verdict(subject, 0.0, GUIDE, month=month)
    assert said.by is not None, row
    assert said.by.limit_mm == limit_mm


@pytest.mark.parametrize(
    ("gap_mm", "month", "outcome"),
    [
        (0.8, 6.0, Outcome.PASSES),
        (1.2, 6.0, Outcome.FAILS),
        (1.2, 18.0, Outcome.PASSES),
        (2.3, 18.0, Outcome.FAILS),
        (0.1, 0.0, Outcome.FAILS),
    ],
)
def test_a_joint_is_judged_as_the_clause_reads(
    gap_mm: float, month: float, outcome: Outcome
) -> None:
    assert verdict(Subject.JOINT_GAP, gap_mm, GUIDE, month=month).outcome is outcome


def test_skirting_4_mm_off_the_floor_fails() -> None:
    said = verdict(Subject.SKIRTING_GAP, 4.0, GUIDE, month=6.0, on_bare_floor=True)
    assert said.outcome is Outcome.FAILS


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for limit_mm, _, _, row in PUBLISHED:
        assert (known[row].numbers(), known[row].how_known) == ([limit_mm], "read")

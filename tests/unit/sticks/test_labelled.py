import pytest

from longpoint.sticks.labelled import with_labels
from longpoint.sticks.plan import CutPlan, CutStick, StickSource
from longpoint.survey.profiles import Offcut


def stick(name: str, length_mm: float, source: StickSource = StickSource.OFFCUT) -> CutStick:
    return CutStick(
        name=name,
        profile="OG",
        length_mm=length_mm,
        source=source,
        laid=(),
        used_mm=0.0,
        left_mm=0.0,
    )


def offcut(label: str, length_mm: float, count: int = 1) -> Offcut:
    return Offcut(profile="OG", length_mm=length_mm, label=label, count=count)


def labels(plan: CutPlan, *offcuts: Offcut) -> list[str]:
    return [stick.label for stick in with_labels(plan, offcuts).sticks]


def test_of_equal_offcuts_the_first_listed_is_taken_and_each_once() -> None:
    plan = CutPlan(sticks=(stick("OG-1", 900.0), stick("OG-2", 1200.0), stick("OG-3", 900.0)))
    offcuts = (offcut("EMKR", 900.0), offcut("QC7R", 900.0), offcut("6WPK", 1200.0))

    assert labels(plan, *offcuts) == ["EMKR", "6WPK", "QC7R"]


def test_offcuts_without_a_label_leave_none() -> None:
    plan = CutPlan(sticks=(stick("OG-1", 900.0), stick("OG-2", 900.0)))

    assert labels(plan, offcut("EMKR", 900.0), offcut("", 900.0, count=2)) == ["EMKR", ""]


def test_a_new_stick_has_no_label() -> None:
    plan = CutPlan(sticks=(stick("OG-1", 900.0, StickSource.STOCK),))

    assert labels(plan, offcut("EMKR", 900.0)) == [""]


def test_a_plan_with_more_offcuts_than_there_are_is_a_fault_of_ours() -> None:
    with pytest.raises(IndexError):
        with_labels(CutPlan(sticks=(stick("OG-1", 900.0),)), ())

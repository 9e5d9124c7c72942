"""Every planted fault of the three houses is named, and what is no fault is not."""

import re
from dataclasses import dataclass

import pytest

from longpoint.errors import Finding, Severity
from tests.scenarios.houses import planned

STOP, WARNING, NOTE = Severity.STOP, Severity.WARNING, Severity.NOTE


@dataclass(frozen=True)
class Fault:
    """A planted fault: where it must be named, how hard, and with which words or figures."""

    house: str
    place: str
    code: str
    severity: Severity
    words: tuple[str, ...]


FAULTS = {
    "A-F1": Fault("pipit", "W3", "misclosure", STOP, ("1187", "1178", "digits")),
    "A-F2": Fault("pipit", "W5", "jamb-pulled", WARNING, ("right", "6 mm", "3 mm shy")),
    "A-F3": Fault("pipit", "W2", "proud", WARNING, ("top left 0.6 to 0.7", "1.2 to 1.3")),
    "A-F4": Fault("pipit", "S6", "wall-sum", STOP, ("100", "2215", "S5")),
    "A-F5": Fault("pipit", "D1", "floor-falls", NOTE, ("legs",)),
    "A-F6": Fault("pipit", "W6", "out-of-square", NOTE, ("parallel", "tapped", "quirks")),
    "B-F1": Fault("fallow-end", "W5", "diagonals-swapped", STOP, ("lean",)),
    "B-F2": Fault("fallow-end", "W7", "misclosure", STOP, ("1096", "1069")),
    "B-F3": Fault("fallow-end", "D6", "misclosure", STOP, ("1947", "1974")),
    "B-F4": Fault("fallow-end", "W4b", "same-readings", STOP, ("W4",)),
    "B-F5": Fault("fallow-end", "W9", "gauge-disagrees", WARNING, ("2.0",)),
    "B-F6": Fault("fallow-end", "W10", "arch-rise", STOP, ("268", "286")),
    "B-F7": Fault("fallow-end", "Bed 1 E", "room-misclosure", STOP, ("200",)),
    "B-F8": Fault("fallow-end", "Fallow End", "tape-off", WARNING, ("T2", "1.5")),
    "B-F9": Fault("fallow-end", "W8", "shy-all-round", WARNING, ("6 deep", "extension-lining")),
    "B-F10": Fault("fallow-end", "W6", "proud", WARNING, ("1.9 to 2.1", "1.5 to 1.7", "-2.7")),
    "B-F11": Fault("fallow-end", "D4", "twisted", WARNING, ("door",)),
    "C-F1": Fault("series-k", "Unit 4", "tape-shift", WARNING, ("2", "tape")),
    "C-F2": Fault("series-k", "9-W2", "misclosure", STOP, ("1049", "1094")),
    "C-F3": Fault("series-k", "7-W1", "rows-swapped", STOP, ("7-W3",)),
    "C-F4": Fault("series-k", "12-D2", "misclosure", STOP, ("2030.5", "2040.5")),
    "C-F5": Fault("series-k", "Series K", "lean-step", WARNING, ("Unit 10",)),
}


@pytest.mark.parametrize("fault", FAULTS.values(), ids=FAULTS)
def test_a_planted_fault_is_named(fault: Fault) -> None:
    findings = planned(fault.house).findings
    found = [f for f in findings if f.code == fault.code and f.place == fault.place]
    assert found, [f"{f.place} {f.code}" for f in findings]
    assert found[0].severity is fault.severity
    said = str(found[0])
    for word in fault.words:
        assert word in said, said


STOPPED = {
    "pipit": {"W3", "S5", "S6"},
    "fallow-end": {"W4b", "W5", "W7", "W10", "D6", "Bed 1 E"},
    "series-k": {"7-W1", "7-W3", "9-W2", "12-D2"},
}


@pytest.mark.parametrize("house", STOPPED)
def test_only_the_faulty_places_are_held(house: str) -> None:
    stops = {f.place for f in planned(house).findings if f.severity is STOP}
    assert stops == STOPPED[house], {str(f) for f in planned(house).findings if f.place in stops}


@pytest.mark.parametrize(
    ("house", "quiet"),
    [
        ("pipit", ("W1", "W4", "D1", "D2", "W6")),
        ("fallow-end", ("D5", "D7", "D2")),
        ("series-k", ("1-W2", "6-D1", "3-D1", "8-D2")),
    ],
)
def test_what_is_no_fault_raises_no_alarm(house: str, quiet: tuple[str, ...]) -> None:
    loud: list[Finding] = [
        f
        for f in planned(house).findings
        if f.place in quiet
        and f.severity is not NOTE
        and f.code not in ("proud", "shy-all-round", "twisted")
    ]
    assert not loud


def test_a_held_opening_gets_no_lengths_and_the_others_do() -> None:
    plan = planned("pipit")
    assert not [p for p in plan.pieces if p.opening == "W3" or p.run in ("S5", "S6")]
    assert {p.opening for p in plan.pieces if p.opening} == {
        "W1", "W2", "W4", "W5", "W6", "D1", "D2",
    }  # fmt: skip


def test_the_leaning_window_says_what_45s_would_do_by_way_of_fixing() -> None:
    findings = planned("pipit", first_only=True).findings
    found = next(f for f in findings if f.code == "out-of-square" and f.place == "W6")
    figures = [float(x) for x in re.findall(r"(\d+(?:\.\d)?) mm", found.wrong)]
    gap_mm, least_mm, most_mm = figures
    assert gap_mm == pytest.approx(0.7, abs=0.25)
    assert (least_mm, most_mm) == pytest.approx((3.5, 6.5), abs=0.5)


def test_architrave_and_skirting_metres_meet_the_answer_key() -> None:
    plan = planned("pipit", mended=True)
    architrave_mm = sum(p.long_mm for p in plan.pieces if p.profile == "AR57")
    skirting_mm = sum(p.back_mm for p in plan.pieces if p.run and p.role.value == "run")
    assert architrave_mm / 1000 == pytest.approx(37.89, abs=0.02)
    assert skirting_mm / 1000 == pytest.approx(20.27, abs=0.02)

"""Twelve units on a line: the saw learned from its joints, and the drifting jig told in time."""

from collections import defaultdict
from pathlib import Path
from statistics import fmean

import pytest

from longpoint.forecast.learning.advice import LearnedKind, learned_advice
from longpoint.forecast.learning.as_built import BuiltFrame, mitre_length_mm
from longpoint.forecast.learning.drift import Drift, drift, first_drift
from longpoint.forecast.learning.setup import learn
from longpoint.forecast.learning.setup_key import SetupKey
from longpoint.survey.as_built import JointRead
from longpoint.survey.checks.lean_step import LEAST_SPREAD_MM_PER_M, lean_mm_per_m
from longpoint.survey.house_file import read_house
from tests.scenarios.houses import document, rows_under

FACE_MM = 66.0
KEY = SetupKey(saw="S1", setting="fixed station", tape="T1")


def built_frames(shared: Path) -> list[BuiltFrame]:
    text = (shared / "scenarios" / "c-prefab-batch.md").read_text(encoding="utf-8")
    rows = rows_under(text[text.index("## As-built check") :], "unit | id")
    frames = []
    for unit, mark, *cells in rows:
        pairs = ([float(end) for end in cell.split("/")] for cell in cells)
        frames.append(
            BuiltFrame(
                mark=f"{unit}-{mark}",
                key=KEY,
                mitre_length_mm=(mitre_length_mm(FACE_MM, 45.0),) * 4,
                gaps=tuple(JointRead(heel_mm=heel, toe_mm=toe) for heel, toe in pairs),
            )
        )
    return frames


def unit_leans(*, mended: bool) -> list[float]:
    house = read_house(document("series-k", mended=mended)).house
    units: dict[str, list[float]] = defaultdict(list)
    for opening in house.openings:
        lean = lean_mm_per_m(opening)
        if lean is not None and not opening.stands_on_floor:
            units[opening.room].append(lean)
    assert list(units) == [f"Unit {number}" for number in range(1, 13)]
    return [fmean(leans) for leans in units.values()]


def test_the_saw_is_learned_to_cut_steep_by_012(shared: Path) -> None:
    frames = built_frames(shared)
    assert len(frames) == 9
    learned, notes = learn(frames)
    assert notes == ()
    term = learned.term(KEY.angle)
    assert term is not None
    assert term.belief.mean == pytest.approx(0.12, abs=0.03)
    for seen in term.seen:
        assert seen.value == pytest.approx(0.12, abs=0.03), seen.mark


def test_the_advice_is_the_saw_and_not_the_measuring(shared: Path) -> None:
    (advice,) = learned_advice(learn(built_frames(shared))[0])
    assert advice.kind is LearnedKind.SAW
    assert advice.words.startswith("Your 45 cuts steep by about 0.12 degrees")
    assert "move the stop, or enter it and it is allowed for" in advice.words
    assert "The readings are not to blame" in advice.words
    assert 0.09 <= advice.within.lowest < 0.12 < advice.within.highest <= 0.15


def test_three_windows_of_the_first_unit_are_enough_to_tell_it(shared: Path) -> None:
    (advice,) = learned_advice(learn(built_frames(shared)[:3])[0])
    assert advice.off == pytest.approx(0.12, abs=0.03)
    assert advice.frames == 3


def told(leans: list[float]) -> Drift:
    found = first_drift(leans, LEAST_SPREAD_MM_PER_M)
    assert found is not None
    return found


@pytest.mark.parametrize("mended", [False, True])
def test_the_jig_that_moved_at_unit_10_is_told_by_unit_12(mended: bool) -> None:
    found = told(unit_leans(mended=mended))
    assert 9 <= found.told + 1 <= 12
    assert found.begins + 1 == 10
    assert 2.0 <= found.size <= 5.0


@pytest.mark.parametrize("mended", [False, True])
def test_before_unit_10_nothing_is_told(mended: bool) -> None:
    leans = unit_leans(mended=mended)
    for units in range(1, 10):
        assert drift(leans[:units], LEAST_SPREAD_MM_PER_M) is None

"""Corners and pieces against the answer keys of the three houses, and against scipy."""

import math
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import least_squares

from longpoint.house_plan import HousePlan
from longpoint.survey.readings import Place
from tests.scenarios.houses import (
    PieceKey,
    corner_keys,
    document,
    fitted,
    piece_at,
    piece_keys,
    planned,
    rows_under,
)

KEY_FILES = {
    "pipit": "a-lake-cabin.md",
    "fallow-end": "b-cottage.md",
    "series-k": "c-prefab-batch.md",
}
KEY_LENGTH_MM = {"pipit": 1.2, "fallow-end": 1.8}
KEY_DEG = 0.15
ON_PLINTHS = {("fallow-end", "D1"), ("fallow-end", "D2")}
PLINTH_MM = 200.0


def key_text(shared: Path, name: str) -> str:
    return (shared / "scenarios" / KEY_FILES[name]).read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("name", "heading"), [("pipit", "id | corner BL"), ("fallow-end", "id | BL")]
)
def test_corners_meet_the_answer_key(shared: Path, name: str, heading: str) -> None:
    plan = planned(name, mended=True, first_only=True)
    keys = corner_keys(key_text(shared, name), heading)
    assert len(keys) >= 8
    for mark, corners in keys.items():
        assert fitted(plan, mark).corner_deg == pytest.approx(corners, abs=KEY_DEG), mark


@pytest.mark.parametrize("name", ["pipit", "fallow-end"])
def test_pieces_meet_the_answer_key(shared: Path, name: str) -> None:
    plan = planned(name, mended=True, first_only=True)
    keys = piece_keys(key_text(shared, name))
    assert len(keys) >= 27
    limit = KEY_LENGTH_MM[name]
    for key in keys:
        piece = piece_at(plan, key.mark, key.side)
        where = f"{key.mark} {key.side}"
        if (name, key.mark) in ON_PLINTHS and key.side != "top":
            key = on_plinth(plan, key)
        assert piece.inner_mm == pytest.approx(key.short_mm, abs=limit), where
        assert piece.outer_mm == pytest.approx(key.long_mm, abs=limit), where
        assert piece.right.mitre_deg == pytest.approx(key.start_deg, abs=KEY_DEG), where
        assert piece.left.mitre_deg == pytest.approx(key.end_deg, abs=KEY_DEG), where
        if key.hook_mm is not None:
            hook_mm = piece.hook_reading_mm(piece.right.mitre_deg)
            assert hook_mm == pytest.approx(key.hook_mm, abs=limit), where


def on_plinth(plan: HousePlan, key: PieceKey) -> PieceKey:
    """Return a leg's key as its note tells: 200 taken off, the foot made square.

    The foot's own angle goes to the plinth block, which stands on the floor.
    """
    is_right = key.side == "right"
    foot_deg = key.start_deg if is_right else key.end_deg
    block = next(
        p for p in plan.pieces if p.opening == key.mark and p.mark.endswith(f"{key.side}-plinth")
    )
    on_floor = block.right if is_right else block.left
    assert on_floor.mitre_deg == pytest.approx(foot_deg, abs=KEY_DEG), key
    assert block.inner_mm == pytest.approx(PLINTH_MM, abs=0.01), key
    leg_mm = plan.house.profile("OG90").width_mm
    return key._replace(
        short_mm=key.short_mm - PLINTH_MM,
        long_mm=key.long_mm - PLINTH_MM - leg_mm * math.tan(math.radians(foot_deg)),
        start_deg=0.0 if is_right else key.start_deg,
        end_deg=key.end_deg if is_right else 0.0,
    )


def test_leans_of_the_batch_meet_the_answer_key(shared: Path) -> None:
    plan = planned("series-k", mended=True)
    text = key_text(shared, "series-k")
    leans = rows_under(text[text.index("Lean at each window") :], "unit | W1")
    assert len(leans) == 12
    for unit, *row in leans:
        marks = ("W3", "W2", "W1") if unit == "7" else ("W1", "W2", "W3")
        for mark, lean in zip(marks, row, strict=True):
            corner_deg = fitted(plan, f"{unit}-{mark}").corner_deg.first
            assert corner_deg - 90.0 == pytest.approx(float(lean), abs=KEY_DEG), (unit, mark)


@pytest.mark.parametrize("name", ["pipit", "fallow-end", "series-k"])
@pytest.mark.parametrize("mended", [False, True])
def test_the_fit_is_that_of_an_independent_library(name: str, mended: bool) -> None:
    plan = planned(name, mended=mended)
    checked = 0
    for entry in document(name, mended=mended)["openings"]:
        if "bevel" in entry or "level" in entry or "arch" in entry:
            continue
        angles, sides = scipy_fit(entry)
        ours = fitted(plan, entry["mark"])
        assert ours.corner_deg == pytest.approx(angles, abs=0.005), entry["mark"]
        assert ours.side_mm == pytest.approx(sides, abs=0.02), entry["mark"]
        checked += 1
    assert checked >= 8


def scipy_fit(entry: dict[str, object]) -> tuple[list[float], list[float]]:
    """Fit the six readings by scipy, from a rectangle; repeated readings count as often as read."""
    ends = {
        Place.BOTTOM: (0, 1),
        Place.RIGHT: (1, 2),
        Place.TOP: (2, 3),
        Place.LEFT: (3, 0),
        Place.RISING: (0, 2),
        Place.FALLING: (3, 1),
    }
    readings: list[tuple[int, int, float]] = []
    for place, (i, j) in ends.items():
        value = entry[place.value]
        for one in value if isinstance(value, list) else [value]:
            assert isinstance(one, int | float)
            readings.append((i, j, float(one)))

    def corners(x: np.ndarray) -> np.ndarray:
        return np.array([[0, 0], [x[0], 0], [x[1], x[2]], [x[3], x[4]]])

    def misfit(x: np.ndarray) -> list[float]:
        p = corners(x)
        return [float(np.hypot(*(p[j] - p[i]))) - read for i, j, read in readings]

    width, height = readings[0][2], readings[1][2]
    found = least_squares(
        misfit, [width, width, height, 0.0, height], xtol=1e-14, ftol=1e-14, gtol=1e-14
    )
    p = corners(found.x)
    angles, sides = [], []
    for k in range(4):
        a, b = p[k - 1] - p[k], p[(k + 1) % 4] - p[k]
        angles.append(float(np.degrees(np.arccos(a @ b / np.hypot(*a) / np.hypot(*b)))))
        sides.append(float(np.hypot(*b)))
    return angles, sides

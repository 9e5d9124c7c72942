"""Crews whose finished work taught the forecast what their saw and tape are out by."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial
from typing import Final

import numpy as np

from longpoint.forecast.built_frames import setup_key
from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import SLOTS, RowKind, Slot, frame_rows
from longpoint.forecast.learned_lines import learned_lines
from longpoint.forecast.learning.as_built import BuiltFrame
from longpoint.forecast.learning.setup import learn
from longpoint.forecast.planned_face import PlannedFace
from longpoint.survey.as_built import JointRead
from longpoint.survey.house import House
from tests.calibration.judged import (
    SEED,
    Judged,
    Office,
    drawn_up,
    judged_house,
)
from tests.simulated_houses import (
    BUILDING,
    TrueCrew,
    built_errors,
    draw_house,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Taught:
    """Openings of crews forecast by our figures, and by what their own work taught."""

    before: tuple[Judged, ...]
    after: tuple[Judged, ...]


HOUSES_AFTER: Final = 3
FEWEST_FRAMES, MOST_FRAMES = 10, 40
FEELER_MM, RULE_MM = 0.05, 0.5


def taught_crews(office: Office, crews: int, seed: int = SEED) -> Taught:
    """Return what crews, each with its own saw and hand, are told before and after they learn.

    A crew writes down gaps and quirks of 10 to 40 windows; then it does three more houses.
    """
    before: list[Judged] = []
    after: list[Judged] = []
    for number in range(crews):
        crew, frames = _drawn_crew(number, seed)
        known, _ = learn(_history(office, number, crew, frames, seed))
        for later in range(HOUSES_AFTER):
            true = draw_house(seed, 20_000 + HOUSES_AFTER * number + later)
            true = replace(true, crew=crew, is_proved=False)
            before += judged_house(office, true, cluster=number).openings
            after += judged_house(office, true, partial(learned_lines, known), number).openings
    return Taught(before=tuple(before), after=tuple(after))


def _drawn_crew(number: int, seed: int) -> tuple[TrueCrew, int]:
    rng = np.random.default_rng((seed, number, 9))
    hand = np.exp(0.3 * rng.standard_normal(3))
    crew = TrueCrew(
        scale_deg=0.10 * rng.standard_normal(),
        fence_deg=0.10 * rng.standard_normal(),
        reading_mm=0.20 * math.sqrt(3.0) * rng.uniform(-1.0, 1.0),
        mark_mm=0.20 * rng.standard_normal(),
        stop_cut_deg=0.05 * hand[0],
        set_cut_deg=0.10 * hand[0],
        cut_mm=0.35 * hand[1],
        edge_bow_mm=0.15 * hand[2],
    )
    return crew, int(rng.integers(FEWEST_FRAMES, MOST_FRAMES + 1))


def _history(
    office: Office, number: int, crew: TrueCrew, frames: int, seed: int
) -> Iterator[BuiltFrame]:
    """Yield a crew's windows as it wrote them down."""
    told = 0
    for house in range(frames):
        true = draw_house(seed, 10_000 + MOST_FRAMES * number + house)
        windows = tuple(o for o in true.openings if not o.is_door)
        true = replace(true, crew=crew, is_proved=False, openings=windows)
        drawing = drawn_up(true)
        rng = true.stream(BUILDING)
        for face in drawing.faces:
            errors = built_errors(true, face, drawing.pieces_of(face), rng)
            yield _written_down(office, drawing.house, face, errors)
            told += 1
            if told == frames:
                return


def _written_down(
    office: Office, house: House, face: PlannedFace, errors: tuple[float, ...]
) -> BuiltFrame:
    """Return what a crew writes down of a window: gaps by feelers, quirks by a rule."""
    rows = frame_rows(face.frame, face.limits)
    moves = best_fit_up(rows, errors, office.solver).moves
    seen: dict[tuple[RowKind, int], list[float]] = {}
    for row in rows:
        value = float(np.dot(row.moves, moves) + np.dot(row.errors, errors))
        seen.setdefault((row.kind, row.place), []).append(value)
    # A joint stands after its side, at the next corner.
    joints = [
        JointRead(
            heel_mm=_to_step(seen[RowKind.HEEL_GAP, (corner - 1) % 4][0], FEELER_MM),
            toe_mm=_to_step(seen[RowKind.TOE_GAP, (corner - 1) % 4][0], FEELER_MM),
        )
        for corner in range(4)
    ]
    known = face.known_off()
    quirks = []
    for side in range(4):
        start, middle, end = (
            _to_step(over, RULE_MM) + known[SLOTS * side + slot]
            for over, slot in zip(
                seen[RowKind.QUIRK, side][::2],
                (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END),
                strict=True,
            )
        )
        quirks.append((start, middle, end))
    return BuiltFrame(
        mark=f"{house.name}, {face.opening.mark}",
        key=setup_key(house.saw, house.tape(face.readings.tape)),
        mitre_length_mm=tuple(face.frame.joints[(c - 1) % 4].length_mm for c in range(4)),
        gaps=tuple(joints),
        quirk_mm=tuple(quirks),
    )


def _to_step(value_mm: float, step_mm: float) -> float:
    return round(value_mm / step_mm) * step_mm

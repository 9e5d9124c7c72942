"""Frames of trim, and errors of frames drawn with numpy, for tests of the fit-up.

The error model is the one whose chances the tests hold ours against: one reading of width and one
of height, shared by the two pieces cut to it, offsets of reading and marking shared by all pieces,
the rest private.
"""

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from longpoint.forecast.fitup.frame import SLOTS, FitLimits, Frame, FrameRow, Slot, frame_of
from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline

Floats = npt.NDArray[np.float64]

ROOT_3 = math.sqrt(3.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """A set of trim: size of its opening, its faces, quirk, and the room its quirk has."""

    width_mm: float = 1200.0
    height_mm: float = 1050.0
    face_mm: tuple[float, ...] = (70.0,) * 4
    quirk_mm: float = 4.5
    room_in_mm: float = 1.8
    room_out_mm: float = 1.8
    lean_mm: float = 0.0
    is_door: bool = False

    def frame(self) -> Frame:
        faces_mm = (0.0, *self.face_mm[1:]) if self.is_door else self.face_mm
        corners = (
            Point(0.0, 0.0),
            Point(self.width_mm, 0.0),
            Point(self.width_mm + self.lean_mm, self.height_mm),
            Point(self.lean_mm, self.height_mm),
        )
        sides = tuple(
            TrimSide(inner_mm=self.quirk_mm if face else 0.0, width_mm=face) for face in faces_mm
        )
        room = ((self.room_in_mm, self.room_out_mm),) * 4
        return frame_of(trim_outline(corners, sides), faces_mm, room)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spreads:
    """Standard deviations of the errors; saw bias and lean are known values."""

    saw_bias_deg: float = 0.0
    fence_deg: float = 0.10
    cut_deg: float = 0.05
    reading_mm: float = 0.55
    reading_offset_mm: float = 0.20
    mark_offset_mm: float = 0.20
    mark_mm: float = 0.35
    face_mm: float = 0.15
    edge_bow_mm_per_m2: float = 0.15
    taper_mm: float = 1.0
    reveal_bow_mm: float = 0.4
    lean_mm: float = 0.0
    hooked_end_on_length: float = -2.0
    extra_length_mm: float = 0.0


def drawn_errors(frame: Frame, spreads: Spreads, count: int, rng: np.random.Generator) -> Floats:
    """Return errors over the slots of a frame, (count, 8 n)."""
    sides = len(frame.sides)
    errors = np.zeros((count, SLOTS * sides))
    first = 1 if sides == 3 else 0

    def normal(sd: float) -> Floats:
        return rng.normal(size=count) * sd

    bias = math.radians(spreads.saw_bias_deg)
    fence = normal(math.radians(spreads.fence_deg))
    read = (normal(spreads.reading_mm), normal(spreads.reading_mm))
    offset = rng.uniform(-1.0, 1.0, count) * spreads.reading_offset_mm * ROOT_3
    marked = normal(spreads.mark_offset_mm)
    for index, side in enumerate(frame.sides):
        at = SLOTS * index
        long_mm = side.start.distance_mm(side.end)
        face = normal(spreads.face_mm)
        bowed = normal(4.0 * spreads.edge_bow_mm_per_m2 * (long_mm / 1000.0) ** 2 / long_mm)
        end = bias + fence + normal(math.radians(spreads.cut_deg))
        start = bias - fence + normal(math.radians(spreads.cut_deg))
        is_leg = (index + first) % 2 == 1
        length = marked + normal(spreads.mark_mm) + spreads.extra_length_mm
        if sides == 3 and is_leg:
            # A door leg stands on the floor and is read from it; only its top can be out.
            errors[:, at + (Slot.LENGTH_END if index == 0 else Slot.LENGTH_START)] = length
        else:
            length = length + read[int(is_leg)] + offset - face
            length = length + spreads.hooked_end_on_length * side.width_mm * end
            errors[:, at + Slot.LENGTH_START] = length / 2.0
            errors[:, at + Slot.LENGTH_END] = length / 2.0
        errors[:, at + Slot.TURN_START] = start + bowed
        errors[:, at + Slot.TURN_END] = end + bowed
        errors[:, at + Slot.WIDTH] = face
    _draw_reveal(frame, spreads, errors, rng)
    return errors


def _draw_reveal(frame: Frame, spreads: Spreads, errors: Floats, rng: np.random.Generator) -> None:
    count = len(errors)
    taper_x, taper_y = rng.normal(size=(2, count)) * spreads.taper_mm / 4.0
    half_lean = np.full(count, spreads.lean_mm / 2.0)
    # Corners bottom left, bottom right, top right, top left.
    moved_x = (taper_x - half_lean, -taper_x - half_lean, taper_x + half_lean, half_lean - taper_x)
    moved_y = (taper_y, -taper_y, taper_y, -taper_y)
    outward = ((0, -1), (1, 0), (0, 1), (-1, 0))
    first = 1 if len(frame.sides) == 3 else 0
    for index in range(len(frame.sides)):
        side = index + first
        out_x, out_y = outward[side]
        start = out_x * moved_x[side] + out_y * moved_y[side]
        after = (side + 1) % 4
        end = out_x * moved_x[after] + out_y * moved_y[after]
        at = SLOTS * index
        errors[:, at + Slot.REVEAL_START] = start
        errors[:, at + Slot.REVEAL_END] = end
        bow = rng.normal(size=count) * spreads.reveal_bow_mm
        errors[:, at + Slot.REVEAL_MIDDLE] = (start + end) / 2.0 + bow


def drawn_sets(count: int, rng: np.random.Generator, *, is_door: bool) -> list[Set]:
    """Return sets of trim of many sizes, faces and rooms, one in four a little out of square."""
    found = []
    for _ in range(count):
        face_mm = float(rng.choice([45.0, 57.0, 66.0, 70.0, 90.0, 95.0, 120.0, 140.0]))
        room_mm = float(rng.choice([0.6, 0.8, 1.2, 1.8, 2.0, 2.0, 3.0]))
        other_mm = room_mm if rng.random() < 0.75 else float(rng.choice([0.8, 1.5, 2.0, 3.0]))
        is_skew = rng.random() < 0.25
        faces_mm = face_mm + (rng.uniform(-15.0, 15.0, 4) if rng.random() < 0.15 else np.zeros(4))
        tall = is_door and rng.random() < 0.6
        found.append(
            Set(
                width_mm=float(rng.uniform(400.0, 2600.0)),
                height_mm=float(
                    rng.uniform(1900.0, 2400.0) if tall else rng.uniform(400.0, 2200.0)
                ),
                face_mm=tuple(float(x) for x in faces_mm),
                room_in_mm=room_mm,
                room_out_mm=other_mm,
                lean_mm=float(rng.normal() * 4.0) if is_skew else 0.0,
                is_door=is_door,
            )
        )
    return found


def drawn_limits(rng: np.random.Generator) -> FitLimits:
    return FitLimits(gap_mm=float(rng.choice([0.3, 0.5, 0.5, 0.5, 0.8, 1.0])))


def drawn_spreads(rng: np.random.Generator) -> Spreads:
    return Spreads(
        saw_bias_deg=float(rng.choice([-0.1, -0.05, 0.0, 0.0, 0.03, 0.05, 0.1, 0.15])),
        fence_deg=float(rng.choice([0.03, 0.1])),
        cut_deg=float(rng.choice([0.05, 0.05, 0.1])),
        lean_mm=float(rng.choice([0.0, 0.0, 1.5, 3.0, 5.0])),
        extra_length_mm=float(rng.normal() * rng.choice([0.0, 0.0, 0.6, 1.5])),
        reading_mm=float(rng.choice([0.3, 0.55])),
    )


def error_matrix(rows: tuple[FrameRow, ...]) -> Floats:
    """Return what each row is off by per unit of each error, (rows, 8 n)."""
    return np.array([row.errors for row in rows])

"""Splitting a run that no stick is long enough for.

Both parts are sawn at 45 through the thickness; the left one keeps the longer back, so the right
one laps over it. The parts' faces add up to the run's face; each joint costs one thickness of stock
more.
"""

import math
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import CutKind, EndCut, Role
from longpoint.survey.house import House
from longpoint.trims.skirting_joints import scarf_overlap_mm

SCARF_DEG: Final = 45.0

LEAST_PART_MM: Final = 600.0
"""No part is shorter, so that each still holds to two studs; common practice, no source."""

LEEWAY_MM: Final = 1.0
"""Left over at the longest stick, so that rounding to the saw's hundredths never asks for more."""

SCARFED: Final = frozenset({Role.RUN, Role.BEAD, Role.RAIL, Role.CORNICE})
"""Pieces along a wall, held all along it: a scarf in them is common practice, no source. Round an
opening a joint would stand at eye height, and a shelf or a handrail carries a load."""

UNDER_CUT: Final = EndCut(kind=CutKind.SCARF, bevel_deg=SCARF_DEG)
"""Right end of the part that lies under: its back is the longer."""

OVER_CUT: Final = EndCut(kind=CutKind.SCARF, bevel_deg=-SCARF_DEG)
"""Left end of the part that laps over: its face is the longer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """From where to where a board's lower edges reach along the wall, on its back and its face.

    Attributes:
        back_start_mm: Left end of the back.
        face_start_mm: Left end of the face.
        back_end_mm: Right end of the back.
        face_end_mm: Right end of the face.
        top_start_mm: How much further out the upper edges reach at the left end.
        top_end_mm: The same at the right end.
    """

    back_start_mm: float
    face_start_mm: float
    back_end_mm: float
    face_end_mm: float
    top_start_mm: float = 0.0
    top_end_mm: float = 0.0

    @property
    def start_mm(self) -> float:
        """Its leftmost point."""
        return min(self.back_start_mm, self.face_start_mm) - max(0.0, self.top_start_mm)

    @property
    def end_mm(self) -> float:
        """Its rightmost point."""
        return max(self.back_end_mm, self.face_end_mm) + max(0.0, self.top_end_mm)

    @property
    def face_mm(self) -> float:
        """Length along the face."""
        return self.face_end_mm - self.face_start_mm

    @property
    def back_mm(self) -> float:
        """Length along the back."""
        return self.back_end_mm - self.back_start_mm

    @property
    def top_mm(self) -> float:
        """How much longer the upper edges are than the lower ones."""
        return self.top_start_mm + self.top_end_mm

    @property
    def shortest_mm(self) -> float:
        """The shortest of its four edges."""
        return min(self.face_mm, self.back_mm) + min(0.0, self.top_mm)

    @property
    def extent_mm(self) -> float:
        """What it takes of a stick, long point to long point."""
        return self.end_mm - self.start_mm


def longest_piece_mm(house: House, profile: str) -> float | None:
    """Return the longest piece of a profile that can be cut or carried; None: no limit known.

    References:
        An offcut loses one kerf per end, a new stick its end trim.
    """
    saw = house.saw
    sticks = [s.length_mm - 2.0 * saw.end_trim_mm for s in house.stock if s.profile == profile]
    sticks += [s.length_mm - 2.0 * saw.kerf_mm for s in house.offcuts if s.profile == profile]
    limits = [max(sticks) - LEEWAY_MM] if sticks else []
    if house.longest_run_mm is not None:
        limits.append(house.longest_run_mm)
    return min(limits) if limits else None


def split_reach(whole: Reach, thickness_mm: float, limit_mm: float | None) -> tuple[Reach, ...]:
    """Return the parts of a board from left to right, one if it needs no joint.

    Args:
        whole: The board.
        thickness_mm: Its thickness. [mm]
        limit_mm: Longest piece; None: none.

    Returns:
        As few parts as go, each as long as goes, the last at least `LEAST_PART_MM`.

    Example:
        >>> run = Reach(back_start_mm=0, face_start_mm=0, back_end_mm=5894, face_end_mm=5894)
        >>> parts = split_reach(run, 18.0, 5380.0)
        >>> [part.face_mm for part in parts], sum(part.extent_mm for part in parts)
        ([5294.0, 600.0], 5912.0)
    """
    if limit_mm is None or whole.extent_mm <= limit_mm + 1e-6:
        return (whole,)
    overlap_mm = scarf_overlap_mm(thickness_mm, SCARF_DEG)
    joints = _joints(whole, overlap_mm, limit_mm)
    starts = [(whole.back_start_mm, whole.face_start_mm)] + [(x + overlap_mm, x) for x in joints]
    ends = [(x + overlap_mm, x) for x in joints] + [(whole.back_end_mm, whole.face_end_mm)]
    parts = [
        Reach(back_start_mm=bs, face_start_mm=fs, back_end_mm=be, face_end_mm=fe)
        for (bs, fs), (be, fe) in zip(starts, ends, strict=True)
    ]
    parts[0] = replace(parts[0], top_start_mm=whole.top_start_mm)
    parts[-1] = replace(parts[-1], top_end_mm=whole.top_end_mm)
    return tuple(parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scarf:
    """A long piece in parts that the sticks can give.

    Attributes:
        parts_mm: The parts from left to right, each long point to long point.
        overlap_mm: How far each part laps over the one before it.
    """

    parts_mm: tuple[float, ...]
    overlap_mm: float


def scarf_for(extent_mm: float, thickness_mm: float, limit_mm: float) -> Scarf | None:
    """Return the parts that give a piece too long for the sticks.

    Args:
        extent_mm: What the piece takes of a stick, long point to long point.
        thickness_mm: Its thickness. [mm]
        limit_mm: Longest length that a stick gives between its trims.

    Returns:
        As few parts as go, or None where that would leave one shorter than `LEAST_PART_MM`.

    Example:
        >>> scarf_for(6018.0, 18.0, 5380.0)
        Scarf(parts_mm=(5379.0, 657.0), overlap_mm=18.0)
        >>> scarf_for(1000.0, 18.0, 880.0) is None
        True
    """
    whole = Reach(
        back_start_mm=0.0, face_start_mm=0.0, back_end_mm=extent_mm, face_end_mm=extent_mm
    )
    usable_mm = limit_mm - LEEWAY_MM
    parts_mm = tuple(part.extent_mm for part in split_reach(whole, thickness_mm, usable_mm))
    if min(parts_mm) < LEAST_PART_MM or max(parts_mm) > usable_mm + 1e-6:
        return None
    return Scarf(parts_mm=parts_mm, overlap_mm=scarf_overlap_mm(thickness_mm, SCARF_DEG))


def _joints(whole: Reach, overlap_mm: float, limit_mm: float) -> list[float]:
    """Return where the joints stand on the face."""
    step_mm = limit_mm - overlap_mm
    if step_mm <= 0:
        return []
    count = max(1, math.ceil((whole.extent_mm - limit_mm) / step_mm - 1e-9))
    joints = [whole.start_mm + step_mm * (k + 1) for k in range(count)]
    last_mm = whole.end_mm - joints[-1]
    if last_mm < LEAST_PART_MM:
        joints[-1] = whole.end_mm - LEAST_PART_MM
        before_mm = joints[-1] - (joints[-2] if count > 1 else whole.start_mm)
        if before_mm < LEAST_PART_MM:
            even_mm = whole.extent_mm / (count + 1)
            joints = [whole.start_mm + even_mm * (k + 1) for k in range(count)]
    return joints

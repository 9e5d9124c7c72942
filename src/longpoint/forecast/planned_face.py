"""One face of an opening as it is planned: its frame on the wall, and how each end is cut."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import PieceError
from longpoint.forecast.fitup.frame import SLOTS, FitLimits, Frame, Slot, frame_of
from longpoint.pieces.face_trim import FaceTrim, face_trim, has_mitred_corners
from longpoint.pieces.piece import LEAST_HOOK_DEG
from longpoint.shape.fitted import FittedOpening, Shapes
from longpoint.shape.opening_fit import faces_of, has_four_sides, mirrored
from longpoint.shape.point import direction
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings

STOP_DEG: Final = 45.0
LEGS: Final = (1, 3)
AT_STOP_DEG: Final = 0.05
"""An angle this near to the saw's stop is cut at the stop."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedEnd:
    """One mitred end of a piece.

    Attributes:
        side: Index of its piece in the frame.
        is_end: True at the side's second corner, the left end as the piece lies at the saw.
        saw_deg: Saw angle.
        is_hooked: True when the tape is hooked on its long point.
    """

    side: int
    is_end: bool
    saw_deg: float
    is_hooked: bool

    @property
    def is_at_stop(self) -> bool:
        """Tell whether it is cut at the saw's 45 stop."""
        return abs(self.saw_deg - STOP_DEG) <= AT_STOP_DEG

    @property
    def length_slot(self) -> Slot:
        """What a length error of this end counts under."""
        return Slot.LENGTH_END if self.is_end else Slot.LENGTH_START

    @property
    def turn_slot(self) -> Slot:
        """What an angle error of this end counts under."""
        return Slot.TURN_END if self.is_end else Slot.TURN_START


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedFace:
    """One face of one opening, ready to be forecast.

    Attributes:
        opening: Its settings.
        readings: The readings its shape rests on.
        fitted: Its shape.
        trim: Its lines.
        frame: The same as a frame of pieces that can be shifted.
        side_index: Side of the opening (0 bottom, 1 right, 2 head, 3 left) of each piece.
        ends: Every mitred end.
        limits: What counts as a fit.
    """

    opening: Opening
    readings: OpeningReadings
    fitted: FittedOpening
    trim: FaceTrim
    frame: Frame
    side_index: tuple[int, ...]
    ends: tuple[PlannedEnd, ...]
    limits: FitLimits

    def ends_of(self, side: int) -> tuple[PlannedEnd, ...]:
        """Return the mitred ends of a piece."""
        return tuple(end for end in self.ends if end.side == side)

    def reveal_off(self, moves_mm: tuple[tuple[float, float], ...]) -> tuple[float, ...]:
        """Return what moves of the opening's corners make of its sides, over the frame's slots.

        Args:
            moves_mm: (x, y) that each corner of the true reveal lies off the supposed one, (4, 2).

        Returns:
            Outward deviation of every side at its start, middle and end, (8 n,).
        """
        slots = [0.0] * (SLOTS * len(self.frame.sides))
        for index, side in enumerate(self.side_index):
            piece = self.frame.sides[index]
            ux, uy = direction(piece.start, piece.end)
            start, end = (
                dx * uy - dy * ux for dx, dy in (moves_mm[side], moves_mm[(side + 1) % 4])
            )
            slots[SLOTS * index + Slot.REVEAL_START] = start
            slots[SLOTS * index + Slot.REVEAL_MIDDLE] = (start + end) / 2.0
            slots[SLOTS * index + Slot.REVEAL_END] = end
        return tuple(slots)

    def known_off(self) -> tuple[float, ...]:
        """Return how far the read reveal lies off the lines that the trim was laid to, (8 n,).

        Nothing where the trim follows the shape; where it is a true rectangle, the quirk takes it.
        """
        return self.reveal_off(
            tuple(
                (true.x_mm - laid.x_mm, true.y_mm - laid.y_mm)
                for true, laid in zip(self.fitted.corners, self.trim.corners, strict=True)
            )
        )


def planned_faces(house: House, shapes: Shapes, held: frozenset[str]) -> tuple[PlannedFace, ...]:
    """Return every face that gets pieces, in the order of the house.

    Args:
        house: The house.
        shapes: Its fitted shapes.
        held: Marks that get no pieces, and no forecast.
    """
    found = []
    for opening in house.openings:
        if opening.mark in held or not is_forecast(opening):
            continue
        for fitted, readings in _fitted_faces(opening, shapes):
            try:
                found.append(planned_face(house, opening, fitted, readings))
            except PieceError:
                # The pieces of this opening were refused for the same reason, and it is held.
                continue
    return tuple(found)


def is_forecast(opening: Opening) -> bool:
    """Tell whether the fit of an opening's set is worked out: mitres round four straight sides."""
    is_four_sided = opening.outline is None or has_four_sides(opening.outline)
    return opening.arch is None and is_four_sided and has_mitred_corners(opening)


def planned_face(
    house: House, opening: Opening, fitted: FittedOpening, readings: OpeningReadings
) -> PlannedFace:
    """Return one face as planned.

    Raises:
        PieceError: The trim doesn't go round the opening.
    """
    trim = face_trim(house, opening, fitted)
    widths_mm = tuple(side.width_mm for side in trim.sides)
    frame = frame_of(trim.outline, widths_mm, _quirk_rooms_mm(opening, trim))
    side_index = (1, 2, 3) if trim.has_bare_bottom else (0, 1, 2, 3)
    return PlannedFace(
        opening=opening,
        readings=readings,
        fitted=fitted,
        trim=trim,
        frame=frame,
        side_index=side_index,
        ends=_ends(trim, frame, side_index),
        limits=FitLimits(gap_mm=opening.max_gap_mm),
    )


def _fitted_faces(
    opening: Opening, shapes: Shapes
) -> tuple[tuple[FittedOpening, OpeningReadings], ...]:
    fitted = [shape for shape in shapes.openings if shape.mark == opening.mark]
    read = [readings for _, readings in faces_of(opening)]
    faces = list(zip(fitted, read, strict=False))
    if opening.faces > 1 and len(faces) == 1:
        faces.append((mirrored(faces[0][0]), faces[0][1]))
    return tuple(faces)


def _quirk_rooms_mm(opening: Opening, trim: FaceTrim) -> tuple[tuple[float, float], ...]:
    """Return how far each side may come in and go out before its quirk is too small or large.

    A trim further out leaves a larger quirk; legs whose nails hold them have less room than that.
    """
    least_mm, most_mm = opening.quirk_band_mm
    rooms = []
    for side, quirk_mm in enumerate(trim.quirks_mm):
        in_mm, out_mm = max(0.0, quirk_mm - least_mm), max(0.0, most_mm - quirk_mm)
        if opening.tap_room_mm is not None and side in LEGS:
            in_mm, out_mm = min(in_mm, opening.tap_room_mm), min(out_mm, opening.tap_room_mm)
        rooms.append((in_mm, out_mm))
    return tuple(rooms)


def _ends(trim: FaceTrim, frame: Frame, side_index: tuple[int, ...]) -> tuple[PlannedEnd, ...]:
    mitred = {(joint.before, True) for joint in frame.joints}
    mitred |= {(joint.after, False) for joint in frame.joints}
    ends = []
    for index, side in enumerate(side_index):
        edges = trim.outline.edges(side)
        hooked_at_end = edges.end_deg >= LEAST_HOOK_DEG and (index, True) in mitred
        for is_end, saw_deg in ((False, edges.start_deg), (True, edges.end_deg)):
            if (index, is_end) not in mitred:
                continue
            ends.append(
                PlannedEnd(
                    side=index,
                    is_end=is_end,
                    saw_deg=saw_deg,
                    is_hooked=is_end if hooked_at_end else saw_deg >= LEAST_HOOK_DEG,
                )
            )
    return tuple(ends)

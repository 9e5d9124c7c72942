"""What was read of finished work, judged by a guide and by the crew's own limits."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.fixing.handover.guides import ChosenGuides
from longpoint.speech.said import say
from longpoint.survey.as_built import AsBuilt
from longpoint.survey.handover import Defect, DefectKind
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.trims.tolerances import Outcome, Subject, Tolerance, verdict

STEP_MM: Final = 0.5
"""Faces level to that pass by our own limit, as in the forecast."""

CORNERS: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))
SUBJECTS: Final = {
    DefectKind.JOINT: Subject.JOINT_GAP,
    DefectKind.SKIRTING: Subject.SKIRTING_GAP,
    DefectKind.PLUMB: Subject.WALL_PLUMB,
    DefectKind.FLAT: Subject.WALL_FLATNESS,
}


class What(StrEnum):
    """What was read."""

    JOINT = "joint"
    QUIRK = "quirk"
    STEP = "step"
    DEFECT = "defect"


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """One reading of finished work, judged.

    Attributes:
        place: Mark of the opening, or the place of a defect.
        face: "a" or "b" where both faces are trimmed, else "".
        room: Its room; may be empty.
        what: What was read.
        where: Where at the place, in words; of a defect what is wrong, as written.
        found_mm: What was read; None where nothing was measured.
        by_guide: What the guide says of it; None where it says nothing of such a thing.
        limit: The limit of the guide that decided; None where none did.
        own: Lowest and highest that the crew itself accepts; None where it says nothing.
    """

    place: str
    face: str = ""
    room: str = ""
    what: What
    where: str
    found_mm: float | None
    by_guide: Outcome | None = None
    limit: Tolerance | None = None
    own: tuple[float, float] | None = None

    @property
    def fails_guide(self) -> bool:
        """Tell whether the guide fails it."""
        return self.by_guide is Outcome.FAILS

    @property
    def fails_own(self) -> bool:
        """Tell whether it lies outside what the crew itself accepts."""
        if self.own is None or self.found_mm is None:
            return False
        low, high = self.own
        return not low - 1e-9 <= self.found_mm <= high + 1e-9


def judge_house(house: House, guides: ChosenGuides, month: float) -> tuple[Judged, ...]:
    """Return everything that was read of finished sets and written down as defects, judged.

    Args:
        house: The house.
        guides: The limits that judge it.
        month: Months since handing over; 0 at handing over. >= 0.
    """
    found: list[Judged] = []
    for opening in house.openings:
        for face, as_built in faces_read(opening):
            found += _set(opening, face, as_built, guides, month)
    rooms = room_of_places(house)
    found += [
        _defect(defect, rooms.get(defect.place, ""), house, guides, month)
        for defect in house.defects
    ]
    return tuple(found)


def faces_read(opening: Opening) -> Iterator[tuple[str, AsBuilt]]:
    """Give each face of an opening of which something was read once its set was up."""
    first = "a" if opening.faces > 1 else ""
    for face, as_built in ((first, opening.as_built), ("b", opening.as_built_b)):
        if as_built is not None:
            yield face, as_built


def room_of_places(house: House) -> dict[str, str]:
    """Return the room of each mark and of each room's own name."""
    return {
        **{room.name: room.name for room in house.rooms},
        **{opening.mark: opening.room for opening in house.openings},
        **{run.mark: run.room for run in house.runs},
        **{trim.mark: trim.room for trim in house.trims},
        **{held.mark: held.room for held in house.held},
    }


def _set(
    opening: Opening, face: str, as_built: AsBuilt, guides: ChosenGuides, month: float
) -> Iterator[Judged]:
    for corner, joint in zip(CORNERS, as_built.gaps, strict=True):
        read = [] if joint is None else [joint.heel_mm, joint.toe_mm]
        open_mm = [gap for gap in read if gap is not None]
        if open_mm:
            gap_mm = max(0.0, *open_mm)
            said = verdict(Subject.JOINT_GAP, gap_mm, guides.limits, month=month)
            yield Judged(
                place=opening.mark,
                face=face,
                room=opening.room,
                what=What.JOINT,
                where=corner,
                found_mm=gap_mm,
                by_guide=said.outcome if guides.limits else None,
                limit=said.by,
                own=(0.0, opening.max_gap_mm),
            )
    quirks = as_built.quirks
    sides = (
        ("head", quirks.head),
        (say("right leg"), quirks.right),
        (say("sill piece"), quirks.bottom),
        (say("left leg"), quirks.left),
    )
    for side, along in sides:
        seen = [quirk_mm for quirk_mm in along if quirk_mm is not None]
        for quirk_mm in dict.fromkeys((min(seen), max(seen)) if seen else ()):
            yield Judged(
                place=opening.mark,
                face=face,
                room=opening.room,
                what=What.QUIRK,
                where=side,
                found_mm=quirk_mm,
                own=opening.quirk_band_mm,
            )
    for corner, step_mm in zip(CORNERS, as_built.steps_mm, strict=True):
        if step_mm is not None:
            yield Judged(
                place=opening.mark,
                face=face,
                room=opening.room,
                what=What.STEP,
                where=corner,
                found_mm=step_mm,
                own=(0.0, STEP_MM),
            )


def _defect(defect: Defect, room: str, house: House, guides: ChosenGuides, month: float) -> Judged:
    outcome: Outcome | None = None
    limit: Tolerance | None = None
    if defect.kind is not None and defect.found_mm is not None and guides.limits:
        said = verdict(
            SUBJECTS[defect.kind],
            defect.found_mm,
            guides.limits,
            month=month,
            height_mm=defect.height_mm,
            on_bare_floor=house.handover.bare_floor,
        )
        outcome, limit = said.outcome, said.by
    return Judged(
        place=defect.place,
        room=room,
        what=What.DEFECT,
        where=defect.what,
        found_mm=defect.found_mm,
        by_guide=outcome,
        limit=limit,
    )

"""Advice at a set on the wall: what was planned of it, joined with what the crew read."""

from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import ShapeError, SurveyError
from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.planned_face import LEGS, PlannedFace, is_forecast, planned_faces
from longpoint.forecast.tapping.diagnosis import Diagnosis, diagnose
from longpoint.forecast.tapping.programme import TAP_ROOM_MM, TapRules
from longpoint.forecast.tapping.remedies import Remedy, remedy_for
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint, SeenQuirks
from longpoint.forecast.tapping.taps import TapPlan, plan_taps
from longpoint.forecast.tapping.words import Advice, advice_for
from longpoint.linear.port import LinearSolver
from longpoint.shape.fitted import Shapes
from longpoint.speech.said import joined, say, say_many
from longpoint.survey.as_built import AsBuilt
from longpoint.survey.house import House
from longpoint.survey.openings import Method, Opening

CORNERS: Final = ("bl", "br", "tr", "tl")
"""Corners in the order of an opening, as the house file calls them."""

AtCorners = tuple[float | None, float | None, float | None, float | None]
"""In the order of the corners; None: not read."""

NO_STEPS: Final[AtCorners] = (None, None, None, None)

PRIMED: Final = "prime"
"""A moulding whose material says so is painted, and filler is a way."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TapAdvice:
    """What is said of one set on the wall.

    Attributes:
        mark: Mark of its opening.
        face: "a", "b", or "" when one face is trimmed.
        frame: The set as planned.
        seen: What was read of it.
        limits: What counts as a fit.
        diagnosis: What the readings show.
        taps: What to tap, and what that leaves.
        remedy: What to do after the taps.
        words: All of it in sentences.
    """

    mark: str
    face: str
    frame: Frame
    seen: SeenFrame
    limits: FitLimits
    diagnosis: Diagnosis
    taps: TapPlan
    remedy: Remedy
    words: Advice


def tap_advice(
    house: House,
    shapes: Shapes,
    mark: str,
    face: str = "",
    *,
    solver: LinearSolver,
    sight_steps_mm: AtCorners = NO_STEPS,
) -> TapAdvice:
    """Return what to tap at a set that stands open, and what no tap will close.

    Args:
        house: The house.
        shapes: Its fitted shapes.
        mark: Mark of the opening.
        face: "a" or "b"; "": the first.
        solver: Solves linear programs.
        sight_steps_mm: Steps between inner edges, where they were read; see `seen_frame`.

    Raises:
        SurveyError: There is no such opening or face, or nothing was written down of its set.
        ShapeError: Its readings make no set of trim.
    """
    planned = _planned(house, shapes, mark, face)
    as_built = as_built_of(planned)
    if as_built is None:
        raise _nothing_read(planned)
    frame, limits, rules = planned.frame, planned.limits, tap_rules(planned)
    seen = seen_frame(planned, as_built, house.crew.feeler_mm, sight_steps_mm)
    diagnosis = diagnose(frame, seen)
    taps = plan_taps(frame, seen, limits, solver, rules)
    painted = all(PRIMED in profile.material.lower() for profile in planned.trim.profiles)
    remedy = remedy_for(
        frame, seen, limits, diagnosis, taps, solver, rules=rules, is_painted=painted
    )
    return TapAdvice(
        mark=mark,
        face=planned.fitted.face,
        frame=frame,
        seen=seen,
        limits=limits,
        diagnosis=diagnosis,
        taps=taps,
        remedy=remedy,
        words=advice_for(frame, seen, limits, diagnosis, taps, remedy),
    )


def as_built_of(planned: PlannedFace) -> AsBuilt | None:
    """Return what was written down of a face once it was up."""
    opening = planned.opening
    return opening.as_built_b if planned.fitted.face == "b" else opening.as_built


def joint_corners(planned: PlannedFace) -> tuple[int, ...]:
    """Return the corner of the opening at which each joint of a face stands, 0 bottom left."""
    return tuple((planned.side_index[joint.before] + 1) % 4 for joint in planned.frame.joints)


def seen_frame(
    planned: PlannedFace,
    as_built: AsBuilt,
    feeler_mm: float,
    sight_steps_mm: AtCorners = NO_STEPS,
) -> SeenFrame:
    """Return the readings of a set in the order of its planned frame.

    How far faces stand apart off the wall is no step between inner edges, so it isn't used.

    Args:
        planned: The face as planned.
        as_built: What was read, in the order of the opening's corners and sides.
        feeler_mm: Step of the feelers. > 0.
        sight_steps_mm: How far the inner edge of the piece that ends at each corner, going
            anticlockwise, stands further out there than that of the next.
    """
    joints = []
    for corner in joint_corners(planned):
        gap = as_built.gaps[corner]
        heel_mm, toe_mm = (None, None) if gap is None else (gap.heel_mm, gap.toe_mm)
        step_mm = sight_steps_mm[corner]
        joints.append(SeenJoint(heel_mm=heel_mm, toe_mm=toe_mm, step_mm=step_mm))
    along = as_built.quirks.anticlockwise()
    quirks = []
    for side in planned.side_index:
        quirk_mm = planned.trim.quirks_mm[side]
        start, middle, end = (None if q is None else q - quirk_mm for q in along[side])
        quirks.append(SeenQuirks(start_mm=start, middle_mm=middle, end_mm=end))
    return SeenFrame(
        joints=tuple(joints),
        quirks=tuple(quirks) if any(q.is_read for q in quirks) else (),
        feeler_mm=feeler_mm,
    )


def tap_rules(planned: PlannedFace) -> TapRules:
    """Return what may be tapped at a face: in a batch the legs a little, head and sill freely."""
    opening = planned.opening
    legs = frozenset(i for i, side in enumerate(planned.side_index) if side in LEGS)
    across = frozenset(range(len(planned.side_index))) - legs
    return TapRules(
        free=across if opening.method is Method.BATCH else frozenset(),
        fixed=legs if opening.tap_room_mm == 0.0 else frozenset(),
        tap_room_mm=opening.tap_room_mm or TAP_ROOM_MM,
    )


def _planned(house: House, shapes: Shapes, mark: str, face: str) -> PlannedFace:
    opening = next((o for o in house.openings if o.mark == mark), None)
    if opening is None:
        raise _no_opening(house, mark)
    if not is_forecast(opening):
        raise SurveyError(
            say("The set of {mark} is asked for.", mark=mark),
            say("What taps do is worked out for mitred sets round four straight sides only."),
            say(
                "Close this one by eye: look at each joint's heel and toe, and tap a "
                "little at a time."
            ),
        )
    alone = replace(house, openings=(opening,))
    faces = planned_faces(alone, shapes, frozenset())
    if not faces:
        raise ShapeError(
            say("The set of {mark} is asked for.", mark=mark),
            say("Its readings make no shape that trim goes round."),
            say("Look what is said of its readings, and read it again."),
        )
    found = next((f for f in faces if face in ("", f.fitted.face)), None)
    if found is None and not (face == "a" and opening.faces == 1):
        raise SurveyError(
            say("Face {face} of {mark} is asked for.", face=face, mark=mark),
            say_many(
                "{mark} is trimmed on {count} face.",
                "{mark} is trimmed on {count} faces.",
                mark=mark,
                count=opening.faces,
            ),
            say("Leave the face out, or ask for one of: a, b.")
            if opening.faces > 1
            else say("Leave the face out."),
        )
    return found or faces[0]


def _no_opening(house: House, mark: str) -> SurveyError:
    if mark in {entry.mark for entry in house.held}:
        return SurveyError(
            say("The set of {mark} is asked for.", mark=mark),
            say("What is written of that opening can't be used."),
            say("Look what is said of its readings first."),
        )
    marks = joined(", ", (opening.mark for opening in house.openings)) or "none"
    return SurveyError(
        say("The set of {mark!r} is asked for.", mark=mark),
        say("{house} has no opening of that mark.", house=house.name),
        say("Ask for one of: {marks}.", marks=marks),
    )


def _nothing_read(planned: PlannedFace) -> SurveyError:
    corners = joined(
        ", ",
        (say("{corners} = [0, 0]", corners=CORNERS[c]) for c in sorted(joint_corners(planned))),
    )
    where = _where(planned.opening, planned.fitted.face)
    return SurveyError(
        say("No gaps of {where} are written down.", where=where),
        say("Without them nothing can be told of the set."),
        say(
            "Read each joint at its heel and its toe, noughts too, and write at "
            "{where}: as_built = {{ gaps = {{ {corners} }} }}.",
            where=where,
            corners=corners,
        ),
    )


def _where(opening: Opening, face: str) -> str:
    return say("{mark}, face b", mark=opening.mark) if face == "b" else opening.mark

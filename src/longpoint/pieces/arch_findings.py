"""What is to be said of an arched head: its boards, its springing joints, how it was taken."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.face_set import FaceSet
from longpoint.pieces.face_trim import is_true_frame
from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, raised, say, say_many
from longpoint.survey.openings import Flush, Opening
from longpoint.survey.profiles import Profile
from longpoint.trims.arch import ArchTrim
from longpoint.trims.arch_segments import (
    MOST_SEGMENTS,
    STEEPEST_DEG,
    fewest_segments,
    segment_sizes,
)
from longpoint.trims.set_rings import LEFT, RIGHT

ARCH_BLANK: Final = "arch-blank"
ARCH_SEGMENTS: Final = "arch-segments"
ARCH_SPRINGING: Final = "arch-springing"
ARCH_CUT_FLAT: Final = "arch-cut-flat"
ARCH_TURNED: Final = "arch-turned"
STEEP_CUT: Final = "steep-cut"
NOT_FORECAST: Final = "not-forecast"
OWN_CORNERS: Final = "cut-to-own-corners"

COUNTS_SHOWN: Final = (3, 4, 5, 6)
"""Numbers of segments whose board is always told."""

SPARE_MM: Final = 0.5
"""A board this much too narrow by the figures still does: it is sawn to less than that."""

OFF_PLANE_MM: Final = 1.0
"""A lining nearer to the wall's plane than this counts as flush."""

WORTH_SAYING_MM: Final = 2.0
"""Springings that differ less in height are as level as the tape can tell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchFace:
    """One face of an arched opening while its pieces are being made.

    Attributes:
        set: Its set as if the head were straight; feet, sill piece, board and apron are right.
        written: The opening as it was written, its way of fixing included.
        rise_mm: Rise of its arch.
        trim: The arch's radii and springing joints.
        blank: Profile that the segments are cut from; None when none is named.
        count: Number of segments; None when it wasn't given and no number does.
    """

    set: FaceSet
    written: Opening
    rise_mm: float
    trim: ArchTrim
    blank: Profile | None
    count: int | None

    @property
    def units(self) -> Units:
        """Unit in which the house is printed."""
        return self.set.house.units


def arch_findings(face: ArchFace) -> tuple[Finding, ...]:
    """Return what is to be said of the arch of one face."""
    board = board_wanting(face)
    found = [board] if board is not None else []
    found += [_segments(face), _springing(face), *_turned(face), *_cut_flat(face)]
    found.append(
        not_forecast(
            face.written.mark,
            say(
                "{mark} has an arched head.",
                mark=face.written.mark,
            ),
        )
    )
    if is_true_frame(face.written):
        found.append(own_corners(face.written, say("An arched set")))
    return tuple(found)


def board_wanting(face: ArchFace) -> Finding | None:
    """Return why no segment can be cut: no board, or one too narrow; None when one does."""
    if face.blank is None:
        return _stop(
            face,
            say("no board is named to cut its segments from."),
            say("Name its profile as arch.blank: {boards}.", boards=_boards(face)),
        )
    width_mm = face.blank.width_mm
    has = say(
        "the board {blank} is {width} wide",
        blank=face.blank.name,
        width=format_with_unit(width_mm, face.units),
    )
    if face.count is None:
        return _stop(
            face,
            say(
                "{has}, which isn't enough for any number of segments up to {most_segments}.",
                has=has,
                most_segments=MOST_SEGMENTS,
            ),
            say("Name a wider board as arch.blank: {boards}.", boards=_boards(face)),
        )
    wanted_mm = segment_sizes(face.trim, face.count).board_mm
    if wanted_mm <= width_mm + SPARE_MM:
        return None
    wanted = say(
        "{count} segments need {wanted}",
        count=face.count,
        wanted=format_with_unit(wanted_mm, face.units),
    )
    fewest = fewest_segments(face.trim, width_mm)
    other = (
        ""
        if fewest is None
        else say(
            ", or write arch.segments = {fewest}",
            fewest=fewest,
        )
    )
    return _stop(
        face,
        say("{has}, and {wanted}.", has=has, wanted=wanted),
        say(
            "Name a wider board{other}.",
            other=other,
        ),
    )


def not_forecast(mark: str, read: str) -> Finding:
    """Return the note that no chance is worked out for an opening.

    Args:
        mark: Its mark.
        read: What of it isn't forecast.
    """
    return Finding(
        code=NOT_FORECAST,
        severity=Severity.NOTE,
        place=mark,
        read=read,
        wrong=say(
            "How likely it is to fit at the first try is worked out for mitres "
            "round four straight sides only, so it gets no verdict."
        ),
        do=say("Make a template, or cut one joint in waste and try it, before the rest."),
    )


def steep_cuts(mark: str, pieces: Iterable[Piece]) -> tuple[Finding, ...]:
    """Return what is to be said of ends cut steeper than a saw swings."""
    steep = [
        (abs(end.mitre_deg), piece.mark)
        for piece in pieces
        for end in (piece.left, piece.right)
        if abs(end.mitre_deg) > STEEPEST_DEG
    ]
    if not steep:
        return ()
    angle_deg, worst = max(steep)
    return (
        Finding(
            code=STEEP_CUT,
            severity=Severity.WARNING,
            place=mark,
            read=say(
                "{worst} is cut {angle} degrees off square.",
                worst=worst,
                angle=format_angle(angle_deg),
            ),
            wrong=say(
                "Past {steepest_deg:.0f} degrees (our limit, no source) few mitre saws swing.",
                steepest_deg=STEEPEST_DEG,
            ),
            do=say(
                "Lay the cut out on the face and saw it {angle} degrees off the "
                "piece's edge, with the piece clamped in a jig.",
                angle=format_angle(90.0 - angle_deg),
            ),
        ),
    )


def own_corners(opening: Opening, what: str) -> Finding:
    """Return the note that a frame of 45s was asked for where there can be none."""
    asked = say("method bench") if opening.method == "bench" else say("mitres at-stop")
    return Finding(
        code=OWN_CORNERS,
        severity=Severity.NOTE,
        place=opening.mark,
        read=say(
            "{mark} is to be made by {asked}, with every mitre at 45.",
            mark=opening.mark,
            asked=asked,
        ),
        wrong=say(
            "{what} is no rectangle, so its pieces are cut to its own corners.",
            what=what,
        ),
        do=say("Set the saw to the angles on the sheet."),
    )


def _stop(face: ArchFace, wrong: str, do: str) -> Finding:
    return Finding(
        code=ARCH_BLANK,
        severity=Severity.STOP,
        place=face.written.mark,
        read=say("The arch has the radii {radii}.", radii=_radii(face)),
        wrong=raised(wrong),
        do=do,
    )


def _radii(face: ArchFace) -> str:
    inner, outer = (
        format_with_unit(r, face.units) for r in (face.trim.inner_mm, face.trim.outer_mm)
    )
    return say("{inner} (inner edge) and {outer} (outer edge)", inner=inner, outer=outer)


def _boards(face: ArchFace) -> str:
    sizes = (segment_sizes(face.trim, count) for count in COUNTS_SHOWN)
    return joined(
        ", ",
        (
            say(
                "{count} segments {board}",
                count=each.count,
                board=format_with_unit(each.board_mm, face.units),
            )
            for each in sizes
        ),
    )


def _segments(face: ArchFace) -> Finding:
    counts = sorted({*COUNTS_SHOWN, *([face.count] if face.count else [])})
    rows = joined("; ", (_row(face, count) for count in counts))
    chosen = say("The sheet has {count}. ", count=face.count) if face.count else ""
    sizes = segment_sizes(face.trim, COUNTS_SHOWN[0])
    extra_deg = max(sizes.left_extra_deg, sizes.right_extra_deg)
    return Finding(
        code=ARCH_SEGMENTS,
        severity=Severity.NOTE,
        place=face.written.mark,
        read=say(
            "The arch has the radius {radius} at the lining, {radii} at the trim, "
            "and {half_deg:.1f} degrees either side of the crown.",
            radius=format_with_unit(face.trim.circle.radius_mm, face.units),
            radii=_radii(face),
            half_deg=face.trim.circle.half_deg,
        ),
        wrong=say("{rows}.", rows=rows),
        do=say(
            "{chosen}The two end segments run on to the springing joint, {extra} "
            "degrees further at the outer edge.{steps}",
            chosen=chosen,
            extra=format_angle(extra_deg),
            steps=_steps_words(face),
        ),
    )


def _steps_words(face: ArchFace) -> str:
    """Return how the faces step where the board isn't as thick as the legs."""
    legs_mm = [face.set.trim.profiles[side].thickness_mm for side in (LEFT, RIGHT)]
    if face.blank is None or all(mm == face.blank.thickness_mm for mm in legs_mm):
        return ""
    board, leg = (
        format_with_unit(mm, face.units) for mm in (face.blank.thickness_mm, max(legs_mm))
    )
    return say(
        " The board is {board} thick, the legs {leg}: plane it down, or let the faces step.",
        board=board,
        leg=leg,
    )


def _row(face: ArchFace, count: int) -> str:
    sizes = segment_sizes(face.trim, count)
    board, points = (
        format_length(length_mm, face.units) for length_mm in (sizes.board_mm, sizes.over_points_mm)
    )
    return say_many(
        "{count} segment: cut {saw_deg:.1f} off square, board {board} wide, "
        "{points} over the points",
        "{count} segments: cut {saw_deg:.1f} off square, board {board} wide, "
        "{points} over the points",
        count=count,
        saw_deg=sizes.saw_deg,
        board=board,
        points=points,
    )


def _springing(face: ArchFace) -> Finding:
    joints = (face.trim.left, face.trim.right)
    bow_mm = max(joint.bow_mm for joint in joints)
    cuts = joined(say(" and "), dict.fromkeys(format_angle(joint.leg_deg) for joint in joints))
    halves = joined(
        say(" and "), dict.fromkeys(format_angle(joint.break_deg / 2.0) for joint in joints)
    )
    shows = bow_mm > face.written.max_gap_mm
    return Finding(
        code=ARCH_SPRINGING,
        severity=Severity.WARNING if shows else Severity.NOTE,
        place=face.written.mark,
        read=say(
            "The legs' heads are cut {cuts} degrees off square at the springing.",
            cuts=cuts,
        ),
        wrong=say(
            "Half the turn from leg to curve would be {halves}, which doesn't "
            "run from corner to corner; and members of a moulding meet on a line "
            "that bows {bow_mm:.2f} mm off the straight cut.",
            halves=halves,
            bow_mm=bow_mm,
        )
        if face.trim.circle.half_deg < 89.5
        else say("The arch is a semicircle, so it springs square."),
        do=say("Ease the moulding at the joint, or take a plain board.")
        if shows
        else say("Set the saw to the angles on the sheet."),
    )


def _cut_flat(face: ArchFace) -> tuple[Finding, ...]:
    """Say that the way chosen for a proud or shy lining isn't worked out for an arch."""
    flush, plane = face.written.flush, face.written.readings.plane
    if flush not in (Flush.PACK, Flush.BACK_BEVEL) or plane is None:
        return ()
    off_mm = max(abs(mm) for mm in plane.corners_mm())
    if off_mm < OFF_PLANE_MM:
        return ()
    return (
        Finding(
            code=ARCH_CUT_FLAT,
            severity=Severity.WARNING,
            place=face.written.mark,
            read=say(
                'The lining is {off} off the wall, and flush = "{flush}" is asked for.',
                off=format_with_unit(off_mm, face.units),
                flush=flush.value,
            ),
            wrong=say(
                "Round an arch that isn't worked out: its pieces are cut flat, "
                "and joints there may stand open at the face."
            ),
            do=say(
                "Re-set the reveal first, or pack the pieces by eye and fit these joints by hand."
            ),
        ),
    )


def _turned(face: ArchFace) -> tuple[Finding, ...]:
    left_mm, right_mm = face.set.fitted.side_mm.fourth, face.set.fitted.side_mm.second
    if abs(left_mm - right_mm) < WORTH_SAYING_MM:
        return ()
    high = say("left") if left_mm > right_mm else say("right")
    left, right = (format_with_unit(mm, face.units) for mm in (left_mm, right_mm))
    return (
        Finding(
            code=ARCH_TURNED,
            severity=Severity.NOTE,
            place=face.written.mark,
            read=say(
                "The left springing is {left} up, the right one {right}.",
                left=left,
                right=right,
            ),
            wrong=say(
                "The arch is taken as part of one circle through both, its crown "
                "over the middle of the line between them, so the whole of it is "
                "turned with that line: up at the {high}.",
                high=high,
            ),
            do=say(
                "Check it with a template before cutting; if the crown stands over "
                "the middle of the sill instead, the curve is no circle."
            ),
        ),
    )

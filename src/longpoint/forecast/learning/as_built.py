"""What the joints and quirks of a frame as it went up say of the saw and of the lengths.

Going round a closed frame the turns of its pieces cancel, so that heels less toes, added up over
all its joints, are the angle errors of all its cuts and nothing else: no tapping, no length, no
reading and no lean of the opening enters. What is left unknown at a single joint is which of its
two pieces was turned how far, so one joint alone tells nothing of its cuts.
"""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.errors import Finding, QuantityError, Severity
from longpoint.forecast.learning.setup_key import AngleKey, SetupKey, SizeKey
from longpoint.quantities.uncertainty import combine, u_from_resolution
from longpoint.speech.said import joined, say
from longpoint.survey.as_built import AlongSide, JointRead

FEELER_MM: Final = 0.05
"""Step of a usual set of feelers; assumed."""

CUT_U_DEG: Final = 0.05
"""What one cut at the stop is out by, by itself; assumed."""

TAPER_U_MM: Final = 1.0
"""How far the sides of a doorway are from parallel over the height of its legs; assumed."""

WINDOW_CORNERS: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))
DOOR_CORNERS: Final = (say("top right"), say("top left"))

SIDES: Final = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltFrame:
    """A set of trim as it went up, gaps read before any was filled.

    Attributes:
        mark: House and opening; no two frames of a crew have the same.
        key: With what it was read and cut.
        mitre_length_mm: Length of each joint's mitre, in the order of `gaps`. > 0.
        gaps: Joints in the order bottom left, bottom right, top right, top left; a door's are top
            right, top left. None: not read.
        quirk_mm: Along the sides in the order bottom, right, head, left, None all along where there
            is no piece; empty when no quirk was read.
        planned_quirk_mm: Quirk it was cut for.
        dialled_deg: What was taken off each mitre for the saw's known error, mean of both swings.
        allowed_mm: What was taken off width and height for the tape's known error.
        legs_held_mm: Length of a door's legs where both were set to an even quirk and nailed before
            the head went on; None when they were free to splay, or for a window.
    """

    mark: str
    key: SetupKey
    mitre_length_mm: tuple[float, ...]
    gaps: tuple[JointRead | None, ...]
    quirk_mm: tuple[AlongSide, ...] = ()
    planned_quirk_mm: float = 0.0
    dialled_deg: float = 0.0
    allowed_mm: float = 0.0
    legs_held_mm: float | None = None

    def __post_init__(self) -> None:
        joints = len(self.gaps)
        fits = (
            joints in (len(DOOR_CORNERS), len(WINDOW_CORNERS))
            and len(self.mitre_length_mm) == joints
            and len(self.quirk_mm) in (0, SIDES)
            and all(0 < length_mm < math.inf for length_mm in self.mitre_length_mm)
            and (self.legs_held_mm is None or self.legs_held_mm > 0)
        )
        if not fits:
            raise QuantityError(
                say(
                    "{mark}: {joints} joints, {mitre_length_mm} lengths of mitre and "
                    "quirks of {quirk_mm} sides.",
                    mark=self.mark,
                    joints=joints,
                    mitre_length_mm=len(self.mitre_length_mm),
                    quirk_mm=len(self.quirk_mm),
                ),
                say(
                    "A window has four joints and a door two, each with a mitre of "
                    "some length; quirks are those of four sides."
                ),
                say("Give one for each joint and side, and None for what was not read."),
            )

    @property
    def is_closed(self) -> bool:
        """Tell whether its joints go all the way round."""
        return len(self.gaps) == len(WINDOW_CORNERS)

    @property
    def corners(self) -> tuple[str, ...]:
        """Names of its joints, in the order of its gaps."""
        return WINDOW_CORNERS if self.is_closed else DOOR_CORNERS

    @property
    def cuts(self) -> int:
        """How many mitres meet in its joints."""
        return 2 * len(self.gaps)


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltAngle:
    """What a frame says of the saw.

    Attributes:
        mark: Mark of the frame.
        key: What the error belongs to.
        over_cut_deg: How far past its angle the saw cuts where nothing is dialled off, mean of all
            cuts; more than 0 is steep and opens heels.
        u_deg: Its standard uncertainty, from feelers and single cuts.
    """

    mark: str
    key: AngleKey
    over_cut_deg: float
    u_deg: float


class Axis(StrEnum):
    """Which size of a frame."""

    WIDTH = "width"
    HEIGHT = "height"


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltSize:
    """How much too large a frame came out along one axis, with nothing allowed for. [mm]"""

    mark: str
    key: SizeKey
    axis: Axis
    too_large_mm: float


def mitre_length_mm(width_mm: float, saw_deg: float) -> float:
    """Return the length of a mitre across the face.

    Args:
        width_mm: Width of the face. > 0. [mm]
        saw_deg: Saw setting; 0 is a square cut. -90 < saw_deg < 90. [deg]

    Example:
        >>> round(mitre_length_mm(66.0, 45.0), 2)
        93.34

    References:
        Right triangle on the cut: cos(setting) = width / mitre.
    """
    return width_mm / math.cos(math.radians(saw_deg))


def angle_sum_deg(frame: BuiltFrame) -> float | None:
    """Return by how much all cuts of a frame together are past their angles.

    More than 0 opens heels, less opens toes. At a door, the turns of its two legs are in it.

    Args:
        frame: The frame.

    Returns:
        Sum over all cuts, what was dialled off not counted. None where an end wasn't read. [deg]

    Example:
        >>> frame = BuiltFrame(
        ...     mark="W1",
        ...     key=SetupKey(saw="S1"),
        ...     mitre_length_mm=(100.0,) * 4,
        ...     gaps=(JointRead(heel_mm=0.4, toe_mm=0.0),) * 4,
        ... )
        >>> round(angle_sum_deg(frame), 2)
        0.92

    References:
        At one joint heel - toe = m (e1 + e2 + t1 - t2), with e the angle errors of its cuts and t
        the turns of its pieces. Each turn comes in once with either sign, so they cancel.
    """
    slopes = []
    for joint, length_mm in zip(frame.gaps, frame.mitre_length_mm, strict=True):
        if joint is None or joint.heel_mm is None or joint.toe_mm is None:
            return None
        slopes.append((joint.heel_mm - joint.toe_mm) / length_mm)
    return math.degrees(math.fsum(slopes))


def built_angle(
    frame: BuiltFrame, *, feeler_mm: float = FEELER_MM, cut_u_deg: float = CUT_U_DEG
) -> tuple[BuiltAngle | None, tuple[Finding, ...]]:
    """Return what a frame says of the saw, however the fitter shared out its gaps.

    It is the error of the saw's scale, the same on both swings. The fence, which makes one swing
    steep and the other shallow, cancels in the sum: it steps the outer edges and opens nothing.

    Args:
        frame: The frame.
        feeler_mm: Step of the feelers. > 0. [mm]
        cut_u_deg: What one cut is out by, by itself. [deg]

    Returns:
        The mean over its cuts, or None with a note that says what is missing. A door's legs may
        splay, which opens both its joints as well: it is used only with its legs held, and then
        knows less.
    """
    total_deg = angle_sum_deg(frame)
    if total_deg is None:
        return None, (_joint_not_read(frame),)
    if not frame.is_closed and frame.legs_held_mm is None:
        return None, (_legs_free(frame),)
    angle = BuiltAngle(
        mark=frame.mark,
        key=frame.key.angle,
        over_cut_deg=total_deg / frame.cuts + frame.dialled_deg,
        u_deg=_u_deg(frame, feeler_mm, cut_u_deg),
    )
    return angle, ()


def built_sizes(frame: BuiltFrame) -> tuple[BuiltSize, ...]:
    """Return how much too large a frame came out, along each axis whose two sides were read.

    Moving the frame about in its opening makes one quirk as much wider as the other narrower, so
    the two together tell its size. A door stands on the floor: its height isn't told by one quirk.

    References:
        Too large by twice the mean of how far the quirks of two opposite sides are over the plan.
    """
    if not frame.quirk_mm:
        return ()
    bottom, right, head, left = (_over_mm(frame, side) for side in frame.quirk_mm)
    pairs = ((Axis.WIDTH, left, right), (Axis.HEIGHT, bottom, head))
    return tuple(
        BuiltSize(
            mark=frame.mark,
            key=frame.key.size,
            axis=axis,
            too_large_mm=one + other + frame.allowed_mm,
        )
        for axis, one, other in pairs
        if one is not None and other is not None
    )


def _over_mm(frame: BuiltFrame, side: AlongSide) -> float | None:
    start_mm, _, end_mm = side  # the middle tells of a bow
    read = [quirk_mm for quirk_mm in (start_mm, end_mm) if quirk_mm is not None]
    return math.fsum(read) / len(read) - frame.planned_quirk_mm if read else None


def _u_deg(frame: BuiltFrame, feeler_mm: float, cut_u_deg: float) -> float:
    feeler_u_mm = u_from_resolution(feeler_mm)
    terms = [cut_u_deg] * frame.cuts
    for length_mm in frame.mitre_length_mm:
        terms += [math.degrees(feeler_u_mm / length_mm)] * 2
    if frame.legs_held_mm is not None:
        terms.append(math.degrees(TAPER_U_MM / frame.legs_held_mm))
    return combine(terms) / frame.cuts


def _joint_not_read(frame: BuiltFrame) -> Finding:
    missing = [
        corner
        for corner, joint in zip(frame.corners, frame.gaps, strict=True)
        if joint is None or joint.heel_mm is None or joint.toe_mm is None
    ]
    return Finding(
        code="frame-not-closed",
        severity=Severity.NOTE,
        place=frame.mark,
        read=say("Heel or toe was not read at {missing}.", missing=joined(", ", missing)),
        wrong=say(
            "Tapping moves an open joint from corner to corner, so the saw shows "
            "only in the sum of all joints; the ones read are kept and nothing "
            "is learned of the saw."
        ),
        do=say("Read heel and toe at every joint before filling, a shut one as 0."),
    )


def _legs_free(frame: BuiltFrame) -> Finding:
    return Finding(
        code="legs-free",
        severity=Severity.NOTE,
        place=frame.mark,
        read=say("Both joints of the door were read."),
        wrong=say(
            "Legs that splay open them just as a saw does that cuts past its "
            "angle, so nothing is learned of the saw."
        ),
        do=say(
            "Set both legs to an even quirk and nail them before the head goes on, "
            "and say so; or read a window."
        ),
    )

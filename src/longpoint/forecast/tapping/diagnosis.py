"""What the gaps say: only what can be seen in them, never more."""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.forecast.fitup.frame import SLOTS, Frame, Slot
from longpoint.forecast.tapping.listening import Heard, listen
from longpoint.forecast.tapping.seen import SeenFrame, check_seen
from longpoint.forecast.tapping.told import FELT_MM, LENGTH_FELT_MM, AngleTold, LengthTold

SINGLE_CUT_DEG: Final = 0.05
"""How far one cut may be off on its own when the saw stands in its detent; assumed."""
ANY_CUT_DEG: Final = 0.5
"""How far one may be off before the gaps are looked at: wide, so that they decide; assumed."""


class Observable(StrEnum):
    """What can be told from the wall."""

    UNREAD = "unread"
    """Too little is read to say."""
    CLOSED = "closed"
    """No joint stands open or forced by more than `FELT_MM`, and nothing else shows."""
    POSE = "pose"
    """All of it is in how the pieces are nailed; tapping closes it."""
    ANGLE_SUM = "angle sum"
    """The cuts don't add up to the corners; no tapping changes that."""
    LENGTHS = "lengths"
    """Opposite pieces differ, or a pair is too long or too short."""
    WHOLE_SIZE = "whole size"
    """The whole set is too large or too small for its opening."""
    MIXED = "mixed"
    """More than one of these."""


class Blind(StrEnum):
    """What can't be told."""

    WHICH_END = "which end"
    """Which of the two pieces at a joint holds an angle error: both open it alike."""
    WHICH_LENGTH = "which length"
    """Which of two opposite pieces is wrong: only their difference shows."""
    SLIDE_OR_LENGTH = "slide or length"
    """A piece slid along, against one too long at an end and too short at the other."""
    PIECES_OR_OPENING = "pieces or opening"
    """A set too large, against an opening smaller than it was read."""
    ANGLES = "angles"
    """Whether the cuts add up: gaps are missing."""
    LENGTHS = "lengths"
    """Whether lengths are right: steps or quirks are missing, or an angle error hides it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnosis:
    """What the wall says.

    Attributes:
        observable: In one word.
        angles: One for a closed set; one per joint for an open one.
        lengths: Differences first, then those too long or short together.
        unread: How many of the joints' ends were not read.
        blind: What can't be told.
    """

    observable: Observable
    angles: tuple[AngleTold, ...]
    lengths: tuple[LengthTold, ...]
    unread: int
    blind: tuple[Blind, ...]


def diagnose(frame: Frame, seen: SeenFrame) -> Diagnosis:
    """Say what the readings of a set show, and what they can't.

    Args:
        frame: The set as it was meant.
        seen: What is read on the wall.

    Returns:
        Its class, with every size and uncertainty. No piece is ever named for an angle error:
        both pieces at a joint open it alike.

    Raises:
        ShapeError: The readings belong to another set.

    References:
        In a closed set the turns of the pieces cancel round the loop, so that the sum of
        (heel - toe) / joint length is the sum of all angle errors. Opposite lengths show in how
        the gaps, steps and turns close round the loop; size shows in the quirks.
    """
    check_seen(frame, seen)
    unread = sum(gap is None for gap in seen.gaps_mm)
    if unread == len(seen.gaps_mm):
        return Diagnosis(
            observable=Observable.UNREAD,
            angles=(),
            lengths=(),
            unread=unread,
            blind=(Blind.ANGLES, Blind.LENGTHS),
        )
    angles = _angles(frame, seen)
    lengths = _lengths(frame, seen, angles)
    observable = _observable(frame, seen, angles, lengths)
    return Diagnosis(
        observable=observable,
        angles=angles,
        lengths=lengths,
        unread=unread,
        blind=_blind(observable, angles, lengths),
    )


def _angles(frame: Frame, seen: SeenFrame) -> tuple[AngleTold, ...]:
    corners = tuple(_corner_sum(frame, joint) for joint in range(len(frame.joints)))
    longest_mm = max(joint.length_mm for joint in frame.joints)
    cut_u_rad = math.radians(ANY_CUT_DEG)
    if frame.is_closed:
        total = tuple(map(math.fsum, zip(*corners, strict=True)))
        (heard,) = listen(frame, seen, (total,), cut_u_rad=cut_u_rad)
        return (_angle(heard, None, longest_mm / len(frame.joints)),)
    heard_all = listen(frame, seen, corners, cut_u_rad=cut_u_rad)
    return tuple(
        _angle(heard, index, frame.joints[index].length_mm) for index, heard in enumerate(heard_all)
    )


def _angle(heard: Heard, joint: int | None, arm_mm: float) -> AngleTold:
    return AngleTold(
        joint=joint,
        over_deg=math.degrees(heard.value),
        u_deg=math.degrees(heard.u),
        left_mm=arm_mm * abs(heard.value),
        u_left_mm=arm_mm * heard.u,
    )


def _corner_sum(frame: Frame, index: int) -> tuple[float, ...]:
    """Return the weights of what the two cuts of one joint are off together."""
    joint = frame.joints[index]
    weights = [0.0] * (SLOTS * len(frame.sides))
    weights[SLOTS * joint.before + Slot.TURN_END] = 1.0
    weights[SLOTS * joint.after + Slot.TURN_START] = 1.0
    return tuple(weights)


def _lengths(
    frame: Frame, seen: SeenFrame, angles: tuple[AngleTold, ...]
) -> tuple[LengthTold, ...]:
    asked = _length_questions(frame)
    heard = listen(
        frame,
        seen,
        tuple(_length_sum(frame, *question) for question in asked),
        cut_u_rad=math.radians(_cut_u_deg(angles)),
    )
    return tuple(
        LengthTold(pieces=pieces, is_difference=is_difference, over_mm=h.value, u_mm=h.u)
        for (pieces, is_difference), h in zip(asked, heard, strict=True)
    )


def _cut_u_deg(angles: tuple[AngleTold, ...]) -> float:
    """Return how far one cut may be off, by what the angles say.

    When they are off, one cut may hold most of it, and no turn can be read off the gaps.
    """
    if not all(angle.is_told for angle in angles):
        return ANY_CUT_DEG
    off_deg = max((abs(angle.over_deg) for angle in angles if angle.is_wrong), default=0.0)
    return max(SINGLE_CUT_DEG, off_deg / 2.0)


def _length_questions(frame: Frame) -> tuple[tuple[tuple[int, ...], bool], ...]:
    """Return which pieces are asked about: pairs that may differ, then those that go together."""
    count = len(frame.sides)
    if not frame.is_closed:
        inner = tuple(range(1, count - 1))
        return ((inner, False),) if inner else ()
    if count == 4:
        pairs = ((0, 2), (1, 3))
        return (*((pair, True) for pair in pairs), *((pair, False) for pair in pairs))
    pairs_round = tuple((i, (i + 1) % count) for i in range(count - 1))
    return (*((pair, True) for pair in pairs_round), (tuple(range(count)), False))


def _length_sum(frame: Frame, pieces: tuple[int, ...], is_difference: bool) -> tuple[float, ...]:
    weights = [0.0] * (SLOTS * len(frame.sides))
    shares = (1.0, -1.0) if is_difference else (1.0 / len(pieces),) * len(pieces)
    for piece, share in zip(pieces, shares, strict=True):
        weights[SLOTS * piece + Slot.LENGTH_START] = share
        weights[SLOTS * piece + Slot.LENGTH_END] = share
    return tuple(weights)


def _observable(
    frame: Frame,
    seen: SeenFrame,
    angles: tuple[AngleTold, ...],
    lengths: tuple[LengthTold, ...],
) -> Observable:
    wrong_angle = any(angle.is_wrong for angle in angles)
    wrong_lengths = [length for length in lengths if length.is_wrong]
    if wrong_angle:
        return Observable.MIXED if wrong_lengths else Observable.ANGLE_SUM
    if wrong_lengths:
        return Observable.WHOLE_SIZE if _is_size(frame, lengths) else Observable.LENGTHS
    if not all(angle.is_told for angle in angles):
        return Observable.UNREAD
    stands_off = any(gap is not None and abs(gap) > FELT_MM for gap in seen.gaps_mm)
    return Observable.POSE if stands_off or None in seen.gaps_mm else Observable.CLOSED


def _is_size(frame: Frame, lengths: tuple[LengthTold, ...]) -> bool:
    """Tell whether no two pieces differ and all are off to the same side."""
    together = [length.over_mm for length in lengths if not length.is_difference]
    differ = any(length.is_wrong for length in lengths if length.is_difference)
    same_side = min(together) > 0.0 or max(together) < 0.0
    felt = min(map(abs, together)) > LENGTH_FELT_MM / 2.0
    return frame.is_closed and not differ and same_side and felt


def _blind(
    observable: Observable,
    angles: tuple[AngleTold, ...],
    lengths: tuple[LengthTold, ...],
) -> tuple[Blind, ...]:
    blind: list[Blind] = []
    if observable in (Observable.ANGLE_SUM, Observable.MIXED):
        blind.append(Blind.WHICH_END)
    if any(length.is_wrong and length.is_difference for length in lengths):
        blind.append(Blind.WHICH_LENGTH)
    if any(length.is_wrong for length in lengths):
        blind.append(Blind.SLIDE_OR_LENGTH)
    if any(length.is_wrong and not length.is_difference for length in lengths):
        blind.append(Blind.PIECES_OR_OPENING)
    if not all(angle.is_told for angle in angles):
        blind.append(Blind.ANGLES)
    if not all(length.is_told for length in lengths):
        blind.append(Blind.LENGTHS)
    return tuple(blind)

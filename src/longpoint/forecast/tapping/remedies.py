"""What to do about what no tap can cure: one remedy at a time."""

import math
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.diagnosis import Blind, Diagnosis, Observable
from longpoint.forecast.tapping.lie import lie_of
from longpoint.forecast.tapping.programme import TapRules, best_moves
from longpoint.forecast.tapping.seen import SeenFrame
from longpoint.forecast.tapping.taps import Cannot, TapPlan
from longpoint.forecast.tapping.told import LengthTold
from longpoint.linear.port import LinearSolver

FILLER_MM: Final = 1.0
"""Filler in a mitre up to this wide holds under paint; common practice, no source."""


class RemedyKind(StrEnum):
    """What is to be done once the taps are made."""

    GLUE_AND_PIN = "glue and pin"
    """It fits: fix it now, before it moves."""
    READ_MORE = "read more"
    """Read the missing joint ends; nothing can be settled before."""
    LOOSEN = "loosen"
    """Free a piece that is nailed too hard, and read again."""
    RECUT_ANGLE = "recut angle"
    """Take a shaving off one end, or glue one into the joints."""
    SHORTEN = "shorten"
    """Cut a piece, or a pair as one, shorter at the same angle."""
    REPLACE = "replace"
    """Cut anew what is too short."""
    SHIFT_SET = "shift set"
    """The joints are shut and only the quirk is off: shift the set as one, or leave it."""
    READ_AGAIN = "read again"
    """More tapping would do, or nothing that shows explains it: read again after the taps."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Recut:
    """A shaving off one end that brings the cuts to add up.

    Attributes:
        toe_mm: Taken off at the long point, along the piece; its long edge loses it. >= 0.
        heel_mm: Taken off at the short point; its short edge loses it. >= 0.
        turn_deg: How much its saw angle changes; negative: blunter.
    """

    toe_mm: float
    heel_mm: float
    turn_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedy:
    """One thing to do next.

    Attributes:
        kind: What.
        ends: (piece, joint) of each end that may hold the error, two to a joint: never one alone.
        recut: What one of these ends would lose, were all of the error in it; None elsewhere.
        shaving_mm: Instead: thickness at the open end of a shaving glued into each joint,
            tapering to nothing.
        pieces: The pieces in question, for lengths and loosening.
        shorter_mm: How much is to come off. >= 0.
        filler_will_do: Under paint, what is left may as well be filled.
    """

    kind: RemedyKind
    ends: tuple[tuple[int, int], ...] = ()
    recut: Recut | None = None
    shaving_mm: float = 0.0
    pieces: tuple[int, ...] = ()
    shorter_mm: float = 0.0
    filler_will_do: bool = False


def recut_of(frame: Frame, joint: int, piece: int, over_deg: float) -> Recut:
    """Return the shaving that takes an angle error out of one end.

    Args:
        frame: The set.
        joint: Index of the joint.
        piece: Which of its two pieces is cut.
        over_deg: How far the cuts are past their angle together.

    Returns:
        What comes off. Past the angle (heels open): all at the toe, the short edge keeps its
        length, the long edge loses. Short of it (toes open): all at the heel, and the piece is
        shorter by as much.

    References:
        Removal rt at the toe and rh at the heel, along the piece, turns a cut of length l and
        saw angle p by (rh - rt) cos p / l; cos p is width / l. A piece 60 wide mitred at 45,
        1 degree past: 2 x 60 x 0.01745 = 2.09 off the toe.
    """
    length_mm, width_mm = frame.joints[joint].length_mm, frame.sides[piece].width_mm
    off_mm = math.radians(abs(over_deg)) * length_mm**2 / width_mm
    is_past = over_deg > 0.0
    return Recut(
        toe_mm=off_mm if is_past else 0.0,
        heel_mm=0.0 if is_past else off_mm,
        turn_deg=-over_deg,
    )


def remedy_for(
    frame: Frame,
    seen: SeenFrame,
    limits: FitLimits,
    diagnosis: Diagnosis,
    plan: TapPlan,
    solver: LinearSolver,
    *,
    rules: TapRules | None = None,
    is_painted: bool = False,
) -> Remedy:
    """Return the one thing to do after the taps.

    Args:
        frame: The set.
        seen: What is read on the wall, before the taps.
        limits: What counts as a fit.
        diagnosis: What the readings say.
        plan: The taps and what they leave.
        solver: Solves linear programs.
        rules: What may be tapped, as for the plan.
        is_painted: Whether the set is to be painted, so that filler is a way.

    Returns:
        The remedy: the first that applies of fixing it, reading more, shifting the set, loosening,
        angle, length. Where filler would do it says so beside.
    """
    fill = is_painted and _can_fill(plan, limits)
    if Blind.ANGLES in diagnosis.blind or Cannot.PART_READ in plan.cannot:
        return Remedy(kind=RemedyKind.READ_MORE)
    left = set(plan.cannot) - {Cannot.NO_BETTER}
    if not left:
        return Remedy(kind=RemedyKind.GLUE_AND_PIN)
    shifted = _if_shifted(frame, seen, limits, plan, solver, rules or TapRules())
    if shifted is not None:
        return replace(shifted, filler_will_do=fill)
    wrong = [angle for angle in diagnosis.angles if angle.is_wrong]
    if wrong and left & {Cannot.GAP_LEFT, Cannot.QUIRK_LEFT, Cannot.STEP_LEFT}:
        worst = max(wrong, key=lambda angle: angle.left_mm)
        return _angle_remedy(frame, worst.over_deg, worst.joint, filler_will_do=fill)
    lengths = [length for length in diagnosis.lengths if length.is_wrong]
    if lengths:
        if diagnosis.observable is Observable.WHOLE_SIZE:
            lengths = [_whole_set(frame, lengths)]
        return _length_remedy(lengths, filler_will_do=fill)
    return Remedy(kind=RemedyKind.READ_AGAIN, filler_will_do=fill)


def _can_fill(plan: TapPlan, limits: FitLimits) -> bool:
    """Tell whether what is left is no more than a gap, and narrow enough for filler."""
    only_gaps = not set(plan.cannot) & {Cannot.FORCED_LEFT, Cannot.STEP_LEFT, Cannot.QUIRK_LEFT}
    worst_mm = plan.after_worst_mm
    return only_gaps and worst_mm is not None and limits.gap_mm < worst_mm <= FILLER_MM


def _if_shifted(
    frame: Frame,
    seen: SeenFrame,
    limits: FitLimits,
    plan: TapPlan,
    solver: LinearSolver,
    rules: TapRules,
) -> Remedy | None:
    """Return what to do when the pieces as they are could fit; None when they can't."""
    pieces = frozenset(range(len(frame.sides)))
    if not _fits_at_best(frame, seen, limits, solver, TapRules(free=pieces)):
        return None
    if set(plan.cannot) == {Cannot.NO_BETTER, Cannot.QUIRK_LEFT}:
        return Remedy(kind=RemedyKind.SHIFT_SET)
    if plan.taps and _fits_at_best(frame, seen, limits, solver, rules):
        return Remedy(kind=RemedyKind.READ_AGAIN)
    # One tap at a time won't do it: the pieces must come off their nails, or be set afresh.
    nailed = rules.fixed or (pieces - rules.free) or pieces
    return Remedy(kind=RemedyKind.LOOSEN, pieces=tuple(sorted(nailed)))


def _fits_at_best(
    frame: Frame, seen: SeenFrame, limits: FitLimits, solver: LinearSolver, rules: TapRules
) -> bool:
    """Tell whether the set could be shifted until everything is within what is allowed."""
    lie = lie_of(frame, seen, limits)
    moves_mm = best_moves(lie, rules, solver)
    return moves_mm is not None and all(
        row.ratio(row.after_mm(moves_mm)) <= 1.0 + 1e-6 for row in lie
    )


def _angle_remedy(
    frame: Frame, over_deg: float, joint: int | None, *, filler_will_do: bool
) -> Remedy:
    joints = range(len(frame.joints)) if joint is None else (joint,)
    ends = tuple(
        (piece, j) for j in joints for piece in (frame.joints[j].before, frame.joints[j].after)
    )
    # The end that loses most speaks for all: pieces of one width lose the same at equal corners.
    recuts = [recut_of(frame, j, piece, over_deg) for piece, j in ends]
    longest_mm = max(frame.joints[j].length_mm for j in joints)
    return Remedy(
        kind=RemedyKind.RECUT_ANGLE,
        ends=ends,
        recut=max(recuts, key=lambda recut: recut.toe_mm + recut.heel_mm),
        shaving_mm=longest_mm * math.radians(abs(over_deg)) / len(joints),
        filler_will_do=filler_will_do,
    )


def _whole_set(frame: Frame, lengths: list[LengthTold]) -> LengthTold:
    """Return the pieces of a whole set that is too large or small as one."""
    return LengthTold(
        pieces=tuple(range(len(frame.sides))),
        is_difference=False,
        over_mm=math.fsum(length.over_mm for length in lengths) / len(lengths),
        u_mm=max(length.u_mm for length in lengths),
    )


def _length_remedy(lengths: list[LengthTold], *, filler_will_do: bool) -> Remedy:
    """Return what to do about the largest length error; differences go first."""
    differ = [length for length in lengths if length.is_difference]
    worst = max(differ or lengths, key=lambda length: abs(length.over_mm))
    if worst.is_difference or worst.over_mm > 0.0:
        kind, shorter_mm = RemedyKind.SHORTEN, abs(worst.over_mm)
    else:
        kind, shorter_mm = RemedyKind.REPLACE, 0.0
    first_is_longer = worst.over_mm > 0.0
    pieces = worst.pieces if not worst.is_difference or first_is_longer else worst.pieces[::-1]
    return Remedy(kind=kind, pieces=pieces, shorter_mm=shorter_mm, filler_will_do=filler_will_do)

"""The cuts in the order they are made, and the settings that they need."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.sticks.order.saw_setting import (
    PROVED_AT_DEG,
    SawSetting,
    Side,
    end_settings,
    hold_at_saw,
)
from longpoint.sticks.plan import CutPlan, CutStick
from longpoint.survey.instruments import Saw, SkirtingCut

ABOUT_AS_LONG_MM: Final = 150.0
"""Sticks whose biggest pieces differ by no more than this may change places, so that like settings
stand next to each other: our choice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SawStep:
    """One piece cut off its stick.

    Attributes:
        number: Number of the step, from 1 through all sticks.
        stick: Name of the stick.
        place: Its place on the stick from the left, from 1.
        piece: Mark of the piece.
        turned: True when it lies turned end for end.
        hold: How it is held at the saw.
        left: Setting for the cut at its left end as it lies.
        right: Setting for the cut at its right end as it lies.
        changes: How often the saw is set anew for this step.
    """

    number: int
    stick: str
    place: int
    piece: str
    turned: bool
    hold: SkirtingCut
    left: SawSetting
    right: SawSetting
    changes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingUse:
    """One setting of the saw, and what it is for.

    Attributes:
        setting: The setting.
        count: How many ends are cut with it. > 0.
        pieces: Marks of their pieces, in the order of sawing, each once.
    """

    setting: SawSetting
    count: int
    pieces: tuple[str, ...]

    @property
    def is_at_45(self) -> bool:
        """True for a plain mitre or a plain bevel of 45.0."""
        setting = self.setting
        return {setting.swing_deg, setting.tilt_deg} == {0.0, PROVED_AT_DEG}

    @property
    def is_square(self) -> bool:
        """True for a square cut."""
        return self.setting.swing is Side.SQUARE and self.setting.tilt is Side.SQUARE


def saw_steps(plan: CutPlan, pieces: Sequence[Piece], saw: Saw) -> tuple[SawStep, ...]:
    """Return every cut of a plan in the order it is made.

    The sticks come in the order of `cutting_order`. On a stick the order is that of the plan.

    Args:
        plan: The cut plan.
        pieces: The pieces it was made for.
        saw: The saw in use, with what its test cuts gave.
    """
    by_mark = {piece.mark: piece for piece in pieces}
    steps: list[SawStep] = []
    before: SawSetting | None = None
    for stick in cutting_order(plan.sticks):
        for place, laid in enumerate(stick.laid, 1):
            piece = by_mark[laid.piece]
            hold = hold_at_saw(piece, saw)
            left, right = end_settings(piece, saw, turned=laid.turned)
            changes = (before is not None and before != left) + (left != right)
            steps.append(
                SawStep(
                    number=len(steps) + 1,
                    stick=stick.name,
                    place=place,
                    piece=piece.mark,
                    turned=laid.turned,
                    hold=hold,
                    left=left,
                    right=right,
                    changes=changes,
                )
            )
            before = right
    return tuple(steps)


def setting_changes(steps: Iterable[SawStep]) -> int:
    """Return how often the saw is set anew in all; the first setting doesn't count."""
    return sum(step.changes for step in steps)


def settings_used(steps: Iterable[SawStep]) -> tuple[SettingUse, ...]:
    """Return each setting that the steps need, with the ends cut with it.

    Square comes first, then the plain cuts of 45.0, mitres before bevels, left before right; then
    the odd ones by angle, the same angle left and right next to each other.
    """
    pieces: dict[SawSetting, list[str]] = {}
    for step in steps:
        for setting in (step.left, step.right):
            pieces.setdefault(setting, []).append(step.piece)
    used = [
        SettingUse(setting=setting, count=len(marks), pieces=tuple(dict.fromkeys(marks)))
        for setting, marks in pieces.items()
    ]
    return tuple(sorted(used, key=_setting_rank))


def cutting_order(sticks: Sequence[CutStick]) -> tuple[CutStick, ...]:
    """Return sticks in the order in which they are cut: as they come, but in turn.

    The sticks of a profile stay together. A stick waits while there is one with a much bigger
    piece, so that a spoiled piece can still become a smaller one.

    Args:
        sticks: The sticks; those of a plan come in this order already.
    """
    ordered: list[CutStick] = []
    for profile in dict.fromkeys(stick.profile for stick in sticks):
        waiting = [(_biggest_mm(stick), stick) for stick in sticks if stick.profile == profile]
        while waiting:
            least_mm = max(mm for mm, _ in waiting) - ABOUT_AS_LONG_MM
            turn = next(n for n, (mm, _) in enumerate(waiting) if mm >= least_mm)
            ordered.append(waiting.pop(turn)[1])
    return tuple(ordered)


def _biggest_mm(stick: CutStick) -> float:
    return max((laid.end_mm - laid.start_mm for laid in stick.laid), default=0.0)


def _setting_rank(use: SettingUse) -> tuple[bool, bool, bool, float, float, Side, Side]:
    setting = use.setting
    return (
        not use.is_square,
        not use.is_at_45,
        setting.tilt is not Side.SQUARE,
        setting.swing_deg,
        setting.tilt_deg,
        setting.swing,
        setting.tilt,
    )

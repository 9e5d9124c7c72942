"""The cuts in the order they are made, and the settings that they need."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.sticks.plan import CutPlan, CutStick
from longpoint.sticks.saw_setting import PROVED_AT_DEG, SawSetting, Side, end_settings, hold_at_saw
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
    for stick in cutting_order(plan.sticks, pieces, saw):
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


def named_in_cutting_order(plan: CutPlan, pieces: Sequence[Piece], saw: Saw) -> CutPlan:
    """Return the plan with its sticks in cutting order, numbered in that order by profile.

    What lies where on a stick stays as it was.
    """
    numbers: dict[str, int] = {}
    sticks = []
    for stick in cutting_order(plan.sticks, pieces, saw):
        numbers[stick.profile] = number = numbers.get(stick.profile, 0) + 1
        sticks.append(replace(stick, name=f"{stick.profile}-{number}"))
    return replace(plan, sticks=tuple(sticks))


def cutting_order(
    sticks: Sequence[CutStick], pieces: Sequence[Piece], saw: Saw
) -> tuple[CutStick, ...]:
    """Return sticks in the order in which they are cut.

    The sticks of a profile stay together; the stick with the biggest piece comes first, so that a
    spoiled piece can still become a smaller one. Sticks whose biggest pieces are about as long
    follow each other so that the saw is set anew as seldom as can be seen one stick ahead.

    Args:
        sticks: The sticks.
        pieces: The pieces they were planned for.
        saw: The saw in use.
    """
    by_mark = {piece.mark: piece for piece in pieces}
    ordered: list[CutStick] = []
    for profile in dict.fromkeys(stick.profile for stick in sticks):
        waiting = sorted(
            (
                (_biggest_mm(stick), stick, _stick_settings(stick, by_mark, saw))
                for stick in sticks
                if stick.profile == profile
            ),
            key=lambda each: -each[0],
        )
        last: tuple[SawSetting, ...] = ()
        while waiting:
            least_mm = waiting[0][0] - ABOUT_AS_LONG_MM
            able = [each[2] for each in waiting if each[0] >= least_mm]
            news = [_new_settings(last, settings) for settings in able]
            _, stick, last = waiting.pop(news.index(min(news)) if last else 0)
            ordered.append(stick)
    return tuple(ordered)


def _biggest_mm(stick: CutStick) -> float:
    return max((laid.end_mm - laid.start_mm for laid in stick.laid), default=0.0)


def _stick_settings(
    stick: CutStick, by_mark: Mapping[str, Piece], saw: Saw
) -> tuple[SawSetting, ...]:
    """Settings of a stick's cuts from its left end to its right."""
    return tuple(
        setting
        for laid in stick.laid
        for setting in end_settings(by_mark[laid.piece], saw, turned=laid.turned)
    )


def _new_settings(last: Sequence[SawSetting], following: Sequence[SawSetting]) -> int:
    """How many settings a stick brings that the one before hasn't, and one more where they meet."""
    return (last[-1:] != following[:1]) + len(set(following).difference(last))


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

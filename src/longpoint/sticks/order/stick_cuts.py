"""Every cut of a stick in the order in which it is made, and which of them serve two pieces."""

from collections.abc import Sequence
from dataclasses import dataclass

from longpoint.sticks.order.saw_order import SawStep
from longpoint.sticks.order.saw_setting import SawSetting


@dataclass(frozen=True, slots=True, kw_only=True)
class StickCut:
    """One cut through a stick.

    Attributes:
        number: Its number on the stick, from 1 at the left end.
        setting: How the saw is set.
        is_set_anew: True when the saw stood otherwise at the cut before, on whichever stick.
        left: Mark of the piece whose right end it makes; None at the first cut, or where the cut
            serves the next piece alone.
        right: Mark of the piece whose left end it makes; None where it serves the one before alone.
    """

    number: int
    setting: SawSetting
    is_set_anew: bool
    left: str | None
    right: str | None

    @property
    def is_shared(self) -> bool:
        """Tell whether one cut ends a piece and begins the next."""
        return self.left is not None and self.right is not None


def cuts_by_stick(steps: Sequence[SawStep]) -> dict[str, tuple[StickCut, ...]]:
    """Return the cuts of each stick by its name, in the order in which they are made.

    Two pieces that follow each other share a cut where both ends ask for the same setting, held the
    same way: the nester has laid them a saw cut apart. The very first cut sets the saw, but isn't
    counted as set anew.

    Args:
        steps: The pieces in the order of sawing, from `saw_steps`.
    """
    found: dict[str, list[StickCut]] = {}
    before: SawSetting | None = None
    last: SawStep | None = None
    for step in steps:
        cuts = found.setdefault(step.stick, [])
        follows = last is not None and last.stick == step.stick
        if follows and last is not None and last.right == step.left and last.hold is step.hold:
            made = cuts[-1]
            cuts[-1] = StickCut(
                number=made.number,
                setting=made.setting,
                is_set_anew=made.is_set_anew,
                left=made.left,
                right=step.piece,
            )
        else:
            cuts.append(_cut(cuts, step.left, before, right=step.piece))
        cuts.append(_cut(cuts, step.right, step.left, left=step.piece))
        before, last = step.right, step
    return {stick: tuple(cuts) for stick, cuts in found.items()}


def _cut(
    cuts: Sequence[StickCut],
    setting: SawSetting,
    before: SawSetting | None,
    left: str | None = None,
    right: str | None = None,
) -> StickCut:
    return StickCut(
        number=len(cuts) + 1,
        setting=setting,
        is_set_anew=before is not None and before != setting,
        left=left,
        right=right,
    )

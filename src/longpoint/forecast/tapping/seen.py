"""What the carpenter sees on the wall: gaps by the feeler, steps by eye, quirks by the rule."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import ShapeError
from longpoint.forecast.fitup.frame import Frame
from longpoint.speech.said import say

FEELER_MM: Final = 0.05
"""Step of the feeler gauge; each gap is read to the nearest."""
STEP_U_MM: Final = 0.1
"""Of a step read by eye or fingernail; assumed."""
QUIRK_U_MM: Final = 0.25
"""Of a quirk read with a rule; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenJoint:
    """One joint as read; None: not read.

    Attributes:
        heel_mm: Gap at the short points. Negative: the wood is forced, by about that much.
        toe_mm: Gap at the long points.
        step_mm: How far the inner edge of the piece before passes that of the piece after,
            outwards along the joint. Anticlockwise, as the frame goes.
    """

    heel_mm: float | None = None
    toe_mm: float | None = None
    step_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenQuirks:
    """How far the quirk of one side is over what was planned; None: not read.

    Attributes:
        start_mm: At the side's first corner, anticlockwise. Positive: the piece stands too far out.
        middle_mm: Half way along.
        end_mm: At its other corner.
    """

    start_mm: float | None = None
    middle_mm: float | None = None
    end_mm: float | None = None

    @property
    def is_read(self) -> bool:
        """Tell whether there is any reading of this side."""
        return any(q is not None for q in (self.start_mm, self.middle_mm, self.end_mm))


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenFrame:
    """All that is read of one set.

    Attributes:
        joints: In the order of the frame's joints.
        quirks: In the order of its sides; empty: none read.
        feeler_mm: Step of the feeler gauge. > 0.
        step_u_mm: Standard uncertainty of a step; assumed.
        quirk_u_mm: Standard uncertainty of a quirk; assumed.
    """

    joints: tuple[SeenJoint, ...]
    quirks: tuple[SeenQuirks, ...] = ()
    feeler_mm: float = FEELER_MM
    step_u_mm: float = STEP_U_MM
    quirk_u_mm: float = QUIRK_U_MM

    @property
    def gaps_mm(self) -> tuple[float | None, ...]:
        """Heel and toe of each joint, joint after joint, (2 x joints,)."""
        return tuple(gap for joint in self.joints for gap in (joint.heel_mm, joint.toe_mm))

    @property
    def worst_gap_mm(self) -> float | None:
        """The widest open joint that was read; None without a reading."""
        return max((gap for gap in self.gaps_mm if gap is not None), default=None)

    def quirks_of(self, side: int) -> SeenQuirks:
        """Return what was read of a side."""
        return self.quirks[side] if self.quirks else SeenQuirks()


def check_seen(frame: Frame, seen: SeenFrame) -> None:
    """Make sure that the readings belong to the frame.

    Raises:
        ShapeError: They are of another number of joints or sides.
    """
    joints, sides = len(frame.joints), len(frame.sides)
    if len(seen.joints) == joints and len(seen.quirks) in (0, sides):
        return
    raise ShapeError(
        say(
            "Readings of {joints} joints and {quirks} sides were given.",
            joints=len(seen.joints),
            quirks=len(seen.quirks),
        ),
        say("The set has {joints} joints and {sides} pieces.", joints=joints, sides=sides),
        say("Give one line per joint and per piece, with nothing in it where none was read."),
    )

"""What a crew wrote down of a set once it was up: gaps before filling, quirks, steps."""

from dataclasses import dataclass

from longpoint.survey.per_side import PerSide

AlongSide = tuple[float | None, float | None, float | None]
"""Start, middle and end of a side going anticlockwise; None where nothing was read. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class JointRead:
    """How far one mitre stood open; less than 0 where its pieces bound. [mm]

    Attributes:
        heel_mm: At the inner end, None when not read.
        toe_mm: At the outer end, None when not read.
    """

    heel_mm: float | None = None
    toe_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AsBuilt:
    """A set of trim as it went up.

    Attributes:
        gaps: Joints in the order bottom left, bottom right, top right, top left; None: not read.
        quirks: Quirk along each side.
        steps_mm: How far the faces stand apart at the same corners; None: not read.
    """

    gaps: tuple[JointRead | None, JointRead | None, JointRead | None, JointRead | None]
    quirks: PerSide[AlongSide]
    steps_mm: tuple[float | None, float | None, float | None, float | None]

    @property
    def says_nothing(self) -> bool:
        """Tell whether nothing at all was read."""
        read = (*self.gaps, *self.steps_mm, *(x for s in self.quirks.anticlockwise() for x in s))
        return all(each is None for each in read)

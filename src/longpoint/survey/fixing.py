"""What the crew tells of its nails and of the wall behind the trim."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Nail:
    """One size of nail that the crew has.

    Attributes:
        gauge: As the box gives it.
        length_mm: Whole length. > 0. [mm]
        diameter_mm: Read off the box; None: what wire gauges make of the gauge. [mm]
    """

    gauge: int
    length_mm: float
    diameter_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingSetup:
    """What the house file tells of nails and walls; None stands for what is to be assumed.

    Attributes:
        country: Whose building customs hold ("uk"); empty: those of the house's dialect.
        nails: Sizes that the crew has; empty: not told.
        lining_mm: Thickness of the linings' edge, where an opening doesn't give its own.
        packing_mm: Room between lining and stud.
        board_mm: Thickness of the board on the wall, over the studs.
        stud_face_mm: Width of the stud beside a lining.
        stud_depth_mm: How deep the studs are into the wall.
        stud_spacing_mm: From stud to stud.
        spacing_mm: From nail to nail along a piece.
        first_mm: First nail from the end or the mitre's point.
        frame_wood: Timber of the studs, for comparing one nail's hold with another's.
        built: Year the house was built; for old paint and old boards.
        assumed: True when the file tells nothing of fixing.
    """

    country: str = ""
    nails: tuple[Nail, ...] = ()
    lining_mm: float | None = None
    packing_mm: float | None = None
    board_mm: float | None = None
    stud_face_mm: float | None = None
    stud_depth_mm: float | None = None
    stud_spacing_mm: float | None = None
    spacing_mm: float | None = None
    first_mm: float | None = None
    frame_wood: str = ""
    built: int | None = None
    assumed: bool = False

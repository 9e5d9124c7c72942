"""What the nails of a cornice and of a jamb lining pass, and what they hold in.

A cornice leans across the corner of wall and ceiling, and is nailed where it is thin: near its
edges, where it is taken as half as thick as it is at most unless its thin edge is told. Flats on
its back, which let a nail hold a little more, are left out.

References:
    The geometry is our own; a nail square to wall or ceiling near each edge, into studs and into
    joists or backing, and linings nailed in pairs through packers: common practice, no source.
    At least 25 mm in a stud: as in `nail_lines`.
"""

import math
from typing import Final

from longpoint.fixing.nail_lines import END_COVER_MM, INTO_STUD_MM, Bed, Into
from longpoint.fixing.wall_behind import WallBehind
from longpoint.survey.trims import TrimEntry
from longpoint.trims.cornice import spring_of

CORNICE_EDGE_MM: Final = 8.0
"""From an edge of a cornice to its nails; common practice, no source."""
EDGE_SHARE: Final = 0.5
"""A cornice's thickness at its edges, where it tells none; ours, no source."""
USUAL_SPRING_DEG: Final = 45.0
"""Taken where a cornice tells no spring; it is then held back, so this is seldom met."""
PACKED_APART_MM: Final = 450.0
"""From packer to packer along a lining; common practice, no source."""


def spring_deg(entry: TrimEntry | None) -> float:
    """Return the angle between a cornice's back and the wall. [deg]"""
    values = entry.values if entry is not None else {}
    written, drop, out = (values.get(key) for key in ("spring", "drop", "projection"))
    if written is not None:
        return 90.0 - written if values.get("spring_from") == "ceiling" else float(written)
    return spring_of(drop, out) if drop and out else USUAL_SPRING_DEG


def sprung_beds(thick_mm: float, from_wall_deg: float, wall: WallBehind) -> tuple[Bed, Bed]:
    """Return the beds of the two lines of a cornice: into the studs, and over the ceiling.

    Args:
        thick_mm: Thickness of the moulding near its edges. [mm]
        from_wall_deg: Angle between its back and the wall, 0 to 90. [deg]
        wall: What stands behind; the ceiling's board is taken as thick as the wall's.

    Example:
        >>> from longpoint.survey.house_file import read_house
        >>> from longpoint.fixing.wall_behind import wall_behind
        >>> written = {"format": "longpoint-house/1", "name": "Wren House"}
        >>> wall = wall_behind(read_house(written).house)
        >>> [round(bed.through_mm, 1) for bed in sprung_beds(10.0, 45.0, wall)]
        [32.3, 32.3]
    """
    beds = []
    for into, lean_deg in ((Into.STUD, from_wall_deg), (Into.JOIST, 90.0 - from_wall_deg)):
        lean = math.radians(lean_deg)
        trim_mm = thick_mm / math.cos(lean) + CORNICE_EDGE_MM * math.sin(lean)
        through_mm = trim_mm + wall.board.value_mm
        beds.append(
            Bed(
                into=into,
                through_mm=through_mm,
                thin_mm=through_mm,
                least_hold_mm=INTO_STUD_MM,
                cover_mm=max(0.0, wall.stud_depth.value_mm - END_COVER_MM),
                is_sideways=False,
                trim_mm=trim_mm,
                board_mm=wall.board.value_mm,
            )
        )
    return (beds[0], beds[1])


def packed_bed(thick_mm: float, wall: WallBehind) -> Bed:
    """Return the bed of a lining's nails: through it and its packers, into the stud's side.

    Args:
        thick_mm: Thickness of the lining. [mm]
        wall: What stands behind it.
    """
    through_mm = thick_mm + wall.packing.value_mm
    return Bed(
        into=Into.STUD,
        through_mm=through_mm,
        thin_mm=through_mm,
        least_hold_mm=INTO_STUD_MM,
        cover_mm=max(0.0, wall.stud_face.value_mm - END_COVER_MM),
        is_sideways=False,
        trim_mm=thick_mm,
    )

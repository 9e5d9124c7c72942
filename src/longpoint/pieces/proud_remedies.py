"""Mitred corners whose lining stands off the wall, and what each way to mend them needs."""

import math
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Flush, Joint, Layout, Opening
from longpoint.survey.readings import Plane
from longpoint.trims.tilt import (
    MOST_TILT_DEG,
    ClosingCut,
    Lie,
    Opened,
    bearing_mm,
    closing_cuts,
    face_step_mm,
    level_lies,
    packer_mm,
    plain_cuts_open,
    tilt_deg,
)

ASSUMED_EDGE_MM: Final = 19.0
"""Thickness of the reveal's edge where it wasn't read."""

SAID_FROM_MM: Final = 1.0
"""A lining less than this off the wall is taken to be in its plane."""

BACK_BEVEL_TO_MM: Final = 2.0
PACK_TO_MM: Final = 4.0
"""Up to which a proud lining is met at the saw, and up to which with packers; beyond, the reveal
is put right. Common practice, no source."""

CORNER_NAMES: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))
SIDE_NAMES: Final = (say("sill piece"), say("right leg"), "head", say("left leg"))

_LEGS: Final = (1, 3)
_GRAVITY: Final = (Flush.LEAVE, Flush.BACK_BEVEL, Flush.PACK, Flush.RE_SET)


@dataclass(frozen=True, slots=True, kw_only=True)
class Resting:
    """One of the two pieces at a corner, and what it rests on there.

    Attributes:
        side: Its side: 0 bottom, 1 right, 2 head, 3 left.
        flat: How it would lie on a lining in plane with the wall.
        bears_mm: What it bears on along its back, as the lining stands; 0: nothing tilts it.
        on_lining_mm: How wide the lining's edge is under it; 0 where it is clear of the lining.
        tilted: How it lies when it rests on the lining and on the wall.
    """

    side: int
    flat: Lie
    bears_mm: float
    on_lining_mm: float
    tilted: Lie


@dataclass(frozen=True, slots=True, kw_only=True)
class ProudCorner:
    """A mitred corner whose lining is off the wall.

    One reading stands for the corner, so both linings that meet there are taken to be as proud;
    what changes when only one of them is, is worked out beside it.

    Attributes:
        corner: 0 bottom left, 1 bottom right, 2 top right, 3 top left.
        corner_deg: Its angle inside the opening.
        proud_mm: Lining's edge off the wall; negative: shy.
        first: The piece of the side that ends here, anticlockwise; its left end at the saw.
        second: The piece of the side that starts here; its right end at the saw.
    """

    corner: int
    corner_deg: float
    proud_mm: float
    first: Resting
    second: Resting

    @property
    def name(self) -> str:
        """Where it is: "top left"."""
        return CORNER_NAMES[self.corner]

    @property
    def pieces(self) -> tuple[Resting, Resting]:
        """Both pieces."""
        return self.first, self.second

    def both_open(self) -> Opened:
        """Return how plain cuts stand open when both pieces tilt."""
        return plain_cuts_open(self.corner_deg, self.first.tilted, self.second.tilted)

    def one_opens(self) -> Opened:
        """Return how they stand open when only one of the two linings is off: the worse case."""
        alone = (
            plain_cuts_open(self.corner_deg, self.first.tilted, self.second.flat),
            plain_cuts_open(self.corner_deg, self.first.flat, self.second.tilted),
        )
        return max(alone, key=max)

    def step_mm(self) -> float:
        """Return how far the faces step at the heel when both tilt, beyond their thicknesses."""
        planned_mm = self.first.flat.thickness_mm - self.second.flat.thickness_mm
        return abs(face_step_mm(self.first.tilted, self.second.tilted) - planned_mm)

    def step_alone_mm(self) -> float:
        """Return how far the face of one that tilts alone stands off at the heel: the worse case.

        Back-bevel closes such a joint too, and leaves this step.
        """
        return max(abs(face_step_mm(each.tilted, each.flat)) for each in self.pieces)

    def back_bevels(self) -> tuple[ClosingCut, ClosingCut]:
        """Return the cuts of the two ends, each piece lying as its lining tilts it."""
        return closing_cuts(self.corner_deg, self.first.tilted, self.second.tilted)


class Packing(NamedTuple):
    """The lower piece of a corner packed until both faces are level.

    Attributes:
        side: The side whose piece is packed.
        thick_mm: Packer on the lining's edge at the joint, where that lining is in plane.
        on_proud_mm: The same where that lining is as proud as the corner was read; 0: none.
        cuts: Compound cuts of the first and the second piece of the corner.
    """

    side: int
    thick_mm: float
    on_proud_mm: float
    cuts: tuple[ClosingCut, ClosingCut]


def is_mitred(opening: Opening) -> bool:
    """Tell whether the set is of four sides (three on a floor or board) that meet in mitres."""
    return opening.joint is Joint.MITRE and opening.arch is None and opening.outline is None


def edge_mm(opening: Opening) -> float:
    """Return the thickness of the reveal's edge, read or assumed."""
    return ASSUMED_EDGE_MM if opening.lining_edge_mm is None else opening.lining_edge_mm


def face_plane(opening: Opening, *, is_second: bool) -> Plane | None:
    """Return the plane readings of a face, None where none were taken there."""
    readings = opening.readings_b if is_second else opening.readings
    return None if readings is None else readings.plane


def is_proud_all_along(plane: Plane, side: int) -> bool:
    """Tell whether a side's lining was read proud at both of its corners."""
    figures = plane.corners_mm()
    return min(figures[side], figures[(side + 1) % 4]) >= SAID_FROM_MM


def proud_corners(
    house: House,
    opening: Opening,
    plane: Plane,
    corner_deg: tuple[float, ...],
    *,
    is_second: bool = False,
) -> tuple[ProudCorner, ...]:
    """Return the mitred corners at which the lining is a millimetre or more off the wall.

    A shy corner stands among them if the trim is nailed down on the lining; left to bridge the
    step it doesn't tilt.

    Args:
        house: Gives the profiles.
        opening: Its settings.
        plane: Readings of this face.
        corner_deg: Angle at each corner, from bottom left anticlockwise, (4,). [deg]
        is_second: True for the second face, seen from its own side.

    Raises:
        PieceError: A proud corner would tilt its trim more than trim is ever nailed on.
    """
    if not is_mitred(opening):
        return ()
    figures = plane.corners_mm()
    return tuple(
        _proud_corner(house, opening, corner, figures[corner], corner_deg[corner], is_second)
        for corner in ((0, 1, 2, 3) if opening.layout is Layout.ALL_ROUND else (2, 3))
        if abs(figures[corner]) >= SAID_FROM_MM
    )


def _proud_corner(
    house: House,
    opening: Opening,
    corner: int,
    proud_mm: float,
    corner_deg: float,
    is_second: bool,
) -> ProudCorner:
    first, second = (
        resting(house, opening, side, proud_mm, is_second=is_second)
        for side in ((corner - 1) % 4, corner)
    )
    return ProudCorner(
        corner=corner, corner_deg=corner_deg, proud_mm=proud_mm, first=first, second=second
    )


def resting(
    house: House, opening: Opening, side: int, proud_mm: float, *, is_second: bool = False
) -> Resting:
    """Return what the piece along a side rests on where its lining is so far off the wall.

    A lining too shy for trim to be nailed down on it is bridged, and tilts nothing.

    Raises:
        PieceError: A proud one would tilt the piece more than trim is ever nailed on.
    """
    names = opening.profiles.mirrored() if is_second else opening.profiles
    quirks = opening.quirk_mm.mirrored() if is_second else opening.quirk_mm
    profile = house.profile(names.anticlockwise()[side])
    quirk_mm = quirks.anticlockwise()[side]
    lining_mm = edge_mm(opening)
    flat = Lie(width_mm=profile.width_mm, thickness_mm=profile.thickness_mm)
    bears_mm = bearing_mm(proud_mm, profile.width_mm, quirk_mm, lining_mm)
    if -proud_mm > bears_mm * math.sin(math.radians(MOST_TILT_DEG)):
        bears_mm = 0.0
    return Resting(
        side=side,
        flat=flat,
        bears_mm=bears_mm,
        on_lining_mm=min(profile.width_mm, max(0.0, lining_mm - quirk_mm)),
        tilted=replace(flat, tilt_deg=tilt_deg(proud_mm, bears_mm)),
    )


def packing(at: ProudCorner) -> Packing | None:
    """Return what levels a proud corner: both pieces at one rise, both ends compound.

    The piece that its lining lifts less is packed; of two alike the leg is taken to be the tilted
    one, and the head or sill piece gets the packer.

    Args:
        at: The corner, its lining proud.

    Returns:
        The packer and the cuts; None where neither piece touches the lining.

    Raises:
        PieceError: The packed piece would tilt more than trim is ever nailed on.
    """
    if at.first.tilted.rise_mm == at.second.tilted.rise_mm == 0.0:
        return None
    lies = level_lies(at.first.tilted, at.second.tilted)
    packed, lie = min(
        zip(at.pieces, lies, strict=True),
        key=lambda pair: (round(pair[0].tilted.rise_mm, 6), pair[0].side in _LEGS),
    )
    thick_mm = packer_mm(lie, packed.bears_mm or packed.flat.width_mm)
    lifted_mm = at.proud_mm if packed.bears_mm else 0.0
    on_proud_mm = thick_mm - lifted_mm
    return Packing(
        side=packed.side,
        thick_mm=thick_mm,
        on_proud_mm=on_proud_mm if on_proud_mm > 0.05 else 0.0,
        cuts=closing_cuts(at.corner_deg, *lies),
    )


def best_way(corners: tuple[ProudCorner, ...], max_gap_mm: float) -> Flush:
    """Return the one way to mend an opening's proud corners that is advised.

    Args:
        corners: Its corners; those that are shy don't count.
        max_gap_mm: What the crew allows a joint to stand open.

    Returns:
        The way that its worst corner wants: nothing while gap and step stay within the limit,
        relieved backs for a little, packers for more, the reveal re-set beyond.

    References:
        Which remedy suits which size is common practice, no source.
    """
    ways = [_way(at, max_gap_mm) for at in corners if at.proud_mm > 0.0]
    return max(ways, key=_GRAVITY.index, default=Flush.LEAVE)


def _way(at: ProudCorner, max_gap_mm: float) -> Flush:
    if max(at.both_open().most_at_face_mm, at.step_mm()) <= max_gap_mm:
        return Flush.LEAVE
    if at.proud_mm <= BACK_BEVEL_TO_MM:
        return Flush.BACK_BEVEL
    return Flush.PACK if at.proud_mm <= PACK_TO_MM else Flush.RE_SET

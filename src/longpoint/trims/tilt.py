"""A piece on a proud or a shy lining: how it tilts, opens, steps, and can be cut to close.

A proud lining lifts the inner edge; the piece turns about the outer edge of its back, which stays
on the wall. A shy one lets the inner edge down; the piece then turns about the edge of the wall's
lining, if it is nailed down at all. Plain cuts that met flat no longer meet. They close again when
both are cut along one plane square to the wall.

References:
    Turned by t about the outer edge of its back, a point u in from it and z off the back moves
    outwards by u (1 - cos t) + z sin t; square to a joint cut at m that is sin m times as much.
    Seen square to the wall the piece is w cos t wide, its face T sin t farther out than its back.
"""

import math
from dataclasses import dataclass
from typing import Final, NamedTuple

from longpoint.errors import PieceError
from longpoint.speech.said import say
from longpoint.trims.joint_plane import BoardFrame, saw_angles
from longpoint.trims.joints import mitre_pair

MOST_TILT_DEG: Final = 15.0
"""No trim is nailed on at a greater tilt, and none is worked out; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lie:
    """How a piece lies at a joint.

    Attributes:
        width_mm: Face width. > 0.
        thickness_mm: Off its back. > 0.
        tilt_deg: Turn about its length: positive when the inner edge stands off the wall. Where a
            lining differs along the piece, the tilt at the joint.
    """

    width_mm: float
    thickness_mm: float
    tilt_deg: float = 0.0

    @property
    def rise_mm(self) -> float:
        """How far the tilt lifts the inner edge of the back off the wall. [mm]"""
        return self.width_mm * math.sin(math.radians(self.tilt_deg))

    @property
    def plan_width_mm(self) -> float:
        """Width seen square to the wall, of the back as of the face. [mm]"""
        return self.width_mm * math.cos(math.radians(self.tilt_deg))

    @property
    def face_out_mm(self) -> float:
        """How much farther out than the back the tilt takes the face. [mm]"""
        return self.thickness_mm * math.sin(math.radians(self.tilt_deg))


class Opened(NamedTuple):
    """How far a joint stands open, square to it, its wood touching where it touches first. [mm]

    Attributes:
        toe_mm: At the face, at the outer corner.
        heel_mm: At the face, at the inner corner.
        toe_behind_mm: At the wall, at the outer corner.
        heel_behind_mm: At the wall, at the inner corner.
    """

    toe_mm: float
    heel_mm: float
    toe_behind_mm: float
    heel_behind_mm: float

    @property
    def most_at_face_mm(self) -> float:
        """The larger of the two at the face. [mm]"""
        return max(self.toe_mm, self.heel_mm)

    @property
    def most_behind_mm(self) -> float:
        """The larger of the two at the wall. [mm]"""
        return max(self.toe_behind_mm, self.heel_behind_mm)


class ClosingCut(NamedTuple):
    """One end of a joint cut to close between tilted pieces.

    Attributes:
        mitre_deg: Off square across the face, positive when the outer edge is the longer.
        bevel_deg: Off square through the thickness, negative when the back is relieved.
        plan_deg: What the joint leans off square to the piece, seen square to the wall.
        longer_mm: How much longer the inner edge is at the face than at the back, at this end. The
            inner edge of the back is as long as that of a piece that lies flat.
    """

    mitre_deg: float
    bevel_deg: float
    plan_deg: float
    longer_mm: float


def bearing_mm(proud_mm: float, width_mm: float, quirk_mm: float, lining_edge_mm: float) -> float:
    """Return what a piece bears on along its back, over a lining off the wall's plane.

    Args:
        proud_mm: Lining's edge off the wall; negative: shy. [mm]
        width_mm: Face width. > 0. [mm]
        quirk_mm: From the lining's edge seen to the piece. [mm]
        lining_edge_mm: Thickness of the lining's edge. [mm]

    Returns:
        On a proud lining from its back arris to the outer edge of the piece, on a shy one the width
        of its edge under the piece; 0 where the two don't meet. [mm]

    Example:
        >>> bearing_mm(3.0, 57.0, 5.0, 19.0), bearing_mm(-3.0, 57.0, 5.0, 19.0)
        (43.0, 14.0)

    References:
        The back touches a proud edge, which is flat to the wall, at its far arris.
    """
    on_lining_mm = lining_edge_mm - quirk_mm
    if not 0.0 < on_lining_mm < width_mm:
        return 0.0
    return width_mm - on_lining_mm if proud_mm > 0.0 else on_lining_mm


def tilt_deg(proud_mm: float, bears_mm: float) -> float:
    """Return how far a piece tilts over its bearing.

    Args:
        proud_mm: Lining off the wall; negative: shy. [mm]
        bears_mm: From `bearing_mm`; 0: nothing tilts it. >= 0. [mm]

    Returns:
        Positive when the inner edge is lifted. [deg]

    Raises:
        PieceError: It would tilt by more than `MOST_TILT_DEG`.

    Example:
        >>> round(tilt_deg(3.0, 57.0), 3)
        3.017
    """
    if bears_mm == 0.0 or proud_mm == 0.0:
        return 0.0
    if abs(proud_mm) > bears_mm * math.sin(math.radians(MOST_TILT_DEG)):
        raise PieceError(
            say(
                "The lining is {proud_mm:g} mm off the wall, the trim bears on {bears_mm:g} mm.",
                proud_mm=abs(proud_mm),
                bears_mm=bears_mm,
            ),
            say(
                "Trim nailed on so would tilt by more than {most_tilt_deg:g} degrees.",
                most_tilt_deg=MOST_TILT_DEG,
            ),
            say("Re-set the lining first."),
        )
    return math.degrees(math.asin(proud_mm / bears_mm))


def plain_cuts_open(corner_deg: float, first: Lie, second: Lie) -> Opened:
    """Return how a mitre cut for pieces that lie flat stands open once they tilt.

    Args:
        corner_deg: Angle inside the opening, 0 < corner < 180. [deg]
        first: One piece; a flat one has no tilt.
        second: The other.

    Returns:
        Openings at the face and behind, after the pieces are brought together until they touch.

    Example:
        One of two pieces 57 x 19 lifted by 3 over its whole width, then both:

        >>> flat = Lie(width_mm=57, thickness_mm=19)
        >>> lifted = Lie(width_mm=57, thickness_mm=19, tilt_deg=tilt_deg(3, 57))
        >>> [round(mm, 2) for mm in plain_cuts_open(90, lifted, flat)[:2]]
        [0.71, 0.76]
        >>> [round(mm, 2) for mm in plain_cuts_open(90, lifted, lifted)[:2]]
        [1.41, 1.53]

    References:
        See the head of this file; the two pieces add up.
    """
    mitres = mitre_pair(corner_deg, first.width_mm, second.width_mm)

    def apart_mm(along: float, through: float) -> float:
        return math.fsum(
            math.sin(math.radians(mitre))
            * _moved_out_mm(lie, along * lie.width_mm, through * lie.thickness_mm)
            for mitre, lie in zip(mitres, (first, second), strict=True)
        )

    # In the order of Opened: toe and heel at the face, then behind.
    apart = [apart_mm(along, through) for through in (1.0, 0.0) for along in (0.0, 1.0)]
    touching = min(apart)
    return Opened(*(mm - touching for mm in apart))


def _moved_out_mm(lie: Lie, in_mm: float, off_back_mm: float) -> float:
    tilt = math.radians(lie.tilt_deg)
    return in_mm * (1.0 - math.cos(tilt)) + off_back_mm * math.sin(tilt)


def face_step_mm(first: Lie, second: Lie, *, at_heel: bool = True) -> float:
    """Return how far the first piece's face stands above the second's at an end of their mitre.

    Args:
        first: One piece.
        second: The other.
        at_heel: True for the inner corner, False for the outer one.

    Returns:
        Difference of the faces' heights off the wall, thicknesses included; negative when the
        second stands higher. [mm]

    Example:
        >>> flat = Lie(width_mm=57, thickness_mm=19)
        >>> lifted = Lie(width_mm=57, thickness_mm=19, tilt_deg=tilt_deg(3, 57))
        >>> (
        ...     round(face_step_mm(lifted, flat), 2),
        ...     round(face_step_mm(lifted, flat, at_heel=False), 2),
        ... )
        (2.97, -0.03)

    References:
        An edge of the face stands u sin(tilt) + T cos(tilt) off the wall, u from the outer edge.
    """

    def height_mm(lie: Lie) -> float:
        upright_mm = lie.thickness_mm * math.cos(math.radians(lie.tilt_deg))
        return upright_mm + (lie.rise_mm if at_heel else 0.0)

    return height_mm(first) - height_mm(second)


def closing_cuts(corner_deg: float, first: Lie, second: Lie) -> tuple[ClosingCut, ClosingCut]:
    """Return the cuts that close a corner between tilted pieces along its whole length and depth.

    The joint's plane stands square to the wall through the inner and outer corners of the two
    backs. The faces come out level when both pieces' inner edges rise by as much; otherwise they
    step at the heel by the difference of the rises (`face_step_mm`), and their edges pass each
    other by the difference of `Lie.face_out_mm`.

    Args:
        corner_deg: Angle inside the opening, 0 < corner < 180. [deg]
        first: One piece.
        second: The other.

    Example:
        >>> lifted = Lie(width_mm=57, thickness_mm=19, tilt_deg=tilt_deg(3, 57))
        >>> cut, _ = closing_cuts(90, lifted, lifted)
        >>> round(cut.mitre_deg, 2), round(cut.bevel_deg, 2), round(cut.longer_mm, 2)
        (44.96, -2.13, 1.0)

    References:
        With p the joint's lean in plan, from the widths w cos t: tan(mitre) = tan p cos t and
        sin(bevel) = -sin p sin t; the edges run past the inner corner by tan p times how far out
        they stand in plan.
    """
    plan = mitre_pair(corner_deg, first.plan_width_mm, second.plan_width_mm)
    one, other = (_closing_cut(p, lie) for p, lie in zip(plan, (first, second), strict=True))
    return one, other


def _closing_cut(plan_deg: float, lie: Lie) -> ClosingCut:
    tilt, plan = math.radians(lie.tilt_deg), math.radians(plan_deg)
    frame = BoardFrame(
        outward=(1.0, 0.0, 0.0),
        across=(0.0, math.cos(tilt), -math.sin(tilt)),
        face=(0.0, math.sin(tilt), math.cos(tilt)),
    )
    angles = saw_angles(frame, (math.cos(plan), -math.sin(plan), 0.0))
    return ClosingCut(
        angles.mitre_deg, angles.bevel_deg, plan_deg, lie.face_out_mm * math.tan(plan)
    )


def level_lies(first: Lie, second: Lie) -> tuple[Lie, Lie]:
    """Return how two pieces lie once the lower one is packed until their faces are level.

    Args:
        first: One piece, as its lining tilts it.
        second: The other.

    Returns:
        Both with the greater of the two rises. Of equal widths that is one tilt for both.

    Raises:
        PieceError: The narrower one would tilt by more than `MOST_TILT_DEG`.

    References:
        Along the mitre the faces rise in proportion, from 0 at the toe to w sin(tilt) at the heel.
    """
    rise_mm = max(first.rise_mm, second.rise_mm)

    def packed(lie: Lie) -> Lie:
        return Lie(
            width_mm=lie.width_mm,
            thickness_mm=lie.thickness_mm,
            tilt_deg=tilt_deg(rise_mm, lie.width_mm),
        )

    return packed(first), packed(second)


def packer_mm(lie: Lie, in_mm: float) -> float:
    """Return how thick a packer is at a distance from the outer edge of a back that lies tilted.

    Example:
        >>> lifted = Lie(width_mm=57, thickness_mm=19, tilt_deg=tilt_deg(3, 43))
        >>> round(packer_mm(lifted, 43.0), 6)
        3.0

    References:
        The back stands x sin(tilt) off the wall, x along it from its outer edge.
    """
    return in_mm * math.sin(math.radians(lie.tilt_deg))


def butt_opens_mm(through: Lie, against_mm: float) -> float:
    """Return how far a square end stands off, at the face, the edge of a through piece that tilts.

    Args:
        through: The piece that runs through.
        against_mm: Thickness of the square-ended piece. > 0. [mm]

    References:
        The edge turns with its piece: over a height z it leans outwards by z sin(tilt). The square
        end stays in its plane when its own piece turns about its length.
    """
    height_mm = min(through.thickness_mm, against_mm)
    return height_mm * math.sin(math.radians(max(0.0, through.tilt_deg)))

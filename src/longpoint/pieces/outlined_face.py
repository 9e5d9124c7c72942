"""One face of an opening with another number of sides than four, before its pieces are made."""

from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import PieceError
from longpoint.pieces.face_set import FaceSet, set_shape
from longpoint.pieces.face_trim import FaceTrim
from longpoint.shape.fitted import FittedOpening, FittedOutline, Four
from longpoint.shape.point import Point, direction
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Joint, Layout, Method, Mitres, Opening, PerSide
from longpoint.survey.profiles import Profile
from longpoint.trims.outline import TrimOutline, TrimSide, trim_outline
from longpoint.trims.plinths import on_plinth
from longpoint.trims.rings import Ring, mitred_ring
from longpoint.trims.set_rings import BOTTOM, HEAD, LEFT, RIGHT, SetRings

STEEPEST_HEAD: Final = 0.5
"""A side whose outside looks up by at least this, so that slopes no steeper than 60 degrees, counts
as head: our choice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlinedFace:
    """One face of such an opening, and where its pieces lie.

    Attributes:
        set: The face as if it had four sides, of which board, apron and plinths are made.
        written: The opening as it was written, its way of fixing included.
        fitted: Its shape.
        sides: What stands along each side; a bare bottom has no width.
        quirks_mm: Quirk of each side.
        profiles: Profile of each side.
        outline: Inner and outer edges.
        rings: Where the piece along each side lies, by side.
        band: The same of the back band.
    """

    set: FaceSet
    written: Opening
    fitted: FittedOutline
    sides: tuple[TrimSide, ...]
    quirks_mm: tuple[float, ...]
    profiles: tuple[Profile, ...]
    outline: TrimOutline
    rings: dict[int, Ring]
    band: dict[int, Ring]

    @property
    def has_bare_bottom(self) -> bool:
        """Tell whether the two lowest pieces run down to a floor or a board."""
        return self.sides[0].width_mm == 0.0

    @property
    def clockwise(self) -> tuple[int, ...]:
        """Sides with a piece, clockwise from the bottom."""
        order = (0, *range(len(self.sides) - 1, 0, -1))
        return tuple(side for side in order if side in self.rings)

    def number(self, side: int) -> int:
        """Return a side's number as the house file counts: side 1 from corner 1 to corner 2."""
        corners = self.fitted.written
        one, other = corners[side], corners[(side + 1) % len(corners)]
        return one if other == one % len(corners) + 1 else other


def outlined_face(house: House, opening: Opening, fitted: FittedOutline) -> OutlinedFace:
    """Return the face of such an opening before its pieces are made.

    Raises:
        PieceError: The trim doesn't go round it.
    """
    _refuse_joints(opening, len(fitted.corners))
    is_b = fitted.face == "b"
    quirk = opening.quirk_mm.mirrored() if is_b else opening.quirk_mm
    names = opening.profiles.mirrored() if is_b else opening.profiles
    roles = _roles(fitted.corners)
    quirks = tuple(quirk.anticlockwise()[role] for role in roles)
    profiles = tuple(house.profile(names.anticlockwise()[role]) for role in roles)
    sides = tuple(
        TrimSide(inner_mm=q, width_mm=p.width_mm) for q, p in zip(quirks, profiles, strict=True)
    )
    if opening.layout is not Layout.ALL_ROUND:
        sides = (TrimSide(inner_mm=-opening.floor_cover_mm, width_mm=0.0), *sides[1:])
    outline = trim_outline(fitted.corners, sides)
    rings = {i: mitred_ring(outline, i) for i, side in enumerate(sides) if side.width_mm > 0.0}
    made = _as_four(house, opening, fitted, sides, quirk, names, outline)
    band, around = _band_rings(outline, sides, made.shape.band_mm)
    plinths: dict[int, Ring] = {}
    if made.shape.plinth_mm > 0.0:
        for side, four_side in ((1, RIGHT), (len(sides) - 1, LEFT)):
            rings[side], plinths[four_side] = on_plinth(
                rings[side],
                foot_at_start=side == 1,
                face_mm=made.shape.plinth_mm,
                height_mm=made.shape.plinth_height_mm,
            )
    foot = (around.outer[0], around.outer[1])
    rings_of_four = SetRings(sides={}, blocks=(), plinths=plinths, band={}, foot=foot)
    return OutlinedFace(
        set=replace(made, rings=rings_of_four),
        written=opening,
        fitted=fitted,
        sides=sides,
        quirks_mm=quirks,
        profiles=profiles,
        outline=outline,
        rings=rings,
        band=band,
    )


def _refuse_joints(opening: Opening, count: int) -> None:
    if opening.joint is not Joint.MITRE:
        raise PieceError(
            say(
                '{mark} has {count} sides and joint = "{joint}".',
                mark=opening.mark,
                count=count,
                joint=opening.joint.value,
            ),
            say(
                "Only openings with four sides have a head that runs over square legs, "
                "or blocks on square corners."
            ),
            say('Write joint = "mitre" at this opening.'),
        )
    if opening.back_band and opening.plinth and opening.layout is not Layout.ALL_ROUND:
        raise PieceError(
            say(
                "{mark} has {count} sides, plinth blocks and a back band.",
                mark=opening.mark,
                count=count,
            ),
            say("How the band ends at the block is worked out for four sides only."),
            say("Take plinth or back_band out at this opening."),
        )


def _roles(corners: tuple[Point, ...]) -> tuple[int, ...]:
    """Return for each side whose quirk and architrave it takes: bottom, right, head or left."""
    roles = [BOTTOM]
    for index in range(1, len(corners)):
        ux, uy = direction(corners[index], corners[(index + 1) % len(corners)])
        if -ux >= STEEPEST_HEAD - 1e-9:
            roles.append(HEAD)
        else:
            roles.append(RIGHT if uy > 0.0 else LEFT)
    return tuple(roles)


def _as_four(
    house: House,
    opening: Opening,
    fitted: FittedOutline,
    sides: tuple[TrimSide, ...],
    quirk: PerSide[float],
    names: PerSide[str],
    outline: TrimOutline,
) -> FaceSet:
    """Return the set as if a straight head joined its two legs: for what lies at its bottom."""
    bl, br = fitted.corners[:2]
    tr, tl = fitted.corners[2], fitted.corners[-1]
    as_read = replace(
        opening,
        method=Method.BATCH if opening.method is Method.BENCH else opening.method,
        mitres=Mitres.AS_READ,
    )

    def four(values: tuple[float, ...], head: float) -> Four:
        return Four(values[0], values[1], head, values[-1])

    shape = FittedOpening(
        mark=fitted.mark,
        face=fitted.face,
        corners=(bl, br, tr, tl),
        corner_deg=Four(*(fitted.corner_deg[i] for i in (0, 1, 2, -1))),
        corner_u_deg=Four(*(fitted.corner_u_deg[i] for i in (0, 1, 2, -1))),
        side_mm=four(fitted.side_mm, tr.distance_mm(tl)),
        side_u_mm=four(fitted.side_u_mm, 0.0),
        level_deg=fitted.level_deg,
    )
    head = TrimSide(inner_mm=quirk.head, width_mm=house.profile(names.head).width_mm)
    trim = FaceTrim(
        corners=shape.corners,
        sides=(sides[0], sides[1], head, sides[-1]),
        quirks_mm=quirk.anticlockwise(),
        profiles=names.map(house.profile).anticlockwise(),
        outline=outline,
    )
    return FaceSet(
        house=house,
        opening=as_read,
        fitted=shape,
        trim=trim,
        shape=set_shape(house, as_read, trim),
        rings=SetRings(
            sides={}, blocks=(), plinths={}, band={}, foot=(outline.outer[0], outline.outer[1])
        ),
    )


def _band_rings(
    outline: TrimOutline, sides: tuple[TrimSide, ...], band_mm: float
) -> tuple[dict[int, Ring], TrimOutline]:
    if band_mm == 0.0:
        return {}, outline
    along = tuple(
        TrimSide(inner_mm=0.0, width_mm=band_mm if side.width_mm > 0.0 else 0.0) for side in sides
    )
    around = trim_outline(outline.outer, along)
    return {i: mitred_ring(around, i) for i, side in enumerate(sides) if side.width_mm}, around

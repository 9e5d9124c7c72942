"""The lines of one face's trim: where its inner and outer edges run."""

from dataclasses import dataclass

from longpoint.pieces.bench_frame import bench_frame
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.point import Point
from longpoint.survey.house import House
from longpoint.survey.openings import Joint, Layout, Method, Mitres, Opening
from longpoint.survey.profiles import Profile
from longpoint.trims.outline import TrimOutline, TrimSide, trim_outline

BOTTOM = 0
"""Index of the bottom side; the sides run bottom, right, head, left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceTrim:
    """The trim of one face as its lengths suppose it.

    Attributes:
        corners: Corners of the reveal that the trim is laid round: the fitted ones, or those of
            the true rectangle shared over them.
        sides: What stands along each side, bottom, right, head, left; a bare bottom has no width.
        quirks_mm: Quirk of each side.
        profiles: Profile of each side.
        outline: Inner and outer edges.
    """

    corners: tuple[Point, ...]
    sides: tuple[TrimSide, ...]
    quirks_mm: tuple[float, ...]
    profiles: tuple[Profile, ...]
    outline: TrimOutline

    @property
    def has_bare_bottom(self) -> bool:
        """Tell whether the legs run down to a floor or a board."""
        return self.sides[BOTTOM].width_mm == 0.0


def is_true_frame(opening: Opening) -> bool:
    """Tell whether all mitres are cut at 45: joined on the bench, or cut at the saw's stop."""
    return opening.method is Method.BENCH or (
        opening.method is Method.BATCH and opening.mitres is Mitres.AT_STOP
    )


def has_mitred_corners(opening: Opening) -> bool:
    """Tell whether the set's corners are mitred, not butted or blocked."""
    return opening.joint is Joint.MITRE


def face_trim(house: House, opening: Opening, fitted: FittedOpening) -> FaceTrim:
    """Return the lines of the trim of one face of an opening.

    Each mitre bisects its own corner of the fitted shape; where the frame is to be a true
    rectangle, it is shared over the opening and the quirk takes the error.

    Args:
        house: Gives the profiles.
        opening: Its settings.
        fitted: The shape of this face.

    Raises:
        PieceError: The trim doesn't go round the opening.
    """
    is_b = fitted.face == "b"
    quirks = (opening.quirk_mm.mirrored() if is_b else opening.quirk_mm).anticlockwise()
    names = opening.profiles.mirrored() if is_b else opening.profiles
    profiles = names.map(house.profile).anticlockwise()
    has_bare_bottom = opening.layout is not Layout.ALL_ROUND
    sides = tuple(
        TrimSide(inner_mm=quirk, width_mm=profile.width_mm)
        for quirk, profile in zip(quirks, profiles, strict=True)
    )
    if has_bare_bottom:
        sides = (TrimSide(inner_mm=-opening.floor_cover_mm, width_mm=0.0), *sides[1:])
    corners: tuple[Point, ...] = fitted.corners
    if is_true_frame(opening):
        corners = bench_frame(fitted, on_floor=has_bare_bottom).corners
    return FaceTrim(
        corners=corners,
        sides=sides,
        quirks_mm=quirks,
        profiles=profiles,
        outline=trim_outline(corners, sides),
    )

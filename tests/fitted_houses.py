"""Small houses whose openings have exactly the corners that a test gives them."""

from longpoint.pieces.openings import plan_openings
from longpoint.pieces.piece import Piece, Role
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedOpening, Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.shape.point import Point
from longpoint.survey.house import Dialect, House
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Layout, Method, Opening, OpeningKind, PerSide
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import OpeningReadings, Place, Reading

Corners = tuple[Point, Point, Point, Point]
"""Bottom left at the origin, bottom right on the x axis, then top right and top left."""


def rectangle(width_mm: float, height_mm: float) -> Corners:
    return quad((0, 0), (width_mm, 0), (width_mm, height_mm), (0, height_mm))


def quad(*corners: tuple[float, float]) -> Corners:
    bl, br, tr, tl = (Point(*corner) for corner in corners)
    return (bl, br, tr, tl)


def exact_readings(corners: Corners) -> OpeningReadings:
    """Return what a perfect tape shows of all four sides and both diagonals."""
    bl, br, tr, tl = corners
    ends = {
        Place.TOP: (tl, tr),
        Place.BOTTOM: (bl, br),
        Place.LEFT: (bl, tl),
        Place.RIGHT: (br, tr),
        Place.RISING: (bl, tr),
        Place.FALLING: (tl, br),
    }
    lengths = tuple(
        Reading(place=place, value_mm=a.distance_mm(b), written=f"{a.distance_mm(b):.1f}")
        for place, (a, b) in ends.items()
    )
    return OpeningReadings(lengths=lengths, tape="T1")


def per_side(values: float | tuple[float, float, float, float]) -> PerSide[float]:
    """Return one value for all sides, or head, right, bottom, left."""
    head, right, bottom, left = values if isinstance(values, tuple) else (values,) * 4
    return PerSide(head=head, right=right, bottom=bottom, left=left)


def opening(
    corners: Corners,
    *,
    mark: str = "W1",
    kind: OpeningKind = OpeningKind.WINDOW,
    layout: Layout = Layout.ALL_ROUND,
    quirk_mm: float | tuple[float, float, float, float] = 5.0,
    width_mm: float | tuple[float, float, float, float] = 66.0,
    method: Method = Method.BATCH,
    faces: int = 1,
    floor_cover_mm: float = 0.0,
    board: str = "",
    horn_mm: float = 0.0,
    raked: bool = False,
    corners_b: Corners | None = None,
) -> Opening:
    """Return an opening; its profiles are named after their face width."""
    return Opening(
        mark=mark,
        room="kitchen",
        kind=kind,
        layout=layout,
        readings=exact_readings(corners),
        readings_b=None if corners_b is None else exact_readings(corners_b),
        faces=faces,
        quirk_mm=per_side(quirk_mm),
        profiles=per_side(width_mm).map(lambda width: f"{width!r} wide"),
        method=method,
        floor_cover_mm=floor_cover_mm,
        board=board,
        horn_mm=horn_mm,
        raked=raked,
    )


def door(
    corners: Corners,
    *,
    mark: str = "D1",
    method: Method = Method.BATCH,
    faces: int = 1,
    floor_cover_mm: float = 0.0,
) -> Opening:
    """Return a door with two legs and a head."""
    return opening(
        corners,
        mark=mark,
        kind=OpeningKind.DOOR,
        layout=Layout.LEGS_AND_HEAD,
        method=method,
        faces=faces,
        floor_cover_mm=floor_cover_mm,
    )


def house(*openings: Opening, units: Units = Units.MM) -> House:
    """Return a house with these openings and every profile they name."""
    names = {name for o in openings for name in o.profiles.anticlockwise()}
    names |= {o.board for o in openings if o.board}
    return House(
        name="Lintel Cottage",
        units=units,
        dialect=Dialect.UK,
        profiles=tuple(
            Profile(name=name, width_mm=float(name.split()[0]), thickness_mm=18.0)
            for name in sorted(names)
        ),
        tapes=(Tape(name="T1"),),
        saw=Saw(name="bench saw"),
        openings=openings,
    )


def fitted(one: Opening) -> FittedOpening:
    """Return the fitted first face of an opening."""
    found, _ = fit_openings(house(one))
    return found[0]


def pieces(*openings: Opening, units: Units = Units.MM) -> tuple[Piece, ...]:
    """Return the pieces of all openings."""
    whole = house(*openings, units=units)
    made, _ = plan_openings(whole, Shapes(openings=fit_openings(whole)[0]), frozenset())
    return made


def by_role(made: tuple[Piece, ...]) -> dict[Role, Piece]:
    """Return the pieces of one face of one opening by what they are."""
    found = {piece.role: piece for piece in made}
    assert len(found) == len(made), "one piece for each role"
    return found

"""The true shape of an opening that is told by its corners, or by its sides and angles."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.errors import ShapeError
from longpoint.quantities.uncertainty import combine
from longpoint.shape.fitted import FittedOpening, FittedOutline, Four, ShapeSource, SourceKind
from longpoint.shape.network import Network, fit_network, freedom_left
from longpoint.shape.outline_refusals import left_open, refuse_no_shape, refuse_short, turned_in
from longpoint.shape.outline_sightings import along_x, first_guesses, outline_sightings
from longpoint.shape.point import Point, interior_angles_deg, side_lengths_mm
from longpoint.survey.instruments import Tape
from longpoint.survey.outlines import OutlineReadings

AS_GOOD: Final = 1.0
"""Two shapes whose chi-squared differs by less fit alike; the one that turns no corner in is
taken."""

_STEP_MM: Final = 1e-3


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlineFit:
    """The fit of an opening of another shape.

    Attributes:
        fitted: Its shape, as that of any opening where it has four sides.
        network: What it was fitted by; None where the corners themselves were given.
    """

    fitted: FittedOpening | FittedOutline
    network: Network | None = None


def fit_outline(mark: str, outline: OutlineReadings, tape: Tape, *, face: str = "") -> OutlineFit:
    """Return the shape of an opening told by corners, or fitted to its sides and angles.

    Corners are taken as they are, in whatever order they go round; the side nearest level at the
    bottom becomes the first. Sides and angles are fitted by least squares; a corner that wasn't
    read is left free.

    Args:
        mark: Mark of the opening.
        outline: What was read.
        tape: The tape that read it.
        face: "a" or "b" where both faces are trimmed.

    Returns:
        The fit: convex, anticlockwise, its first side along x.

    Raises:
        ShapeError: The readings leave the shape open, or describe none that trim goes round.

    References:
        Weighted least squares on sides, corners and lengths across (Gauss-Newton).
    """
    if outline.corners:
        return OutlineFit(fitted=_from_corners(mark, face, outline.corners, tape))
    network = _network(outline, tape)
    count = len(outline.sides_mm)
    corners = network.corners
    refuse_no_shape(corners, tuple(range(1, count + 1)))
    shared = tuple(
        tape.shared_u_mm(s.read) if s.name.startswith(("side", "across")) else 0.0
        for s in network.sightings
    )
    shape = _Shape(
        mark=mark,
        face=face,
        corners=corners,
        corner_u_deg=tuple(
            network.angle_u_deg(i, (i - 1) % count, (i + 1) % count, shared) for i in range(count)
        ),
        side_u_mm=tuple(network.length_u_mm(i, (i + 1) % count, shared) for i in range(count)),
        level_deg=None,
        written=tuple(range(1, count + 1)),
        network=network,
        sources=network.sources(),
    )
    return OutlineFit(fitted=shape.fitted(), network=network)


def mirrored_outline(fitted: FittedOutline) -> FittedOutline:
    """Return the shape as seen from the other side of the wall: left and right change places."""
    width_mm = fitted.corners[1].x_mm
    order = (1, 0, *range(len(fitted.corners) - 1, 1, -1))
    sides = (0, *range(len(fitted.corners) - 1, 0, -1))
    return FittedOutline(
        mark=fitted.mark,
        face="b",
        corners=tuple(
            Point(width_mm - fitted.corners[i].x_mm, fitted.corners[i].y_mm) for i in order
        ),
        corner_deg=tuple(fitted.corner_deg[i] for i in order),
        corner_u_deg=tuple(fitted.corner_u_deg[i] for i in order),
        side_mm=tuple(fitted.side_mm[i] for i in sides),
        side_u_mm=tuple(fitted.side_u_mm[i] for i in sides),
        level_deg=None if fitted.level_deg is None else -fitted.level_deg,
        written=tuple(fitted.written[i] for i in order),
        residuals=fitted.residuals,
        misclosure=fitted.misclosure,
        assumed=fitted.assumed,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shape:
    """A shape before it is known whether it is one with four sides."""

    mark: str
    face: str
    corners: tuple[Point, ...]
    corner_u_deg: tuple[float, ...]
    side_u_mm: tuple[float, ...]
    level_deg: float | None
    written: tuple[int, ...]
    network: Network | None = None
    sources: tuple[ShapeSource, ...] = ()

    def fitted(self) -> FittedOpening | FittedOutline:
        residuals = self.network.residuals() if self.network else ()
        closing = None
        if self.network is not None:
            across = [s.name for s in self.network.sightings if s.name.startswith("across")]
            closing = self.network.misclosure(across[-1] if across else "")
        if len(self.corners) == 4:
            bl, br, tr, tl = self.corners
            return FittedOpening(
                mark=self.mark,
                face=self.face,
                corners=(bl, br, tr, tl),
                corner_deg=Four(*interior_angles_deg(self.corners)),
                corner_u_deg=Four(*self.corner_u_deg),
                side_mm=Four(*side_lengths_mm(self.corners)),
                side_u_mm=Four(*self.side_u_mm),
                level_deg=self.level_deg,
                residuals=residuals,
                misclosure=closing,
                sources=self.sources,
            )
        return FittedOutline(
            mark=self.mark,
            face=self.face,
            corners=self.corners,
            corner_deg=interior_angles_deg(self.corners),
            corner_u_deg=self.corner_u_deg,
            side_mm=side_lengths_mm(self.corners),
            side_u_mm=self.side_u_mm,
            level_deg=self.level_deg,
            written=self.written,
            residuals=residuals,
            misclosure=closing,
        )


def _from_corners(
    mark: str, face: str, given: Sequence[tuple[float, float]], tape: Tape
) -> FittedOpening | FittedOutline:
    points = tuple(Point(x, y) for x, y in given)
    refuse_short(points)
    written = tuple(range(1, len(points) + 1))
    if _area_mm2(points) < 0.0:
        points, written = points[::-1], written[::-1]
    first = _bottom(points)
    points = (*points[first:], *points[:first])
    written = (*written[first:], *written[:first])
    refuse_no_shape(points, written)
    turn = math.atan2(points[1].y_mm - points[0].y_mm, points[1].x_mm - points[0].x_mm)
    corners = along_x(points)
    u_mm = tape.private_u_mm()
    sides_mm = side_lengths_mm(corners)
    return _Shape(
        mark=mark,
        face=face,
        corners=corners,
        corner_u_deg=_u_of_corners(interior_angles_deg, corners, u_mm),
        side_u_mm=tuple(
            combine((u, tape.shared_u_mm(side)))
            for u, side in zip(_u_of_corners(side_lengths_mm, corners, u_mm), sides_mm, strict=True)
        ),
        level_deg=math.degrees(turn),
        written=written,
        sources=_corner_sources(points, written, turn, u_mm),
    ).fitted()


def _network(outline: OutlineReadings, tape: Tape) -> Network:
    for index, angle_deg in enumerate(outline.angles_deg):
        if angle_deg >= 180.0:
            number = (index + 1) % len(outline.sides_mm) + 1
            raise turned_in(number, angle_deg)
    guesses = first_guesses(outline)
    sightings = outline_sightings(outline, tape)
    free = min(freedom_left(guess, sightings) for guess in guesses)
    if free > 0:
        raise left_open(outline, free)
    found: list[Network] = []
    refused: list[ShapeError] = []
    for guess in guesses:
        try:
            found.append(fit_network(guess, sightings))
        except ShapeError as error:
            refused.append(error)
    if not found:
        raise refused[0]
    best = min(network.adjustment.chi_squared for network in found)
    alike = [n for n in found if n.adjustment.chi_squared <= best + AS_GOOD]
    return min(alike, key=lambda n: (not _is_convex(n.corners), n.adjustment.chi_squared))


def _is_convex(corners: tuple[Point, ...]) -> bool:
    return all(angle < 180.0 for angle in interior_angles_deg(corners))


def _bottom(points: Sequence[Point]) -> int:
    """Return the side that runs most nearly level from left to right; the lower of two alike."""
    count = len(points)

    def rank(i: int) -> tuple[float, float]:
        start, end = points[i], points[(i + 1) % count]
        level = (end.x_mm - start.x_mm) / start.distance_mm(end)
        return (round(-level, 6), start.y_mm + end.y_mm)

    return min(range(count), key=rank)


def _area_mm2(points: Sequence[Point]) -> float:
    return math.fsum(
        points[i - 1].x_mm * p.y_mm - p.x_mm * points[i - 1].y_mm for i, p in enumerate(points)
    )


def _u_of_corners(
    measure: Callable[[tuple[Point, ...]], tuple[float, ...]],
    corners: tuple[Point, ...],
    u_mm: float,
) -> tuple[float, ...]:
    """Return the uncertainty of what is measured of corners, each out by `u_mm` both ways."""
    plain = measure(corners)
    squares = [0.0] * len(plain)
    for index, corner in enumerate(corners):
        for dx, dy in ((_STEP_MM, 0.0), (0.0, _STEP_MM)):
            moved = (*corners[:index], corner.moved(dx, dy), *corners[index + 1 :])
            for k, (was, now) in enumerate(zip(plain, measure(moved), strict=True)):
                squares[k] += ((now - was) / _STEP_MM * u_mm) ** 2
    return tuple(math.sqrt(square) for square in squares)


def _corner_sources(
    points: Sequence[Point], written: Sequence[int], turn: float, u_mm: float
) -> tuple[ShapeSource, ...]:
    """Return every coordinate as a reading of its own, by how it moves its corner."""
    cos, sin = math.cos(turn), math.sin(turn)
    still = (0.0, 0.0)
    return tuple(
        ShapeSource(
            name=f"corner {written[i]} {way}",
            kind=SourceKind.TAPE,
            read=read,
            u=u_mm,
            moves_mm=tuple(move if k == i else still for k in range(len(points))),
        )
        for i, point in enumerate(points)
        for way, read, move in (
            ("across", point.x_mm, (cos, -sin)),
            ("up", point.y_mm, (sin, cos)),
        )
    )

"""Corners in a plane, tied together by readings of lengths and angles.

One adjustment serves openings and rooms: corner 0 is the origin, corner 1 lies on the x axis, all
else is unknown. A bearing (plumb or level) adds one unknown: the turn of the x axis off level.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from longpoint.shape.fitted import Misclosure, Residual, ShapeSource, SourceKind
from longpoint.shape.least_squares import Adjustment, Row, adjust, as_normal, rank
from longpoint.shape.point import Point

Gradient = dict[int, float]
"""Change of a value per unit of coordinate 2i (x of corner i), 2i + 1 (y), or -1 (the turn)."""

TURN = -1


@dataclass(frozen=True, slots=True, kw_only=True)
class Distance:
    """A length read from one corner to another. [mm]"""

    name: str
    start: int
    end: int
    read: float
    u: float
    is_assumed: bool = False

    def predict(self, corners: Sequence[Point], turn_deg: float) -> tuple[float, Gradient]:
        """Return what it should show, and its gradient."""
        return _distance(corners, self.start, self.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """An assumption: one length less another. [mm]

    One that isn't needed to fix the shape still steadies it, but checks no reading.
    """

    name: str
    first: tuple[int, int]
    second: tuple[int, int]
    read: float
    u: float
    is_assumed: bool = True
    is_needed: bool = True

    def predict(self, corners: Sequence[Point], turn_deg: float) -> tuple[float, Gradient]:
        """Return what it should show, and its gradient."""
        first_mm, gradient = _distance(corners, *self.first)
        second_mm, second = _distance(corners, *self.second)
        return first_mm - second_mm, _plus(gradient, {k: -g for k, g in second.items()})


@dataclass(frozen=True, slots=True, kw_only=True)
class Angle:
    """The angle at a corner, from the side onward to the side back, anticlockwise. [deg]"""

    name: str
    corner: int
    back: int
    onward: int
    read: float
    u: float
    is_assumed: bool = False

    def predict(self, corners: Sequence[Point], turn_deg: float) -> tuple[float, Gradient]:
        """Return what it should show, and its gradient."""
        back_deg, gradient = _bearing(corners, self.corner, self.back)
        onward_deg, onward = _bearing(corners, self.corner, self.onward)
        angle_deg = _near(back_deg - onward_deg, self.read)
        return angle_deg, _plus(gradient, {k: -g for k, g in onward.items()})


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """The direction of a side against level, anticlockwise. [deg]"""

    name: str
    start: int
    end: int
    read: float
    u: float
    is_assumed: bool = False

    def predict(self, corners: Sequence[Point], turn_deg: float) -> tuple[float, Gradient]:
        """Return what it should show, and its gradient."""
        bearing_deg, gradient = _bearing(corners, self.start, self.end)
        return _near(bearing_deg + turn_deg, self.read), _plus(gradient, {TURN: 1.0})


Sighting = Distance | Difference | Angle | Bearing


@dataclass(frozen=True, slots=True, kw_only=True)
class Network:
    """A fitted network of corners.

    Attributes:
        corners: Fitted corners. [mm]
        turn_deg: Fitted turn of the x axis off level, 0 when no bearing was read.
        sightings: What it was fitted to.
        adjustment: The fit.
        free: Which coordinate or turn each unknown is.
    """

    corners: tuple[Point, ...]
    turn_deg: float
    sightings: tuple[Sighting, ...]
    adjustment: Adjustment
    free: tuple[int, ...]

    def residuals(self) -> tuple[Residual, ...]:
        """Return one residual for every reading; assumptions are left out."""
        fit = self.adjustment
        return tuple(
            Residual(
                name=sighting.name,
                read=sighting.read,
                residual=residual,
                u=sighting.u,
                over_u=_over_u(sighting, residual, share),
                redundancy=share,
            )
            for sighting, residual, share in zip(
                self.sightings, fit.residuals, fit.redundancy, strict=True
            )
            if not sighting.is_assumed
        )

    def idle(self) -> tuple[tuple[Difference, float], ...]:
        """Return each assumption that isn't needed, and how far the readings are from it.

        That is what they say of it less what was assumed, over the standard uncertainty of both.
        """
        fit = self.adjustment
        return tuple(
            (sighting, abs(_over_u(sighting, residual, share)))
            for sighting, residual, share in zip(
                self.sightings, fit.residuals, fit.redundancy, strict=True
            )
            if isinstance(sighting, Difference) and not sighting.is_needed
        )

    def sources(self) -> tuple[ShapeSource, ...]:
        """Return what the corners rest on: every sighting, and how an error of it moves them."""
        moved: list[tuple[tuple[float, float], ...]] = []
        for index in range(len(self.sightings)):
            by_coordinate = {
                k: line[index] for k, line in zip(self.free, self.adjustment.influence, strict=True)
            }
            moved.append(
                tuple(
                    (by_coordinate.get(2 * i, 0.0), by_coordinate.get(2 * i + 1, 0.0))
                    for i in range(len(self.corners))
                )
            )
        return tuple(
            ShapeSource(name=s.name, kind=_kind(s), read=s.read, u=s.u, moves_mm=moves)
            for s, moves in zip(self.sightings, moved, strict=True)
        )

    def misclosure(self, named: str = "") -> Misclosure | None:
        """Return how well the readings close, None when none is to spare.

        Args:
            named: Reading whose predicted value the misclosure in mm is taken against.
        """
        idle = sum(isinstance(s, Difference) and not s.is_needed for s in self.sightings)
        spare = len(self.sightings) - idle - len(self.free)
        if spare < 1:
            return None
        chi_squared = self.adjustment.chi_squared
        against = next((r for r in self.residuals() if r.name == named), None)
        return Misclosure(
            spare=spare,
            chi_squared=chi_squared,
            normalised=as_normal(chi_squared, spare),
            misclosure_mm=against.residual / against.redundancy
            if spare == 1 and against is not None and against.redundancy > 1e-6
            else None,
        )

    def length_u_mm(self, start: int, end: int, shared: Row) -> float:
        """Return the standard uncertainty of a fitted length.

        Args:
            start: Corner it starts at.
            end: Corner it ends at.
            shared: What all readings of the tape are out by together, per reading, (m,).
        """
        return self._u(_distance(self.corners, start, end)[1], shared)

    def angle_u_deg(self, corner: int, back: int, onward: int, shared: Row) -> float:
        """Return the standard uncertainty of a fitted corner angle. [deg]"""
        _, gradient = _bearing(self.corners, corner, back)
        _, minus = _bearing(self.corners, corner, onward)
        return self._u(_plus(gradient, {k: -g for k, g in minus.items()}), shared)

    def _u(self, gradient: Gradient, shared: Row) -> float:
        g = tuple(gradient.get(k, 0.0) for k in self.free)
        private = math.fsum(
            gi * cij * gj
            for gi, line in zip(g, self.adjustment.covariance, strict=True)
            for cij, gj in zip(line, g, strict=True)
        )
        together = math.fsum(
            gi * a * s
            for gi, line in zip(g, self.adjustment.influence, strict=True)
            for a, s in zip(line, shared, strict=True)
        )
        return math.sqrt(max(0.0, private) + together * together)


def fit_network(start: Sequence[Point], sightings: Sequence[Sighting]) -> Network:
    """Fit corners to sightings, from a first guess.

    Raises:
        ShapeError: The sightings don't determine the corners, or nothing fits them.
    """
    free = _free(len(start), sightings)
    model = _Model(len(start), tuple(sightings), free)
    adjustment = adjust(
        model,
        model.unknowns(start),
        tuple(s.read for s in sightings),
        tuple(s.u for s in sightings),
    )
    corners, turn_deg = model.placed(adjustment.unknowns)
    return Network(
        corners=corners,
        turn_deg=turn_deg,
        sightings=tuple(sightings),
        adjustment=adjustment,
        free=free,
    )


def is_determined(start: Sequence[Point], sightings: Sequence[Sighting]) -> bool:
    """Tell whether sightings fix every corner, near a first guess."""
    return freedom_left(start, sightings) == 0


def freedom_left(start: Sequence[Point], sightings: Sequence[Sighting]) -> int:
    """Return how many unknowns the sightings leave open, near a first guess."""
    free = _free(len(start), sightings)
    if not sightings:
        return len(free)
    model = _Model(len(start), tuple(sightings), free)
    _, rows = model(model.unknowns(start))
    return len(free) - rank(rows)


class _Model:
    """From unknowns to predictions and gradients."""

    def __init__(self, count: int, sightings: tuple[Sighting, ...], free: tuple[int, ...]) -> None:
        self.count = count
        self.sightings = sightings
        self.free = free

    def unknowns(self, corners: Sequence[Point]) -> Row:
        return tuple(
            0.0 if k == TURN else (corners[k // 2].y_mm if k % 2 else corners[k // 2].x_mm)
            for k in self.free
        )

    def placed(self, unknowns: Row) -> tuple[tuple[Point, ...], float]:
        values = dict(zip(self.free, unknowns, strict=True))
        corners = tuple(
            Point(values.get(2 * i, 0.0), values.get(2 * i + 1, 0.0)) for i in range(self.count)
        )
        return corners, values.get(TURN, 0.0)

    def __call__(self, unknowns: Row) -> tuple[Row, tuple[Row, ...]]:
        corners, turn_deg = self.placed(unknowns)
        predicted = []
        rows = []
        for sighting in self.sightings:
            value, gradient = sighting.predict(corners, turn_deg)
            predicted.append(value)
            rows.append(tuple(gradient.get(k, 0.0) for k in self.free))
        return tuple(predicted), tuple(rows)


def _free(count: int, sightings: Sequence[Sighting]) -> tuple[int, ...]:
    coordinates = tuple(k for k in range(2 * count) if k not in (0, 1, 3))
    has_bearing = any(isinstance(s, Bearing) for s in sightings)
    return (*coordinates, TURN) if has_bearing else coordinates


def _over_u(sighting: Sighting, residual: float, share: float) -> float:
    """Return a residual over its own standard uncertainty; 0 when nothing checks the sighting."""
    return residual / (sighting.u * math.sqrt(share)) if share > 1e-6 else 0.0


def _distance(corners: Sequence[Point], start: int, end: int) -> tuple[float, Gradient]:
    dx = corners[end].x_mm - corners[start].x_mm
    dy = corners[end].y_mm - corners[start].y_mm
    length_mm = math.hypot(dx, dy) or 1e-9
    ux, uy = dx / length_mm, dy / length_mm
    return length_mm, {2 * start: -ux, 2 * start + 1: -uy, 2 * end: ux, 2 * end + 1: uy}


def _bearing(corners: Sequence[Point], start: int, end: int) -> tuple[float, Gradient]:
    dx = corners[end].x_mm - corners[start].x_mm
    dy = corners[end].y_mm - corners[start].y_mm
    squared = dx * dx + dy * dy or 1e-18
    gx, gy = math.degrees(-dy / squared), math.degrees(dx / squared)
    gradient = {2 * start: -gx, 2 * start + 1: -gy, 2 * end: gx, 2 * end + 1: gy}
    return math.degrees(math.atan2(dy, dx)), gradient


def _plus(one: Gradient, other: Gradient) -> Gradient:
    return {k: one.get(k, 0.0) + other.get(k, 0.0) for k in {**one, **other}}


def _kind(sighting: Sighting) -> SourceKind:
    if sighting.is_assumed:
        return SourceKind.ASSUMPTION
    return SourceKind.TAPE if isinstance(sighting, Distance) else SourceKind.GAUGE


def _near(angle_deg: float, read_deg: float) -> float:
    """Return the angle in the turn of the circle nearest to what was read."""
    return read_deg + (angle_deg - read_deg + 180.0) % 360.0 - 180.0

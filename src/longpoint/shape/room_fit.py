"""The true plan of a room from its walls, corners and diagonals."""

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, ShapeError
from longpoint.shape.fitted import FittedRoom
from longpoint.shape.network import Distance, Network, Sighting, fit_network, is_determined
from longpoint.shape.point import Point
from longpoint.shape.room_doubt import Doubt, doubt_of
from longpoint.shape.room_findings import (
    ROOM_MISCLOSURE,
    assumption_findings,
    crossing,
    left_open,
    misclosure_finding,
    open_finding,
    too_few,
)
from longpoint.shape.room_sightings import (
    ASSUMED_CORNER_U_DEG,
    corner_count,
    first_guess,
    needs_assumed_corners,
    room_sightings,
    walls_without_corner,
)
from longpoint.shape.unseen_slips import unseen_finding
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.rooms import Room

FEWEST_WALLS: Final = 3


def fit_rooms(house: House) -> tuple[tuple[FittedRoom, ...], tuple[Finding, ...]]:
    """Fit the plan of every room and chain of walls; trouble in one never stops the others.

    Args:
        house: The house as read.

    Returns:
        One plan for every room that has one, and what is to be said: `room-open` (stop: no plan),
        `room-misclosure` (the readings don't fit together; the wall is named where it can be),
        `corner-assumed`, `wall-assumed` and `slips-unseen` (notes).
    """
    fitted: list[FittedRoom] = []
    findings: list[Finding] = []
    for room in house.rooms:
        try:
            plan, said = _fit_room(house, room)
        except ShapeError as error:
            findings.append(open_finding(room, error))
            continue
        fitted.append(plan)
        findings += said
    return tuple(fitted), tuple(findings)


def _fit_room(house: House, room: Room) -> tuple[FittedRoom, tuple[Finding, ...]]:
    if len(room.walls) < (FEWEST_WALLS if room.closed else 1):
        raise too_few(room)
    start = first_guess(room)
    sightings = room_sightings(room, house.tape(room.tape))
    if not is_determined(start, sightings):
        raise left_open(room)
    whole = fit_network(start, sightings)
    doubt = doubt_of(whole)
    network = _without_the_wrong_one(room, whole, doubt, start)
    if doubt is not None and network is not whole:
        doubt = _mended_by(network, doubt)
    if room.closed and not _is_simple(network.corners):
        raise crossing(room)
    plan = _fitted(house, room, whole, network)
    findings = assumption_findings(house, room, plan)
    if doubt is not None:
        return plan, (misclosure_finding(house, room, doubt), *findings)
    unseen = unseen_finding(house, room, whole)
    return plan, (*findings, unseen) if unseen is not None else findings


def _without_the_wrong_one(
    room: Room, whole: Network, doubt: Doubt | None, start: tuple[Point, ...]
) -> Network:
    """Fit again without a reading that is clearly wrong, unless the crew accepts it."""
    if doubt is None or not doubt.stands_out or ROOM_MISCLOSURE in room.accept:
        return whole
    wrong = doubt.suspects[0].sighting
    rest = tuple(s for s in whole.sightings if s is not wrong)
    return fit_network(start, rest) if is_determined(start, rest) else whole


def _mended_by(network: Network, doubt: Doubt) -> Doubt:
    """Return the doubt with what the wrong reading should be, from the fit without it."""
    wrong = doubt.suspects[0]
    mended, _ = wrong.sighting.predict(network.corners, network.turn_deg)
    return replace(doubt, suspects=(replace(wrong, mended=mended),))


def _fitted(house: House, room: Room, whole: Network, network: Network) -> FittedRoom:
    tape = house.tape(room.tape)
    shared = tuple(
        tape.shared_u_mm(s.read) if isinstance(s, Distance) else 0.0 for s in network.sightings
    )
    count = corner_count(room)
    corners = network.corners
    ends = [(index, (index + 1) % count) for index in range(len(room.walls))]
    turning = len(room.walls) if room.closed else len(room.walls) - 1
    triples = [((i + 1) % count, (i + 2) % count, i) for i in range(turning)]
    corner_deg = [_corner_deg(corners, *triple) for triple in triples]
    corner_u_deg = [network.angle_u_deg(*triple, shared) for triple in triples]
    if not room.closed:
        last = room.walls[-1]
        corner_deg.append(90.0 if last.corner_deg is None else last.corner_deg)
        corner_u_deg.append(ASSUMED_CORNER_U_DEG if last.corner_deg is None else last.corner_u_deg)
    return FittedRoom(
        name=room.name,
        corners=corners,
        wall_mm=tuple(corners[a].distance_mm(corners[b]) for a, b in ends),
        wall_u_mm=tuple(network.length_u_mm(a, b, shared) for a, b in ends),
        corner_deg=tuple(corner_deg),
        corner_u_deg=tuple(corner_u_deg),
        residuals=whole.residuals(),
        misclosure=whole.misclosure(named=_last_diagonal(whole.sightings)),
        assumed=_assumed(room, whole, network),
    )


def _assumed(room: Room, whole: Network, network: Network) -> tuple[str, ...]:
    corners = (
        say(
            "corner {mark} {from_}",
            mark=wall.mark,
            from_="90" if needs_assumed_corners(room) else say("from the other readings"),
        )
        for wall in walls_without_corner(room)
    )
    walls = (
        say("wall {mark} from the other walls", mark=wall.mark)
        for wall in room.walls
        if wall.length_mm is None
    )
    left_out = (
        say("{s} left out", s=s.name) for s in whole.sightings if s not in network.sightings
    )
    return (*corners, *walls, *left_out)


def _last_diagonal(sightings: Sequence[Sighting]) -> str:
    diagonals = [s.name for s in sightings if s.name.startswith("diagonal")]
    return diagonals[-1] if diagonals else ""


def _corner_deg(corners: Sequence[Point], corner: int, back: int, onward: int) -> float:
    here = corners[corner]
    back_rad, onward_rad = (
        math.atan2(corners[to].y_mm - here.y_mm, corners[to].x_mm - here.x_mm)
        for to in (back, onward)
    )
    return math.degrees(back_rad - onward_rad) % 360.0


def _is_simple(corners: Sequence[Point]) -> bool:
    """Tell whether a closed plan goes round without crossing itself."""
    count = len(corners)
    sides = [(corners[i], corners[(i + 1) % count]) for i in range(count)]
    return not any(
        _cross(*sides[i], *sides[j])
        for i in range(count)
        for j in range(i + 2, count)
        if (j + 1) % count != i
    )


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def _side(a: Point, b: Point, p: Point) -> float:
    return (b.x_mm - a.x_mm) * (p.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (p.x_mm - a.x_mm)

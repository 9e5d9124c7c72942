"""Every piece of a house where it goes, as far as the house file tells; the rest in a row."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Final

from longpoint.errors import PieceError
from longpoint.house_plan import HousePlan
from longpoint.pieces.cut_solid import CutSolid, Section, cut_solid
from longpoint.pieces.laid_runs import STRAIGHT, laid_boards, wall_lying
from longpoint.pieces.laid_set import laid_set
from longpoint.pieces.lying import FLAT, Lying
from longpoint.pieces.other_shapes import fitted_faces, outline_faces
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import FittedOpening, FittedOutline, FittedRoom
from longpoint.shape.point import Point
from longpoint.sheets.opening_stance import as_it_stands
from longpoint.speech.said import say
from longpoint.survey.openings import Opening
from longpoint.trims.joint_plane import Vector

Face = FittedOpening | FittedOutline
"""The fitted shape of one face of an opening."""

BESIDE_MM: Final = 600.0
"""From one thing in the row to the next."""
APART_MM: Final = 40.0
"""From one piece to the next where they lie beside each other."""

IN_A_ROW: Final = say("Places in the building are not known; openings stand in a row.")
RUN_IN_ROW: Final = say("Its place in the building is not known: it stands in the row.")
ON_WALL: Final = say("Stands in its wall, as far from the left-hand corner as was read.")
ON_FLOOR_LINE: Final = say("How high it stands was not read: its bottom is on the floor's line.")
ALONG_WALL: Final = say("Lies along its wall as the room was fitted.")
AS_CUT: Final = say("Its place is not known: it lies on its back, as at the saw.")


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidPiece:
    """A piece, how it lies in its group, and its body; None where its cuts cross."""

    piece: Piece
    lies: Lying
    solid: CutSolid | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidGroup:
    """Pieces that belong together: those of one face of an opening, of a board, of other trim.

    Attributes:
        mark: Mark of the opening with its face, of the run or of the trim.
        lies: How it lies in its room where `room` says so, else in the house.
        room: Name of the fitted room it stands in; empty where its place isn't known.
        said: What is known of its place.
        pieces: Its pieces.
    """

    mark: str
    lies: Lying
    room: str = ""
    said: str
    pieces: tuple[LaidPiece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidRoom:
    """A fitted room: where its x and y begin in the house, and its corners. [mm]"""

    name: str
    lies: Lying
    corners: tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidHouse:
    """Rooms side by side, then what no room holds, in a row in front of the house's x axis."""

    rooms: tuple[LaidRoom, ...]
    groups: tuple[LaidGroup, ...]


def laid_house(plan: HousePlan, pieces: Sequence[Piece]) -> LaidHouse:
    """Return where pieces of a plan go.

    Args:
        plan: The planned house.
        pieces: Those to be laid.

    Returns:
        Each piece once. Rooms with a fitted plan that something is known to stand in come first.
    """
    sections = {each.name: each.section for each in plan.house.profiles}
    groups = [*_set_groups(plan, pieces, sections), *_run_groups(plan, pieces, sections)]
    laid = {each.piece.mark for group in groups for each in group.pieces}
    groups += _as_cut([piece for piece in pieces if piece.mark not in laid], sections)
    return _in_a_row(plan, groups)


def _set_groups(
    plan: HousePlan, pieces: Sequence[Piece], sections: dict[str, Section]
) -> Iterator[LaidGroup]:
    for opening in plan.house.openings:
        faces: list[Face] = [*fitted_faces(opening, plan.shapes)]
        faces += outline_faces(opening, plan.shapes)
        for fitted in faces:
            own = [
                piece
                for piece in pieces
                if piece.opening == opening.mark and piece.face in ("", fitted.face)
            ]
            if not own:
                continue
            try:
                lying = laid_set(plan.house, opening, fitted, own)
            except PieceError:
                continue
            room, wall = _wall_of(plan, opening, fitted.face)
            yield LaidGroup(
                mark=f"{opening.mark}{fitted.face}",
                lies=_stance(opening, fitted).inside(wall or STRAIGHT),
                room=room,
                said=_set_said(opening, is_placed=wall is not None),
                pieces=_bodies(own, lying, sections),
            )


def _stance(opening: Opening, fitted: Face) -> Lying:
    """Return how the fitted corners stand on a wall, the lower bottom corner on the floor's line.

    The bottom left corner is at the wall's x = 0.
    """
    a, b = fitted.corners[:2]
    if isinstance(fitted, FittedOpening):
        c, d = as_it_stands(opening, fitted)[:2]
        turn = math.atan2(d.y_mm - c.y_mm, d.x_mm - c.x_mm) - math.atan2(
            b.y_mm - a.y_mm, b.x_mm - a.x_mm
        )
    else:
        turn = math.radians(fitted.level_deg or 0.0)
    cos, sin = math.cos(turn), math.sin(turn)
    left, right = ((p.x_mm * cos - p.y_mm * sin, p.x_mm * sin + p.y_mm * cos) for p in (a, b))
    return Lying(
        origin=(-left[0], -min(left[1], right[1]), 0.0),
        along=(cos, sin, 0.0),
        across=(-sin, cos, 0.0),
    )


def _set_said(opening: Opening, *, is_placed: bool) -> str:
    if not is_placed:
        return IN_A_ROW
    if opening.stands_on_floor:
        return ON_WALL
    return say("{where} {height}", where=ON_WALL, height=ON_FLOOR_LINE)


def _wall_of(plan: HousePlan, opening: Opening, face: str) -> tuple[str, Lying | None]:
    """Return the fitted room and the wall that a face looks out of, where both are known.

    The first face looks into the opening's own room, the second into another one.
    """
    fits = _fits(plan)
    for room in plan.house.rooms:
        is_own = room.name == opening.room or not opening.room
        if room.name not in fits or is_own is (face == "b"):
            continue
        for index, wall in enumerate(room.walls):
            for place in wall.openings:
                if place.mark == opening.mark and place.from_left_mm is not None:
                    lean_deg = wall.lean_deg or 0.0
                    fit = fits[room.name]
                    return room.name, wall_lying(fit, index, place.from_left_mm, lean_deg)
    return "", None


def _fits(plan: HousePlan) -> dict[str, FittedRoom]:
    return {fit.name: fit for fit in plan.shapes.rooms if fit.name not in plan.held}


def _run_groups(
    plan: HousePlan, pieces: Sequence[Piece], sections: dict[str, Section]
) -> Iterator[LaidGroup]:
    for board in laid_boards(plan.house, plan.shapes, plan.held):
        own = [piece for piece in pieces if piece.run == board.mark]
        yield LaidGroup(
            mark=board.mark,
            lies=board.lies,
            room=board.room,
            said=ALONG_WALL if board.room else RUN_IN_ROW,
            pieces=_bodies(own, board.parts, sections),
        )


def _bodies(
    pieces: Sequence[Piece], lying: dict[str, Lying], sections: dict[str, Section]
) -> tuple[LaidPiece, ...]:
    return tuple(
        LaidPiece(
            piece=piece,
            lies=lying[piece.mark],
            solid=cut_solid(piece, sections.get(piece.profile, ())),
        )
        for piece in pieces
        if piece.mark in lying
    )


def _as_cut(pieces: Sequence[Piece], sections: dict[str, Section]) -> Iterator[LaidGroup]:
    """Return pieces whose place isn't worked out, those of one place beside each other."""
    for place, some in groupby(sorted(pieces, key=lambda p: p.place), key=lambda p: p.place):
        own = list(some)
        lying = {}
        far_mm = 0.0
        for piece in own:
            lying[piece.mark] = replace(FLAT, origin=(0.0, far_mm, 0.0))
            far_mm += piece.width_mm + APART_MM
        yield LaidGroup(mark=place, lies=FLAT, said=AS_CUT, pieces=_bodies(own, lying, sections))


def _in_a_row(plan: HousePlan, groups: Sequence[LaidGroup]) -> LaidHouse:
    filled = [group for group in groups if group.pieces]
    wanted = {group.room for group in filled}
    x_mm = 0.0
    rooms = []
    for name, fit in _fits(plan).items():
        if name not in wanted:
            continue
        low_x, low_y = min(p.x_mm for p in fit.corners), min(p.y_mm for p in fit.corners)
        lies = replace(FLAT, origin=(x_mm - low_x, -low_y, 0.0))
        rooms.append(LaidRoom(name=name, lies=lies, corners=fit.corners))
        x_mm += max(p.x_mm for p in fit.corners) - low_x + BESIDE_MM
    laid = []
    for group in filled:
        if not group.room:
            points = [point[0] for point in group_points(group)] or [0.0]
            x, y, z = group.lies.origin
            group = replace(group, lies=replace(group.lies, origin=(x + x_mm - min(points), y, z)))
            x_mm += max(points) - min(points) + BESIDE_MM
        laid.append(group)
    return LaidHouse(rooms=tuple(rooms), groups=tuple(laid))


def group_points(group: LaidGroup) -> Iterator[Vector]:
    """Return the corners of a group's bodies, in its room or in the house. [mm]"""
    for each in group.pieces:
        lies = each.lies.inside(group.lies)
        yield from map(lies.at, each.solid.points if each.solid is not None else ())

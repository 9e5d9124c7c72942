"""Openings as fitted, with the outlines of their trim, for other people's drawings."""

from dataclasses import dataclass

from longpoint.house_plan import HousePlan
from longpoint.sheets.opening_stance import as_it_stands
from longpoint.sheets.opening_trim import trim_rings

Ring = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningOutline:
    """One face of an opening, seen from inside the room: x right, y up. [mm]

    Attributes:
        mark: Its mark, with the face behind it where there are two.
        hole: Between the reveal faces, as fitted to the readings.
        trim: Each piece that surrounds it.
    """

    mark: str
    hole: Ring
    trim: tuple[Ring, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseOutlines:
    """What of a house can be drawn, and the marks of what can't."""

    outlines: tuple[OpeningOutline, ...]
    left_out: tuple[str, ...]


def opening_outlines(plan: HousePlan) -> HouseOutlines:
    """Return every fitted four-sided opening that isn't held; the others are named."""
    by_mark = {opening.mark: opening for opening in plan.house.openings}
    found = []
    for fitted in plan.shapes.openings:
        opening = by_mark.get(fitted.mark)
        if opening is None or fitted.mark in plan.held or opening.arch or opening.outline:
            continue
        pieces = [
            piece
            for piece in plan.pieces
            if piece.opening == fitted.mark and piece.face in ("", fitted.face)
        ]
        corners = as_it_stands(opening, fitted)
        rings = trim_rings(opening, fitted.face, corners, pieces)
        found.append(
            OpeningOutline(
                mark=f"{fitted.mark}{fitted.face if opening.faces == 2 else ''}",
                hole=tuple((point.x_mm, point.y_mm) for point in corners),
                trim=tuple(tuple((point.x_mm, point.y_mm) for point in ring) for ring in rings),
            )
        )
    drawn = {fitted.mark for fitted in plan.shapes.openings} - plan.held
    drawn -= {o.mark for o in plan.house.openings if o.arch or o.outline}
    left_out = [opening.mark for opening in plan.house.openings if opening.mark not in drawn]
    return HouseOutlines(outlines=tuple(found), left_out=tuple(left_out))

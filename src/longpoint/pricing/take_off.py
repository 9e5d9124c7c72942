"""What work a house is, counted from its pieces and from what its readings say."""

from collections.abc import Container, Iterable, Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Final

from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.pricing.work import LONG_SIDE_MM, Task, WorkKind
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.shape.fitted import FittedOpening, Shapes
from longpoint.speech.said import joined, say
from longpoint.survey.house import Dialect, House
from longpoint.survey.openings import Flush, Layout, Opening
from longpoint.survey.readings import OpeningReadings, Place

CORNER_NAMES: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))
_STEP: Final = Decimal("0.01")
"""Running lengths are counted in hundredths of a metre or foot, each run rounded to the nearest."""

_RUNNING: Final = {
    Role.RUN: WorkKind.SKIRTING,
    Role.CORNICE: WorkKind.CORNICE,
    Role.HANDRAIL: WorkKind.HANDRAIL,
    Role.SHELF: WorkKind.SHELF,
    Role.STOP: WorkKind.OTHER_TRIM,
    Role.LINING: WorkKind.OTHER_TRIM,
    Role.RAIL: WorkKind.OTHER_TRIM,
    Role.STILE: WorkKind.OTHER_TRIM,
    Role.BEAD: WorkKind.OTHER_TRIM,
    Role.BACK_BAND: WorkKind.OTHER_TRIM,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """From where on an opening is more work; all ours, no source, until the crew says.

    Attributes:
        odd_corner_deg: A corner so far off square counts as odd. [deg]
        apart_mm: Opposite sides that differ by so much: the reveal is re-set.
        proud_mm: A corner so far proud or shy is packed.
    """

    odd_corner_deg: float = 1.0
    apart_mm: float = 6.0
    proud_mm: float = 1.0


def take_off(
    house: House,
    shapes: Shapes,
    pieces: Sequence[Piece],
    limits: Limits,
    running_units: Units = Units.MM,
    held: Container[str] = (),
) -> tuple[Task, ...]:
    """Return the work of a house, opening by opening and run by run.

    An opening that is held has no pieces, and is counted by what surrounds it all the same: it will
    have to be trimmed. What its readings would ask for isn't counted, since they are in doubt.

    Args:
        house: The house, from readings or from nominal sizes.
        shapes: Its fitted openings.
        pieces: Its pieces.
        limits: From where on an opening is more work.
        running_units: Millimetres: running work in metres; inches: in feet.
        held: Marks of what is in doubt.
    """
    tasks: list[Task] = []
    for opening in house.openings:
        tasks += _set(opening)
        if opening.mark not in held:
            tasks += _asked_by_readings(house, shapes, opening, limits)
    tasks += _running(pieces, running_units)
    tasks += _corners(pieces)
    tasks += _pieces_and_joints(pieces)
    return tuple(tasks)


def _set(opening: Opening) -> Iterator[Task]:
    kind = WorkKind.WINDOW_FOUR_SIDES
    if opening.stands_on_floor:
        kind = WorkKind.DOOR_FACE
    elif opening.layout is not Layout.ALL_ROUND:
        kind = WorkKind.WINDOW_THREE_SIDES
    yield _task(opening, kind, opening.faces)
    if opening.layout is Layout.BOARD_AND_APRON and opening.board:
        yield _task(opening, WorkKind.WINDOW_BOARD, 1)
    if opening.arch is not None:
        yield _task(opening, WorkKind.ARCH, opening.faces)


def _asked_by_readings(
    house: House, shapes: Shapes, opening: Opening, limits: Limits
) -> Iterator[Task]:
    for face in (each for each in shapes.openings if each.mark == opening.mark):
        yield from _long_sides(house, opening, face)
        yield from _odd_corners(opening, face, limits)
    for readings in (opening.readings, opening.readings_b):
        if readings is not None:
            yield from _re_set_or_packed(house, opening, readings, limits)


def _task(opening: Opening, kind: WorkKind, count: int, why: str = "") -> Task:
    return Task(kind=kind, quantity=Decimal(count), place=opening.mark, room=opening.room, why=why)


def _long_sides(house: House, opening: Opening, face: FittedOpening) -> Iterator[Task]:
    """Give the sides of a window over five feet: those that are trimmed.

    A door's legs are always longer, and its hours hold them.
    """
    if opening.stands_on_floor or face.face == "b":
        return
    bottom_mm, right_mm, head_mm, left_mm = face.side_mm
    sides = [head_mm, right_mm, left_mm]
    if opening.layout is not Layout.LEGS_AND_HEAD:
        sides.append(bottom_mm)
    count = sum(side_mm > LONG_SIDE_MM for side_mm in sides)
    if count:
        limit = format_with_unit(LONG_SIDE_MM, house.units)
        many = say("side is") if count == 1 else say("sides are")
        yield _task(
            opening,
            WorkKind.LONG_SIDE,
            count,
            say(
                "{count} {many} over {limit}",
                count=count,
                many=many,
                limit=limit,
            ),
        )


def _odd_corners(opening: Opening, face: FittedOpening, limits: Limits) -> Iterator[Task]:
    """Give the mitred corners that are so far off square as to be fitted by hand."""
    mitred = range(2, 4) if opening.layout is not Layout.ALL_ROUND else range(4)
    odd = [
        say(
            "{corner_names} {corner}",
            corner_names=CORNER_NAMES[each],
            corner=format_angle(face.corner_deg[each]),
        )
        for each in mitred
        if abs(face.corner_deg[each] - 90.0) >= limits.odd_corner_deg
    ]
    if odd:
        which = say("face {face}: ", face=face.face) if face.face else ""
        why = say("{which}out of square: {odd} degrees", which=which, odd=joined(", ", odd))
        yield _task(opening, WorkKind.ODD_CORNER, len(odd), why)


def _re_set_or_packed(
    house: House, opening: Opening, readings: OpeningReadings, limits: Limits
) -> Iterator[Task]:
    apart_mm, sides = _furthest_apart(opening, readings)
    if opening.flush is Flush.RE_SET:
        why = say("the house file asks for it: {lining} re-set", lining=_lining(house))
        yield _task(opening, WorkKind.RESET_REVEAL, 1, why)
        return
    if apart_mm >= limits.apart_mm and not opening.raked and opening.outline is None:
        told = format_with_unit(apart_mm, house.units)
        why = say(
            "{sides} differ by {told}: {lining} re-set",
            sides=sides,
            told=told,
            lining=_lining(house),
        )
        yield _task(opening, WorkKind.RESET_REVEAL, 1, why)
        return
    if readings.plane is None or opening.flush is Flush.LEAVE:
        return
    out = [
        say(
            "{name} {step} {proud}",
            name=name,
            step=format_with_unit(abs(step_mm), house.units),
            proud=say("proud") if step_mm > 0 else say("shy"),
        )
        for name, step_mm in zip(CORNER_NAMES, readings.plane.corners_mm(), strict=True)
        if abs(step_mm) >= limits.proud_mm
    ]
    if out:
        why = say("{out}: packed or relieved", out=joined(", ", out))
        yield _task(opening, WorkKind.PACK_CORNER, len(out), why)


def _lining(house: House) -> str:
    """Return what the board that lines an opening is called; in America a reveal is a set-back."""
    return say("jamb") if house.dialect in (Dialect.US, Dialect.CA) else say("reveal")


def _furthest_apart(opening: Opening, readings: OpeningReadings) -> tuple[float, str]:
    """Return how far opposite sides differ; legs of a door go by the floor, and are left alone."""
    across = say("widths") if opening.stands_on_floor else say("head and sill")
    pairs = [(across, Place.TOP, Place.BOTTOM)]
    if not opening.stands_on_floor:
        pairs.append((say("sides"), Place.LEFT, Place.RIGHT))
    apart = [
        (abs(one_mm - other_mm), name)
        for name, one, other in pairs
        if (one_mm := readings.side_mm(one)) is not None
        and (other_mm := readings.side_mm(other)) is not None
    ]
    return max(apart, default=(0.0, ""))


def _running(pieces: Iterable[Piece], units: Units) -> Iterator[Task]:
    """Give each run's length, its scarfed parts together."""
    runs: dict[tuple[WorkKind, str, str], float] = {}
    for piece in pieces:
        kind = _RUNNING.get(piece.role)
        if kind is not None:
            key = (kind, piece.place, piece.room)
            runs[key] = runs.get(key, 0.0) + max(piece.inner_mm, piece.back_mm)
    for (kind, place, room), length_mm in runs.items():
        yield Task(kind=kind, quantity=_counted(length_mm, units), place=place, room=room)


def _counted(length_mm: float, units: Units) -> Decimal:
    """Return a length in metres or feet, to the hundredth and at least one of them."""
    one_mm = 1000.0 if units is Units.MM else 12 * MM_PER_INCH
    return max(Decimal(length_mm / one_mm).quantize(_STEP, ROUND_HALF_UP), _STEP)


def _corners(pieces: Iterable[Piece]) -> Iterator[Task]:
    """Give the internal corners of skirting by their scribed ends, the external ones by mitres.

    Two mitred ends make an external corner, those of a return and its board as well; an odd one
    over is counted as one, at the last run.
    """
    open_mitre = False
    last: Piece | None = None
    for piece in pieces:
        if piece.role not in (Role.RUN, Role.RETURN):
            continue
        ends = (piece.left, piece.right)
        scribed = sum(end.kind is CutKind.SCRIBE for end in ends)
        if scribed:
            yield _at(piece, WorkKind.INTERNAL_CORNER, scribed)
        for end in ends:
            if end.bevel_deg < -1.0 and end.kind in (CutKind.BEVEL, CutKind.COMPOUND):
                if open_mitre:
                    yield _at(piece, WorkKind.EXTERNAL_CORNER, 1)
                open_mitre, last = not open_mitre, piece
    if open_mitre and last is not None:
        yield _at(last, WorkKind.EXTERNAL_CORNER, 1)


def _pieces_and_joints(pieces: Sequence[Piece]) -> Iterator[Task]:
    for piece in pieces:
        yield _at(piece, WorkKind.PIECE, 1)
        ends = sum(end.kind is not CutKind.SQUARE for end in (piece.left, piece.right))
        if ends:
            yield Task(
                kind=WorkKind.JOINT,
                quantity=Decimal(ends) / 2,
                place=piece.place,
                room=piece.room,
            )


def _at(piece: Piece, kind: WorkKind, count: int) -> Task:
    return Task(kind=kind, quantity=Decimal(count), place=piece.place, room=piece.room)

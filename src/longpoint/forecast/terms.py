"""From an error budget to what one frame's pieces and reveal are out by."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.budget.records import BudgetLine, Cause, ErrorBudget, ErrorName
from longpoint.forecast.fitup.frame import SLOTS, Slot
from longpoint.forecast.lines import Spread
from longpoint.forecast.planned_face import PlannedEnd, PlannedFace
from longpoint.shape.fitted import ShapeSource, SourceKind
from longpoint.shape.sightings import ASSUMED_LEAN_U_MM, ASSUMED_TAPER_U_MM, SQUARE
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.instruments import CLASS_LIMITS, Tape
from longpoint.survey.openings import Method

Effect = tuple[float, ...]
"""Over the slots of a frame, (8 n,)."""

TAPE_SCALE: Final = say("tape scale")


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTerm:
    """One independent way in which a frame is out, for a draw of size one.

    Attributes:
        name: Its name; a shared term has the same name in every frame that it reaches.
        cause: What it counts under.
        is_shared: True when one draw of it holds for the whole house.
        spread: Shape of its distribution.
        effect: What a draw of one standard uncertainty makes of the frame, (8 n,).
    """

    name: str
    cause: Cause
    is_shared: bool
    spread: Spread
    effect: Effect


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameErrors:
    """Everything that a frame may be out by.

    Attributes:
        terms: Independent of each other.
        known: What it is known to be out by, (8 n,).
        biases: The part of it that tools are known for, by cause; the rest is the reveal's shape.
    """

    terms: tuple[FrameTerm, ...]
    known: Effect
    biases: tuple[tuple[Cause, Effect], ...] = ()


def frame_errors(face: PlannedFace, budget: ErrorBudget, house: House) -> FrameErrors:
    """Return what one face's frame may be out by.

    Args:
        face: The face as planned.
        budget: What readings, marks and cuts may be out by.
        house: Gives the tapes: that which read the face, and that which marks at the saw.

    Returns:
        Shared terms first, in an order that is the same in every frame.

    References:
        A piece is marked from the long point of one end to the inner edge of the other, so a face
        too wide makes it too short by as much, and a hooked end cut past its angle makes it too
        short by width / cos^2 per radian.
    """
    biases = tuple(
        (line.cause, _scaled(_shared_effect(face, line.name), line.bias))
        for line in budget.lines
        if line.bias
    )
    known = face.known_off()
    for _, effect in biases:
        known = _plus(known, effect)
    terms = (
        *_shared(face, budget, house),
        *_shape_terms(face, budget),
        *_piece_terms(face, budget),
    )
    return FrameErrors(terms=terms, known=known, biases=biases)


def _shared(face: PlannedFace, budget: ErrorBudget, house: House) -> Iterable[FrameTerm]:
    for line in budget.lines:
        if line.is_shared:
            name = line.name.value
            if line.name is ErrorName.INSIDE_READING:
                name = f"{name}, {face.readings.tape}"
            yield _term(line, name, _scaled(_shared_effect(face, line.name), line.u))
    if face.readings.tape != house.saw_tape:
        u = _scale_u_mm_per_m(house.tape(face.readings.tape), house.tape(house.saw_tape))
        yield FrameTerm(
            name=f"{TAPE_SCALE}, {face.readings.tape}",
            cause=Cause.TAPE,
            is_shared=True,
            spread=Spread.NORMAL,
            effect=_scaled(_tape_effect(face, per_metre=True), u),
        )


def _shared_effect(face: PlannedFace, name: ErrorName) -> Effect:
    """Return what one unit (mm or degree) of a shared error makes of a frame."""
    match name:
        case ErrorName.SAW_SCALE:
            return _sum(face, (_turned(face, end, math.radians(1.0)) for end in face.ends))
        case ErrorName.SAW_FENCE:
            return _sum(
                face,
                (
                    _turned(face, end, math.radians(1.0 if end.is_end else -1.0))
                    for end in face.ends
                ),
            )
        case ErrorName.INSIDE_READING:
            return _tape_effect(face, per_metre=False)
        case ErrorName.MARK_OFFSET:
            if face.opening.method is Method.IN_PLACE:
                return _nothing(face)
            return _sum(face, (_longer(face, side, 1.0) for side in _sides(face)))
        case _:
            return _nothing(face)


def _tape_effect(face: PlannedFace, *, per_metre: bool) -> Effect:
    """Return what a millimetre too much on every tape reading, or on each metre of it, makes."""
    moves = [(0.0, 0.0)] * 4
    for source in face.fitted.sources:
        if source.kind is SourceKind.TAPE:
            share = source.read / 1000.0 if per_metre else 1.0
            moves = [
                (x + share * dx, y + share * dy)
                for (x, y), (dx, dy) in zip(moves, source.moves_mm, strict=True)
            ]
    return _read_wrong(face, tuple(moves))


def _shape_terms(face: PlannedFace, budget: ErrorBudget) -> Iterable[FrameTerm]:
    for source in face.fitted.sources:
        u = source.u * _assumed_share(source, budget)
        cause = Cause.SHAPE if source.kind is SourceKind.ASSUMPTION else Cause.READINGS
        effect = _scaled(_read_wrong(face, source.moves_mm), u)
        if any(effect):
            yield FrameTerm(
                name=source.name,
                cause=cause,
                is_shared=False,
                spread=Spread.NORMAL,
                effect=effect,
            )


def _assumed_share(source: ShapeSource, budget: ErrorBudget) -> float:
    """Return how this budget's doubt of an assumption compares with that of the fit."""
    if source.kind is not SourceKind.ASSUMPTION:
        return 1.0
    if source.name == SQUARE:
        return budget.u(ErrorName.LEAN) / ASSUMED_LEAN_U_MM
    return budget.u(ErrorName.TAPER) / ASSUMED_TAPER_U_MM


def _read_wrong(face: PlannedFace, moves_mm: tuple[tuple[float, float], ...]) -> Effect:
    """Return what it makes of a frame that the corners were taken to lie so far off."""
    true = face.reveal_off(tuple((-dx, -dy) for dx, dy in moves_mm))
    if face.opening.method is not Method.IN_PLACE:
        return true
    # Marked off the pieces already up, a piece takes its length from them; its angles it does not.
    slots = list(true)
    for side in _sides(face):
        middle = slots[SLOTS * side + Slot.REVEAL_MIDDLE]
        for slot in (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END):
            slots[SLOTS * side + slot] -= middle
    return tuple(slots)


def _piece_terms(face: PlannedFace, budget: ErrorBudget) -> Iterable[FrameTerm]:
    for end in face.ends:
        name = ErrorName.STOP_CUT if end.is_at_stop else ErrorName.HAND_SET_CUT
        line = budget.line(name)
        where = say(
            "{name}, side {side}, {end}",
            name=name.value,
            side=end.side,
            end=say("end") if end.is_end else say("start"),
        )
        yield _term(line, where, _turned(face, end, math.radians(line.u)))
    for side in _sides(face):
        mark = budget.line(ErrorName.MARK_AND_CUT)
        yield _term(
            mark,
            say("{mark}, side {side}", mark=mark.name.value, side=side),
            _longer(face, side, mark.u),
        )
        width = budget.line(ErrorName.FACE_WIDTH)
        yield _term(
            width,
            say("{width}, side {side}", width=width.name.value, side=side),
            _wider(face, side, width.u),
        )
        bow = budget.line(ErrorName.EDGE_BOW)
        yield _term(
            bow, say("{bow}, side {side}", bow=bow.name.value, side=side), _bowed(face, side, bow.u)
        )
        reveal = budget.line(ErrorName.REVEAL_BOW)
        effect = _one(face, side, Slot.REVEAL_MIDDLE, reveal.u)
        yield _term(
            reveal, say("{reveal}, side {side}", reveal=reveal.name.value, side=side), effect
        )


def _turned(face: PlannedFace, end: PlannedEnd, turn: float) -> Effect:
    """Return what an end cut past its angle by `turn` radians makes of a frame."""
    effect = _one(face, end.side, end.turn_slot, turn)
    if not end.is_hooked:
        return effect
    cosine = math.cos(math.radians(end.saw_deg))
    width_mm = face.frame.sides[end.side].width_mm
    return _plus(effect, _longer(face, end.side, -turn * width_mm / cosine**2))


def _longer(face: PlannedFace, side: int, by_mm: float) -> Effect:
    """Return what a piece too long makes, shared between its mitred ends."""
    ends = face.ends_of(side)
    return _sum(face, (_one(face, side, e.length_slot, by_mm / len(ends)) for e in ends))


def _wider(face: PlannedFace, side: int, by_mm: float) -> Effect:
    effect = _one(face, side, Slot.WIDTH, by_mm)
    if any(end.is_hooked for end in face.ends_of(side)):
        return _plus(effect, _longer(face, side, -by_mm))
    return effect


def _bowed(face: PlannedFace, side: int, sag_mm: float) -> Effect:
    """Return what a piece that sags by so much per square metre makes: its ends turn 4 sag / L."""
    piece = face.frame.sides[side]
    length_mm = piece.start.distance_mm(piece.end)
    turn = 4.0 * sag_mm * (length_mm / 1000.0) ** 2 / length_mm
    return _sum(face, (_one(face, side, e.turn_slot, turn) for e in face.ends_of(side)))


def _scale_u_mm_per_m(one: Tape, other: Tape) -> float:
    """Return how far two tapes may drift apart per metre, as a standard uncertainty.

    References:
        Slope of the limit a + b L of each tape's class, taken as even between its limits.
    """
    slopes = [
        CLASS_LIMITS[tape.tape_class].b_mm_per_m if tape.tape_class is not None else 0.0
        for tape in (one, other)
    ]
    return math.hypot(*slopes) / math.sqrt(3.0)


def _sides(face: PlannedFace) -> range:
    return range(len(face.frame.sides))


def _term(line: BudgetLine, name: str, effect: Effect) -> FrameTerm:
    return FrameTerm(
        name=name,
        cause=line.cause,
        is_shared=line.is_shared,
        spread=line.spread,
        effect=effect,
    )


def _nothing(face: PlannedFace) -> Effect:
    return (0.0,) * (SLOTS * len(face.frame.sides))


def _one(face: PlannedFace, side: int, slot: Slot, size: float) -> Effect:
    slots = [0.0] * (SLOTS * len(face.frame.sides))
    slots[SLOTS * side + slot] = size
    return tuple(slots)


def _plus(one: Effect, other: Effect) -> Effect:
    return tuple(a + b for a, b in zip(one, other, strict=True))


def _scaled(effect: Effect, by: float) -> Effect:
    return tuple(by * x for x in effect)


def _sum(face: PlannedFace, effects: Iterable[Effect]) -> Effect:
    total = _nothing(face)
    for effect in effects:
        total = _plus(total, effect)
    return total

"""In which order the pieces of a room go up, for each way of fixing.

References:
    Doors and their trim before skirting, since skirting dies on architraves: every schedule read
    says so. The longest wall first and square, the next one scribed to it: common practice, no
    source. What comes before what among the rest differs from text to text.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.speech.said import say
from longpoint.survey.openings import Method

_LEGS: Final = frozenset({Role.LEFT_LEG, Role.RIGHT_LEG})
_ACROSS: Final = frozenset({Role.HEAD, Role.SILL, Role.APRON})
_SET: Final = _LEGS | _ACROSS | {Role.SIDE, Role.SEGMENT, Role.CORNER_BLOCK}
_FEET: Final = frozenset({Role.PLINTH_BLOCK})
_LININGS: Final = frozenset({Role.LINING})
_BOARDS: Final = frozenset({Role.BOARD})
_CEILING: Final = frozenset({Role.CORNICE})
_WALLS: Final = frozenset({Role.RAIL, Role.STILE, Role.SHELF, Role.HANDRAIL})
_LAST: Final = frozenset({Role.STOP, Role.BEAD, Role.BACK_BAND})


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkStep:
    """One step of the work in a room.

    Attributes:
        what: What is done.
        marks: Marks of the pieces it is done to, in order; empty: all that are there.
    """

    what: str
    marks: tuple[str, ...] = ()


def room_order(pieces: Iterable[Piece], method: Method) -> tuple[WorkStep, ...]:
    """Return the steps of fixing the pieces of one room.

    Args:
        pieces: Its pieces, in the order of the house.
        method: The way of fixing.

    Returns:
        Steps in order; every piece stands in at least one.
    """
    here = tuple(pieces)
    steps = [
        WorkStep(what=say("Walls stopped and dry, floor known, cables and pipes looked for.")),
        *_these(
            say("Linings first: plumb, square and packed behind every fixing."), here, _LININGS
        ),
        *_these(say("Ceiling trim, the longest wall first."), here, _CEILING),
        *_these(say("Window boards: level, packed and fixed."), here, _BOARDS),
        *_these(say("Plinth blocks, plumb, a little proud of what dies on them."), here, _FEET),
        *_sets(here, method),
        *_skirting(here),
        *_these(say("Rails, panelling and shelves off a level line."), here, _WALLS),
        *_these(say("Stops, beads and back-bands, once the doors are hung."), here, _LAST),
        *_these(say("Returns and wedges: glue alone."), here, frozenset({Role.RETURN, Role.WEDGE})),
    ]
    named = {mark for step in steps for mark in step.marks}
    rest = tuple(piece.mark for piece in here if piece.mark not in named)
    if rest:
        steps.append(WorkStep(what=say("What is left."), marks=rest))
    steps.append(
        WorkStep(what=say("Punch the nails, glue and dust into hairlines, sand the joints level."))
    )
    return tuple(steps)


def _these(what: str, pieces: tuple[Piece, ...], roles: frozenset[Role]) -> tuple[WorkStep, ...]:
    marks = tuple(piece.mark for piece in pieces if piece.role in roles)
    return _named(what, marks)


def _sets(pieces: tuple[Piece, ...], method: Method) -> list[WorkStep]:
    in_sets = [piece for piece in pieces if piece.role in _SET and piece.opening]
    if not in_sets:
        return []
    legs = tuple(p.mark for p in in_sets if p.role in _LEGS)
    others = tuple(p.mark for p in in_sets if p.role not in _LEGS)
    heads = tuple(p.mark for p in in_sets if p.role is Role.HEAD)
    rest = tuple(p.mark for p in in_sets if p.role not in _LEGS and p.role is not Role.HEAD)
    every = tuple(p.mark for p in in_sets)
    steps: tuple[tuple[WorkStep, ...], ...] = ()
    match method:
        case Method.BATCH:
            steps = (
                _named(
                    say("Legs up: one nail at each end, not home, so that they can be tapped."),
                    legs,
                ),
                _named(
                    say("Heads, sill pieces and aprons offered; tap until the joints close."),
                    others,
                ),
                (WorkStep(what=say("Glue the mitres, close them, a pin across each by hand.")),),
                _named(say("Nail along both lines, from the mitres outward."), every),
            )
        case Method.IN_PLACE:
            steps = (
                _named(say("Heads level on their marks, nailed along the inner line only."), heads),
                _named(say("Legs held to the head, marked, cut, glued and nailed."), legs),
                _named(
                    say("Sill pieces and aprons marked off the legs, cut, glued, nailed."), rest
                ),
                _named(say("Nail along the outer line."), every),
            )
        case Method.BENCH:
            steps = (
                _named(say("Frames joined face down on the bench: glue, clamps, pins."), every),
                (
                    WorkStep(
                        what=say("Each frame over its opening, the quirk shared out all round.")
                    ),
                ),
                _named(say("Nail along the inner line, then along the outer one."), every),
            )
    return [step for group in steps for step in group]


def _named(what: str, marks: tuple[str, ...]) -> tuple[WorkStep, ...]:
    return (WorkStep(what=what, marks=marks),) if marks else ()


def _skirting(pieces: tuple[Piece, ...]) -> list[WorkStep]:
    """Return skirting in order: square ends before scribed ones, the longest first."""
    runs = [piece for piece in pieces if piece.role is Role.RUN]
    if not runs:
        return []
    ordered = sorted(runs, key=lambda piece: (_scribes(piece), -piece.long_mm))
    first = tuple(piece.mark for piece in ordered if not _scribes(piece))
    scribed = tuple(piece.mark for piece in ordered if _scribes(piece))
    steps = []
    if first:
        what = say("Skirting without a scribe, the longest first; glue the external mitres.")
        steps.append(WorkStep(what=what, marks=first))
    if scribed:
        what = say("Skirting that is scribed, to what is up already, the longest first.")
        steps.append(WorkStep(what=what, marks=scribed))
    return steps


def _scribes(piece: Piece) -> int:
    return sum(end.kind is CutKind.SCRIBE for end in (piece.left, piece.right))

"""The pieces in the order of sawing, one line each."""

from collections.abc import Sequence
from dataclasses import dataclass

from longpoint.house_plan import HousePlan
from longpoint.pieces.pairs import partner_of
from longpoint.pieces.piece import Piece
from longpoint.speech.said import say
from longpoint.sticks.order.saw_order import saw_steps
from longpoint.sticks.plan import CutPlan, CutStick


@dataclass(frozen=True, slots=True, kw_only=True)
class CutLine:
    """One line of the cutting list.

    Attributes:
        number: Its number, from 1.
        piece: What is cut.
        stick: Out of which stick; None when none was found.
        is_turned: True when the piece lies turned end for end.
    """

    number: int
    piece: Piece
    stick: CutStick | None
    is_turned: bool = False


def cut_lines(plan: HousePlan) -> tuple[CutLine, ...]:
    """Return each piece in the order of sawing; pieces without a stick come last."""
    by_mark = {piece.mark: piece for piece in plan.pieces}
    sticks = {stick.name: stick for stick in plan.cut_plan.sticks}
    lines = [
        CutLine(
            number=step.number,
            piece=by_mark[step.piece],
            stick=sticks[step.stick],
            is_turned=step.turned,
        )
        for step in saw_steps(plan.cut_plan, plan.pieces, plan.house.saw)
    ]
    placed = {line.piece.mark for line in lines}
    rest = [piece for piece in plan.pieces if piece.mark not in placed]
    first = len(lines) + 1
    return (
        *lines,
        *(CutLine(number=n, piece=piece, stick=None) for n, piece in enumerate(rest, first)),
    )


def pairs_apart(plan: HousePlan, lines: Sequence[CutLine]) -> dict[int, int]:
    """Return, by number, the number of a piece's partner that comes off another stick."""
    by_mark = {line.piece.mark: line for line in lines}
    found = {}
    for line in lines:
        partner = partner_of(line.piece, plan.pieces)
        other = by_mark[partner.mark] if partner else None
        if other and other.stick is not line.stick:
            found[line.number] = other.number
    return found


def cut_plan_words(plan: CutPlan) -> str:
    """Return the code of a plan, as it stands on paper and on a screen."""
    return say("Cut plan {code}.", code=plan.code)

"""The budget of a house: defaults, then what its saw and crew are known for."""

from typing import Final

from longpoint.forecast.budget.records import (
    BudgetLine,
    Cause,
    ErrorBudget,
    ErrorName,
    Standing,
)
from longpoint.forecast.lines import Spread
from longpoint.speech.said import say
from longpoint.survey.crew import WallAge
from longpoint.survey.house import House
from longpoint.survey.instruments import Saw

UNPROVED_SAW_DEG: Final = 0.10
PROVED_SAW_DEG: Final = 0.03
"""Left of a saw's scale and fence after a frame of test cuts was read and dialled out; assumed."""

MARK_BY_HAND_MM: Final = 0.35
STOP_BLOCK_MM: Final = 0.15

LEAN_MM: Final = {WallAge.NEW: 1.5, WallAge.OLD: 4.0}
"""Out of square of an opening over its height, where nothing was read; assumed."""

_OURS: Final = say("ours, until the crew's own figures replace it")


def house_budget(house: House, learned: tuple[BudgetLine, ...] = ()) -> ErrorBudget:
    """Return what a house's readings, marks and cuts may be out by.

    Args:
        house: Its saw and crew say which defaults hold.
        learned: Lines known from finished work; they replace those of their names.

    Returns:
        The budget, every line with its standing.
    """
    mark_mm = STOP_BLOCK_MM if house.crew.stop_block else MARK_BY_HAND_MM
    budget = ErrorBudget(
        lines=(
            *_saw_lines(house.saw),
            _line(ErrorName.STOP_CUT, Cause.CUTS, 0.05, unit="deg"),
            _line(ErrorName.HAND_SET_CUT, Cause.CUTS, 0.10, unit="deg"),
            _line(
                ErrorName.INSIDE_READING,
                Cause.TAPE,
                0.20,
                spread=Spread.RECTANGULAR,
                is_shared=True,
                basis=say("hook pushed, case added or blade bent, always alike; ") + _OURS,
            ),
            _line(ErrorName.MARK_OFFSET, Cause.MARKS, 0.20, is_shared=True),
            _line(ErrorName.MARK_AND_CUT, Cause.MARKS, mark_mm),
            _line(
                ErrorName.FACE_WIDTH,
                Cause.WIDTH,
                0.15,
                basis=say(
                    "planed timber may differ by 1 mm under 100 mm (EN 336, "
                    "class 2, structural timber: an outer bound); "
                )
                + _OURS,
            ),
            _line(ErrorName.EDGE_BOW, Cause.TIMBER, 0.15),
            _line(ErrorName.REVEAL_BOW, Cause.REVEAL, 0.40),
            _line(ErrorName.LEAN, Cause.SHAPE, LEAN_MM[house.crew.walls]),
            _line(ErrorName.TAPER, Cause.SHAPE, 1.0),
            _line(ErrorName.THICKNESS, Cause.FACES, 0.10),
            _line(ErrorName.LIE, Cause.FACES, 0.10),
        )
    )
    for line in learned:
        budget = budget.with_line(line)
    return budget


def is_saw_open(house: House, budget: ErrorBudget) -> bool:
    """Tell whether a proof of the saw is still to be made, or what is known of it to be set."""
    known_deg = max(
        abs(budget.line(name).bias) for name in (ErrorName.SAW_SCALE, ErrorName.SAW_FENCE)
    )
    return not house.saw.is_proved or known_deg > PROVED_SAW_DEG


def proved_saw(budget: ErrorBudget) -> ErrorBudget:
    """Return the budget after the saw was proved on offcuts and its error dialled out."""
    for name in (ErrorName.SAW_SCALE, ErrorName.SAW_FENCE):
        u = min(budget.u(name), PROVED_SAW_DEG)
        budget = budget.with_line(_saw_line(name, u, Standing.ASSUMPTION, say("after a saw proof")))
    return budget


def _saw_lines(saw: Saw) -> tuple[BudgetLine, BudgetLine]:
    if saw.is_proved:
        u, standing = PROVED_SAW_DEG, Standing.ASSUMPTION
        basis = say("what test cuts leave, the saw being proved; ") + _OURS
    else:
        u, standing = UNPROVED_SAW_DEG, Standing.ASSUMPTION
        basis = say("saw not proved; ") + _OURS
    return (
        _saw_line(ErrorName.SAW_SCALE, u, standing, basis),
        _saw_line(ErrorName.SAW_FENCE, u, standing, basis),
    )


def _saw_line(name: ErrorName, u: float, standing: Standing, basis: str) -> BudgetLine:
    return BudgetLine(
        name=name,
        cause=Cause.SAW,
        u=u,
        unit="deg",
        is_shared=True,
        standing=standing,
        basis=basis,
    )


def _line(
    name: ErrorName,
    cause: Cause,
    u: float,
    *,
    unit: str = "mm",
    spread: Spread = Spread.NORMAL,
    is_shared: bool = False,
    basis: str = _OURS,
) -> BudgetLine:
    return BudgetLine(
        name=name,
        cause=cause,
        u=u,
        unit=unit,
        spread=spread,
        is_shared=is_shared,
        basis=basis,
    )

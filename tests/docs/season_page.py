"""What docs/explanation/season.md shows, worked out anew."""

from typing import Final

from longpoint.forecast.season.advice import SeasonPlan, season_advice
from longpoint.forecast.season.chance import CONDITIONED_U_PERCENT, FITTED_U_PERCENT
from longpoint.forecast.season.coefficients import Coefficient, Species
from longpoint.forecast.season.joint_opening import JointKind, Restraint
from longpoint.forecast.season.seasons import (
    JointBoard,
    Season,
    SeasonJoint,
    free_opening,
    season_outlook,
)
from longpoint.forecast.season.species import species_of

WRITTEN: Final = (
    "redwood",
    "radiata pine",
    "white pine",
    "Douglas fir",
    "poplar",
    "oak",
    "beech",
    "MDF",
)
WIDTHS_MM: Final = (57.0, 70.0, 95.0)
DRIEST: Final = Season(name="heating on", humidity_percent=35.0)
DAMPEST: Final = Season(name="late summer", humidity_percent=60.0)
WAYS: Final = (
    (11.0, Restraint.WEAK, FITTED_U_PERCENT),
    (11.0, Restraint.STRONG, FITTED_U_PERCENT),
    (8.5, Restraint.STRONG, CONDITIONED_U_PERCENT),
)


def opening_table() -> list[str]:
    """Return the rows of free gaps and chances."""
    return [_opening_row(_known(written), width) for written in WRITTEN for width in WIDTHS_MM]


def known_table() -> list[str]:
    """Return the rows of coefficients and how each is known."""

    def cell(figure: Coefficient) -> str:
        return f"{figure.per_percent * 100:.2f} %, {figure.standing.value}"

    found = (_known(written) for written in WRITTEN)
    return [f"| {s.name} | {cell(s.radial)} | {cell(s.tangential)} |" for s in found]


def advice_lines() -> list[str]:
    """Return what is advised for a window of 70 mm redwood and a skirting of 25."""
    leg, base = (JointBoard(across_mm=mm, species=_known("redwood")) for mm in (70.0, 25.0))
    plan = SeasonPlan(
        joints=(SeasonJoint(place="W1", boards=(leg, leg)), skirting_corner(base)),
        fitted_percent=11.0,
        driest=DRIEST,
        dampest=DAMPEST,
    )
    return [f"> {advice.words}" for advice in season_advice(plan, faces_mm=(57.0,))]


def skirting_corner(board: JointBoard) -> SeasonJoint:
    return SeasonJoint(place="R1", kind=JointKind.INTERNAL_MITRE, boards=(board, board))


def _opening_row(species: Species, width_mm: float) -> str:
    board = JointBoard(across_mm=width_mm, species=species)
    joint = SeasonJoint(place="W1", boards=(board, board))
    damp, dry = (Season(name="", humidity_percent=h).moisture_percent for h in (60.0, 40.0))
    chances = [
        season_outlook(
            joint,
            fitted_percent=fitted,
            driest=DRIEST,
            dampest=DAMPEST,
            restraint=restraint,
            fitted_u_percent=u,
        ).driest.chance_over_limit
        for fitted, restraint, u in WAYS
    ]
    free_mm = free_opening(joint, damp, dry).gap_mm
    cells = (species.name, f"{width_mm:g}", f"{free_mm:.2f}", *map(_in_a_hundred, chances))
    return f"| {' | '.join(cells)} |"


def _in_a_hundred(chance: float) -> str:
    return "under 1" if chance < 0.01 else f"{min(round(chance * 100.0), 99)}"


def _known(written: str) -> Species:
    species = species_of(written)
    assert species is not None, written
    return species

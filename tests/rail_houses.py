"""A parlour with a door and a window, planned with one rail or bead."""

from typing import Any

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.along_walls.cover_bead import TRIM as COVER_BEAD
from longpoint.catalogue.along_walls.dado_rail import TRIM as DADO_RAIL
from longpoint.catalogue.along_walls.picture_rail import TRIM as PICTURE_RAIL
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.trim import TrimPlan
from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.house_file import read_house
from tests.house_documents import door, house, window

KINDS = (PICTURE_RAIL, DADO_RAIL, COVER_BEAD)
PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "PR45": {"face": 45, "thickness": 18},
    "QD15": {"face": 15, "thickness": 15},
}
# Four square walls; the legs of D1 reach 2030 + 5 + 57 = 2092 up.
WALLS: tuple[dict[str, Any], ...] = (
    {"mark": "N", "length": 4206, "corner": 90},
    {"mark": "E", "length": 3612, "corner": 90},
    {"mark": "S", "length": 4206, "corner": 90},
    {"mark": "W", "length": 3612, "corner": 90},
)


def walls(**changes: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the four walls, some keys of some of them changed."""
    return [{**wall, **changes.get(wall["mark"], {})} for wall in WALLS]


def the_house(
    entry: dict[str, Any],
    *,
    plan: list[dict[str, Any]] | None = None,
    room: dict[str, Any] | None = None,
    **changes: Any,  # noqa: ANN401
) -> dict[str, Any]:
    """Return the house with one trim."""
    parlour = {"name": "Parlour", "walls": plan or walls(), **(room or {})}
    changed = {
        "profiles": PROFILES,
        "openings": [door(), window()],
        "rooms": [parlour],
        "trims": [{"mark": "T1", "room": "Parlour", "profile": "PR45", **entry}],
        **changes,
    }
    return house(**changed)


def planned(document: dict[str, Any], *held: str) -> TrimsPlanned:
    """Return its trims, planned; the entry has to be readable."""
    survey = read_house(document, trim_tables(KINDS))
    assert survey.house.held == (), [str(finding) for finding in survey.findings]
    fitted, _ = fit_rooms(survey.house)
    return plan_trims(survey.house, Shapes(rooms=fitted), frozenset(held), KINDS)


def the_plan(document: dict[str, Any], *held: str) -> TrimPlan:
    """Return the plan of its one trim."""
    result = planned(document, *held)
    assert len(result.trims) == 1, [str(finding) for finding in result.findings]
    return result.trims[0].plan


def refused(document: dict[str, Any], *held: str) -> Finding:
    """Return why its one trim is not planned at all."""
    result = planned(document, *held)
    assert result.trims == ()
    (stop,) = result.findings
    assert (stop.code, stop.severity) == (TRIM_NOT_PLANNED, Severity.STOP)
    return stop


def by_mark(plan: TrimPlan) -> dict[str, Piece]:
    """Return the pieces by what stands behind the trim's mark."""
    return {piece.mark.removeprefix("T1-"): piece for piece in plan.pieces}


def codes(plan: TrimPlan) -> list[str]:
    """Return the codes of what is said."""
    return [finding.code for finding in plan.findings]

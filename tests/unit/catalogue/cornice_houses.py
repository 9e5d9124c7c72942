"""A hall with a cornice, for tests to change one thing in."""

from typing import Any

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.cornice.cornice import TRIM
from longpoint.catalogue.plan_trims import TrimsPlanned, plan_trims
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.house_file import read_house
from tests.house_documents import house, wall

SQUARE = (
    wall("N", length=4000, corner=90),
    wall("E", length=3000, corner=90),
    wall("S", length=4000, corner=90),
    wall("W", length=3000, corner=90),
)

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "CR90": {"face": 90, "thickness": 18},
}


def asked(
    walls: tuple[dict[str, Any], ...] = SQUARE,
    /,
    *,
    closed: bool = True,
    held: frozenset[str] = frozenset(),
    changes: dict[str, Any] | None = None,
    **entry: Any,  # noqa: ANN401
) -> Asked:
    """Return an entry of 90 x 18 sprung 38 from the wall, unless the entry says otherwise."""
    plain = {"mark": "C1", "kind": "cornice", "room": "Hall", "profile": "CR90", "spring": 38}
    written = {key: value for key, value in {**plain, **entry}.items() if value is not None}
    document = house(
        trims=[written],
        profiles=PROFILES,
        rooms=[{"name": "Hall", "closed": closed, "walls": list(walls)}],
        **(changes or {}),
    )
    survey = read_house(document, trim_tables((TRIM,)))
    assert [str(finding) for finding in survey.findings if finding.place == "C1"] == []
    rooms, _ = fit_rooms(survey.house)
    return Asked(
        house=survey.house,
        shapes=Shapes(rooms=rooms),
        entry=survey.house.trims[0],
        held=held,
    )


def planned(*args: Any, **entry: Any) -> TrimsPlanned:  # noqa: ANN401
    """Return the plan of an entry."""
    one = asked(*args, **entry)
    return plan_trims(one.house, one.shapes, one.held, (TRIM,))


def pieces(plan: TrimsPlanned) -> dict[str, Piece]:
    """Return the pieces by what stands behind the entry's mark."""
    return {piece.mark.removeprefix("C1-"): piece for piece in plan.trims[0].plan.pieces}


def stops(plan: TrimsPlanned) -> list[Finding]:
    """Return what holds it."""
    return [finding for finding in plan.findings if finding.severity == "stop"]

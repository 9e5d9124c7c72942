"""Small houses whose sets are put together otherwise than by four mitres."""

from dataclasses import replace
from typing import Any

from longpoint.errors import Finding
from longpoint.pieces.face_set import FaceSet, face_set
from longpoint.pieces.openings import plan_openings
from longpoint.pieces.piece import Piece
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.profiles import Profile
from tests import fitted_houses

THICK_MM = 18.0
"""Thickness of the trim that `fitted_houses` names by its face width."""

BLOCK76 = Profile(name="CB76", width_mm=76.0, thickness_mm=25.0)
PLINTH95 = Profile(name="PB95", width_mm=95.0, thickness_mm=25.0)
BAND20 = Profile(name="BB20", width_mm=20.0, thickness_mm=28.0)
BOARD225 = Profile(name="WB225", width_mm=225.0, thickness_mm=25.0)
SKIRTING170 = Profile(name="SK170", width_mm=170.0, thickness_mm=20.0)

PROFILES = (BLOCK76, PLINTH95, BAND20, BOARD225, SKIRTING170)


def set_house(
    *openings: Opening, profiles: tuple[Profile, ...] = (), units: Units = Units.MM
) -> House:
    """Return a house of these openings; a profile given here takes the place of its namesake."""
    plain = fitted_houses.house(*(replace(o, board="") for o in openings), units=units)
    by_name = {p.name: p for p in (*plain.profiles, *PROFILES, *profiles)}
    return replace(
        plain,
        openings=openings,
        profiles=tuple(by_name.values()),
        skirting_profile=SKIRTING170.name,
    )


def planned(house: House) -> tuple[dict[str, Piece], tuple[Finding, ...]]:
    """Return the pieces by mark, and the findings."""
    made, found = plan_openings(house, Shapes(openings=fit_openings(house)[0]), frozenset())
    assert len({piece.mark for piece in made}) == len(made), "every mark is its own"
    return {piece.mark: piece for piece in made}, found


def set_of(opening: Opening, **changes: Any) -> FaceSet:  # noqa: ANN401
    """Return the first face's set of an opening, some of its settings changed."""
    changed = replace(opening, **changes)
    house = set_house(changed)
    return face_set(house, changed, fit_openings(house)[0][0])


def codes(findings: tuple[Finding, ...]) -> list[str]:
    """Return the codes of findings, in order."""
    return [finding.code for finding in findings]

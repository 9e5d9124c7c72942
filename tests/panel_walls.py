"""One panelled wall, planned."""

from typing import Any

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.panels.panelling import TRIM
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.trim import TrimPlan
from longpoint.errors import Finding, Severity
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house

WALL = {"length": 4606, "height": 780, "above_floor": 120}


def the_document(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a house with one panelled wall, in a moulding of 28 x 12."""
    entry = {"mark": "PN1", "kind": "panelling", "profile": "PM28", **WALL, **keys}
    profiles = {**house()["profiles"], "PM28": {"face": 28, "thickness": 12}}
    return house(profiles=profiles, trims=[entry])


def planned(**keys: Any) -> TrimsPlanned:  # noqa: ANN401
    """Return what comes of it; the entry has to be readable."""
    survey = read_house(the_document(**keys), trim_tables((TRIM,)))
    assert survey.house.held == (), [str(finding) for finding in survey.findings]
    return plan_trims(survey.house, Shapes(), kinds=(TRIM,))


def the_plan(**keys: Any) -> TrimPlan:  # noqa: ANN401
    """Return its plan."""
    result = planned(**keys)
    assert len(result.trims) == 1, [str(finding) for finding in result.findings]
    return result.trims[0].plan


def refused(**keys: Any) -> Finding:  # noqa: ANN401
    """Return why it is not planned."""
    result = planned(**keys)
    assert result.trims == ()
    (stop,) = result.findings
    assert (stop.code, stop.severity) == (TRIM_NOT_PLANNED, Severity.STOP)
    return stop

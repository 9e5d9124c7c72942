"""Small house files as parsed, for tests to change one thing in."""

from typing import Any

from longpoint.errors import Finding, Severity
from longpoint.survey.house import House, SurveyResult
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Opening

SIZE = {"top": 1187, "bottom": 1186, "left": 462, "right": 462, "rising": 1274, "falling": 1273}


def house(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a house in which nothing has to be assumed, with some of its tables changed."""
    document: dict[str, Any] = {
        "format": "longpoint-house/1",
        "name": "Wren House",
        "units": "mm",
        "dialect": "uk",
        "defaults": {
            "quirk": 5,
            "quirk_band": [3, 7],
            "architrave": "OG57",
            "skirting": "SK95",
            "tape": "T1",
            "saw": "S1",
            "max_gap": 0.5,
            "method": "batch",
            "floor_cover": 0,
            "floor_gap": 1,
        },
        "crew": {"walls": "new", "refit": 12, "batch_saves": 1.2},
        "season": {
            "fitting": {"humidity": 55},
            "driest": {"humidity": 35},
            "dampest": {"humidity": 65},
        },
        "profiles": {
            "OG57": {"face": 57, "thickness": 18},
            "SK95": {"face": 95, "thickness": 16},
        },
        "tapes": {"T1": {"class": "II"}},
        "saws": {"S1": {"kerf": 2.4, "end_trim": 10, "found": {"left": 45.1, "right": 44.9}}},
    }
    return {**document, **changes}


def window(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a window, some of its keys changed; a key that is None is left out."""
    return _changed({"mark": "W1", "kind": "window", "trim": "all-round", **SIZE}, changes)


def door(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a door, some of its keys changed; a key that is None is left out."""
    sides = {"top": 764, "bottom": 763, "left": 2030, "right": 2031}
    return _changed({"mark": "D1", "kind": "door", "trim": "legs-and-head", **sides}, changes)


def wall(mark: str = "N", **changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a wall."""
    return {"mark": mark, "length": 4606, **changes}


def skirting_run(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a run, some of its keys changed; a key that is None is left out."""
    plain = {"mark": "S1", "length": 2284, "left": "internal", "right": "external"}
    return _changed(plain, changes)


def defaults(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return the defaults, some of them changed; one that is None is left out."""
    return _changed(house()["defaults"], changes)


def the_house(**changes: Any) -> House:  # noqa: ANN401
    """Return the house read from `house`."""
    return read_house(house(**changes)).house


def the_opening(opening: dict[str, Any], **changes: Any) -> Opening:  # noqa: ANN401
    """Return the one opening of a house, which has to be readable."""
    result = read_house(house(openings=[opening], **changes))
    assert [str(f) for f in result.findings if f.severity is Severity.STOP] == []
    return result.house.openings[0]


def found(result: SurveyResult, code: str) -> list[Finding]:
    """Return the findings of a code."""
    return [finding for finding in result.findings if finding.code == code]


def codes(result: SurveyResult) -> list[str]:
    """Return the codes of all findings."""
    return [finding.code for finding in result.findings]


def _changed(table: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in {**table, **changes}.items() if value is not None}

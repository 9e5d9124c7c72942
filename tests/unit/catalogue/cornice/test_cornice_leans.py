from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import Finding, Severity
from longpoint.pipeline import plan_house
from longpoint.survey.house_file import read_house
from tests.house_documents import house


def said(**leans: float) -> list[Finding]:
    walls: list[dict[str, Any]] = [
        {"mark": mark, "length": mm, "corner": 90}
        for mark, mm in zip("NESW", (4000, 3000, 4000, 3000), strict=True)
    ]
    for wall in walls:
        if wall["mark"] in leans:
            wall["lean"] = leans[wall["mark"]]
    trim = {"mark": "CN", "kind": "cornice", "room": "Kit", "profile": "SK95", "spring": 38}
    document = house(
        rooms=[{"name": "Kit", "walls": walls}], trims=[{**trim, "spring_from": "wall"}]
    )
    findings = plan_house(read_house(document, trim_tables())).findings
    return [finding for finding in findings if finding.code == "cornice-lean"]


def test_a_wall_that_leans_is_warned_of_with_what_it_does_to_lengths() -> None:
    (finding,) = said(E=-2.0, W=1.0)

    assert (finding.severity, finding.place) == (Severity.WARNING, "CN")
    assert "E 2.0 into the room, W 1.0 away from the room" in finding.read
    assert "34.9" in finding.wrong


@pytest.mark.parametrize("leans", [{}, {"N": 0.0}, {"N": 0.2}])
def test_plumb_walls_are_passed_over(leans: dict[str, float]) -> None:
    assert said(**leans) == []

"""Each fault on the page names a test that exists."""

import ast
import re

from tests.docs.test_documents import ROOT

PAGE = (ROOT / "docs" / "explanation" / "faults.md").read_text(encoding="utf-8")
NAMED = re.compile(r"`(tests/[\w/]+\.py)::(\w+)`")


def names_in(path: str) -> set[str]:
    """Return what stands at the top of a file: its tests, and its cases of a state machine."""
    found = set()
    for node in ast.parse((ROOT / path).read_text(encoding="utf-8")).body:
        match node:
            case ast.FunctionDef(name=name) | ast.ClassDef(name=name):
                found.add(name)
            case ast.Assign(targets=[ast.Name(id=name)]):
                found.add(name)
            case _:
                pass
    return found


def test_every_test_that_the_page_names_exists() -> None:
    named = NAMED.findall(PAGE)
    assert len(named) > 30
    assert [f"{path}::{name}" for path, name in named if name not in names_in(path)] == []


def test_every_fault_has_its_test() -> None:
    rows = [line for line in PAGE.splitlines() if line.startswith("| ") and "held by" not in line]
    assert len(rows) > 30
    assert [row for row in rows if not NAMED.search(row)] == []
    assert [row for row in rows if row.count("|") != 4] == []

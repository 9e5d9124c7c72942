"""Every bad house file kept here is told apart, and told how to be mended."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from longpoint.errors import LongpointError, Severity
from longpoint.exchange.house_files import load_house

FOLDER = Path(__file__).resolve().parent
EXPECTED: dict[str, dict[str, Any]] = tomllib.loads(
    (FOLDER / "expected.toml").read_text(encoding="utf-8")
)
REFUSED = sorted(name for name, says in EXPECTED.items() if "error" in says)
HELD = sorted(name for name, says in EXPECTED.items() if "error" not in says)


def test_every_file_of_the_folder_is_expected() -> None:
    files = {path.name for path in FOLDER.iterdir() if path.suffix in {".toml", ".json"}}

    assert files - {"expected.toml"} == EXPECTED.keys()
    assert len(files) >= 100


@pytest.mark.parametrize("name", REFUSED)
def test_a_file_that_cannot_be_used_is_refused_in_three_sentences(name: str) -> None:
    with pytest.raises(LongpointError) as refusal:
        load_house(FOLDER / name)

    error = refusal.value
    assert type(error).__name__ == EXPECTED[name]["error"]
    assert all((error.read, error.wrong, error.do))
    assert [says for says in EXPECTED[name]["says"] if says not in str(error)] == []


@pytest.mark.parametrize("name", HELD)
def test_a_bad_entry_is_said_at_its_place_and_the_good_opening_survives(name: str) -> None:
    expected = EXPECTED[name]

    result = load_house(FOLDER / name)

    found = [
        finding
        for finding in result.findings
        if (finding.code, finding.place) == (expected["code"], expected["place"])
    ]
    assert found, [str(finding) for finding in result.findings]
    assert found[0].severity is Severity(expected.get("severity", "stop"))
    said = " ".join(str(finding) for finding in found)
    assert [says for says in expected["says"] if says not in said] == []
    assert "G1" in [opening.mark for opening in result.house.openings]
    held = [entry.mark for entry in result.house.held]
    assert set(expected.get("held", [])) <= set(held)
    if expected["place"] != result.house.name:
        assert any(expected["place"].startswith(mark) for mark in held)

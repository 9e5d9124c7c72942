"""A crew file is added to and never made to lose what it held."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from longpoint.errors import ExchangeError, Severity
from longpoint.exchange.crew_files import (
    CrewFile,
    crew_lines,
    load_crew_file,
    load_or_begin,
    save_crew_file,
)
from longpoint.forecast.kept_forecasts import KeptForecast
from longpoint.forecast.learning.calibration import Outcome
from longpoint.forecast.learning.setup import ANGLE_PRIOR, Learned, Seen
from longpoint.forecast.learning.setup_key import AngleKey
from longpoint.survey.house_file import read_house
from tests.house_documents import house

KEPT = KeptForecast(mark="H, W1, abc", outcome=Outcome(house="H", chance=0.9, closed=True))


def crew(value: float = 0.12) -> CrewFile:
    learned = Learned().with_seen(
        AngleKey(saw="S1"), Seen(mark="H, W1, abc", value=value), ANGLE_PRIOR
    )
    return CrewFile(learned=learned, forecasts=(KEPT,))


def saved(path: Path, document: dict[str, Any]) -> Path:
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


def test_a_file_that_is_not_there_begins_empty(tmp_path: Path) -> None:
    assert load_or_begin(tmp_path / "crew.json") == CrewFile()


def test_what_is_written_is_read_back(tmp_path: Path) -> None:
    path = tmp_path / "crew.json"
    assert save_crew_file(path, CrewFile(), crew()) is None
    found = load_crew_file(path)
    assert (found.learned, found.forecasts, found.findings) == (crew().learned, (KEPT,), ())
    assert json.loads(path.read_text(encoding="utf-8"))["format"] == "longpoint-crew/1"


def test_a_file_written_by_us_is_added_to_without_a_copy(tmp_path: Path) -> None:
    path = tmp_path / "crew.json"
    save_crew_file(path, CrewFile(), crew())
    before = load_crew_file(path)
    assert save_crew_file(path, before, replace(before, learned=crew(0.2).learned)) is None
    assert [p.name for p in tmp_path.iterdir()] == ["crew.json"]


def test_a_key_that_is_not_ours_stays(tmp_path: Path) -> None:
    path = saved(tmp_path / "crew.json", {**crew().written(), "note": "mine"})
    before = load_crew_file(path)
    assert "note" in before.findings[0].read
    save_crew_file(path, before, before)
    assert json.loads(path.read_text(encoding="utf-8"))["note"] == "mine"


def test_before_a_part_that_cannot_be_read_is_lost_a_copy_is_kept(tmp_path: Path) -> None:
    document = crew().written()
    document["terms"][0]["frames"].append({"mark": "H, W2, abc", "off": "much"})
    text = json.dumps(document)
    path = saved(tmp_path / "crew.json", document)
    before = load_crew_file(path)
    assert len(before.findings) == 1
    copy = save_crew_file(path, before, before)
    assert copy is not None
    assert json.loads(copy.read_text(encoding="utf-8")) == json.loads(text)
    second = save_crew_file(path, before, before)
    assert second not in (None, copy)


def test_a_forecast_that_cannot_be_read_is_said_and_kept_in_a_copy(tmp_path: Path) -> None:
    document = crew().written()
    document["forecasts"].append({"mark": "W2"})
    path = saved(tmp_path / "crew.json", document)
    before = load_crew_file(path)
    assert before.forecasts == (KEPT,)
    assert [f.code for f in before.findings] == ["crew-figure-unreadable"]
    assert save_crew_file(path, before, before) is not None


def test_a_file_that_cannot_be_written_stays_as_it_was(tmp_path: Path) -> None:
    with pytest.raises(ExchangeError):
        save_crew_file(tmp_path / "no-folder" / "crew.json", CrewFile(), crew())


@pytest.mark.parametrize("text", ["", "{", '{"format": "longpoint-house/1"}', "[]"])
def test_another_file_is_a_note_to_a_forecast_and_our_figures_stand(
    tmp_path: Path, text: str
) -> None:
    path = tmp_path / "crew.json"
    path.write_text(text, encoding="utf-8")
    lines, (finding,) = crew_lines(path, read_house(house()).house)
    assert lines == ()
    assert (finding.code, finding.severity) == ("crew-file-unreadable", Severity.NOTE)
    with pytest.raises(ExchangeError):
        load_or_begin(path)


def test_a_missing_file_is_a_note_too(tmp_path: Path) -> None:
    lines, findings = crew_lines(tmp_path / "crew.json", read_house(house()).house)
    assert (lines, len(findings)) == ((), 1)


def test_its_lines_are_those_of_the_saw_in_use(tmp_path: Path) -> None:
    path = tmp_path / "crew.json"
    save_crew_file(path, CrewFile(), crew())
    (line,), findings = crew_lines(path, read_house(house()).house)
    assert line.basis == "from 1 frame"
    assert findings == ()

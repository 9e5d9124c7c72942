from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.rack_files import load_or_begin_rack, load_rack, save_rack
from longpoint.survey.rack import Rack, RackPiece, Section

RACK = Rack(
    sections=(("OG57", Section(name="OG57", width_mm=57.0, thickness_mm=18.0)),),
    pieces=(
        RackPiece(label="EMKR", section="OG57", length_mm=900.0, put_up=date(2026, 3, 1)),
        RackPiece(label="QC7R", section="OG57", length_mm=700.0, put_up=date(2026, 3, 1)),
    ),
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    save_rack(tmp_path / "rack.toml", Rack(), RACK)
    return tmp_path / "rack.toml"


def test_what_is_saved_is_loaded_again(path: Path) -> None:
    assert load_rack(path) == RACK


def test_a_rack_begins_empty_and_a_missing_one_is_refused(tmp_path: Path) -> None:
    assert load_or_begin_rack(tmp_path / "rack.toml") == Rack()
    with pytest.raises(ExchangeError, match=r"rack\.toml"):
        load_rack(tmp_path / "rack.toml")


def test_a_bad_entry_is_refused_with_the_files_name_and_nothing_is_written(path: Path) -> None:
    text = path.read_text(encoding="utf-8").replace('"EMKR"', '"EMKP"')
    path.write_text(text, encoding="utf-8")

    with pytest.raises(ExchangeError) as refused:
        load_rack(path)
    assert refused.value.read.startswith("rack.toml: offcuts 1, label")
    with pytest.raises(ExchangeError):
        save_rack(path, RACK, RACK)
    assert path.read_text(encoding="utf-8") == text


def test_a_file_that_somebody_else_changed_is_left_alone(path: Path) -> None:
    with pytest.raises(ExchangeError, match="in the meantime"):
        save_rack(path, Rack(), RACK)
    assert load_rack(path) == RACK


def test_no_offcut_can_be_lost(path: Path) -> None:
    with pytest.raises(ExchangeError, match="QC7R would be lost"):
        save_rack(path, RACK, replace(RACK, pieces=RACK.pieces[:1]))
    assert load_rack(path) == RACK


def test_what_was_written_by_hand_is_kept_in_a_copy(path: Path) -> None:
    by_hand = path.read_text(encoding="utf-8") + "# the long ones stand behind the door\n"
    path.write_text(by_hand, encoding="utf-8")
    copy = save_rack(path, RACK, replace(RACK, old_after_days=365))

    assert copy is not None
    assert copy.read_text(encoding="utf-8") == by_hand
    assert load_rack(path).old_after_days == 365
    assert save_rack(path, load_rack(path), RACK) is None


def test_a_name_that_would_be_read_as_json_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ExchangeError, match=r"\.toml"):
        save_rack(tmp_path / "rack.json", Rack(), RACK)

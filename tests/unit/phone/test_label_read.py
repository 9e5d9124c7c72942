"""A label read on the phone: the piece as the house stands now."""

import json
from typing import Any

import pytest

from longpoint.phone import Ports, answer
from longpoint.sheets.labels.piece_code import piece_code
from tests.phone_journals import Journal


@pytest.fixture(scope="module")
def house() -> dict[str, Any]:
    journal = Journal()
    journal.begin()
    journal.write("setting", key=["profiles"], value={"AR57": {"face": 57, "thickness": 19}})
    journal.write("setting", key=["defaults"], value={"architrave": "AR57", "quirk": 5})
    journal.write("setting", key=["stock"], value=[{"profile": "AR57", "length": 5400}])
    journal.write("opening-added", opening="W1", room="Main", kind="window", trim="all-round")
    sides = {"left": "598", "top": "1178", "right": "598", "bottom": "1178"}
    for line, value in {**sides, "rising": "1321", "falling": "1321"}.items():
        journal.read(line, value, opening="W1")
    fold: dict[str, Any] = asked({"ask": "fold", "entries": journal.entries})
    return {key: fold[key] for key in ("document", "held", "saw")}


def asked(request: dict[str, Any]) -> dict[str, Any]:
    said: dict[str, Any] = json.loads(answer(json.dumps(request), Ports()))
    return said


def code_now(house: dict[str, Any]) -> str:
    return str(asked({"ask": "plan", **house})["code"])


def test_a_label_names_its_piece_and_what_it_is_cut_to(house: dict[str, Any]) -> None:
    text = piece_code(code_now(house), "W1-head")
    said = asked({"ask": "label", "text": text, **house})
    assert (said["kind"], said["what"], said["opening"]) == ("label", "W1 head", "W1")
    assert said["findings"] == []
    assert not said["is_cut"]
    assert said["row"]["long"] == "1302"


def test_a_piece_that_is_cut_is_told_to_be(house: dict[str, Any]) -> None:
    cut = asked({"ask": "saw", "told": "cut W1-head", **house})["saw"]
    text = piece_code(code_now(house), "W1-head")
    assert asked({"ask": "label", "text": text, **house, "saw": cut})["is_cut"]


def test_a_label_of_other_readings_is_warned_of(house: dict[str, Any]) -> None:
    said = asked({"ask": "label", "text": piece_code("XXXXXX", "W1-head"), **house})
    (warning,) = said["findings"]
    assert "other lengths" in warning["wrong"]


@pytest.mark.parametrize("text", ["two eggs", "longpoint:1:XXXXXX:W9-head"])
def test_what_is_no_piece_of_this_house_is_refused(house: dict[str, Any], text: str) -> None:
    assert asked({"ask": "label", "text": text, **house})["kind"] == "refusal"

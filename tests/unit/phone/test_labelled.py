import json
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest

from longpoint.errors import SheetError
from longpoint.phone import Ports, answer
from longpoint.phone.fold import fold
from longpoint.phone.labelled import labelled
from longpoint.sheets.labels.piece_code import piece_code
from longpoint.survey.house_file import read_house, readings_code
from tests.phone_journals import Journal

CABIN = Path(__file__).resolve().parents[3] / "tests/scenarios/pipit.toml"


def cabin() -> Journal:
    made = Journal()
    made.write("opened-file", text=CABIN.read_text(encoding="utf-8"))
    return made


def here(**journals: Journal) -> list[dict[str, Any]]:
    return [{"house": key, "entries": each.entries} for key, each in journals.items()]


def code_of(journal: Journal) -> str:
    """As a laptop makes it of the file that the house is given away as."""
    return readings_code(read_house(fold(journal.entries).document).house)


def test_a_label_finds_its_piece_among_the_houses() -> None:
    wanted, other = cabin(), cabin()
    other.read("top", "1185", "W1", over=[])
    text = piece_code(code_of(wanted), "W1-head")
    found = labelled(text, here(a=other, b=wanted))
    assert (found.house, found.piece, found.is_old) == ("b", "W1-head", False)


def test_gaps_read_on_the_wall_make_no_label_old() -> None:
    journal = cabin()
    text = piece_code(code_of(journal), "W1-head")
    journal.write("wall-gaps", opening="W1", gaps={"tl": ["1", "0"]})
    assert not labelled(text, here(a=journal)).is_old


def test_a_label_printed_before_a_re_reading_is_old_and_says_since_when() -> None:
    journal = cabin()
    text = piece_code(code_of(journal), "W1-head")
    journal.read("top", "1181", "W1", over=[])
    journal.read("left", "599", "W1", over=[])
    found = labelled(text, here(a=journal))
    assert (found.house, found.is_old) == ("a", True)
    assert found.since == "W1 top read: 1181 mm"


def test_where_a_third_reading_decided_phone_and_laptop_carry_one_code() -> None:
    journal = cabin()
    for text in ("4630", "4571", "4631"):
        journal.read_place(["rooms", "Main", "walls", "N"], "length", text, again=True)
    stands = fold(journal.entries)
    said = {"document": stands.document, "held": [asdict(each) for each in stands.held]}
    plan = json.loads(answer(json.dumps({"ask": "plan", "saw": "", **said}), Ports()))
    assert plan["code"] == code_of(journal)
    assert not labelled(piece_code(plan["code"], "W1-head"), here(a=journal)).is_old


@pytest.mark.parametrize("text", ["longpoint:1:XPGPPW:W1-head", "https://example.org/x", ""])
def test_a_label_of_no_house_here_and_another_kind_of_code_are_refused(text: str) -> None:
    with pytest.raises(SheetError) as refused:
        labelled(text, here(a=cabin(), b=Journal()))
    assert refused.value.do

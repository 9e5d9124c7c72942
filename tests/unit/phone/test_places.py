import json
import re
from typing import Any

import pytest

from longpoint.phone import Ports, answer
from longpoint.phone.entries import LineState
from longpoint.phone.fold import fold
from longpoint.phone.forms import LINES
from longpoint.phone.messages import Fold
from longpoint.phone.planned import surveyed
from longpoint.phone.ways import FORMS, TRIMS
from longpoint.survey.house_file.keys import Kind
from tests.phone_journals import Journal

ROOM = ["rooms", "Loft"]
# The floor falls away to the left: W is 4000 x tan 1 = 69.8 longer than E, S is 4000 / cos 1.
WALLS = {"N": ("4000", "90"), "E": ("3000", "91"), "S": ("4000.5", "89"), "W": ("3070", "90")}


def ask(what: str, **said: object) -> Any:  # noqa: ANN401
    return json.loads(answer(json.dumps({"ask": what, **said}), Ports()))


def loft() -> Journal:
    """Return a room of four walls read wall by wall, skirted all round, and a run of its own."""
    journal = Journal()
    journal.begin()
    journal.write("setting", key=["profiles", "SK95"], value={"face": 95, "thickness": 18})
    journal.write("setting", key=["defaults", "skirting"], value="SK95")
    journal.write("setting", key=["stock"], value=[{"profile": "SK95", "length": 5400}])
    journal.write("place-added", place=ROOM, values={})
    for wall, (length, corner) in WALLS.items():
        way = [*ROOM, "walls", wall]
        journal.write("place-added", place=way, values={"skirting": True})
        journal.read_place(way, "length", length)
        journal.read_place(way, "corner", corner, "deg")
    journal.write("place-added", place=["runs", "S9"], values={"room": "Hall"})
    journal.read_place(["runs", "S9"], "length", "2284")
    for end in ("left", "right"):
        journal.write("place-changed", place=["runs", "S9"], key=end, value="internal")
    return journal


def plan_of(folded: Fold) -> Any:  # noqa: ANN401
    held = [{field: getattr(said, field) for field in said.__slots__} for said in folded.held]
    return ask("plan", document=folded.document, held=held, saw=folded.saw)


def test_a_room_typed_on_the_phone_gets_its_skirting() -> None:
    folded = fold(loft().entries)
    assert {place.state for place in folded.places} == {LineState.READ}
    assert [place.title for place in folded.places][:2] == ["Loft", "Loft, wall N"]
    plan = plan_of(folded)
    # Four walls and a run of its own, none longer than a stick.
    assert plan["pieces"] == 5
    assert plan["held"] == []


def test_a_wall_without_its_length_is_asked_for_it() -> None:
    journal = loft()
    journal.write("place-added", place=[*ROOM, "walls", "X"], values={})
    place = next(p for p in fold(journal.entries).places if p.place[-1] == "X")
    assert (place.state, place.left) == (LineState.UNREAD, 2)


def test_two_readings_of_a_wall_hold_its_room_and_stand_in_the_house_file() -> None:
    journal = loft()
    wall = [*ROOM, "walls", "N"]
    journal.read_place(wall, "length", "4100", again=True)
    folded = fold(journal.entries)
    assert [said.place for said in folded.held] == ["Loft"]
    plan = plan_of(folded)
    assert "Loft" in plan["held"]
    assert plan["pieces"] == 1
    assert "length = [4000, 4100]" in ask("file", document=folded.document)["text"]
    journal.read_place(wall, "length", "4001", again=True)
    folded = fold(journal.entries)
    assert folded.held == ()
    assert "length = [4000, 4100, 4001]" in ask("file", document=folded.document)["text"]
    survey = surveyed(folded.document)
    assert survey.house.rooms[0].walls[0].length_mm == 4000.5
    assert [f.read for f in survey.findings if f.code == "reading-left-out"] == [
        "Length was read as 4000 mm and 4001 mm, and as 4100 mm."
    ]


def test_angles_are_held_by_their_own_limit() -> None:
    journal = loft()
    wall = [*ROOM, "walls", "E"]
    journal.read_place(wall, "corner", "92", "deg", again=True)
    assert fold(journal.entries).held == ()
    journal.write("place-changed", place=wall, key="corner", value=99)
    journal.read_place(wall, "corner", "91", "deg", again=True)
    assert fold(journal.entries).held[0].read.endswith("read as 99 and 91 degrees.")


def test_a_place_left_out_takes_its_parts_along() -> None:
    journal = loft()
    journal.write("place-left-out", place=ROOM)
    assert [place.root for place in fold(journal.entries).places] == ["S9"]


@pytest.mark.parametrize("place", [ROOM, [*ROOM, "walls", "N"], ["runs", "S9"]])
def test_a_place_is_drawn_with_its_pieces(place: list[str]) -> None:
    look = ask("look", document=fold(loft().entries).document, place=place, held=[])
    assert look["faces"][0]["svg"].startswith("<svg")
    assert len(look["pieces"]) == (1 if place[0] == "runs" else 4)
    assert not look["is_held"]


def test_the_room_says_which_corner_is_off_square() -> None:
    look = ask("look", document=fold(loft().entries).document, place=ROOM, held=[])
    assert "corner after E is" in look["faces"][0]["question"]
    assert "wider than square" in look["faces"][0]["question"]


def test_every_kind_of_trim_can_be_typed_and_reads_back() -> None:
    """Each kind's own examples, typed by its form, are what the reader of the house file takes."""
    for kind, table in TRIMS.items():
        journal = Journal()
        journal.begin()
        way = ["trims", "T1"]
        journal.write("place-added", place=way, values={"kind": kind})
        taken = {line.line for line in LINES[f"trims:{kind}"]}
        for key in table.keys:
            if key.name in taken and key.required and key.kind is not Kind.TABLES:
                journal.write("place-changed", place=way, key=key.name, value=key.example)
            if key.kind is Kind.TABLE and key.required:
                assert isinstance(key.example, dict)
                for inner_key, value in key.example.items():
                    assert f"{key.name}.{inner_key}" in taken
                    journal.read_place(way, f"{key.name}.{inner_key}", str(value))
            if key.kind is Kind.TABLES and key.required:
                rows = key.example
                assert isinstance(rows, list)
                for number, row in enumerate(rows, start=1):
                    inner = [*way, key.name, str(number)]
                    journal.write("place-added", place=inner, values=row)
        folded = fold(journal.entries)
        missing = [name for name in table.required if name not in folded.document["trims"][0]]
        assert missing == []
        assert folded.places[0].form == f"trims:{kind}"


def test_every_form_has_lines_or_a_label() -> None:
    limits = ask("limits", dialect="us")
    assert {form["form"] for form in limits["forms"]} == set(FORMS)
    for form in limits["forms"]:
        assert form["lines"] or form["label"]
        for line in form["lines"]:
            assert line["words"]
            assert line["least"] <= line["most"]
            assert (line["scale"] == "choice") == bool(line["choices"])
            assert (line["scale"] == "tables") == (line["form"] in FORMS)


def test_the_forms_are_in_the_words_of_the_country() -> None:
    def texts(dialect: str) -> str:
        limits = ask("limits", dialect=dialect)
        forms = [(form["title"], form["lines"]) for form in limits["forms"]]
        said = [
            (line["short"], line["words"], line["left_out"], [c["words"] for c in line["choices"]])
            for _, lines in forms
            for line in lines
        ]
        return json.dumps([[title for title, _ in forms], said, limits["trims"]])

    ours = r"(?i)\b(skirting|architrave|quirk|mitred?|mitres|scribed?|cornice|moulding|reveal)s?\b"
    australian, american = texts("au"), texts("us")
    assert set(re.findall(ours, australian)) >= {"Skirting", "architrave", "mitre", "scribe"}
    assert re.findall(ours, american) == []
    assert {"baseboard", "casing", "miter", "cope", "crown"} <= set(re.findall(r"\w+", american))
    assert "stool and apron" in american
    assert "board and apron" in australian


def test_an_answer_is_kept_alike_in_every_country() -> None:
    def kept(dialect: str) -> list[list[str]]:
        forms = ask("limits", dialect=dialect)["forms"]
        return [
            [form["form"], line["line"], *(choice["value"] for choice in line["choices"])]
            for form in forms
            for line in form["lines"]
        ]

    assert kept("au") == kept("us") == kept("uk")

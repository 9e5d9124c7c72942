import json
from pathlib import Path
from typing import Any

import pytest

from longpoint.phone import Ports, answer
from longpoint.phone.aloud import CHECK_WORDS, check_word
from longpoint.phone.house_text import house_text
from longpoint.survey.house_file.parsed_text import parsed_house

pytestmark = pytest.mark.no_cover

ROOT = Path(__file__).resolve().parents[3]
PIPIT = ROOT / "tests/scenarios/pipit.toml"


def ask(what: str, **said: object) -> Any:  # noqa: ANN401
    return json.loads(answer(json.dumps({"ask": what, **said}), Ports()))


@pytest.fixture(scope="module")
def house() -> dict[str, Any]:
    entry = {"device": "p", "counter": 1, "at": "", "house": "h", "what": "opened-file"}
    folded = ask("fold", entries=[entry | {"text": PIPIT.read_text(encoding="utf-8")}])
    return {"document": folded["document"], "held": folded["held"], "saw": folded["saw"]}


@pytest.fixture(scope="module")
def plan(house: dict[str, Any]) -> Any:  # noqa: ANN401
    return ask("plan", **house)


def test_the_plan_is_the_laptops(plan: dict[str, Any]) -> None:
    held = [state["mark"] for state in plan["openings"] if state["verdict"] == "hold"]
    assert held == ["W3"]
    assert all(not cut["piece"].startswith("W3") for cut in plan["cuts"])
    assert len(plan["cuts"]) == plan["pieces"]


def test_every_opening_tells_how_many_pieces_are_bought_for_it(
    house: dict[str, Any], plan: dict[str, Any]
) -> None:
    """By this alone the screen tells for what timber isn't counted yet."""
    pieces = {state["mark"]: state["pieces"] for state in plan["openings"]}
    assert pieces["W3"] == 0
    assert all(count > 0 for mark, count in pieces.items() if mark != "W3")
    planned = [piece["opening"] for piece in plan["document"]["pieces"]]
    assert pieces == {mark: planned.count(mark) for mark in pieces}


def test_a_spoiled_piece_stays_to_be_cut_and_a_cut_one_does_not(
    house: dict[str, Any], plan: dict[str, Any]
) -> None:
    first, second = plan["cuts"][0]["piece"], plan["cuts"][1]["piece"]
    spoiled = ask("saw", **house, told=f"spoiled {first}")
    after = ask("plan", **house | {"saw": spoiled["saw"]})
    assert sorted(c["piece"] for c in after["cuts"]) == sorted(c["piece"] for c in plan["cuts"])
    told = after["cuts"][0]["piece"]
    cut = ask("saw", **house | {"saw": spoiled["saw"]}, told=f"cut {told}")
    after = ask("plan", **house | {"saw": cut["saw"]})
    assert after["done"] == [told]
    assert {first, second} - {told} <= {c["piece"] for c in after["cuts"]}


def test_brackets_without_end_at_the_saw_are_refused(house: dict[str, Any]) -> None:
    # Such news may come from another phone: an entry's text is looked at no deeper than itself.
    assert ask("plan", **house | {"saw": "[" * 100_000})["kind"] == "refusal"


def test_a_held_opening_gets_no_piece_and_says_why(house: dict[str, Any]) -> None:
    look = ask("look", document=house["document"], place=["openings", "W3"], held=[])
    assert look["is_held"]
    assert look["pieces"] == []
    assert "top" in look["findings"][0]["do"]


def test_the_sheets_are_pages(house: dict[str, Any]) -> None:
    sheets = ask("sheets", **house)["sheets"]
    assert {"findings", "openings", "order", "cut"} <= {sheet["name"] for sheet in sheets}
    assert all(sheet["html"].startswith("<!doctype html>") for sheet in sheets)


def test_gaps_on_the_wall_are_answered_with_taps_or_what_is_missing(house: dict[str, Any]) -> None:
    gaps = {corner: ["0.4", "0"] for corner in ("bl", "br", "tr", "tl")}
    wall = ask("wall", document=house["document"], opening="W1", gaps=gaps)
    assert wall["says"]
    assert wall["then"]


def test_what_cant_be_is_refused_in_three_sentences() -> None:
    for said in (ask("open", text="name = ", highest=0), ask("something")):
        assert said["kind"] == "refusal"
        assert all(said[part] for part in ("read", "wrong", "do"))


@pytest.mark.parametrize(
    "file", [*sorted((ROOT / "examples").glob("*.toml")), PIPIT], ids=lambda file: file.stem
)
def test_a_house_file_comes_back_the_same(file: Path) -> None:
    document = parsed_house(file.read_text(encoding="utf-8"))
    assert parsed_house(house_text(document)) == document


def test_every_wrong_figure_and_every_swap_has_another_check_word() -> None:
    assert len(set(CHECK_WORDS)) == 97
    for figure in ("1254.5", "531.5", "2097.5"):
        for at, sign in enumerate(figure):
            for other in "0123456789":
                changed = figure[:at] + other + figure[at + 1 :]
                if sign.isdigit() and other != sign:
                    assert check_word(changed) != check_word(figure)
        swapped = figure[1] + figure[0] + figure[2:]
        assert check_word(swapped) != check_word(figure)

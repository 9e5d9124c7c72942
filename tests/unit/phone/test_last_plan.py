import json
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

from longpoint.forecast.chances import Imagined
from longpoint.forecast.lines import LineHouse, LineTally
from longpoint.forecast.plain_lines import PlainLines
from longpoint.phone import Ports, answer
from longpoint.solvers.highs import HighsSolver
from longpoint.survey.house_file.parsed_text import parsed_house

pytestmark = pytest.mark.no_cover

ROOT = Path(__file__).resolve().parents[3]


class Counted:
    """Judges in plain Python, and counts the houses that it was asked to judge."""

    def __init__(self) -> None:
        self.houses = 0

    def tally(self, house: LineHouse) -> LineTally:
        self.houses += 1
        return PlainLines().tally(house)


@pytest.fixture
def engine() -> Counted:
    return Counted()


@pytest.fixture
def ports(engine: Counted) -> Ports:
    return Ports(imagined=Imagined(engine=engine, draws=50))


@pytest.fixture(scope="module")
def house() -> dict[str, Any]:
    return dict(parsed_house((ROOT / "tests/scenarios/pipit.toml").read_text("utf-8")))


@pytest.fixture(scope="module")
def one(house: dict[str, Any]) -> dict[str, Any]:
    only = [o for o in house["openings"] if o["mark"] == "W1"]
    return house | {"openings": only, "rooms": [], "runs": []}


def ask(ports: Ports, what: str, document: object, **said: object) -> Any:  # noqa: ANN401
    request = {"ask": what, "document": document, "held": [], "saw": "", **said}
    return json.loads(answer(json.dumps(request), ports))


def test_news_from_the_saw_and_sheets_dont_plan_the_house_again(
    ports: Ports, engine: Counted, one: dict[str, Any]
) -> None:
    plan = ask(ports, "plan", one)
    once = engine.houses
    assert once > 0
    told = ask(ports, "saw", one, told=f"cut {plan['cuts'][0]['piece']}")
    after = ask(ports, "plan", one, saw=told["saw"])
    ask(ports, "sheets", one, saw=told["saw"])
    assert engine.houses == once
    assert len(after["cuts"]) == len(plan["cuts"]) - 1
    fresh = Ports(imagined=Imagined(engine=Counted(), draws=50))
    assert after == ask(fresh, "plan", one, saw=told["saw"])


def test_another_reading_is_planned(ports: Ports, engine: Counted, one: dict[str, Any]) -> None:
    plan = ask(ports, "plan", one)
    once = engine.houses
    other = deepcopy(one)
    other["defaults"] = one["defaults"] | {"quirk": 6}
    assert ask(ports, "plan", other)["cuts"] != plan["cuts"]
    assert engine.houses > once
    assert ask(ports, "plan", one) == plan


def test_what_is_held_beforehand_counts(ports: Ports, one: dict[str, Any]) -> None:
    assert ask(ports, "plan", one)["pieces"] > 0
    said = {"code": "reread", "severity": "stop", "place": "W1"}
    held = [said | {"read": "1 and 9", "wrong": "They differ.", "do": "Read it again."}]
    assert ask(ports, "plan", one, held=held)["pieces"] == 0


def test_a_plan_without_forecast_is_no_plan_with_one(ports: Ports, one: dict[str, Any]) -> None:
    told = ask(ports, "saw", one, told="short S1 5000")
    assert told["kind"] in ("saw", "refusal")
    assert ask(ports, "plan", one)["openings"][0]["words"] != "no forecast"


def test_a_first_plan_says_of_openings_what_the_final_one_does(
    engine: Counted, house: dict[str, Any]
) -> None:
    ports = Ports(solver=HighsSolver(), imagined=Imagined(engine=engine, draws=50))
    first = ask(ports, "plan", house, is_first=True)
    once = engine.houses
    final = ask(ports, "plan", house)
    assert engine.houses == once
    assert (first["is_first"], final["is_first"]) == (True, False)
    for told in ("openings", "summary", "held", "pieces", "code"):
        assert first[told] == final[told]
    # Filled without a solver its sticks are dearer, and say by how much they may be.
    assert float(first["money"]) > float(final["money"])
    assert not all(proof["is_proved"] for proof in first["proofs"])
    found = next(proof for proof in first["proofs"] if not proof["is_proved"])
    assert "no plan comes below" in found["words"]
    assert ask(ports, "plan", house, is_first=True) == final


def test_the_cutting_never_goes_by_a_first_plan(house: dict[str, Any]) -> None:
    ports = Ports(solver=HighsSolver())
    first = ask(ports, "plan", house, is_first=True)
    told = ask(ports, "saw", house, told=f"cut {first['cuts'][0]['piece']}")
    begun = ask(ports, "plan", house, is_first=True, saw=told["saw"])
    assert not begun["is_first"]
    fresh = Ports(solver=HighsSolver())
    assert begun == ask(fresh, "plan", house, saw=told["saw"])

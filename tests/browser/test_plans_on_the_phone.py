"""A house planned by a phone's Python and engines is the house that a laptop plans."""

import json
import subprocess
import tomllib
from pathlib import Path
from typing import Any, Final

import pytest

from app.tests.core.plan_here import planned
from longpoint.cli.imagined import house_imagined
from longpoint.phone import Ports
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import STANDARD
from tests.browser.conftest import ROOT

HOUSES: Final = sorted(
    path
    for path in (ROOT / "examples").glob("*.toml")
    if tomllib.loads(path.read_text("utf-8"))["format"].startswith("longpoint-house/")
)
OF_THE_STICKS: Final = frozenset({"sticks", "proof", "goals", "spares", "cut_code"})
"""Two solvers may find different plans of the same cost."""
SAYS_THE_COST: Final = "sticks-bought"


@pytest.fixture(scope="module")
def on_the_phone(
    node_env: dict[str, str], built: Path, tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Any]:
    assert built.is_dir()
    out = tmp_path_factory.mktemp("plans") / "plans.json"
    command = ["node", str(ROOT / "app/tests/core/plans.mjs"), str(out), *map(str, HOUSES)]
    done = subprocess.run(command, env=node_env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr[-4000:]
    found: dict[str, Any] = json.loads(out.read_text("utf-8"))
    return found


def on_the_laptop(house: Path) -> dict[str, Any]:
    ports = Ports(solver=linear_solver(), imagined=house_imagined())
    found: dict[str, Any] = json.loads(planned(house.read_text("utf-8"), ports, STANDARD))
    return found


def least_price(house: Path, profile: str) -> float:
    """Return what the cheapest stick of a profile costs; where none has a price, its metres."""
    stock = tomllib.loads(house.read_text("utf-8"))["stock"]
    sticks = [stick for stick in stock if stick["profile"] == profile]
    return min(float(stick.get("price", stick["length"] / 1000)) for stick in sticks)


def test_the_phone_weighs_sets_of_rows_as_the_laptop_does(on_the_phone: dict[str, Any]) -> None:
    true, leaning = on_the_phone["weighed"]
    for called, plain in (true, leaning):
        assert len(called) == len(plain) > 0
        for line, expected in zip(called, plain, strict=True):
            assert line == pytest.approx(expected, abs=1e-9)
    # Out of square most known sets have no weights: both leave out the same.
    assert len(leaning[0]) < len(true[0])


@pytest.mark.parametrize("house", HOUSES, ids=lambda house: house.stem)
def test_the_phones_plan_is_the_laptops(house: Path, on_the_phone: dict[str, Any]) -> None:
    phone, laptop = on_the_phone[str(house)], on_the_laptop(house)
    assert set(phone) == set(laptop)
    for key in set(laptop) - OF_THE_STICKS - {"findings"}:
        assert phone[key] == laptop[key], key
    # Where a plan is proved its cost is the least there is; where none is, each has the best that
    # it found, and neither is a stick above what the other knows to be needed. The laptop's search
    # among all sets isn't on the phone, so it may prove a plan that the phone has only found.
    are_proved = True
    for here, there in zip(phone["proof"], laptop["proof"], strict=True):
        profile = here["profile"]
        assert profile == there["profile"]
        are_proved &= here["optimal"] == there["optimal"]
        if here["optimal"] or there["optimal"]:
            assert here["cost"] == there["cost"], profile
            continue
        are_proved = False
        bound = max(here["lower_bound"], there["lower_bound"])
        for cost in (here["cost"], there["cost"]):
            assert bound <= cost < bound + least_price(house, profile), profile
    kept = [
        [f for f in plan["findings"] if are_proved or f["code"] != SAYS_THE_COST]
        for plan in (phone, laptop)
    ]
    assert kept[0] == kept[1]
    assert phone["forecast"]["all_fit"] is not None


def test_every_piece_of_the_phones_plan_lies_on_one_stick(on_the_phone: dict[str, Any]) -> None:
    """Beside the checker, which has built each piece on its stick on either side."""
    for plan in (on_the_phone[str(house)] for house in HOUSES):
        laid = sorted(mark for stick in plan["sticks"] for mark in stick["pieces"])
        assert laid == sorted(piece["mark"] for piece in plan["pieces"])

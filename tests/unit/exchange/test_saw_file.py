import json
from pathlib import Path
from typing import Any

import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.saw_file import load_at_the_saw, save_at_the_saw
from longpoint.sticks.effort import QUICK
from longpoint.sticks.news.at_the_saw import AtTheSaw, nothing_cut, told
from longpoint.sticks.news.changed_pieces import shape_of
from longpoint.sticks.news.remains import Remains
from longpoint.sticks.news.saw_news import BadZone, Cut, News, Spoiled, StickRead
from longpoint.sticks.plan_sticks import plan_sticks
from tests.random_sticks import house_of, house_pieces, mitre

PIECES = house_pieces(3, openings=6)
SHAPES = {piece.mark: shape_of(piece) for piece in PIECES}


def some_state() -> AtTheSaw:
    state = nothing_cut(plan_sticks(PIECES, house_of(), None, QUICK))
    first, second = state.sticks[:2]
    news: list[News] = [
        Cut(piece=first.next[0].piece),
        Spoiled(
            piece=second.next[0].piece,
            rests=(Remains(of=second.next[0].piece, length_mm=300.0, right=mitre(44.8)),),
        ),
        StickRead(stick=first.name, length_mm=first.length_mm + 4.0),
        BadZone(stick=second.name, from_mm=3000.0, to_mm=3050.0),
    ]
    return told(state, news)


def test_what_is_kept_comes_back_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "at-the-saw.json"
    save_at_the_saw(path, some_state(), "ACDEFG", SHAPES)
    kept = load_at_the_saw(path)

    assert kept.state == some_state()
    assert kept.readings_code == "ACDEFG"
    assert kept.shapes == SHAPES


@pytest.mark.parametrize(
    "change",
    [
        {"format": "longpoint-saw/2"},
        {"sticks": [{}]},
        {"sticks": 3},
        {"loose": None},
        {"pieces": {"W1-head": ["OG", 1.0]}},
        {"pieces": []},
    ],
)
def test_a_file_that_holds_something_else_is_refused(
    tmp_path: Path, change: dict[str, Any]
) -> None:
    path = tmp_path / "at-the-saw.json"
    save_at_the_saw(path, some_state(), "ACDEFG", SHAPES)
    path.write_text(json.dumps({**json.loads(path.read_text()), **change}), encoding="utf-8")

    with pytest.raises(ExchangeError):
        load_at_the_saw(path)


@pytest.mark.parametrize(
    "change",
    [
        {"length_mm": -5.0},
        {"length_mm": float("nan")},
        {"spent_mm": 1e6},
        {"name": "OG-2"},
        {"next": [{"piece": "W9-head", "turned": False, "start_mm": 9.0, "end_mm": 4.0}]},
        {"next": [{"piece": "W9-head", "turned": False, "start_mm": 9.0, "end_mm": 1e5}]},
        {"rest": {"of": "W9-head", "length_mm": float("nan"), "left": None, "right": None}},
        {
            "rest": {
                "of": "W9-head",
                "length_mm": 300.0,
                "left": {"kind": "mitre", "mitre_deg": 90.0, "bevel_deg": 0.0},
                "right": None,
            }
        },
        {"listed_mm": -1.0},
    ],
)
def test_a_state_that_nothing_could_lead_to_is_refused(
    tmp_path: Path, change: dict[str, Any]
) -> None:
    path = tmp_path / "at-the-saw.json"
    save_at_the_saw(path, some_state(), "ACDEFG", SHAPES)
    document = json.loads(path.read_text())
    document["sticks"][0] |= change
    path.write_text(json.dumps(document), encoding="utf-8")

    with pytest.raises(ExchangeError):
        load_at_the_saw(path)


@pytest.mark.parametrize("text", ["", "[", "[]", "nan", '{"format": "longpoint-saw/1"}'])
def test_a_broken_file_is_refused(tmp_path: Path, text: str) -> None:
    path = tmp_path / "at-the-saw.json"
    path.write_text(text, encoding="utf-8")

    with pytest.raises(ExchangeError):
        load_at_the_saw(path)


def test_a_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ExchangeError):
        load_at_the_saw(tmp_path / "at-the-saw.json")

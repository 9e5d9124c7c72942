from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.pipeline import plan_house
from longpoint.survey.house_file import read_house
from tests.house_documents import house
from tests.rail_houses import (
    refused,
    the_house,
    the_plan,
    walls,
)

HIGH = {"kind": "picture-rail", "height": 2200}
AT_DOOR = {"S": {"openings": [{"mark": "D1", "from_left": 1800}]}}


def dado(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"kind": "dado-rail", "height": 900, **keys}


def test_a_door_wider_at_the_top_is_said() -> None:
    openings = [{"mark": "D1", "kind": "door", "trim": "legs-and-head", "top": 771}]
    openings[0] |= {"bottom": 763, "left": 2030, "right": 2030}
    keys = {**HIGH, "height": 2010}
    document = the_house(keys, plan=walls(**AT_DOOR), openings=openings)
    (note,) = [f for f in the_plan(document).findings if f.code == "rail-at-leaning-leg"]
    # 8 wider at 2030, so 7.8 at the rail's middle of 1987.5.
    assert "D1 8 wider" in note.read


def test_a_rail_in_the_floor_is_refused() -> None:
    assert "in the floor" in refused(the_house(dado(height=30))).wrong


def test_a_rail_above_the_ceiling_is_refused() -> None:
    assert "ceiling" in refused(the_house({**HIGH, "height": 2410, "ceiling": 2400})).wrong


@pytest.mark.parametrize(
    "keys",
    [
        {"walls": ["X"]},
        {"walls": []},
        {"datum": "X"},
        {"level_line": [{"wall": "X", "left": 1000}]},
        {"level_line": [{"wall": "N", "left": 1000}, {"wall": "N", "left": 1001}]},
        {"level_line": [{"wall": "N", "left": 1000}], "datum": "S"},
    ],
)
def test_walls_that_are_not_there_are_refused(keys: dict[str, Any]) -> None:
    refused(the_house(dado(**keys)))


def test_a_room_that_is_held_or_unknown_is_refused() -> None:
    refused(the_house(HIGH), "Parlour")
    refused(the_house({**HIGH, "room": "Attic"}))


def test_a_wall_that_nobody_read_is_plumb_in_every_sum() -> None:
    walls = [
        {"mark": mark, "length": mm, "corner": 90}
        for mark, mm in zip("NESW", (4000, 3000, 4000, 3000), strict=True)
    ]
    walls[1]["lean"] = -2
    rail = {"mark": "PR", "kind": "picture-rail", "room": "Kit", "profile": "SK95", "height": 2000}
    document = house(rooms=[{"name": "Kit", "walls": walls}], trims=[rail])
    plan = plan_house(read_house(document, trim_tables()))
    backs = {piece.mark: piece.back_mm for piece in plan.pieces}

    assert backs["PR-E"] == pytest.approx(backs["PR-W"], abs=1.0), "both lie between plumb walls"
    assert backs["PR-N"] == pytest.approx(backs["PR-S"], abs=4.0)
    assert backs["PR-N"] < 3960.0, "the wall that leans in takes of these two"

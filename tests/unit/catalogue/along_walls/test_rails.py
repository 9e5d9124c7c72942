from typing import Any

import pytest

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

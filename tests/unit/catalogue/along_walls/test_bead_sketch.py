from typing import Any

import pytest

from longpoint.catalogue.sketch import Stroke
from tests.rail_houses import the_house, the_plan, walls

SKIRTED = {mark: {"skirting": True} for mark in "NESW"}
AT_DOOR = {"openings": [{"mark": "D1", "from_left": 1800}]}


def bead(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"kind": "cover-bead", "profile": "QD15", **keys}


def test_the_drawing_is_the_room_s_plan() -> None:
    square = {"N": {"length": 4000}, "S": {"length": 4000}, "E": {"length": 3000}}
    plan = walls(**square, W={"length": 3000})
    (sketch,) = the_plan(the_house(bead(behind=16), plan=plan)).sketches
    beads = [line for line in sketch.lines if line.stroke is Stroke.TIMBER]
    assert len(beads) == 4
    # The bead's back lies 16 inside the walls, its front 15 further.
    xs = sorted({round(x, 6) for line in beads for x, _ in line.points})
    assert xs[1] - xs[0] == pytest.approx(15.0)
    assert xs[-1] - xs[0] == pytest.approx(4000 - 2 * 16)

from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind
from tests.rail_houses import (
    by_mark,
    codes,
    refused,
    the_house,
    the_plan,
    walls,
)

HIGH = {"kind": "picture-rail", "height": 2200}
AT_DOOR = {"S": {"openings": [{"mark": "D1", "from_left": 1800}]}}
AT_WINDOW = {"E": {"openings": [{"mark": "W1", "from_left": 1200}]}}


def dado(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"kind": "dado-rail", "height": 900, **keys}


def test_a_rail_above_the_door_s_trim_runs_through() -> None:
    # The trim of D1 stands 2031 + 5 + 57 = 2093 high; the rail's lower edge at 2155.
    assert "S" in by_mark(the_plan(the_house(HIGH, plan=walls(**AT_DOOR))))


def test_a_rail_at_the_legs_stops_at_both() -> None:
    rails = by_mark(the_plan(the_house({**HIGH, "height": 2010}, plan=walls(**AT_DOOR))))
    assert set(rails) == {"N", "E", "S-1", "S-2", "W"}
    # 1800 - 5 - 57 = 1738; 4206 - 1800 - 763 - 5 - 57 = 1581.
    assert rails["S-1"].back_mm == pytest.approx(1738)
    assert rails["S-2"].back_mm == pytest.approx(1581)
    assert rails["S-1"].right.kind is rails["S-2"].left.kind is CutKind.SQUARE
    assert "4206 - 1800 - 763 - 5 - 57 = 1581" in rails["S-2"].hand_sum


def test_above_plinth_blocks_the_rail_meets_the_legs() -> None:
    openings = [{"mark": "D1", "kind": "door", "trim": "legs-and-head", "top": 764}]
    openings[0] |= {"bottom": 763, "left": 2030, "right": 2030, "plinth": "PB70"}
    openings[0] |= {"plinth_height": 180}
    profiles = {
        "OG57": {"face": 57, "thickness": 18},
        "SK95": {"face": 95, "thickness": 16},
        "PR45": {"face": 45, "thickness": 18},
        "PB70": {"face": 70, "thickness": 25},
    }
    keys = {**HIGH, "height": 2010}
    document = the_house(keys, plan=walls(**AT_DOOR), openings=openings, profiles=profiles)
    assert by_mark(the_plan(document))["S-1"].back_mm == pytest.approx(1738)


def test_the_height_may_be_measured_to_the_lower_edge() -> None:
    # Lower edge at 2095, 2 above the trim of D1; to the upper edge it would be 2050.
    plan = walls(**AT_DOOR)
    below = the_house({**HIGH, "height": 2095, "measured_to": "bottom"}, plan=plan)
    assert "S" in by_mark(the_plan(below))
    assert "S-1" in by_mark(the_plan(the_house({**HIGH, "height": 2095}, plan=plan)))


def test_a_rail_beside_the_head_is_warned_of() -> None:
    made = the_plan(the_house({**HIGH, "height": 2110}, plan=walls(**AT_DOOR)))
    (finding,) = [each for each in made.findings if each.code == "rail-meets-trim"]
    assert finding.severity is Severity.WARNING
    assert "D1" in finding.wrong
    assert "S-1" in by_mark(made)


def test_a_rail_thicker_than_the_architrave_shows_its_end() -> None:
    profiles = {
        "OG57": {"face": 57, "thickness": 18},
        "SK95": {"face": 95, "thickness": 16},
        "PR45": {"face": 45, "thickness": 22},
    }
    keys = {**HIGH, "height": 2010}
    made = the_plan(the_house(keys, plan=walls(**AT_DOOR), profiles=profiles))
    (note,) = [each for each in made.findings if each.code == "rail-proud-of-trim"]
    assert "4 mm" in note.read
    returned = {**keys, "at_trim": "return"}
    made = the_plan(the_house(returned, plan=walls(**AT_DOOR), profiles=profiles))
    assert "rail-proud-of-trim" not in codes(made)


def test_a_window_on_the_wall_wants_its_sill_s_height() -> None:
    stop = refused(the_house(dado(), plan=walls(**AT_WINDOW)))
    assert "W1" in stop.read
    assert "sill" in stop.do


@pytest.mark.parametrize(
    ("sill", "stops"),
    [
        # The rail covers 855 to 900; W1 is 462 high, its trim reaches 62 below and above it.
        (970, False),
        (950, True),
        (700, True),
        (325, False),
        (340, True),
    ],
)
def test_a_window_stops_a_rail_where_its_trim_meets_it(sill: float, *, stops: bool) -> None:
    keys = dado(windows=[{"mark": "W1", "sill": sill}])
    rails = by_mark(the_plan(the_house(keys, plan=walls(**AT_WINDOW))))
    assert ("E-1" in rails) is stops
    if stops:
        # 1200 - 5 - 57, and 3612 - 1200 - 1186 - 5 - 57.
        assert rails["E-1"].back_mm == pytest.approx(1138)
        assert rails["E-2"].back_mm == pytest.approx(1164)


def test_a_rail_beside_a_window_s_sill_is_warned_of() -> None:
    keys = dado(windows=[{"mark": "W1", "sill": 930}])
    assert "rail-meets-trim" in codes(the_plan(the_house(keys, plan=walls(**AT_WINDOW))))
    keys = dado(windows=[{"mark": "W1", "sill": 700}])
    assert "rail-meets-trim" not in codes(the_plan(the_house(keys, plan=walls(**AT_WINDOW))))

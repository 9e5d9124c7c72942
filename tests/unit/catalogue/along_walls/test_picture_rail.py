import pytest

from longpoint.pieces.piece import CutKind
from tests.rail_houses import by_mark, codes, the_house, the_plan

# The parlour of a cottage, its walls and corners out of square.
PARLOUR = [
    {"mark": "N", "length": 4186, "corner": 89.5},
    {"mark": "E", "length": 3641, "corner": 90.0},
    {
        "mark": "S",
        "length": 4206,
        "corner": 89.5,
        "openings": [{"mark": "D1", "from_left": 1580}],
    },
    {"mark": "W", "length": 3612, "corner": 90.5},
]
DIAGONALS = [{"from": "W", "to": "E", "length": 5527}, {"from": "N", "to": "S", "length": 5566}]
DOOR = {
    "mark": "D1",
    "kind": "door",
    "trim": "legs-and-head",
    "top": 812,
    "bottom": 820,
    "left": 2024,
    "right": 2017,
    "architrave": "OG90",
    "plinth": "PB95",
    "plinth_height": 200,
}
PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "OG90": {"face": 90, "thickness": 20},
    "PB95": {"face": 95, "thickness": 25},
    "PR45": {"face": 45, "thickness": 20},
}


def test_the_cottage_s_parlour_has_its_rail_at_2010_between_the_door_s_legs() -> None:
    made = the_plan(
        the_house(
            {"kind": "picture-rail", "height": 2010},
            plan=PARLOUR,
            room={"diagonals": DIAGONALS},
            openings=[DOOR],
            profiles=PROFILES,
            stock=[{"profile": "PR45", "length": 4800}],
        )
    )
    rails = by_mark(made)
    assert set(rails) == {"N", "E", "S-1", "S-2", "W"}
    # To the legs of 90, not the plinth blocks of 95: 1580 - 5 - 90; 4206 - 1580 - 820 - 95.
    assert rails["S-1"].back_mm == pytest.approx(1485)
    assert rails["S-2"].back_mm == pytest.approx(1711)
    # N is the longest left and runs through; it stops short by t cot of a corner under 90.
    assert rails["N"].left.kind is rails["N"].right.kind is CutKind.SQUARE
    assert 4185 < rails["N"].inner_mm < 4186
    assert rails["E"].left.kind is rails["W"].right.kind is CutKind.SCRIBE
    # The two ends of E and the left of N together: every scribe is half its corner off square.
    assert rails["E"].left.bevel_deg == pytest.approx(45.2, abs=0.25)
    assert rails["W"].right.bevel_deg == pytest.approx(44.7, abs=0.25)
    assert "rail-at-leaning-leg" in codes(made)

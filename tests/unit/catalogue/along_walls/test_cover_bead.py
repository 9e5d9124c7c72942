import math
from typing import Any

import pytest

from longpoint.pieces.piece import CutKind, Role
from tests.rail_houses import by_mark, codes, refused, the_house, the_plan, walls

SKIRTED: dict[str, dict[str, Any]] = {mark: {"skirting": True} for mark in "NESW"}
AT_DOOR: dict[str, Any] = {"openings": [{"mark": "D1", "from_left": 1800}]}


def bead(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"kind": "cover-bead", "profile": "QD15", **keys}


def test_a_bead_is_a_skirting_shorter_at_each_internal_corner() -> None:
    beads = by_mark(the_plan(the_house(bead(), plan=walls(**SKIRTED))))
    # Skirting SK95 is 16 thick.
    assert {piece.role for piece in beads.values()} == {Role.BEAD}
    for mark, wall_mm in (("N", 4206), ("E", 3612), ("S", 4206), ("W", 3612)):
        assert beads[mark].back_mm == pytest.approx(wall_mm - 2 * 16)
    assert beads["E"].inner_mm == pytest.approx(3612 - 2 * 16 - 2 * 15)
    assert "before the skirting 3612 - 16 - 16 = 3580" in beads["E"].hand_sum


def test_in_a_wider_corner_the_skirtings_cross_nearer_to_it() -> None:
    chain = [{"mark": "A", "length": 1200, "corner": 120}, {"mark": "B", "length": 800}]
    keys = bead(behind=20)
    beads = by_mark(the_plan(the_house(keys, plan=chain, room={"closed": False})))
    off_mm = 20 / math.tan(math.radians(60))
    assert beads["A"].back_mm == pytest.approx(1200 - off_mm)
    assert beads["B"].back_mm == pytest.approx(800 - off_mm)


def test_round_an_external_corner_the_bead_is_longer_and_mitred() -> None:
    chain = [{"mark": "A", "length": 1200, "corner": 270}, {"mark": "B", "length": 800}]
    keys = bead(behind=20)
    beads = by_mark(the_plan(the_house(keys, plan=chain, room={"closed": False})))
    # The skirting's face is 20 past the corner, the bead's another 15.
    assert beads["A"].back_mm == pytest.approx(1220)
    assert beads["A"].inner_mm == pytest.approx(1235)
    assert beads["A"].right.kind is CutKind.BEVEL
    assert beads["A"].right.bevel_deg == beads["B"].left.bevel_deg == pytest.approx(-45.0)


def test_past_an_external_corner_onto_a_bare_wall_it_ends_at_the_skirting_s_face() -> None:
    chain = [{"mark": "A", "length": 1200, "corner": 270}, {"mark": "B", "length": 800}]
    keys = bead(behind=20, walls=["A"])
    beads = by_mark(the_plan(the_house(keys, plan=chain, room={"closed": False})))
    assert beads["A"].inner_mm == pytest.approx(1220)
    assert beads["A"].right.bevel_deg == -45.0
    assert "A-return-right" in beads


def test_skirtings_of_two_thicknesses_cross_off_the_middle() -> None:
    profiles = {
        "OG57": {"face": 57, "thickness": 18},
        "SK95": {"face": 95, "thickness": 16},
        "SK70": {"face": 70, "thickness": 10},
        "QD15": {"face": 15, "thickness": 15},
    }
    plan = walls(**{**SKIRTED, "E": {"skirting": True, "profile": "SK70"}})
    beads = by_mark(the_plan(the_house(bead(), plan=plan, profiles=profiles)))
    # At square corners a bead is shortened by the skirting it runs up to, not by its own.
    assert beads["N"].back_mm == pytest.approx(4206 - 16 - 10)
    assert beads["E"].back_mm == pytest.approx(3612 - 16 - 16)


def test_at_a_door_it_stops_where_the_skirting_does() -> None:
    made = the_plan(the_house(bead(), plan=walls(**{**SKIRTED, "S": {**AT_DOOR}})))
    beads = by_mark(made)
    # S has no skirting written: it runs 0 off its own wall, and up to E's and W's of 16.
    assert beads["S-1"].back_mm == pytest.approx(1738 - 16)
    assert beads["S-2"].back_mm == pytest.approx(1581 - 16)
    assert beads["S-1"].right.kind is CutKind.SQUARE
    assert "bead-no-skirting" in codes(made)
    assert any("its end is seen" in line for line in made.lines)


def test_at_a_door_it_may_be_returned() -> None:
    plan = walls(S={**AT_DOOR, "skirting": True})
    beads = by_mark(the_plan(the_house(bead(at_trim="return", behind=16), plan=plan)))
    assert beads["S-1"].right.bevel_deg == -45.0
    assert beads["S-1-return-right"].inner_mm == 15.0


def test_a_run_read_on_its_own_tells_the_skirting_too() -> None:
    runs = [{"mark": "R1", "room": "Parlour", "wall": "N", "length": 4188, "profile": "SK95"}]
    runs[0] |= {"left": "internal", "right": "internal"}
    made = the_plan(the_house(bead(walls=["N"]), runs=runs))
    assert "bead-no-skirting" not in codes(made)
    # E and W have none written.
    assert by_mark(made)["N"].back_mm == pytest.approx(4206)


def test_corners_may_be_mitred() -> None:
    beads = by_mark(the_plan(the_house(bead(behind=16, internal="mitre"))))
    for piece in beads.values():
        assert piece.left.kind is piece.right.kind is CutKind.BEVEL
        assert piece.inner_mm == pytest.approx(piece.back_mm - 2 * 15)


def test_plain_lengths_are_cut_square_as_read() -> None:
    document = the_house(bead(lengths=[1200, 860], room="Kitchen"))
    beads = by_mark(the_plan(document))
    assert {mark: piece.inner_mm for mark, piece in beads.items()} == {
        "length-1": 1200.0,
        "length-2": 860.0,
    }
    assert all(piece.left.kind is CutKind.SQUARE for piece in beads.values())


def test_plain_lengths_stand_beside_walls_that_are_named() -> None:
    beads = by_mark(the_plan(the_house(bead(lengths=[600], walls=["N"], behind=16))))
    assert set(beads) == {"N", "length-1"}


def test_nothing_to_follow_is_refused() -> None:
    document = the_house(bead())
    del document["trims"][0]["room"]
    assert "nothing to follow" in refused(document).wrong


def test_an_unknown_or_held_room_is_refused() -> None:
    refused(the_house(bead(room="Attic")))
    refused(the_house(bead()), "Parlour")


def test_walls_without_a_room_are_refused() -> None:
    document = the_house(bead(walls=["N"], lengths=[600]))
    del document["trims"][0]["room"]
    refused(document)


def test_a_bead_under_the_ceiling_lies_on_the_wall_and_passes_the_door() -> None:
    plan = walls(**{**SKIRTED, "S": {**AT_DOOR, "skirting": True}})
    made = the_plan(the_house(bead(height=2360), plan=plan))
    assert by_mark(made)["S"].back_mm == pytest.approx(4206)
    assert codes(made) == []
    low = by_mark(the_plan(the_house(bead(height=1900), plan=plan)))
    assert low["S-1"].back_mm == pytest.approx(1738)


def test_a_bead_bends_to_a_floor_that_skirting_is_scribed_to() -> None:
    floor = {"floor": [[0, 0], [2000, 9], [4206, 14]], "floor_fit": "follow"}
    plan = walls(**{**SKIRTED, "N": {"skirting": True, **floor}})
    bent, level = (the_plan(the_house(bead(), plan=each)) for each in (plan, walls(**SKIRTED)))
    assert by_mark(bent) == by_mark(level)
    assert codes(bent) == codes(level)

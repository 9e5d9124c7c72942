from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Role
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


def dado(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"kind": "dado-rail", "height": 900, **keys}


def test_a_rail_runs_round_the_room_the_longest_square_and_the_others_scribed() -> None:
    rails = by_mark(the_plan(the_house(HIGH)))
    assert set(rails) == {"N", "E", "S", "W"}
    assert {rail.role for rail in rails.values()} == {Role.RAIL}
    # S and N, 4206 long, run through; E and W are scribed at both ends, 18 shorter on the face.
    for mark in ("S", "N"):
        assert rails[mark].left.kind is rails[mark].right.kind is CutKind.SQUARE
        assert rails[mark].inner_mm == rails[mark].back_mm
    for mark, wall_mm in (("E", 3612), ("W", 3612)):
        assert rails[mark].left.kind is rails[mark].right.kind is CutKind.SCRIBE
        assert rails[mark].back_mm == pytest.approx(wall_mm)
        assert rails[mark].inner_mm == pytest.approx(wall_mm - 2 * 18)


def test_the_pieces_belong_to_the_rail_and_its_room() -> None:
    for piece in the_plan(the_house(HIGH)).pieces:
        assert (piece.trim, piece.run, piece.room, piece.place) == ("T1", None, "Parlour", "T1")


def test_returns_are_made_where_they_are_wanted() -> None:
    keys = {**HIGH, "height": 2010, "at_trim": "return"}
    made = the_plan(the_house(keys, plan=walls(**AT_DOOR)))
    rails = by_mark(made)
    assert rails["S-1"].right.bevel_deg == rails["S-2"].left.bevel_deg == -45.0
    assert {mark for mark in rails if "return" in mark} == {"S-1-return-right", "S-2-return-left"}
    assert rails["S-1-return-right"].role is Role.RETURN
    assert codes(made).count("return-small") == 2


def test_only_the_walls_that_are_named_get_a_rail() -> None:
    made = the_plan(the_house(dado(walls=["N", "E"])))
    rails = by_mark(made)
    assert set(rails) == {"N", "E"}
    # N runs into the bare wall W, E into the bare wall S.
    assert rails["N"].left.kind is rails["E"].right.kind is CutKind.SQUARE
    assert "neighbour-assumed" not in codes(made)


def test_at_an_external_corner_onto_a_bare_wall_the_rail_returns() -> None:
    chain = [
        {"mark": "A", "length": 1200, "corner": 270},
        {"mark": "B", "length": 800},
    ]
    room = {"closed": False}
    both = by_mark(the_plan(the_house(dado(), plan=chain, room=room)))
    assert both["A"].right.kind is CutKind.BEVEL
    assert both["A"].inner_mm == pytest.approx(1200 + 18)
    alone = by_mark(the_plan(the_house(dado(walls=["A"]), plan=chain, room=room)))
    assert alone["A"].right.bevel_deg == -45.0
    assert alone["A"].inner_mm == pytest.approx(1200)
    assert "A-return-right" in alone


def test_internal_corners_may_be_mitred() -> None:
    made = the_plan(the_house(dado(internal="mitre")))
    for piece in made.pieces:
        assert piece.left.kind is piece.right.kind is CutKind.BEVEL
        assert (piece.left.bevel_deg, piece.right.bevel_deg) == pytest.approx((45.0, 45.0))
        assert piece.inner_mm == pytest.approx(piece.back_mm - 2 * 18)
        assert "mitred with T1-" in piece.hand_sum
        assert "scribed" not in piece.hand_sum


def test_beside_a_held_door_only_its_boards_wait() -> None:
    document = the_house({**HIGH, "height": 2010}, plan=walls(**AT_DOOR))
    made = the_plan(document, "D1")
    assert set(by_mark(made)) == {"N", "E", "W"}
    waiting = [finding for finding in made.findings if finding.code == "trim-waits"]
    assert len(waiting) == 2
    assert {finding.severity for finding in waiting} == {Severity.WARNING}
    assert {finding.place for finding in made.findings} == {"T1"}


def test_a_rail_longer_than_a_stick_is_scarfed() -> None:
    made = the_plan(the_house(HIGH, stock=[{"profile": "PR45", "length": 4200}]))
    rails = by_mark(made)
    assert rails["N-1"].right.kind is rails["N-2"].left.kind is CutKind.SCARF
    assert codes(made).count("scarf-joint") == 2


def test_a_wall_without_a_length_stops_the_rail_and_names_the_trim() -> None:
    plan = walls()
    del plan[1]["length"], plan[2]["length"]
    stop = refused(the_house(HIGH, plan=plan))
    assert "Wall E of Parlour" in stop.read
    assert "skirting" not in str(stop)


def test_no_finding_of_a_rail_speaks_of_skirting() -> None:
    chain = [{"mark": "A", "length": 1200}, {"mark": "B", "length": 800}]
    made = the_plan(the_house(dado(), plan=chain, room={"closed": False}))
    assert made.findings
    assert not any("skirting" in str(finding) for finding in made.findings)

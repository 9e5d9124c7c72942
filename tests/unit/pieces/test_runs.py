import math
from dataclasses import replace
from typing import Any

import pytest

from longpoint.errors import Finding, Severity, held_places
from longpoint.pieces.boards import corner_angles
from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.pieces.read_boards import read_boards
from longpoint.pieces.runs import board_pieces, plan_runs
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.checks.wall_sums import check_wall_sums
from longpoint.survey.house import House
from longpoint.survey.rooms import FloorFit, RunEnd
from tests.room_builder import a_door, a_house, a_room, a_run, a_scenario, a_wall


def planned(house: House) -> tuple[dict[str, Piece], tuple[Finding, ...]]:
    fitted, found = fit_rooms(house)
    held = held_places((*found, *check_wall_sums(house)))
    pieces, findings = plan_runs(house, Shapes(rooms=fitted), held)
    return {piece.mark: piece for piece in pieces}, findings


def one(house: House) -> Piece:
    pieces, _ = planned(house)
    assert len(pieces) == 1
    return next(iter(pieces.values()))


def test_the_cabin_s_runs_are_planned_but_for_the_two_in_doubt() -> None:
    pieces, findings = planned(a_scenario("pipit"))
    runs = {mark for mark in pieces if not mark.endswith("-return-right")}
    assert runs == {f"S{n}" for n in range(1, 15)} - {"S5", "S6"}
    assert held_places(findings) == frozenset()


def test_the_backs_of_the_cabin_s_runs_are_the_lengths_read() -> None:
    pieces, _ = planned(a_scenario("pipit"))
    for run in a_scenario("pipit").runs:
        # The nib S14 ends in a return, which takes a thickness off its back.
        if run.mark in pieces and run.mark != "S14":
            assert pieces[run.mark].back_mm == pytest.approx(run.length_mm, abs=0.2)
    assert pieces["S14"].back_mm == 640 - 19


def test_at_a_corner_of_the_cabin_the_longer_run_goes_through() -> None:
    pieces, _ = planned(a_scenario("pipit"))
    # S1 2284 and S2 2212 meet in the north-west corner.
    assert pieces["S1"].right.kind is CutKind.SQUARE
    assert pieces["S2"].left.kind is CutKind.SCRIBE
    assert "scribed over S1" in pieces["S2"].hand_sum


def test_the_nib_ends_in_a_mitre_and_a_return_too_small_to_hold() -> None:
    pieces, findings = planned(a_scenario("pipit"))
    nib, closing = pieces["S14"], pieces["S14-return-right"]
    assert (nib.right.kind, nib.right.bevel_deg) == (CutKind.BEVEL, -45.0)
    # The external corner of 270 adds a thickness on the face.
    assert nib.inner_mm == pytest.approx(640 + 19)
    assert closing.role is Role.RETURN
    assert (closing.inner_mm, closing.back_mm) == (19.0, 0.0)
    assert closing.left.bevel_deg == -45.0
    assert closing.right.kind is CutKind.SQUARE
    caution = next(f for f in findings if f.code == "return-small")
    assert (caution.severity, caution.place) == (Severity.WARNING, "S14")


def test_a_return_on_the_left_is_the_mirror_of_one_on_the_right() -> None:
    pieces, _ = planned(a_house(runs=[a_run("S1", 640, "return", "square")]))
    closing = pieces["S1-return-left"]
    assert closing.left.kind is CutKind.SQUARE
    assert closing.right.bevel_deg == -45.0


@pytest.mark.parametrize(
    ("mark", "end", "bevel_deg"),
    [
        ("R6", "right", -44.75),
        ("R7l", "left", -44.75),
        ("R7r", "right", -45.5),
        ("R8", "left", -45.5),
        ("R12", "right", -22.5),
        ("R13", "left", -22.5),
        ("R13", "right", -22.5),
    ],
)
def test_the_cottage_s_external_corners_have_the_keyed_angles(
    mark: str, end: str, bevel_deg: float
) -> None:
    pieces, _ = planned(a_scenario("fallow-end"))
    cut = pieces[mark].left if end == "left" else pieces[mark].right
    assert (cut.kind, cut.mitre_deg) == (CutKind.BEVEL, 0.0)
    assert cut.bevel_deg == pytest.approx(bevel_deg)


def test_the_run_on_the_cottage_s_doubted_wall_is_cut() -> None:
    pieces, _ = planned(a_scenario("fallow-end"))
    assert pieces["R16"].back_mm == pytest.approx(3190, abs=0.1)


def test_the_prefab_s_long_run_is_scarfed_with_its_faces_adding_up() -> None:
    pieces, findings = planned(a_scenario("series-k"))
    one_end, other_end = pieces["K1-1"], pieces["K1-2"]
    assert one_end.inner_mm + other_end.inner_mm == pytest.approx(5894)
    assert (one_end.right.kind, one_end.right.bevel_deg) == (CutKind.SCARF, 45.0)
    assert (other_end.left.kind, other_end.left.bevel_deg) == (CutKind.SCARF, -45.0)
    assert min(one_end.inner_mm, other_end.inner_mm) >= 600
    assert {one_end.run, other_end.run} == {"K1"}
    note = next(f for f in findings if f.code == "scarf-joint")
    assert "stud" in note.do
    assert "entry" in note.do


def test_the_prefab_s_skirting_comes_to_the_keyed_metres() -> None:
    # The key: 15.588 m per unit.
    pieces, _ = planned(a_scenario("series-k"))
    assert math.fsum(p.inner_mm for p in pieces.values()) == pytest.approx(15588)


def test_skirting_has_no_mitre_across_its_face() -> None:
    for name in ("pipit", "fallow-end", "series-k"):
        house = a_scenario(name)
        level = {r.mark for r in house.runs if not r.floor and RunEnd.RAKE not in (r.left, r.right)}
        for piece in planned(house)[0].values():
            if piece.run not in level:
                continue
            assert piece.left.mitre_deg == piece.right.mitre_deg == 0.0
            assert piece.inner_mm == piece.outer_mm
            assert piece.hook_mm is None


def test_a_scribed_run_shows_the_sum_from_wall_to_face() -> None:
    run = a_run("S1", 2284, "square", "internal", right_corner_deg=90.0)
    piece = one(a_house(runs=[run]))
    assert piece.hand_sum.startswith("as read 2284; face 2284 - 19 = 2265")


def test_a_run_too_short_for_its_two_cuts_is_held() -> None:
    run = a_run("S1", 30, left_corner_deg=60.0, right_corner_deg=60.0)
    pieces, findings = planned(a_house(runs=[run]))
    assert pieces == {}
    assert ("run-too-short", "S1") in [(f.code, f.place) for f in findings]


def test_a_room_s_walls_are_planned_from_corner_to_corner() -> None:
    walls = [
        a_wall("N", 4606, doors=[("D1", 640)], skirting=True),
        *(a_wall(m, d, skirting=True) for m, d in (("E", 2281), ("S", 4606), ("W", 2281))),
    ]
    house = a_house(rooms=[a_room(*walls, name="Kitchen")], openings=[a_door(room="Kitchen")])
    pieces, findings = planned(house)
    assert list(pieces) == ["Kitchen-N-1", "Kitchen-N-2", "Kitchen-E", "Kitchen-S", "Kitchen-W"]
    assert pieces["Kitchen-N-2"].back_mm == pytest.approx(3085)
    assert pieces["Kitchen-N-2"].right.kind is CutKind.SQUARE
    assert pieces["Kitchen-E"].left.kind is CutKind.SCRIBE
    assert pieces["Kitchen-E"].right.kind is CutKind.SCRIBE
    assert pieces["Kitchen-S"].left.kind is pieces["Kitchen-S"].right.kind is CutKind.SQUARE
    # The short board beside the door is scribed over the wall next to it.
    assert pieces["Kitchen-N-1"].left.kind is CutKind.SCRIBE
    assert findings == ()


def test_a_held_run_gets_no_piece_and_neither_does_what_hangs_on_it() -> None:
    walls = [
        a_wall("N", 4606, doors=[("D1", 640)], skirting=True),
        *(a_wall(m, d) for m, d in (("E", 2281), ("S", 4606), ("W", 2281))),
    ]
    house = a_house(rooms=[a_room(*walls)], runs=[a_run("S1", 2281, wall="E")], openings=[a_door()])
    pieces, findings = plan_runs(house, Shapes(), frozenset({"S1", "D1"}))
    assert pieces == ()
    assert held_places(findings) == {"Den-N-1", "Den-N-2"}


def test_floor_gap_and_floor_cover_change_no_length() -> None:
    house = a_house(runs=[a_run("S1", 2284, "square", "square")])
    assert one(house).inner_mm == one(replace(house, floor_gap_mm=8.0)).inner_mm == 2284


def test_what_the_crew_can_carry_splits_a_run() -> None:
    run = a_run("S1", 4000, "square", "square")
    pieces, _ = planned(a_house(runs=[run], longest_run_mm=3000))
    assert list(pieces) == ["S1-1", "S1-2"]
    assert pieces["S1-1"].back_mm <= 3000


def with_runs(house: House, **changed: dict[str, Any]) -> House:
    """Return a house with some of its runs changed, by their marks."""
    return replace(
        house, runs=tuple(replace(run, **changed.get(run.mark, {})) for run in house.runs)
    )


def test_the_cottage_s_run_to_the_foot_of_the_stairs_is_cut_at_half_the_pitch() -> None:
    house = with_runs(a_scenario("fallow-end"), R14={"right": RunEnd.RAKE, "right_rake_deg": 38.01})
    run = planned(house)[0]["R14"]
    # The key: each piece 19.00 off square.
    assert run.right.mitre_deg == pytest.approx(-19.00, abs=0.01)
    assert run.left.bevel_deg == pytest.approx(-22.5)
    assert run.outer_mm == pytest.approx(
        run.inner_mm - run.width_mm * math.tan(math.radians(19.005))
    )
    assert "the line turns up 38.0 there and both boards take half" in run.hand_sum


def test_the_cottage_s_floors_get_advice_that_can_be_followed() -> None:
    house = with_runs(
        a_scenario("fallow-end"),
        R1={"floor": ((0.0, 9.0), (4188.0, 0.0))},
        R2={"floor": ((0.0, 0.0), (1900.0, 6.0), (3640.0, 0.0))},
        R9={"floor": ((0.0, 4.0), (1018.0, 0.0))},
        R10={"floor": ((0.0, 12.0), (3402.0, 0.0)), "floor_fit": FloorFit.LEVEL},
    )
    pieces, findings = planned(house)
    told = {(f.place, f.code) for f in findings if f.place in ("R1", "R2", "R9", "R10")}
    assert {("R1", "floor-followed"), ("R9", "floor-followed"), ("R10", "scribe-deep")} <= told
    assert pieces["R1"].notes == ()
    assert pieces["R2"].notes == (
        "scribe the bottom edge: 0 off at the left, 6 at 1900, 0 at the right",
    )
    assert pieces["R10"].notes == ("scribe the bottom edge: 12 off at the left, 0 at the right",)


def test_a_scarfed_board_s_parts_each_get_their_part_of_the_floor() -> None:
    run = replace(
        a_run("S1", 6000, "square", "square"),
        floor=((0.0, 0.0), (3000.0, 8.0), (6000.0, 0.0)),
    )
    pieces, _ = planned(a_house(runs=[run], longest_run_mm=4000))
    first, second = pieces["S1-1"], pieces["S1-2"]
    assert "8 at 3000" in first.notes[0]
    # The longest piece is 4000, so the second's back begins there: 8 x 2000 / 3000 = 5.3.
    assert second.back_mm == pytest.approx(2000)
    assert "0 at the right" in second.notes[0]
    assert second.notes[0].startswith("scribe the bottom edge: 5.5 off at the left")


def test_boards_of_other_trim_are_cut_alike_and_belong_to_it() -> None:
    house = a_house(runs=[a_run("S1", 8000, "return", "square")])
    angles = corner_angles(house, Shapes(), frozenset())
    boards, _ = read_boards(house, angles, frozenset())
    own, own_said = board_pieces(house, boards, {})
    rails, said = board_pieces(house, boards, {}, role=Role.RAIL, trim="PR1")
    assert [(p.role, p.trim, p.run) for p in rails] == [
        (Role.RAIL, "PR1", None),
        (Role.RAIL, "PR1", None),
        (Role.RETURN, "PR1", None),
    ]
    assert [p.inner_mm for p in rails] == [p.inner_mm for p in own]
    assert {f.place for f in said} == {"PR1"}
    assert [f.code for f in said] == [f.code for f in own_said]


def test_a_leaning_board_too_short_for_its_cuts_is_held() -> None:
    run = replace(a_run("S1", 20, "external", "square"), lean_deg=14.0, left_lean_deg=14.0)
    pieces, findings = planned(a_house(runs=[run]))
    assert pieces == {}
    assert ("run-too-short", "S1") in [(f.code, f.place) for f in findings]

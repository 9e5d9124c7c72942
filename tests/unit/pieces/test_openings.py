import math
from dataclasses import replace

import pytest

from longpoint.errors import Severity
from longpoint.pieces.openings import LEAST_FOOT_DEG, opening_pieces, plan_openings
from longpoint.pieces.piece import CutKind, HookEnd, Role
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.openings import Joint, Layout, Method
from tests.fitted_houses import by_role, door, fitted, house, opening, pieces, quad, rectangle
from tests.set_houses import planned, set_house

WINDOW = rectangle(1180.0, 620.0)
RACKED = quad((0, 0), (1180, 0), (1190, 622), (12, 618))


def test_the_sheet_of_1180_by_620_is_right_to_the_hundredth() -> None:
    made = by_role(pieces(opening(WINDOW)))
    for role, inner_mm, projection_mm, tape_mm in (
        (Role.HEAD, 1190.0, 1256.0, 1257.733),
        (Role.SILL, 1190.0, 1256.0, 1257.733),
        (Role.LEFT_LEG, 630.0, 696.0, 699.122),
        (Role.RIGHT_LEG, 630.0, 696.0, 699.122),
    ):
        piece = made[role]
        assert piece.inner_mm == pytest.approx(inner_mm, abs=1e-6)
        assert piece.outer_mm == pytest.approx(projection_mm + 66.0, abs=1e-6)
        assert piece.hook_mm == pytest.approx(tape_mm, abs=0.0005)
        assert (piece.left.mitre_deg, piece.right.mitre_deg) == pytest.approx((45.0, 45.0))


def test_pieces_run_clockwise_from_the_left_leg() -> None:
    roles = [piece.role for piece in pieces(opening(WINDOW))]
    assert roles == [Role.LEFT_LEG, Role.HEAD, Role.RIGHT_LEG, Role.SILL]


def test_the_longest_along_the_back_is_the_longer_edge() -> None:
    for piece in pieces(opening(RACKED)):
        assert piece.back_mm == piece.long_mm == piece.outer_mm


def test_a_57_leg_beside_a_66_head_gets_49_18_and_the_head_40_82() -> None:
    made = by_role(pieces(opening(WINDOW, width_mm=(66.0, 57.0, 66.0, 57.0))))
    leg, head = made[Role.LEFT_LEG], made[Role.HEAD]
    assert leg.right.mitre_deg == pytest.approx(49.18, abs=0.005)
    assert head.left.mitre_deg == pytest.approx(40.82, abs=0.005)


def test_a_racked_opening_gets_two_different_mitres() -> None:
    for piece in pieces(opening(RACKED)):
        assert abs(piece.left.mitre_deg - piece.right.mitre_deg) > 0.5


def test_neighbours_share_what_their_corner_leaves() -> None:
    shape = fitted(opening(RACKED))
    made = pieces(opening(RACKED))
    corners = (3, 2, 1, 0)
    for index, corner in enumerate(corners):
        meeting = made[index].right.mitre_deg + made[(index + 1) % 4].left.mitre_deg
        assert meeting == pytest.approx(180.0 - shape.corner_deg[corner])


def test_the_hook_depends_on_the_end_when_the_mitres_differ() -> None:
    piece = by_role(pieces(opening(RACKED)))[Role.HEAD]
    left_mm = piece.hook_reading_mm(piece.left.mitre_deg)
    right_mm = piece.hook_reading_mm(piece.right.mitre_deg)
    assert piece.hook_mm == left_mm
    assert abs(left_mm - right_mm) > 0.5


def test_each_side_keeps_its_own_quirk_and_face() -> None:
    made = by_role(
        pieces(opening(WINDOW, quirk_mm=(3.0, 5.0, 8.0, 10.0), width_mm=(90.0, 57.0, 120.0, 66.0)))
    )
    assert made[Role.HEAD].inner_mm == pytest.approx(1180.0 + 5.0 + 10.0)
    assert made[Role.SILL].inner_mm == pytest.approx(1180.0 + 5.0 + 10.0)
    assert made[Role.LEFT_LEG].inner_mm == pytest.approx(620.0 + 3.0 + 8.0)
    assert made[Role.HEAD].outer_mm == pytest.approx(1195.0 + 57.0 + 66.0)
    assert made[Role.RIGHT_LEG].outer_mm == pytest.approx(631.0 + 90.0 + 120.0)
    widths = {role: piece.width_mm for role, piece in made.items()}
    assert widths == {
        Role.HEAD: 90.0,
        Role.RIGHT_LEG: 57.0,
        Role.SILL: 120.0,
        Role.LEFT_LEG: 66.0,
    }


def test_a_door_on_a_level_floor_has_square_feet_and_hooks_at_the_head() -> None:
    made = by_role(pieces(door(rectangle(820.0, 2040.0))))
    assert set(made) == {Role.LEFT_LEG, Role.HEAD, Role.RIGHT_LEG}
    left, right = made[Role.LEFT_LEG], made[Role.RIGHT_LEG]
    assert left.left.kind is right.right.kind is CutKind.SQUARE
    assert (left.hook_from, right.hook_from) == (HookEnd.RIGHT, HookEnd.LEFT)
    assert left.inner_mm == pytest.approx(2045.0)
    assert left.hook_mm == pytest.approx(math.hypot(2045.0 + 66.0, 66.0))


def test_a_floor_falling_to_the_left_turns_the_feet_and_lengthens_the_left_outer_edge() -> None:
    # Legs plumb over a floor that falls 10 mm to the left, laid with the floor along x.
    fall = math.atan2(10.0, 820.0)
    plumb = (math.sin(fall), math.cos(fall))
    falling = quad(
        (0, 0),
        (820, 0),
        (820 + 2040 * plumb[0], 2040 * plumb[1]),
        (2050 * plumb[0], 2050 * plumb[1]),
    )
    made = by_role(pieces(door(falling)))
    left, right = made[Role.LEFT_LEG].left, made[Role.RIGHT_LEG].right
    assert left.mitre_deg == pytest.approx(math.degrees(fall))
    assert right.mitre_deg == pytest.approx(-math.degrees(fall))
    for piece in made.values():
        if piece.role is not Role.HEAD:
            assert piece.outer_mm - piece.inner_mm == pytest.approx(
                66.0 * (1.0 + math.tan(fall) * (1 if piece.role is Role.LEFT_LEG else -1)),
                abs=0.01,
            )


def test_the_edges_of_a_leg_differ_by_its_face_times_both_tangents() -> None:
    falling = quad((0, 0), (820, 0), (845, 2055), (25, 2045))
    for leg in pieces(door(falling)):
        tangents = sum(math.tan(math.radians(c.mitre_deg)) for c in (leg.left, leg.right))
        assert leg.outer_mm - leg.inner_mm == pytest.approx(leg.width_mm * tangents)


def test_a_foot_within_a_twentieth_of_a_degree_is_cut_square() -> None:
    lean_mm = 2040.0 * math.tan(math.radians(LEAST_FOOT_DEG * 0.9))
    nearly = quad((0, 0), (820, 0), (820 + lean_mm, 2040), (lean_mm, 2040))
    made = by_role(pieces(door(nearly)))
    assert made[Role.LEFT_LEG].left.kind is CutKind.SQUARE
    assert made[Role.HEAD].left.kind is CutKind.MITRE


def test_what_is_still_to_be_laid_is_taken_off_the_legs_only() -> None:
    bare = by_role(pieces(door(rectangle(820.0, 2040.0))))
    covered = by_role(pieces(door(rectangle(820.0, 2040.0), floor_cover_mm=15.0)))
    for role, less_mm in ((Role.LEFT_LEG, 15.0), (Role.RIGHT_LEG, 15.0), (Role.HEAD, 0.0)):
        assert bare[role].inner_mm - covered[role].inner_mm == pytest.approx(less_mm)
        assert bare[role].outer_mm - covered[role].outer_mm == pytest.approx(less_mm)
    assert "- 15 floor cover" in covered[Role.LEFT_LEG].hand_sum
    assert "floor cover" not in covered[Role.HEAD].hand_sum


def test_a_window_board_runs_its_horns_past_the_architraves_and_the_apron_does_not() -> None:
    window = opening(WINDOW, layout=Layout.BOARD_AND_APRON, board="140.0 board", horn_mm=25.0)
    made = by_role(pieces(window))
    outer_mm = 1180.0 + 2 * 71.0
    assert made[Role.APRON].inner_mm == pytest.approx(outer_mm)
    assert made[Role.BOARD].inner_mm == pytest.approx(outer_mm + 50.0)
    assert made[Role.BOARD].width_mm == 140.0
    assert Role.SILL not in made
    assert made[Role.LEFT_LEG].left.kind is CutKind.SQUARE


def test_an_opening_without_a_board_to_cut_still_gets_its_apron() -> None:
    made = by_role(pieces(opening(WINDOW, layout=Layout.BOARD_AND_APRON)))
    assert Role.APRON in made
    assert Role.BOARD not in made


def test_a_frame_from_the_bench_has_45s_and_pairs() -> None:
    made = by_role(pieces(opening(RACKED, method=Method.BENCH)))
    for piece in made.values():
        assert (piece.left.mitre_deg, piece.right.mitre_deg) == pytest.approx((45.0, 45.0))
    assert made[Role.HEAD].inner_mm == pytest.approx(made[Role.SILL].inner_mm)
    assert made[Role.LEFT_LEG].inner_mm == pytest.approx(made[Role.RIGHT_LEG].inner_mm)


def test_a_door_frame_from_the_bench_is_square_at_the_head_and_keeps_the_floor() -> None:
    falling = quad((0, 0), (820, 0), (826, 2052), (6, 2042))
    made = by_role(pieces(door(falling, method=Method.BENCH)))
    head, left, right = made[Role.HEAD], made[Role.LEFT_LEG], made[Role.RIGHT_LEG]
    assert (head.left.mitre_deg, head.right.mitre_deg) == pytest.approx((45.0, 45.0))
    assert left.left.mitre_deg == pytest.approx(-right.right.mitre_deg)
    assert abs(left.left.mitre_deg) > LEAST_FOOT_DEG


def test_in_place_cuts_the_same_shape_as_batch_and_says_so() -> None:
    batch = pieces(opening(RACKED))
    in_place = pieces(opening(RACKED, method=Method.IN_PLACE))
    assert [replace(p, method=Method.BATCH) for p in in_place] == list(batch)
    assert {p.method for p in in_place} == {Method.IN_PLACE}


def test_two_faces_mirror_each_other_with_their_quirks_and_faces() -> None:
    window = opening(
        RACKED, faces=2, quirk_mm=(3.0, 5.0, 8.0, 10.0), width_mm=(90.0, 57.0, 120.0, 66.0)
    )
    made = pieces(window)
    front = by_role(tuple(p for p in made if p.face == "a"))
    back = by_role(tuple(p for p in made if p.face == "b"))
    for role, other in (
        (Role.LEFT_LEG, Role.RIGHT_LEG),
        (Role.RIGHT_LEG, Role.LEFT_LEG),
        (Role.HEAD, Role.HEAD),
        (Role.SILL, Role.SILL),
    ):
        a, b = front[role], back[other]
        assert (a.profile, a.width_mm) == (b.profile, b.width_mm)
        assert (a.inner_mm, a.outer_mm) == pytest.approx((b.inner_mm, b.outer_mm))
        assert a.left.mitre_deg == pytest.approx(b.right.mitre_deg)
        assert a.right.mitre_deg == pytest.approx(b.left.mitre_deg)


def test_a_second_face_read_by_itself_is_not_mirrored() -> None:
    other = rectangle(1184.0, 626.0)
    made = pieces(opening(WINDOW, faces=2, corners_b=other))
    back = by_role(tuple(p for p in made if p.face == "b"))
    assert back[Role.HEAD].inner_mm == pytest.approx(1194.0)
    assert back[Role.LEFT_LEG].inner_mm == pytest.approx(636.0)


def test_every_mark_is_its_own() -> None:
    made = pieces(
        opening(WINDOW, faces=2),
        door(rectangle(820.0, 2040.0), mark="D1", faces=2),
        opening(WINDOW, mark="W2", layout=Layout.BOARD_AND_APRON, board="140.0 board"),
    )
    assert len({p.mark for p in made}) == len(made) == 8 + 6 + 5


def test_a_held_opening_gets_no_pieces_and_the_others_do() -> None:
    whole = house(opening(WINDOW, mark="W1"), opening(WINDOW, mark="W2"))
    shapes = Shapes(openings=fit_openings(whole)[0])
    made, found = plan_openings(whole, shapes, frozenset({"W1"}))
    assert {p.opening for p in made} == {"W2"}
    assert found == ()


def test_an_opening_that_no_trim_goes_round_is_held_and_the_others_go_on() -> None:
    buried = door(rectangle(820.0, 300.0), mark="D1", floor_cover_mm=400.0)
    whole = house(opening(WINDOW), buried, opening(WINDOW, mark="W2"))
    made, found = plan_openings(whole, Shapes(openings=fit_openings(whole)[0]), frozenset())
    assert {p.opening for p in made} == {"W1", "W2"}
    assert [(f.code, f.severity, f.place) for f in found] == [("no-pieces", Severity.STOP, "D1")]


def test_pieces_carry_what_the_label_needs() -> None:
    piece = by_role(pieces(opening(WINDOW, method=Method.IN_PLACE)))[Role.HEAD]
    assert (piece.mark, piece.opening, piece.room, piece.run) == ("W1-head", "W1", "kitchen", None)
    assert (piece.profile, piece.thickness_mm, piece.method) == (
        "66.0 wide",
        18.0,
        Method.IN_PLACE,
    )
    assert piece.u_mm > 0.0


@pytest.mark.parametrize("units", Units)
def test_the_hand_sum_ends_at_the_hook(units: Units) -> None:
    for piece in pieces(opening(RACKED), units=units):
        assert piece.hook_mm is not None
        end = piece.hand_sum.rpartition(" = ")[2]
        whole, _, part = end.partition(" ")
        value = float(whole) + (eval_fraction(part) if part else 0.0)
        step_mm = 0.1 if units is Units.MM else 25.4 / 32
        in_mm = value * (1.0 if units is Units.MM else 25.4)
        assert in_mm == pytest.approx(piece.hook_mm, abs=step_mm / 2 + 1e-6)


def eval_fraction(text: str) -> float:
    top, bottom = text.split("/")
    return int(top) / int(bottom)


def test_a_face_asked_for_alone_gives_its_own_pieces() -> None:
    window = opening(WINDOW)
    assert opening_pieces(house(window), window, fitted(window)) == pieces(window)


def test_the_parts_of_a_set_follow_its_sides() -> None:
    standing = replace(
        door(rectangle(820.0, 2040.0)),
        joint=Joint.BUTT,
        plinth="PB95",
        plinth_height_mm=200.0,
        back_band="BB20",
    )
    made, _ = planned(set_house(standing))
    assert [mark.removeprefix("D1-") for mark in made] == [
        "left-leg",
        "head",
        "right-leg",
        "left-plinth",
        "right-plinth",
        "band-left-leg",
        "band-head",
        "band-right-leg",
    ]


def test_a_second_face_is_spoken_of_only_where_it_was_read() -> None:
    true, racked = rectangle(820.0, 2040.0), quad((0, 0), (820, 0), (860, 2040), (40, 2040))
    one = replace(door(true, faces=2), joint=Joint.BUTT)
    read = replace(one, readings_b=opening(racked).readings)
    assert [f.code for f in planned(set_house(one))[1]] == ["butt-flush"]
    assert [f.code for f in planned(set_house(read))[1]] == ["butt-flush", "butt-off-square"]

import math
from dataclasses import replace

import pytest

from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.face_trim import FaceTrim, face_trim
from longpoint.pieces.flush import flush_pieces
from longpoint.pieces.openings import opening_pieces
from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.shape.opening_fit import mirrored
from longpoint.survey.house import House
from longpoint.survey.openings import Arch, Flush, Joint, Method, Opening
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import Plane
from tests.fitted_houses import by_role, door, fitted, house, opening, quad, rectangle

WINDOW = rectangle(1180.0, 620.0)
RACKED = quad((0, 0), (1180, 0), (1190, 622), (12, 618))
WEDGES = Profile(name="WG16", width_mm=16.0, thickness_mm=8.0)

SIDES = (Role.SILL, Role.RIGHT_LEG, Role.HEAD, Role.LEFT_LEG)


def with_plane(one: Opening, flush: Flush, **corners_mm: float) -> Opening:
    plane = Plane(**{f"{corner}_mm": mm for corner, mm in corners_mm.items()})
    return replace(one, readings=replace(one.readings, plane=plane), flush=flush)


def a_house(one: Opening) -> House:
    whole = house(one)
    return replace(whole, profiles=(*whole.profiles, WEDGES))


def lines_of(one: Opening) -> FaceTrim:
    return face_trim(a_house(one), one, fitted(one))


def plain(one: Opening) -> tuple[Piece, ...]:
    left = replace(one, flush=Flush.LEAVE)
    return opening_pieces(a_house(left), left, fitted(left))


def made(one: Opening) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    return flush_pieces(a_house(one), one, fitted(one), lines_of(one), plain(one))


def test_left_alone_nothing_changes_and_nothing_is_said() -> None:
    one = with_plane(opening(WINDOW), Flush.LEAVE, tl=5.0)
    assert made(one) == (plain(one), ())


def test_a_reveal_in_plane_asks_for_nothing() -> None:
    for flush in Flush:
        one = with_plane(opening(WINDOW), flush, tl=0.5)
        assert made(one) == (plain(one), ())


def test_relieved_backs_stand_at_the_proud_corner_alone() -> None:
    pieces, (said,) = made(with_plane(opening(WINDOW), Flush.BACK_BEVEL, tl=2.0))
    found = by_role(pieces)
    for end in (found[Role.HEAD].left, found[Role.LEFT_LEG].right):
        assert end.kind is CutKind.COMPOUND
        # 40.5 p / d, d = 66 + 5 - 19.
        assert end.bevel_deg == pytest.approx(-40.5 * 2.0 / 52.0, rel=0.003)
        assert 44.9 < end.mitre_deg < 45.0
    for end in (found[Role.HEAD].right, found[Role.SILL].left, found[Role.LEFT_LEG].left):
        assert end.kind is CutKind.MITRE
        assert end.bevel_deg == 0.0
    assert said.code == "lining-back-bevelled"
    assert "1.6 degrees" in said.wrong
    assert "own corner" in said.wrong


def test_the_inner_edge_of_the_back_keeps_its_length() -> None:
    one = with_plane(opening(RACKED), Flush.BACK_BEVEL, tl=3.0, tr=2.0, bl=1.0)
    before, after = by_role(plain(one)), by_role(made(one)[0])
    for role in SIDES:
        piece = after[role]
        back_mm = piece.inner_mm
        for end in (piece.left, piece.right):
            # The face overhangs the back by T tan(bevel) / cos(mitre) along the piece.
            slope = math.tan(math.radians(-end.bevel_deg)) / math.cos(math.radians(end.mitre_deg))
            back_mm -= piece.thickness_mm * slope
        assert back_mm == pytest.approx(before[role].inner_mm, abs=1e-6)


def test_edges_and_settings_of_a_relieved_piece_agree() -> None:
    one = with_plane(opening(RACKED), Flush.BACK_BEVEL, tl=3.0, tr=2.0, bl=1.0, br=4.0)
    for piece in made(one)[0]:
        runs_mm = sum(
            piece.width_mm * math.tan(math.radians(end.mitre_deg))
            for end in (piece.left, piece.right)
        )
        assert piece.outer_mm == pytest.approx(piece.inner_mm + runs_mm)
        assert piece.back_mm < piece.outer_mm


def test_the_sum_names_the_tilt_and_comes_to_the_hook_reading() -> None:
    one = with_plane(opening(WINDOW), Flush.BACK_BEVEL, tl=3.0)
    head = by_role(made(one)[0])[Role.HEAD]
    assert "+ 1 tilt" in head.hand_sum
    assert head.hook_mm is not None
    assert float(head.hand_sum.split("= ")[1]) == pytest.approx(head.hook_mm, abs=0.051)


def test_unequal_widths_close_and_say_what_step_is_left() -> None:
    one = with_plane(opening(WINDOW, width_mm=(90.0, 66.0, 66.0, 66.0)), Flush.BACK_BEVEL, tl=3.0)
    _, (said,) = made(one)
    # Rises 3 x 66 / 52 and 3 x 90 / 76; less 18 times what the two tilts differ in 1 - cos.
    assert "still step by 0.2 at the heel" in said.wrong


def test_a_shy_corner_is_never_cut_for() -> None:
    one = with_plane(opening(WINDOW), Flush.BACK_BEVEL, tl=-3.0)
    pieces, (said,) = made(one)
    assert pieces == plain(one)
    assert said.code == "lining-left"


def test_packed_corners_are_cut_to_one_tilt_and_the_packers_named() -> None:
    one = with_plane(opening(WINDOW), Flush.PACK, tl=3.0)
    pieces, (said,) = made(one)
    found = by_role(pieces)
    assert found[Role.HEAD].left.bevel_deg == found[Role.LEFT_LEG].right.bevel_deg < -2.0
    assert Role.WEDGE not in found
    assert said.code == "lining-packed"
    assert "head taper 3 at the top left to 0 over 1190, 14 wide" in said.do
    assert "Leave one out" in said.do
    assert "twice as far" in said.wrong


def test_a_wedge_profile_puts_the_packers_on_the_sheet() -> None:
    one = with_plane(replace(opening(WINDOW), wedge="WG16"), Flush.PACK, tl=5.0, br=2.0)
    pieces, (said,) = made(one)
    wedges = [p for p in pieces if p.role is Role.WEDGE]
    assert [p.mark for p in wedges] == ["W1-wedge-head", "W1-wedge-sill"]
    assert wedges[0].notes == ("taper 5 at the top left to 0 over 1190, 14 wide",)
    assert wedges[1].notes == ("taper 2 at the bottom right to 0 over 1190, 14 wide",)
    assert wedges[0].inner_mm == wedges[0].back_mm == pytest.approx(1190.0)
    assert "on the cut sheet" in said.do


def test_a_lining_read_proud_at_both_ends_gets_no_wedge() -> None:
    wedged = replace(opening(WINDOW), wedge="WG16")
    one = with_plane(wedged, Flush.PACK, tl=5.0, tr=4.0, bl=2.0)
    pieces, (said,) = made(one)
    assert [p.mark for p in pieces if p.role is Role.WEDGE] == ["W1-wedge-sill"]
    assert "No packer goes under the head: its lining was read proud at both ends." in said.do

    all_round = with_plane(wedged, Flush.PACK, tl=3.0, tr=3.0, bl=3.0, br=3.0)
    pieces, (said,) = made(all_round)
    assert [p for p in pieces if p.role is Role.WEDGE] == []
    assert all(p.left.bevel_deg < 0 and p.right.bevel_deg < 0 for p in pieces)
    assert "No packer goes under the head and the sill piece: their linings were" in said.do
    assert "lie on the proud linings, and the cuts are for that tilt" in said.wrong
    assert "Lay packers" not in said.do


def test_a_packer_as_thick_at_both_ends_is_said_so() -> None:
    one = with_plane(replace(opening(WINDOW), wedge="WG16"), Flush.PACK, tl=-3.0, tr=-3.0)
    pieces, _ = made(one)
    notes = {p.mark: p.notes[0] for p in pieces if p.role is Role.WEDGE}
    assert notes["W1-wedge-head"].startswith("3 thick all along, 1190 long")


def test_a_shy_lining_is_packed_to_the_wall_and_cut_plain() -> None:
    one = with_plane(replace(opening(WINDOW), wedge="WG16"), Flush.PACK, tr=-3.0, br=-2.0)
    pieces, (said,) = made(one)
    assert tuple(p for p in pieces if p.role is not Role.WEDGE) == plain(one)
    notes = {p.mark: p.notes[0] for p in pieces if p.role is Role.WEDGE}
    assert notes["W1-wedge-right"].startswith("taper 3 at the top right to 2 over 630")
    assert set(notes) == {"W1-wedge-head", "W1-wedge-right", "W1-wedge-sill"}
    assert "flat on the wall" in said.wrong
    assert "Leave one out" not in said.do


def test_a_reveal_to_be_re_set_is_cut_flat_and_read_again() -> None:
    one = with_plane(opening(WINDOW), Flush.RE_SET, tl=5.0, br=-2.0)
    pieces, (said,) = made(one)
    assert pieces == plain(one)
    assert (said.code, said.severity) == ("lining-re-set", Severity.WARNING)
    assert "forward 2 at the bottom right, back 5 at the top left" in said.wrong
    assert "read the opening again" in said.do


def test_a_doors_feet_stay_as_they_are() -> None:
    one = with_plane(door(rectangle(820.0, 2040.0)), Flush.BACK_BEVEL, tl=2.0, bl=3.0)
    found = by_role(made(one)[0])
    before = by_role(plain(one))
    assert found[Role.LEFT_LEG].left == before[Role.LEFT_LEG].left
    assert found[Role.RIGHT_LEG] == before[Role.RIGHT_LEG]


@pytest.mark.parametrize("flush", [Flush.PACK, Flush.BACK_BEVEL])
def test_feet_alone_proud_touch_no_mitre(flush: Flush) -> None:
    one = with_plane(door(rectangle(820.0, 2040.0)), flush, bl=3.0)
    pieces, (said,) = made(one)
    assert pieces == plain(one)
    assert said.code == "lining-left"


@pytest.mark.parametrize(
    ("unsuited", "why"),
    [
        (replace(opening(WINDOW, method=Method.BENCH)), "bench"),
        (replace(opening(WINDOW), joint=Joint.BUTT), "mitred"),
        (replace(opening(WINDOW), joint=Joint.BLOCKS), "mitred"),
        (replace(opening(WINDOW), arch=Arch(rise_mm=150.0)), "mitred"),
    ],
)
def test_other_ways_of_joining_are_left_and_it_is_said_why(unsuited: Opening, why: str) -> None:
    before = plain(opening(WINDOW))
    for flush in (Flush.PACK, Flush.BACK_BEVEL):
        one = with_plane(unsuited, flush, tl=3.0)
        pieces, (said,) = flush_pieces(a_house(one), one, fitted(one), lines_of(one), before)
        assert pieces == before
        assert (said.code, why in said.wrong) == ("lining-left", True)


def test_without_plane_readings_it_is_said() -> None:
    one = replace(opening(WINDOW), flush=Flush.PACK)
    pieces, (said,) = made(one)
    assert pieces == plain(one)
    assert "No plane was read here" in said.wrong


def test_the_second_face_goes_by_its_own_readings() -> None:
    one = with_plane(opening(WINDOW, faces=2), Flush.BACK_BEVEL, tl=2.0)
    other = mirrored(fitted(one))
    plain_b = opening_pieces(a_house(one), replace(one, flush=Flush.LEAVE), other)
    trim_b = face_trim(a_house(one), one, other)
    pieces, (said,) = flush_pieces(a_house(one), one, other, trim_b, plain_b)
    assert pieces == plain_b
    assert "second face" in said.read
    plane_b = Plane(tr_mm=2.0)
    read = replace(one, readings_b=replace(one.readings, plane=plane_b))
    pieces, (said,) = flush_pieces(a_house(read), read, other, trim_b, plain_b)
    assert by_role(pieces)[Role.HEAD].right.bevel_deg < -1.0
    assert "On the second face" in said.read


def test_trim_that_nobody_would_nail_is_refused() -> None:
    for flush in (Flush.PACK, Flush.BACK_BEVEL):
        with pytest.raises(PieceError, match="15 degrees"):
            made(with_plane(opening(WINDOW), flush, tl=14.0))

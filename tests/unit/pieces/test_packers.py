from dataclasses import replace

import pytest

from longpoint.pieces.face_trim import FaceTrim, face_trim
from longpoint.pieces.packers import (
    Packer,
    packer_lines,
    packer_text,
    packers,
    spared,
    spared_line,
    wedge_pieces,
)
from longpoint.pieces.proud_remedies import proud_corners
from longpoint.quantities.length import Units
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening, OpeningKind
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import Plane
from tests.fitted_houses import door, fitted, house, opening, rectangle

WINDOW = rectangle(1180.0, 620.0)
SQUARE = (90.0,) * 4


def needed(one: Opening, plane: Plane) -> dict[int, Packer]:
    whole = house(one)
    corners = proud_corners(whole, one, plane, SQUARE)
    return {packer.side: packer for packer in packers(whole, one, plane, corners)}


def lines_of(one: Opening) -> FaceTrim:
    return face_trim(house(one), one, fitted(one))


def cut_from(one: Opening, profile: Profile) -> tuple[House, Opening]:
    whole = house(one)
    return replace(whole, profiles=(*whole.profiles, profile)), replace(one, wedge=profile.name)


def test_the_head_and_the_sill_piece_are_packed_where_all_are_alike() -> None:
    found = needed(opening(WINDOW), Plane(tl_mm=3.0, bl_mm=1.0))
    assert set(found) == {0, 2}
    head, sill = found[2], found[0]
    # Anticlockwise the head starts at the top right and ends at the top left.
    assert (head.start_mm, head.end_mm) == pytest.approx((0.0, 3.0))
    assert (sill.start_mm, sill.end_mm) == pytest.approx((1.0, 0.0))
    assert head.wide_mm == 14.0
    assert not head.is_for_shy


def test_a_wide_leg_is_packed_to_the_rise_of_a_narrow_head() -> None:
    one = opening(WINDOW, width_mm=(57.0, 90.0, 57.0, 90.0))
    found = needed(one, Plane(tl_mm=3.0))
    assert set(found) == {3}
    leg = found[3]
    # Head rises 3 x 57 / 43; the leg to as much over 90, bearing on 76.
    rise_mm = 3.0 * 57.0 / 43.0
    assert leg.start_mm == pytest.approx(rise_mm * 76.0 / 90.0)
    assert leg.on_proud_mm == pytest.approx(rise_mm * 76.0 / 90.0 - 3.0)


def test_a_shy_lining_is_made_up_on_every_side_that_touches_the_corner() -> None:
    found = needed(door(rectangle(820.0, 2040.0)), Plane(tr_mm=-3.0, br_mm=-2.0))
    assert set(found) == {1, 2}
    assert (found[1].start_mm, found[1].end_mm) == (2.0, 3.0)
    assert all(packer.is_for_shy for packer in found.values())


def test_a_board_or_floor_gets_no_packer() -> None:
    assert 0 not in needed(door(rectangle(820.0, 2040.0)), Plane(br_mm=-2.0, bl_mm=-2.0))


def test_a_wide_leg_proud_at_both_ends_is_packed_by_what_it_lacks_alone() -> None:
    one = opening(WINDOW, width_mm=(57.0, 110.0, 57.0, 110.0))
    found = needed(one, Plane(tl_mm=4.0, bl_mm=4.0))
    # As above, bearing on 96 of 110; the lining itself gives 4 of it.
    lacks_mm = 4.0 * 57.0 / 43.0 * 96.0 / 110.0 - 4.0
    assert (found[3].start_mm, found[3].end_mm) == pytest.approx((lacks_mm, lacks_mm))
    assert found[3].on_proud_mm == 0.0
    said = packer_lines(house(one), one, lines_of(one), (found[3],), are_cut=False)
    assert "Leave one out" not in said


def test_a_doors_leg_proud_at_foot_and_head_is_proud_itself() -> None:
    one = opening(
        rectangle(820.0, 2040.0),
        kind=OpeningKind.DOOR,
        layout=Layout.LEGS_AND_HEAD,
        width_mm=(57.0, 90.0, 57.0, 90.0),
    )
    plane = Plane(tl_mm=3.0, bl_mm=3.0)
    corners = proud_corners(house(one), one, plane, SQUARE)
    assert needed(one, plane) == {}
    assert set(needed(one, Plane(tl_mm=3.0))) == {3}
    assert spared(plane, corners, ()) == (3,)
    assert spared_line(()) == ""


def test_a_packer_is_told_thick_end_first_and_in_the_houses_unit() -> None:
    packer = Packer(
        side=2, start_mm=0.0, end_mm=3.0, on_proud_mm=0.0, is_for_shy=False, wide_mm=14.0
    )
    trim = lines_of(opening(WINDOW))
    assert packer_text(packer, trim, Units.MM) == (
        "taper 3 at the top left to 0 over 1190, 14 wide"
    )
    assert "46 7/8" in packer_text(packer, trim, Units.INCH)
    part = replace(packer, on_proud_mm=0.4)
    assert packer_text(part, trim, Units.MM).endswith("0.5 on a lining that is proud itself")


def test_a_wedge_is_no_wider_than_what_it_is_ripped_from() -> None:
    packer = Packer(
        side=2, start_mm=0.0, end_mm=6.0, on_proud_mm=0.0, is_for_shy=True, wide_mm=14.0
    )
    one = opening(WINDOW)
    for width_mm, thick_mm, wide in ((12.0, 8.0, "12 wide"), (30.0, 5.0, "5 wide")):
        whole, named = cut_from(one, Profile(name="WG", width_mm=width_mm, thickness_mm=thick_mm))
        (wedge,) = wedge_pieces(whole, named, fitted(one), lines_of(one), (packer,))
        assert wedge.notes[0].endswith(wide)


def test_a_profile_too_thin_gives_no_wedge_and_it_is_said() -> None:
    thin = Packer(side=2, start_mm=0.0, end_mm=3.0, on_proud_mm=0.0, is_for_shy=True, wide_mm=14.0)
    thick = replace(thin, side=0, end_mm=9.0)
    one = opening(WINDOW)
    whole, named = cut_from(one, Profile(name="WG8", width_mm=8.0, thickness_mm=4.0))
    trim = lines_of(one)
    wedges = wedge_pieces(whole, named, fitted(one), trim, (thin, thick))
    assert [w.mark for w in wedges] == ["W1-wedge-head"]
    said = packer_lines(whole, named, trim, (thin, thick), are_cut=True)
    assert "WG8 is too thin for that of the sill piece" in said
    assert "too thin for them" in packer_lines(whole, named, trim, (thick,), are_cut=False)


def test_without_a_profile_they_come_from_the_box() -> None:
    packer = Packer(side=1, start_mm=2.0, end_mm=3.0, on_proud_mm=0.0, is_for_shy=True, wide_mm=9.0)
    one = opening(WINDOW)
    assert wedge_pieces(house(one), one, fitted(one), lines_of(one), (packer,)) == ()
    said = packer_lines(house(one), one, lines_of(one), (packer,), are_cut=False)
    assert "from the box" in said

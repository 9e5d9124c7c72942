import pytest

from longpoint.fixing.nail_lines import Into
from longpoint.fixing.nailing import (
    Treatment,
    letter,
    line_length_mm,
    nail_house,
    treatment_of,
)
from longpoint.pieces.piece import Role
from tests.house_documents import house as document
from tests.house_documents import the_house, window
from tests.unit.fixing.nailed import house, nailed, piece, skirting


def test_a_set_gets_a_line_into_the_lining_and_one_into_the_stud() -> None:
    """Quirk 5, lining 19: 2.5 short of its back is 16.5 from the reveal, 11.5 in from the edge.

    The stud starts at 19 + 10; the outer line stops 12 short of the trim's outer edge: 45 in.
    """
    (section,) = nailed(piece()).sections
    inner, outer = section.lines
    assert (inner.bed.into, inner.from_edge_mm) == (Into.LINING, 11.5)
    assert (outer.bed.into, outer.from_edge_mm) == (Into.STUD, 45.0)
    assert inner.nail is not None
    assert inner.nail.length_mm == 30.0
    assert outer.nail is not None
    assert outer.nail.length_mm == 57.0


def test_a_thick_lining_does_not_draw_the_inner_line_further_than_20() -> None:
    (section,) = nailed(piece(), lining=40).sections
    assert section.lines[0].from_edge_mm == 20.0


def test_a_lining_too_thin_to_nail_into_gets_no_nail() -> None:
    (section,) = nailed(piece(), lining=12).sections
    assert section.lines[0].nail is None
    assert "too little of the lining" in section.lines[0].why_none


def test_trim_that_does_not_reach_over_the_stud_gets_no_outer_nail() -> None:
    (section,) = nailed(piece(), lining=35, packing=20).sections
    assert section.lines[1].nail is None
    assert "reach over the stud" in section.lines[1].why_none


def test_an_opening_that_tells_its_lining_gets_a_section_of_its_own() -> None:
    told = the_house(openings=[window(), window(mark="W2", lining_edge=32)])
    two = nail_house(told, [piece(), piece(mark="W2-head", opening="W2")])
    assert [section.lining_mm for section in two.sections] == [19.0, 32.0]


def test_each_side_goes_by_its_own_quirk() -> None:
    told = the_house(openings=[window(quirk={"head": 4, "left": 5, "right": 6, "sill": 7})])
    roles = (Role.HEAD, Role.LEFT_LEG, Role.RIGHT_LEG, Role.SILL)
    made = nail_house(told, [piece(role, f"W1-{role.value}") for role in roles])
    assert [section.quirk_mm for section in made.sections] == [4.0, 5.0, 6.0, 7.0]


def test_a_thin_edge_shortens_the_nail_into_the_lining() -> None:
    profiles = document()["profiles"] | {"OG57": {"face": 57, "thickness": 18, "thin_edge": 9}}
    told = the_house(openings=[window()], profiles=profiles)
    (section,) = nail_house(told, [piece()]).sections
    assert section.thin_mm == 9.0
    nail = section.lines[0].nail
    assert nail is not None
    assert nail.length_mm == 20.0, "10.8 and 8 to hold: 18.8 at least; 9 - 2 + 15.9: 22.9 at most"


def test_skirting_goes_to_the_studs_with_two_lines_and_a_low_rail_with_one() -> None:
    rail = skirting("R1", role=Role.RAIL, profile="PR45", width_mm=45.0, run=None, trim="R1")
    made = nailed(skirting(), rail)
    assert [len(section.lines) for section in made.sections] == [2, 1]
    assert made.pieces[0].counts == (5, 5), "2300 between the first and last, studs at 600"
    assert made.pieces[0].apart_mm == (575.0, 575.0)


def test_a_door_stop_is_nailed_through_to_the_lining() -> None:
    stop = piece(Role.STOP, "DS1", opening=None, trim="DS1", width_mm=32.0, thickness_mm=12.0)
    (section,) = nailed(stop).sections
    assert section.treatment is Treatment.UNDER
    assert section.lines[0].nail is not None
    assert section.lines[0].nail.length_mm == 20.0


@pytest.mark.parametrize("role", Role)
def test_every_role_is_treated_in_some_way(role: Role) -> None:
    made = nailed(piece(role, mitred_as_panel := f"P-{role.value}"))
    assert made.pieces[0].treatment is treatment_of(piece(role, mitred_as_panel))
    assert bool(made.sections) is bool(made.pieces[0].counts)


def test_a_piece_whose_opening_is_not_there_goes_by_what_the_house_tells() -> None:
    (section,) = nail_house(house(lining=25), [piece(opening="W9")]).sections
    assert (section.quirk_mm, section.lining_mm) == (0.0, 25.0)


def test_a_line_between_the_edges_is_as_long_as_it_lies() -> None:
    assert line_length_mm(piece(), 0.0) == 1200.0
    assert line_length_mm(piece(), 57.0) == 1314.0
    assert line_length_mm(piece(), 28.5) == 1257.0


def test_more_sections_than_letters_are_still_told_apart() -> None:
    assert len({letter(index) for index in range(100)}) == 100

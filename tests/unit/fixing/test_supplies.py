import pytest

from longpoint.fixing.nailing import nail_house
from longpoint.fixing.supplies import caulk_edges_mm, nails_in, packers, supplies_for
from longpoint.pieces.piece import SQUARE_CUT, Role
from tests.house_documents import the_house, window
from tests.unit.fixing.nailed import house, nailed, piece, skirting

SIDES = (Role.HEAD, Role.RIGHT_LEG, Role.SILL, Role.LEFT_LEG)


def a_window(width_mm: float = 57.0, thickness_mm: float = 19.0) -> tuple:  # type: ignore[type-arg]
    pieces = [
        piece(role, f"W1-{role.value}", width_mm=width_mm, thickness_mm=thickness_mm)
        for role in SIDES
    ]
    made = nailed(*pieces)
    return made, supplies_for(made, made.pieces)


@pytest.mark.parametrize(("width", "thick", "ml"), [(57.0, 19.0, 2.45), (90.0, 20.0, 4.07)])
def test_four_mitres_take_the_glue_of_both_faces(width: float, thick: float, ml: float) -> None:
    """width x root 2 x thickness, eight faces, 200 ml to the square metre."""
    _, need = a_window(width, thick)
    assert need.mitres == 4
    assert need.glue_ml == pytest.approx(ml, abs=0.01)
    assert need.pins == 4


def test_filler_and_discs_go_by_holes_and_mitres() -> None:
    made, need = a_window()
    assert (
        need.holes
        == sum(nails_in(made, each) for each in made.pieces)
        == sum(count for each in made.pieces for count in each.counts)
    )
    assert need.filler_ml == need.holes / 20
    assert need.discs == (1, 1)


def test_a_line_that_no_nail_holds_gets_a_bead_of_glue_and_pins() -> None:
    made = nailed(piece(), lining=10)
    need = supplies_for(made, made.pieces)
    assert need.back_glue_ml == pytest.approx(1314 * 12.566 / 1000, abs=0.01)
    assert need.pins == 1 + 7
    assert need.holes == made.pieces[0].counts[1]


def test_a_return_is_glued_alone() -> None:
    made = nailed(piece(Role.RETURN, left=SQUARE_CUT, right=SQUARE_CUT))
    need = supplies_for(made, made.pieces)
    assert (need.holes, need.mitres, need.glue_ml) == (0, 0, 0)
    assert need.back_glue_ml > 0


def test_what_is_caulked_is_what_meets_the_wall() -> None:
    made = nailed(piece(), skirting(), skirting("A1", role=Role.APRON), piece(Role.CORNER_BLOCK))
    assert [caulk_edges_mm(each) for each in made.pieces] == [1314.0, 2400.0, 4800.0, 0.0]


def test_each_corner_that_is_not_flush_gets_its_packer() -> None:
    told = the_house(openings=[window(plane={"tl": 2, "tr": 0, "br": -3, "bl": 0.5})])
    found = packers(told)
    assert [(p.corner, p.thickness_mm, p.is_behind_inner) for p in found] == [
        ("bottom right", 3.0, True),
        ("top left", 2.0, False),
    ]
    assert packers(house()) == ()


def test_nothing_is_used_up_where_there_is_nothing() -> None:
    made = nail_house(house(), [])
    need = supplies_for(made, [])
    assert (need.holes, need.pins, need.caulk_mm, need.discs) == (0, 0, 0, (0, 0))

from dataclasses import replace

import pytest

from longpoint.pieces.pairs import ALIKE_MM, partner_of, printed_lengths_mm
from longpoint.pieces.piece import Role
from longpoint.survey.openings import Layout, OpeningKind
from tests.fitted_houses import by_role, opening, pieces, quad, rectangle

NEARLY = quad((0, 0), (1180.0, 0), (1180.3, 620.2), (0, 620))
RACKED = quad((0, 0), (1180, 0), (1190, 622), (12, 618))


@pytest.mark.parametrize(
    ("role", "opposite"), [(Role.LEFT_LEG, Role.RIGHT_LEG), (Role.HEAD, Role.SILL)]
)
def test_opposite_pieces_are_partners(role: Role, opposite: Role) -> None:
    made = pieces(opening(NEARLY))
    found = by_role(made)
    assert partner_of(found[role], made) == found[opposite]
    assert partner_of(found[opposite], made) == found[role]


def test_a_door_head_has_no_partner() -> None:
    made = pieces(
        opening(rectangle(820.0, 2040.0), kind=OpeningKind.DOOR, layout=Layout.LEGS_AND_HEAD)
    )
    assert partner_of(by_role(made)[Role.HEAD], made) is None


def test_a_partner_is_looked_for_in_the_same_face_of_the_same_opening() -> None:
    made = pieces(opening(RACKED, mark="W1", faces=2), opening(NEARLY, mark="W2"))
    for piece in made:
        partner = partner_of(piece, made)
        assert partner is not None
        assert (partner.opening, partner.face) == (piece.opening, piece.face)


def test_a_pair_less_than_half_a_millimetre_apart_prints_one_figure() -> None:
    made = pieces(opening(NEARLY))
    found = by_role(made)
    head, sill = found[Role.HEAD], found[Role.SILL]
    assert head.inner_mm != sill.inner_mm
    printed = printed_lengths_mm(head, made)
    assert printed == printed_lengths_mm(sill, made)
    assert printed["inner"] == pytest.approx((head.inner_mm + sill.inner_mm) / 2.0)


def test_the_figure_moves_by_less_than_a_quarter_millimetre() -> None:
    made = pieces(opening(NEARLY))
    for piece in made:
        printed = printed_lengths_mm(piece, made)
        for key, own_mm in (("inner", piece.inner_mm), ("hook", piece.hook_mm)):
            value_mm = printed[key]
            assert value_mm is not None
            assert own_mm is not None
            assert abs(value_mm - own_mm) < ALIKE_MM / 2.0


def test_a_pair_further_apart_keeps_two_figures() -> None:
    made = pieces(opening(RACKED))
    found = by_role(made)
    for role in (Role.LEFT_LEG, Role.RIGHT_LEG):
        printed = printed_lengths_mm(found[role], made)
        assert printed["inner"] == found[role].inner_mm
        assert printed["hook"] == found[role].hook_mm
    assert printed_lengths_mm(found[Role.LEFT_LEG], made) != printed_lengths_mm(
        found[Role.RIGHT_LEG], made
    )


def test_two_profiles_are_no_pair_however_alike_their_lengths() -> None:
    made = pieces(opening(NEARLY))
    head = by_role(made)[Role.HEAD]
    changed = tuple(replace(p, profile="other") if p.role is Role.SILL else p for p in made)
    assert printed_lengths_mm(head, changed)["inner"] == head.inner_mm


def test_a_pair_without_a_point_to_hook_prints_none() -> None:
    made = pieces(opening(rectangle(1180.0, 620.0), layout=Layout.BOARD_AND_APRON))
    printed = printed_lengths_mm(by_role(made)[Role.APRON], made)
    assert printed["hook"] is None
    assert printed["inner"] == printed["outer"] == printed["short"] == printed["long"]

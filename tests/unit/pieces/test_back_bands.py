from dataclasses import replace
from typing import Any

import pytest

from longpoint.errors import PieceError, Severity
from longpoint.pieces.back_bands import refuse_band
from longpoint.pieces.piece import CutKind, Role
from longpoint.survey.openings import Joint, Layout
from longpoint.survey.profiles import Profile
from tests.fitted_houses import door, opening, quad, rectangle
from tests.set_houses import codes, planned, set_house

WINDOW = replace(opening(rectangle(900.0, 600.0)), back_band="BB20")
DOOR = replace(door(rectangle(820.0, 2040.0)), back_band="BB20")


def test_a_band_starts_where_the_architrave_ends_and_is_mitred_at_its_own_width() -> None:
    made, found = planned(set_house(WINDOW))
    band = {p.mark: p for p in made.values() if p.role is Role.BACK_BAND}
    assert list(band) == [
        "W1-band-left-leg",
        "W1-band-head",
        "W1-band-right-leg",
        "W1-band-sill",
    ]
    head = band["W1-band-head"]
    assert head.inner_mm == pytest.approx(made["W1-head"].outer_mm) == pytest.approx(1042.0)
    assert head.outer_mm == pytest.approx(1042.0 + 40.0)
    assert (head.left.mitre_deg, head.right.mitre_deg) == pytest.approx((45.0, 45.0))
    # hypot(1042 + 20, 20) = 1062.19
    assert head.hand_sum == "outer edge 1042 + 20 + 0.2 slant = 1062.2"
    assert found == ()


def test_beside_two_widths_of_trim_the_bands_own_mitres_are_still_equal() -> None:
    uneven = replace(
        opening(rectangle(900.0, 600.0), width_mm=(90.0, 57.0, 90.0, 57.0)), back_band="BB20"
    )
    made, _ = planned(set_house(uneven))
    assert made["W1-head"].left.mitre_deg != pytest.approx(45.0, abs=1.0)
    assert made["W1-band-head"].left.mitre_deg == pytest.approx(45.0)


def test_a_doors_band_has_three_pieces_and_stands_on_the_floor() -> None:
    leaning = quad((0, 0), (820, 0), (840, 2050), (8, 2041))
    made, _ = planned(set_house(replace(door(leaning), back_band="BB20")))
    assert "D1-band-sill" not in made
    band, leg = made["D1-band-left-leg"], made["D1-left-leg"]
    assert band.left.mitre_deg == pytest.approx(leg.left.mitre_deg)
    assert band.inner_mm == pytest.approx(leg.outer_mm)


def test_a_band_stands_on_a_plinth_that_is_wider_than_the_leg() -> None:
    made, found = planned(set_house(replace(DOOR, plinth="PB95", plinth_height_mm=200.0)))
    band = made["D1-band-left-leg"]
    assert band.inner_mm == pytest.approx(2040.0 + 5.0 + 66.0 - 200.0)
    assert band.left.kind is CutKind.SQUARE
    assert "- 200 plinth" in band.hand_sum
    assert codes(found) == []
    tight = Profile(name="PB95", width_mm=80.0, thickness_mm=30.0)
    _, over = planned(
        set_house(replace(DOOR, plinth="PB95", plinth_height_mm=200.0), profiles=(tight,))
    )
    assert [(f.code, f.severity) for f in over] == [("band-overhangs", Severity.WARNING)]


def test_a_band_no_thicker_than_the_architrave_is_said() -> None:
    thin = Profile(name="BB20", width_mm=20.0, thickness_mm=18.0)
    _, found = planned(set_house(WINDOW, profiles=(thin,)))
    assert [(f.code, f.severity) for f in found] == [("band-thin", Severity.NOTE)]


def test_board_and_apron_reach_to_the_band() -> None:
    window = opening(rectangle(900.0, 600.0), layout=Layout.BOARD_AND_APRON)
    made, _ = planned(set_house(replace(window, back_band="BB20")))
    assert made["W1-apron"].inner_mm == pytest.approx(900 + 10 + 132 + 40)
    assert made["W1-apron"].hand_sum == "900 + 2 x 5 + 2 x 66 legs + 2 x 20 back bands = 1082"


@pytest.mark.parametrize(
    "changes",
    [
        {"joint": Joint.BLOCKS, "corner_block": "CB76"},
        {"joint": Joint.BUTT, "head_horn_mm": 20.0},
    ],
)
def test_a_set_with_blocks_or_horns_has_no_band(changes: dict[str, Any]) -> None:
    odd = replace(WINDOW, **changes)
    with pytest.raises(PieceError):
        refuse_band(odd)
    made, found = planned(set_house(odd))
    assert made == {}
    assert [(f.code, f.severity) for f in found] == [("no-pieces", Severity.STOP)]


def test_a_butted_set_without_horns_takes_a_band() -> None:
    made, _ = planned(set_house(replace(WINDOW, joint=Joint.BUTT)))
    assert made["W1-band-head"].inner_mm == pytest.approx(made["W1-head"].inner_mm)

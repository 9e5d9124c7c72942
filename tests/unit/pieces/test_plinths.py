import copy
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Role
from longpoint.pieces.plinths import skirtings_at
from longpoint.pieces.runs import plan_runs
from longpoint.pipeline import plan_house
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Opening, OpeningKind
from longpoint.survey.profiles import Profile
from tests.fitted_houses import door, fitted, opening, quad, rectangle
from tests.room_builder import a_door, a_house, a_room, a_wall
from tests.scenarios.houses import document, piece_at, piece_keys
from tests.set_houses import PLINTH95, codes, planned, set_house

LEANING = quad((0, 0), (820, 0), (840, 2050), (8, 2041))


def on_plinths(one: Opening, height_mm: float = 200.0) -> Opening:
    return replace(one, plinth="PB95", plinth_height_mm=height_mm)


def test_a_leg_loses_the_blocks_height_and_stands_square_on_it() -> None:
    made, found = planned(set_house(on_plinths(door(rectangle(820.0, 2040.0)))))
    leg, plinth = made["D1-left-leg"], made["D1-left-plinth"]
    assert leg.inner_mm == pytest.approx(2045.0 - 200.0)
    assert leg.hand_sum.startswith("2040 + 5 - 200 plinth + 66 + ")
    assert leg.left.kind is CutKind.SQUARE
    assert (plinth.role, plinth.width_mm, plinth.thickness_mm) == (Role.PLINTH_BLOCK, 95.0, 25.0)
    assert (plinth.inner_mm, plinth.outer_mm) == pytest.approx((200.0, 200.0))
    assert plinth.left.kind is plinth.right.kind is CutKind.SQUARE
    assert plinth.notes == (
        "inner edge in line with the leg's inner edge, 29 mm past its outer edge",
        "200 mm high on the inner edge",
    )
    assert found == ()


def test_where_the_floor_falls_the_block_is_cut_to_it_and_the_leg_stays_square() -> None:
    whole, _ = planned(set_house(door(LEANING)))
    made, _ = planned(set_house(on_plinths(door(LEANING))))
    corner = fitted(door(LEANING)).corner_deg
    for side, foot_deg in (("left", 90.0 - corner.first), ("right", 90.0 - corner.second)):
        leg, plinth = made[f"D1-{side}-leg"], made[f"D1-{side}-plinth"]
        foot, top = (plinth.left, plinth.right) if side == "left" else (plinth.right, plinth.left)
        assert foot.mitre_deg == pytest.approx(foot_deg)
        assert top.kind is CutKind.SQUARE
        assert (leg.left if side == "left" else leg.right).kind is CutKind.SQUARE
        # The inner edge, along which the leg was read, is the one that loses exactly 200.
        assert leg.inner_mm + 200.0 == pytest.approx(whole[f"D1-{side}-leg"].inner_mm)
        assert plinth.inner_mm == pytest.approx(200.0)
        assert f"foot {abs(foot_deg):.1f} degrees off square, to the floor" in plinth.notes[1]


def test_the_two_doors_of_the_cottage_meet_their_key_less_200(shared: Path) -> None:
    written: dict[str, Any] = copy.deepcopy(document("fallow-end", mended=True, first_only=True))
    written["profiles"]["PB95"] = {"face": 95, "thickness": 25}
    for entry in written["openings"]:
        if entry["mark"] in ("D1", "D2"):
            entry |= {"plinth": "PB95", "plinth_height": 200}
    plan = plan_house(read_house(written))
    keys = [
        key
        for key in piece_keys((shared / "scenarios" / "b-cottage.md").read_text(encoding="utf-8"))
        if key.mark in ("D1", "D2") and key.side in ("left", "right")
    ]
    assert len(keys) == 4
    for key in keys:
        leg = piece_at(plan, key.mark, key.side)
        foot, head = (leg.left, leg.right) if key.side == "left" else (leg.right, leg.left)
        foot_deg, head_deg = (
            (key.end_deg, key.start_deg) if key.side == "left" else (key.start_deg, key.end_deg)
        )
        assert leg.inner_mm == pytest.approx(key.short_mm - 200.0, abs=1.8)
        assert foot.kind is CutKind.SQUARE
        assert head.mitre_deg == pytest.approx(head_deg, abs=0.15)
        plinth = next(p for p in plan.pieces if p.mark == f"{key.mark}-{key.side}-plinth")
        block_foot = plinth.left if key.side == "left" else plinth.right
        assert block_foot.mitre_deg == pytest.approx(foot_deg, abs=0.15)


def test_a_window_has_no_plinths() -> None:
    made, found = planned(set_house(on_plinths(opening(rectangle(900.0, 600.0)))))
    assert not [m for m in made if "plinth" in m]
    assert "plinth" not in made["W1-left-leg"].hand_sum
    assert found == ()


def test_a_lined_opening_trimmed_all_round_says_that_it_has_no_use_for_plinths() -> None:
    cased = replace(opening(rectangle(900.0, 2000.0)), kind=OpeningKind.CASED)
    made, found = planned(set_house(on_plinths(cased)))
    assert not [m for m in made if "plinth" in m]
    assert [(f.code, f.severity) for f in found] == [("plinth-unused", Severity.NOTE)]


def test_a_block_higher_than_its_leg_holds_the_opening() -> None:
    made, found = planned(set_house(on_plinths(door(rectangle(820.0, 2040.0)), 2100.0)))
    assert made == {}
    assert [(f.code, f.severity) for f in found] == [("no-pieces", Severity.STOP)]


def test_a_block_is_to_be_thicker_higher_and_wider_than_what_ends_at_it() -> None:
    small = Profile(name="PB95", width_mm=60.0, thickness_mm=20.0)
    house = set_house(on_plinths(door(rectangle(820.0, 2040.0)), 150.0), profiles=(small,))
    _, found = planned(house)
    assert codes(found) == ["plinth-thin", "plinth-low", "plinth-narrow"]
    assert {f.severity for f in found} == {Severity.WARNING}
    assert "SK170" in found[0].read


def test_the_skirting_that_counts_is_that_of_its_walls() -> None:
    tall = Profile(name="SK300", width_mm=300.0, thickness_mm=15.0)
    one = a_door("D1")
    wall = a_wall("N", 4606.0, doors=[("D1", 640.0)], profile="SK300")
    plain = a_house(openings=[one])
    house = replace(plain, rooms=(a_room(wall),), profiles=(*plain.profiles, tall, PLINTH95))
    assert skirtings_at(house, "D1") == (tall,)
    assert [p.name for p in skirtings_at(house, "D9")] == ["SK90"]


def test_skirting_dies_into_the_block_where_that_is_wider_than_the_leg() -> None:
    def runs(one: Opening) -> dict[str, float]:
        wall = a_wall("N", 4606.0, doors=[("D1", 640.0)], skirting=True)
        others = (a_wall("E", 3000.0), a_wall("S", 4606.0), a_wall("W", 3000.0))
        plain = a_house(openings=[one], rooms=[a_room(wall, *others)])
        house = replace(plain, profiles=(*plain.profiles, PLINTH95))
        made, _ = plan_runs(house, Shapes())
        return {piece.mark: piece.back_mm for piece in made}

    bare = runs(a_door("D1"))
    blocked = runs(on_plinths(a_door("D1")))
    # Its leg is 57 wide, its block 95.
    for mark in ("Den-N-1", "Den-N-2"):
        assert bare[mark] - blocked[mark] == pytest.approx(95.0 - 57.0)

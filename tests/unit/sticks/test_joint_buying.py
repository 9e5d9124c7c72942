import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.quantities.length import Units
from longpoint.sheets.joint_blocks import joint_blocks, saved_lines
from longpoint.sheets.street_json import street_document
from longpoint.sheets.street_pieces import cut_values, piece_in
from longpoint.sticks import joint_buying
from longpoint.sticks.joint_buying import Alone, BatchHouse, Joint, batches, buy_together
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from longpoint.survey.profiles import Offcut

STICK_MM = 4200.0


def the_house(*, kerf: float = 3.0, **stock: Any) -> House:  # noqa: ANN401
    return read_house(
        {
            "format": "longpoint-house/1",
            "name": "Wren House",
            "profiles": {"A": {"face": 60, "thickness": 18}},
            "saws": {"S1": {"kerf": kerf, "end_trim": 10}},
            "stock": [{"profile": "A", "length": STICK_MM, **stock}],
        }
    ).house


def square(mark: str, length_mm: float) -> Piece:
    return Piece(
        mark=mark,
        role=Role.RUN,
        run=mark,
        profile="A",
        width_mm=60.0,
        thickness_mm=18.0,
        inner_mm=length_mm,
        outer_mm=length_mm,
        back_mm=length_mm,
        left=SQUARE_CUT,
        right=SQUARE_CUT,
    )


def member(name: str, length_mm: float = 2000.0, **changes: Any) -> BatchHouse:  # noqa: ANN401
    """Return a house with one piece, for which it buys one stick of 4200 by itself."""
    return BatchHouse(
        name=name,
        house=the_house(**changes),
        pieces=(square("S1", length_mm),),
        alone={"A": Alone(cost=4.2, unit="m", buys={STICK_MM: 1})},
    )


def joint_of(*houses: BatchHouse) -> Joint:
    (batch,) = batches(houses)
    return buy_together(batch)


def test_two_halves_come_out_of_one_stick_and_keep_their_houses_apart() -> None:
    # 2000 + 3 + 2000 + 2 x 10 = 4023 <= 4200: one stick instead of two.
    joint = joint_of(member("mill"), member("wren"))

    assert (joint.apart, joint.together, joint.buys) == (8.4, 4.2, {STICK_MM: 1})
    assert round(joint.saves, 9) == 4.2
    assert joint.is_proved
    (stick,) = joint.sticks
    assert {laid.piece for laid in stick.laid} == {"mill/S1", "wren/S1"}
    assert saved_lines([joint]) == ("A for 2 houses together: saves 4.20 m.",)


def test_where_nothing_can_be_saved_it_says_so_and_costs_no_more() -> None:
    joint = joint_of(member("mill", 2200.0), member("wren", 2200.0))

    assert joint.together == joint.apart == 8.4
    assert joint.sticks == ()
    assert joint.buys == joint.buys_apart == {STICK_MM: 2}
    assert saved_lines([joint])[0].endswith(
        "Nothing can be saved: no plan for them together costs less."
    )


def test_a_plan_that_is_worse_than_each_alone_is_not_proposed() -> None:
    cheap = Alone(cost=0.1, unit="m", buys={STICK_MM: 1})
    houses = [replace(member(name), alone={"A": cheap}) for name in ("mill", "wren")]

    joint = joint_of(*houses)

    assert joint.together == joint.apart == 0.2
    assert joint.lower_bound <= joint.apart


def test_counted_stock_is_left_out_with_its_reason() -> None:
    joint = joint_of(member("mill", count=3), member("wren", count=3))

    assert "counted" in joint.left_out
    assert joint.saves == 0.0
    assert not joint.is_proved
    assert saved_lines([joint])[0].startswith("A for 2 houses together: Not compared, since")


def test_only_houses_of_one_section_stock_and_saw_go_together() -> None:
    assert batches([member("mill"), member("wren", kerf=2.0)]) == ()
    assert batches([member("mill"), member("wren", price=Decimal("9.60"))]) == ()
    assert batches([member("mill")]) == ()


def test_houses_are_put_together_in_their_order_while_there_is_room(monkeypatch: Any) -> None:  # noqa: ANN401
    monkeypatch.setattr(joint_buying, "MOST_PIECES", 2)

    loads = batches([member(name) for name in "abcde"])

    assert [load.names for load in loads] == [("a", "b"), ("c", "d")]


def test_offcuts_of_all_houses_count() -> None:
    offcut = Offcut(profile="A", length_mm=2050.0)
    houses = [
        replace(member(name), house=replace(the_house(), offcuts=(offcut,))) for name in ("a", "b")
    ]
    assert joint_of(*houses).together == 0.0


def test_a_piece_comes_back_to_the_last_figure() -> None:
    cut = EndCut(kind=CutKind.MITRE, mitre_deg=44.9 + 1 / 3)
    piece = replace(square("W1-head", 1187.0 + 1 / 3), opening="W1", run=None, left=cut)

    assert piece_in(json.loads(json.dumps(cut_values(piece)))) == piece


def test_sheet_and_document_say_the_same() -> None:
    joint = joint_of(member("mill"), member("wren"))

    (said,) = street_document("Lane", "AR3333", [], [joint])["together"]
    assert (said["saves"], said["lower_bound"], said["proved"]) == (4.2, 4.2, True)
    assert said["together"]["buy"] == [{"length_mm": STICK_MM, "count": 1}]
    assert len(said["sticks"]) == 1
    assert "mill/S1" in repr(joint_blocks([joint], Units.MM))
    assert joint_blocks([], Units.MM) == ()

import pytest

from longpoint.fixing.handover.painting import paint_lines
from longpoint.fixing.handover.progress import house_progress, unknown_places
from longpoint.fixing.nailing import nail_house
from longpoint.pieces.piece import Role
from tests.house_documents import the_house, window
from tests.unit.fixing.nailed import piece, skirting

PIECES = (
    piece(room="Kitchen"),
    piece(Role.LEFT_LEG, "W1-left-leg", room="Kitchen"),
    piece(mark="W2-head", opening="W2", room="Kitchen"),
    skirting("S1", room="Loft"),
)


def told(**handover: object):  # type: ignore[no-untyped-def]  # noqa: ANN201
    rooms = [window(room="Kitchen"), window(mark="W2", room="Kitchen")]
    return the_house(openings=rooms, handover=handover)


def test_a_place_is_up_when_it_is_told_or_its_room_is_or_it_was_read() -> None:
    kitchen, loft = house_progress(told(fixed=["W1", "Loft"]), PIECES, frozenset())
    assert (kitchen.up, kitchen.to_do) == (("W1",), ("W2",))
    assert (loft.up, loft.to_do) == (("S1",), ())
    read = the_house(openings=[window(room="Kitchen", as_built={"steps": {"tl": 0.1}})])
    assert house_progress(read, PIECES[:2], frozenset())[0].up == ("W1",)


def test_what_is_held_is_neither_up_nor_to_do() -> None:
    (kitchen, _) = house_progress(told(fixed=["Kitchen"]), PIECES, frozenset({"W2"}))
    assert (kitchen.up, kitchen.to_do, kitchen.held) == (("W1",), (), ("W2",))
    assert not kitchen.is_ready


def test_a_wall_held_belongs_to_the_room_it_is_named_after() -> None:
    house = the_house(rooms=[{"name": "Bed 1", "walls": [{"mark": "E", "length": 3000}]}])
    (room,) = house_progress(house, (), frozenset({"Bed 1 E"}))
    assert (room.room, room.held) == ("Bed 1", ("Bed 1 E",))


def test_a_room_is_ready_when_all_is_up_nothing_is_wet_and_nothing_to_mend() -> None:
    def loft(mends: tuple[str, ...] = (), **handover: object) -> bool:
        rooms = house_progress(told(fixed=["Loft"], **handover), PIECES, frozenset(), mends)
        return rooms[-1].is_ready

    assert loft()
    assert not loft(wet=["Loft"])
    assert not loft(("Loft",))
    assert loft(("Kitchen",))


def test_what_names_no_place_is_said() -> None:
    house = told(fixed=["W1", "W9"], wet=["Attic"])
    assert unknown_places(house, PIECES) == ("W9", "Attic")


def test_every_metre_to_paint_and_every_hole_is_counted_once() -> None:
    nailing = nail_house(told(), PIECES)
    lines = paint_lines(nailing)
    assert [(line.room, line.profile, line.pieces) for line in lines] == [
        ("Kitchen", "OG57", 3),
        ("Loft", "SK95", 1),
    ]
    assert sum(line.paint_mm for line in lines) == pytest.approx(3 * 1314.0 + 2400.0)
    assert lines[0].face_mm2 == pytest.approx(3 * 1314.0 * 57.0)
    assert sum(line.holes for line in lines) == sum(
        count for each in nailing.pieces for count in each.counts
    )

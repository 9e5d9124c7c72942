from dataclasses import replace

from longpoint.pieces.boards import Corner
from longpoint.pieces.run_leans import room_leans
from longpoint.pieces.wall_stops import wall_stops
from longpoint.survey.rooms import RunEnd
from tests.room_builder import a_house, a_room, a_wall


def test_a_corner_over_180_in_the_room_is_external() -> None:
    room = a_room(*(a_wall(mark, 1000) for mark in "NESW"))
    angles = {Corner("Den", 0): 270.0, Corner("Den", 3): 89.0}
    left, right, said = wall_stops(a_house(rooms=[room]), room, 0, angles, {})
    assert (left.kind, left.corner_deg, left.at) == (RunEnd.INTERNAL, 89.0, Corner("Den", 3))
    assert (right.kind, right.corner_deg) == (RunEnd.EXTERNAL, 270.0)
    assert said == ()


def test_a_corner_that_was_not_read_is_taken_as_square() -> None:
    room = a_room(*(a_wall(mark, 1000) for mark in "NESW"))
    left, right, _ = wall_stops(a_house(rooms=[room]), room, 0, {}, {})
    assert [(stop.corner_deg, stop.is_assumed) for stop in (left, right)] == [(90.0, True)] * 2


def test_a_chain_of_walls_ends_square_at_both_its_ends() -> None:
    room = a_room(a_wall("N", 1000), a_wall("E", 1000, None), closed=False)
    angles = {Corner("Den", 0): 90.0}
    left, _, said = wall_stops(a_house(rooms=[room]), room, 0, angles, {})
    assert left.kind is RunEnd.SQUARE
    assert [finding.code for finding in said] == ["chain-end"]
    _, right, said = wall_stops(a_house(rooms=[room]), room, 1, angles, {})
    assert right.kind is RunEnd.SQUARE
    assert "right-hand end" in said[0].read


def test_each_end_has_the_lean_of_the_wall_beyond_it() -> None:
    room = a_room(*(a_wall(mark, 1000) for mark in "NESW"))
    walls = tuple(
        replace(wall, lean_deg=lean)
        for wall, lean in zip(room.walls, (0.0, 1.0, None, -2.0), strict=True)
    )
    room = replace(room, walls=walls)
    house = a_house(rooms=[room])
    left, right, _ = wall_stops(house, room, 0, {}, room_leans(house))
    assert (left.lean_deg, right.lean_deg) == (-2.0, 1.0)
    _, right, _ = wall_stops(house, room, 1, {}, room_leans(house))
    assert (right.lean_deg, right.is_lean_assumed) == (0.0, True)

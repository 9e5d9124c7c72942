import math
from dataclasses import replace

import pytest

from longpoint.shape.network import Network, fit_network
from longpoint.shape.room_doubt import Doubt, doubt_of
from longpoint.shape.room_sightings import first_guess, room_sightings
from longpoint.survey.instruments import Tape
from longpoint.survey.rooms import Room
from tests.room_builder import a_room, a_wall

ACROSS = math.hypot(3000, 2000)


def box(**lengths: float) -> Room:
    return a_room(
        *(a_wall(m, lengths.get(m, d)) for m, d in zip("NESW", (3000, 2000) * 2, strict=True)),
        diagonals=[("W", "E", lengths.get("WE", ACROSS)), ("N", "S", lengths.get("NS", ACROSS))],
    )


def network_of(room: Room) -> Network:
    return fit_network(first_guess(room), room_sightings(room, Tape(name="T1")))


def doubt(room: Room) -> Doubt | None:
    return doubt_of(network_of(room))


def test_a_room_that_closes_is_not_doubted() -> None:
    assert doubt(box()) is None


def test_a_wall_200_over_stands_out_and_its_mending_is_right_within_its_doubt() -> None:
    found = doubt(box(E=2200))
    assert found is not None
    assert found.stands_out
    (suspect,) = found.suspects
    assert suspect.sighting.name == "wall E"
    # To first order only: the misfit bends the corners by three degrees.
    assert suspect.mended == pytest.approx(2000, abs=2)
    # Without its own reading the wall has the doubt of the rest: C of the fit without it.
    room = box()
    open_wall = replace(room.walls[1], length_mm=None)
    rest = replace(room, walls=(room.walls[0], open_wall, *room.walls[2:]))
    network = fit_network(first_guess(room), room_sightings(rest, Tape(name="T1")))
    assert suspect.mended_u == pytest.approx(
        network.length_u_mm(1, 2, (0.0,) * len(network.sightings)), rel=0.05
    )


def test_a_wrong_diagonal_stands_out() -> None:
    found = doubt(box(WE=ACROSS + 60))
    assert found is not None
    assert found.stands_out
    assert found.suspects[0].sighting.name == "diagonal W-E"
    assert found.suspects[0].over_u > 0


def test_two_slips_at_once_are_not_pinned_on_one_reading() -> None:
    found = doubt(box(E=2200, WE=ACROSS + 150))
    assert found is not None
    assert not found.stands_out


def test_a_small_slip_has_several_suspects() -> None:
    found = doubt(box(E=2035))
    assert found is not None
    assert not found.stands_out
    assert len(found.suspects) > 1


def test_with_one_spare_reading_every_residual_is_of_one_size() -> None:
    # Geometry B: a blunder is detected, never located.
    room = a_room(a_wall("A", 3000, 90.0), a_wall("B", 4150, None), a_wall("C", 5000, None))
    found = doubt(room)
    assert found is not None
    assert len({round(abs(s.over_u), 3) for s in found.suspects}) == 1
    assert not found.stands_out


def test_a_room_without_spare_readings_can_t_be_doubted() -> None:
    assert doubt(a_room(a_wall("A", 3000), closed=False)) is None

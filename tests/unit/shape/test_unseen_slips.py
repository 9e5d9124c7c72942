import math
import random
from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.shape.network import Network, fit_network
from longpoint.shape.room_doubt import doubt_of
from longpoint.shape.room_fit import fit_rooms
from longpoint.shape.room_sightings import first_guess, room_sightings
from longpoint.shape.unseen_slips import SEEN, least_seen_mm
from longpoint.survey.instruments import Tape
from longpoint.survey.rooms import Room, Wall
from longpoint.survey.trims import TrimEntry
from tests.room_builder import a_house, a_room, a_wall

ACROSS = math.hypot(3000, 2000)


def box(*, has_diagonals: bool) -> Room:
    """A room of 3 by 2 m whose walls are cut to, its corners read."""
    walls = cut_to(*(a_wall(m, d) for m, d in zip("NESW", (3000, 2000) * 2, strict=True)))
    return a_room(
        *walls, diagonals=[("W", "E", ACROSS), ("N", "S", ACROSS)] if has_diagonals else []
    )


def cut_to(*walls: Wall) -> tuple[Wall, ...]:
    return tuple(replace(wall, skirting=True, corner_deg=90.0) for wall in walls)


def network_of(room: Room) -> Network:
    return fit_network(first_guess(room), room_sightings(room, Tape(name="T1")))


def unseen(room: Room) -> list[Finding]:
    _, findings = fit_rooms(a_house(rooms=[room]))
    return [finding for finding in findings if finding.code == "slips-unseen"]


def read_with_doubt(room: Room, slip_mm: float, draw: random.Random) -> Room:
    """The room read once more by a hand as unsure as was assumed, wall N with a slip."""
    u_mm = Tape(name="T1").wall_u_mm()

    def again(length_mm: float | None) -> float:
        return (length_mm or 0.0) + draw.gauss(0.0, u_mm)

    walls = tuple(
        replace(
            wall,
            length_mm=again(wall.length_mm) + (slip_mm if wall.mark == "N" else 0.0),
            corner_deg=90.0 + draw.gauss(0.0, wall.corner_u_deg),
        )
        for wall in room.walls
    )
    diagonals = tuple(replace(each, length_mm=again(each.length_mm)) for each in room.diagonals)
    return replace(room, walls=walls, diagonals=diagonals)


@pytest.mark.parametrize("has_diagonals", [True, False])
def test_a_slip_as_large_as_is_said_is_told_four_times_in_five(has_diagonals: bool) -> None:
    room = box(has_diagonals=has_diagonals)
    least_mm = least_seen_mm(network_of(room))["wall N"]
    draw = random.Random(7)

    def told(slip_mm: float) -> float:
        drawn = (read_with_doubt(room, slip_mm, draw) for _ in range(120))
        return sum(doubt_of(network_of(one)) is not None for one in drawn) / 120

    # Of 120 draws, 0.8 give or take four times 0.04.
    assert told(least_mm) > SEEN - 0.16
    assert told(least_mm / 2) < 0.5
    assert told(0.0) < 0.05


def test_diagonals_show_slips_that_corners_alone_let_pass() -> None:
    with_diagonals = least_seen_mm(network_of(box(has_diagonals=True)))
    alone = least_seen_mm(network_of(box(has_diagonals=False)))
    assert with_diagonals["wall N"] < 30.0 < 60.0 < alone["wall N"]


def test_of_a_chain_nothing_is_checked() -> None:
    chain = a_room(a_wall("N", 3000), a_wall("E", 2000), closed=False)
    assert least_seen_mm(network_of(chain)) == {"wall N": math.inf, "wall E": math.inf}


def test_how_large_a_slip_would_not_be_seen_is_said_of_a_room_without_diagonals() -> None:
    (finding,) = unseen(box(has_diagonals=False))
    assert finding.severity is Severity.NOTE
    assert finding.read == "In Den were read: 4 walls, 4 corners."
    assert "a slip of less than 120 mm in wall E would not be seen" in finding.wrong
    assert "diagonals" in finding.do


def test_with_both_diagonals_nothing_is_said_of_unseen_slips() -> None:
    assert unseen(box(has_diagonals=True)) == []


def test_a_wall_read_twice_is_checked_by_itself() -> None:
    room = box(has_diagonals=False)
    twice = tuple(replace(wall, read_twice=True) for wall in room.walls)
    assert unseen(replace(room, walls=twice)) == []
    (finding,) = unseen(replace(room, walls=(room.walls[0], *twice[1:])))
    assert "in wall N" in finding.wrong


def test_of_walls_that_nothing_is_cut_to_no_slip_matters() -> None:
    room = box(has_diagonals=False)
    idle = tuple(replace(wall, skirting=False) for wall in room.walls)
    assert unseen(replace(room, walls=idle)) == []


@pytest.mark.parametrize(("openings", "count"), [((), 1), (("D1",), 0)])
def test_trim_that_goes_round_a_room_is_cut_to_its_walls_and_trim_of_openings_is_not(
    openings: tuple[str, ...], count: int
) -> None:
    room = box(has_diagonals=False)
    idle = replace(room, walls=tuple(replace(wall, skirting=False) for wall in room.walls))
    trim = TrimEntry(
        mark="T1", kind="x", room="Den", openings=openings, tape="T1", values={}, written={}
    )
    house = replace(a_house(rooms=[idle]), trims=(trim,))
    assert [f.code for f in fit_rooms(house)[1]].count("slips-unseen") == count


def test_a_chain_is_to_be_read_twice() -> None:
    walls = cut_to(a_wall("N", 3000), a_wall("E", 2000))
    (finding,) = unseen(a_room(*walls, closed=False))
    assert finding.wrong.startswith("Nothing checks the length of wall N")
    assert finding.do == "Read the wall a second time and write both figures."

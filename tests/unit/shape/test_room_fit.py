import math

import pytest

from longpoint.errors import Finding, Severity
from longpoint.shape.fitted import FittedRoom
from longpoint.shape.network import Distance, fit_network
from longpoint.shape.room_fit import fit_rooms
from longpoint.shape.room_sightings import first_guess, room_sightings
from longpoint.survey.instruments import Tape
from longpoint.survey.rooms import Room
from tests.room_builder import a_house, a_room, a_run, a_scenario, a_wall, room_of_plan

L_PLAN = [(0, 0), (2000, 0), (2000, -1500), (4000, -1500), (4000, -4000), (0, -4000)]


def fit_one(room: Room) -> tuple[FittedRoom, tuple[Finding, ...]]:
    fitted, findings = fit_rooms(a_house(rooms=[room]))
    assert len(fitted) == 1
    return fitted[0], findings


def codes(findings: tuple[Finding, ...]) -> list[str]:
    return [finding.code for finding in findings]


def test_an_l_shaped_room_read_without_error_comes_back() -> None:
    fitted, findings = fit_one(room_of_plan(L_PLAN))
    assert findings == ()
    for corner, (x_mm, y_mm) in zip(fitted.corners, L_PLAN, strict=True):
        assert math.dist(corner, (x_mm, y_mm)) < 1e-3
    assert fitted.corner_deg == pytest.approx([90, 270, 90, 90, 90, 90])
    assert fitted.misclosure is not None
    assert fitted.misclosure.spare == 6 + 6 + 3 - 9


def test_corner_i_is_the_left_hand_end_of_wall_i() -> None:
    fitted, _ = fit_one(room_of_plan(L_PLAN))
    for index, wall_mm in enumerate(fitted.wall_mm):
        after = fitted.corners[(index + 1) % 6]
        assert fitted.corners[index].distance_mm(after) == pytest.approx(wall_mm)


@pytest.mark.parametrize(
    ("scenario", "flagged"), [("pipit", []), ("fallow-end", ["Bed 1 E"]), ("series-k", [])]
)
def test_only_the_planted_fault_of_a_scenario_is_flagged(scenario: str, flagged: list[str]) -> None:
    _, findings = fit_rooms(a_scenario(scenario))
    assert [f.place for f in findings if f.severity is not Severity.NOTE] == flagged


def test_bed_1_names_its_east_wall_the_200_and_the_run_that_agrees() -> None:
    fitted, findings = fit_rooms(a_scenario("fallow-end"))
    (fault,) = (f for f in findings if f.code == "room-misclosure")
    assert (fault.severity, fault.place) == (Severity.STOP, "Bed 1 E")
    assert "3389" in fault.wrong
    assert "200" in fault.wrong
    assert "R16" in fault.do
    bed = next(room for room in fitted if room.name == "Bed 1")
    assert "wall E left out" in bed.assumed
    # R16 was read along the same wall: 3190.
    assert bed.wall_mm[1] == pytest.approx(3190, abs=10)


def test_an_accepted_misfit_is_kept_in_the_fit() -> None:
    room = a_room(
        a_wall("N", 3000),
        a_wall("E", 2200),
        a_wall("S", 3000),
        a_wall("W", 2000),
        diagonals=[("W", "E", 3605.6), ("N", "S", 3605.6)],
    )
    kept, _ = fit_one(
        a_room(
            *room.walls,
            diagonals=[("W", "E", 3605.6), ("N", "S", 3605.6)],
            accept=["room-misclosure"],
        )
    )
    left_out, _ = fit_one(room)
    assert kept.assumed == ()
    assert left_out.assumed == ("wall E left out",)
    assert left_out.wall_mm[1] == pytest.approx(2000, abs=1)


def test_without_spare_readings_nothing_is_said_of_closing() -> None:
    room = a_room(a_wall("A", 3000, None), a_wall("B", None, 60.0), a_wall("C", 3000, None))
    fitted, findings = fit_one(room)
    assert fitted.misclosure is None
    assert fitted.wall_mm == pytest.approx([3000, 3000, 3000])
    assert codes(findings) == ["corner-assumed", "wall-assumed"]


def test_with_one_spare_reading_the_last_diagonal_says_by_how_much() -> None:
    # A 3-4-5 triangle on each side of a diagonal; the other diagonal is read 7 too long.
    across_mm = math.hypot(3000, 4000)
    room = a_room(
        *(a_wall(m, d) for m, d in zip("NESW", (3000, 4000, 3000, 4000), strict=True)),
        diagonals=[("W", "E", across_mm), ("N", "S", across_mm + 7)],
    )
    sightings = [s for s in room_sightings(room, Tape(name="T1")) if isinstance(s, Distance)]
    network = fit_network(first_guess(room), sightings)
    misclosure = network.misclosure(named="diagonal N-S")
    assert misclosure is not None
    assert misclosure.spare == 1
    assert misclosure.misclosure_mm == pytest.approx(7, abs=0.02)


def test_a_triangle_needs_no_corner() -> None:
    fitted, findings = fit_one(
        a_room(a_wall("A", 3000, None), a_wall("B", 4000, None), a_wall("C", 5000, None))
    )
    assert codes(findings) == ["corner-assumed"]
    assert fitted.corner_deg[0] == pytest.approx(90)


def test_corners_not_read_are_taken_as_square_and_said_once() -> None:
    room = a_room(
        a_wall("N", 3000, None),
        a_wall("E", 2000, None),
        a_wall("S", 3004, None),
        a_wall("W", 2000, None),
        diagonals=[("W", "E", 3607)],
    )
    fitted, findings = fit_one(room)
    assert codes(findings) == ["corner-assumed"]
    assert "N, E, S, W" in findings[0].read
    assert fitted.corner_deg == pytest.approx([90] * 4, abs=0.5)


def test_one_corner_not_read_follows_from_the_others() -> None:
    lengths_and_corners = [(2000, 90), (1500, None), (2000, 90), (2500, 90), (4000, 90), (4000, 90)]
    room = a_room(*(a_wall(f"w{i}", d, c) for i, (d, c) in enumerate(lengths_and_corners)))
    fitted, findings = fit_one(room)
    assert codes(findings) == ["corner-assumed"]
    assert "other readings" in findings[0].wrong
    assert fitted.corner_deg[1] == pytest.approx(270)


def test_a_wall_not_read_is_worked_out_with_its_doubt() -> None:
    room = a_room(
        a_wall("N", None),
        a_wall("E", 2000),
        a_wall("S", 3000),
        a_wall("W", 2000),
        diagonals=[("W", "E", math.hypot(3000, 2000)), ("N", "S", math.hypot(3000, 2000))],
    )
    fitted, findings = fit_one(room)
    assert codes(findings) == ["wall-assumed"]
    assert fitted.wall_mm[0] == pytest.approx(3000, abs=0.01)
    assert fitted.wall_u_mm[0] > fitted.wall_u_mm[2]


def test_the_doubt_of_a_wall_holds_what_its_tape_shares() -> None:
    fitted, _ = fit_one(a_room(a_wall("N", 4606), closed=False))
    # Class II at 5 m, hook as zero: 0.3 + 0.2 x 5 + 0.2 = 1.5, evenly: 1.5 / root 3; MID Annex X.
    private = math.hypot(0.47, 1 / math.sqrt(12), 1.5)
    assert fitted.wall_u_mm[0] == pytest.approx(math.hypot(private, 1.5 / math.sqrt(3)), abs=0.01)


def test_a_chain_of_walls_is_placed_without_closing() -> None:
    room = a_room(a_wall("A", 1000), a_wall("B", 500, 270.0), a_wall("C", 700), closed=False)
    fitted, findings = fit_one(room)
    assert findings == ()
    assert fitted.misclosure is None
    expected = [(0, 0), (1000, 0), (1000, -500), (1700, -500)]
    for corner, place in zip(fitted.corners, expected, strict=True):
        assert math.dist(corner, place) < 1e-6
    assert fitted.corner_deg == pytest.approx([90, 270, 90])


@pytest.mark.parametrize(
    "room",
    [
        a_room(a_wall("N", 3000), a_wall("S", 3000)),
        a_room(),
        # Corners read on the solid: 1080 where 360 is needed.
        a_room(*(a_wall(m, 3000, 270.0) for m in "NESW")),
        # Two walls that face each other, not read, can slide.
        a_room(a_wall("N", None), a_wall("E", 2000), a_wall("S", None), a_wall("W", 2000)),
        a_room(*(a_wall(m, None) for m in "NESW")),
        # The third wall would have to be negative.
        a_room(
            a_wall("a", 1000),
            a_wall("b", 3000),
            a_wall("c", None),
            a_wall("d", 1000, 270.0),
            a_wall("e", 2000),
            a_wall("f", 2000),
        ),
    ],
    ids=["two walls", "no walls", "outside in", "sliding", "nothing read", "negative"],
)
def test_a_room_that_is_none_is_held_and_has_no_plan(room: Room) -> None:
    fitted, findings = fit_rooms(a_house(rooms=[room]))
    assert fitted == ()
    assert [(f.code, f.severity, f.place) for f in findings] == [
        ("room-open", Severity.STOP, "Den")
    ]
    assert all((findings[0].read, findings[0].wrong, findings[0].do))


def test_a_room_whose_walls_cross_is_held() -> None:
    plan = [(0, 0), (3000, 0), (3000, -1000), (1000, 500), (500, 500), (0, -2500)]
    _, findings = fit_rooms(a_house(rooms=[room_of_plan(plan)]))
    assert codes(findings) == ["room-open"]


def test_a_chain_with_a_hole_holds_that_wall_only() -> None:
    room = a_room(a_wall("A", 1000), a_wall("B", None), closed=False)
    _, findings = fit_rooms(a_house(rooms=[room]))
    assert [(f.code, f.place) for f in findings] == [("room-open", "Den B")]


def test_one_bad_room_never_stops_the_others() -> None:
    good = a_room(*(a_wall(m, 3000) for m in "NESW"), name="Good")
    bad = a_room(a_wall("N", 3000), name="Bad")
    fitted, findings = fit_rooms(a_house(rooms=[bad, good]))
    assert [room.name for room in fitted] == ["Good"]
    assert [finding.place for finding in findings] == ["Bad"]


def test_without_diagonals_a_slip_is_detected_but_not_located() -> None:
    room = a_room(a_wall("N", 3000), a_wall("E", 2300), a_wall("S", 3000), a_wall("W", 2000))
    _, findings = fit_one(room)
    assert [(f.code, f.place) for f in findings] == [("room-misclosure", "Den")]
    assert "detected, not located" in findings[0].wrong


def test_a_run_along_one_suspect_locates_the_slip() -> None:
    room = a_room(a_wall("N", 3000), a_wall("E", 2300), a_wall("S", 3000), a_wall("W", 2000))
    house = a_house(rooms=[room], runs=[a_run("S1", 2001, wall="E")])
    _, findings = fit_rooms(house)
    assert [(f.code, f.place) for f in findings] == [("room-misclosure", "Den E")]
    assert "S1" in findings[0].do


def test_a_slip_in_a_corner_reading_is_named() -> None:
    room = a_room(
        a_wall("N", 3000, 84.0),
        a_wall("E", 2000),
        a_wall("S", 3000),
        a_wall("W", 2000),
        diagonals=[("W", "E", 3605.6), ("N", "S", 3605.6)],
    )
    fitted, findings = fit_one(room)
    assert [(f.code, f.place) for f in findings] == [("room-misclosure", "Den")]
    assert "corner at the right-hand end of wall N" in findings[0].wrong
    assert fitted.corner_deg == pytest.approx([90] * 4, abs=0.1)


def test_diagonals_that_name_no_wall_or_one_corner_are_left_aside() -> None:
    room = a_room(
        *(a_wall(m, 3000) for m in "NESW"), diagonals=[("N", "N", 4000), ("N", "Q", 4000)]
    )
    fitted, findings = fit_one(room)
    assert findings == ()
    assert len(fitted.residuals) == 8

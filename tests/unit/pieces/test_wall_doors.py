from collections.abc import Sequence
from dataclasses import replace

import pytest

from longpoint.errors import Finding
from longpoint.pieces.wall_doors import WallDoor, reaching, wall_doors
from longpoint.shape.fitted import FittedOpening, Four, Shapes
from longpoint.shape.point import Point
from longpoint.survey.house import EntryKind, HeldEntry
from longpoint.survey.openings import Arch, Opening, OpeningKind, PerSide
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import OpeningReadings, Place, Reading
from tests.room_builder import ARCHITRAVE, SKIRTING, a_door, a_house, a_room, a_wall


def doors_of(
    listed: Sequence[tuple[str, float | None]],
    openings: Sequence[Opening],
    *,
    shapes: Shapes | None = None,
    held: frozenset[str] = frozenset(),
    unreadable: Sequence[str] = (),
) -> tuple[tuple[WallDoor, ...] | None, tuple[Finding, ...]]:
    room = a_room(a_wall("N", 4606, doors=listed))
    house = replace(
        a_house(rooms=[room], openings=openings),
        held=tuple(HeldEntry(kind=EntryKind.OPENING, mark=mark) for mark in unreadable),
    )
    return wall_doors(house, shapes or Shapes(), room, room.walls[0], held)


def test_doors_come_from_left_to_right_and_windows_not_at_all() -> None:
    doors, findings = doors_of(
        [("D2", 3000), ("W1", None), ("D1", 640)],
        [a_door("D1"), a_door("D2"), a_door("W1", kind=OpeningKind.WINDOW)],
    )
    assert findings == ()
    assert doors is not None
    assert [door.mark for door in doors] == ["D1", "D2"]


def test_a_door_reaches_from_architrave_to_architrave() -> None:
    doors, _ = doors_of([("D1", 640)], [a_door()])
    assert doors is not None
    assert sum(doors[0].left_terms_mm()) == 640 - 5 - 57
    assert sum(doors[0].right_terms_mm()) == 640 + 819 + 5 + 57


def test_legs_of_two_widths_each_count_on_their_own_side() -> None:
    wide = Profile(name="AR90", width_mm=90.0, thickness_mm=19.0)
    door = replace(
        a_door(left_quirk_mm=8),
        profiles=PerSide(head="AR57", right="AR90", bottom="AR57", left="AR57"),
    )
    room = a_room(a_wall("N", 4606, doors=[("D1", 640)]))
    house = a_house(rooms=[room], openings=[door], profiles=(SKIRTING, ARCHITRAVE, wide))
    doors, _ = wall_doors(house, Shapes(), room, room.walls[0], frozenset())
    assert doors is not None
    assert doors[0].left_terms_mm() == (640, -8, -57)
    assert doors[0].right_terms_mm() == (640, 819, 5, 90)


@pytest.mark.parametrize(
    ("listed", "unreadable", "code"),
    [
        ([("D1", None)], [], "from-left-missing"),
        ([("D9", 640)], [], "opening-unknown"),
        ([("D9", 640)], ["D9"], "opening-unknown"),
        ([("D1", 640), ("D1", 640)], [], "mark-twice"),
        ([("D1", 640), ("D1", 3000)], [], "mark-twice"),
        ([("W1", None), ("D1", 640), ("W1", None)], [], "mark-twice"),
    ],
)
def test_a_door_that_leaves_the_runs_open_stops_the_wall(
    listed: Sequence[tuple[str, float | None]], unreadable: Sequence[str], code: str
) -> None:
    doors, findings = doors_of(listed, [a_door()], unreadable=unreadable)
    assert doors is None
    assert [(f.code, f.place) for f in findings] == [(code, "Den N")]


def test_a_door_not_read_at_the_floor_uses_its_fitted_width() -> None:
    unread = replace(a_door(), readings=OpeningReadings(lengths=(), tape="T1"))
    fitted = FittedOpening(
        mark="D1",
        corners=(Point(0, 0), Point(821, 0), Point(821, 2000), Point(0, 2000)),
        corner_deg=Four(90, 90, 90, 90),
        corner_u_deg=Four(0.1, 0.1, 0.1, 0.1),
        side_mm=Four(821, 2000, 821, 2000),
        side_u_mm=Four(1, 1, 1, 1),
    )
    doors, _ = doors_of([("D1", 640)], [unread], shapes=Shapes(openings=(fitted,)))
    assert doors is not None
    assert doors[0].floor_mm == 821
    none, findings = doors_of([("D1", 640)], [unread])
    assert none is None
    assert findings[0].code == "door-width-missing"


def test_a_one_faced_door_of_another_room_is_said() -> None:
    doors, findings = doors_of([("D1", 640)], [a_door(room="Hall")])
    assert doors is not None
    assert [f.code for f in findings] == ["face-assumed"]


def test_a_held_door_is_marked() -> None:
    doors, _ = doors_of([("D1", 640)], [a_door()], held=frozenset({"D1"}))
    assert doors is not None
    assert doors[0].is_held


def a_tall_door(mark: str = "D1", height_mm: float = 2030.0) -> Opening:
    door = a_door(mark)
    sides = [
        Reading(place=place, value_mm=height_mm, written=f"{height_mm:g}")
        for place in (Place.LEFT, Place.RIGHT)
    ]
    return replace(door, readings=replace(door.readings, lengths=(*door.readings.lengths, *sides)))


def test_a_rail_meets_the_doors_whose_trim_reaches_it() -> None:
    house = a_house(openings=[a_tall_door(), a_door("W1", kind=OpeningKind.WINDOW)])
    # Head's outer edge: 2030 + 5 + 57 = 2092.
    assert reaching(house, 2091.0) == {"D1"}
    assert reaching(house, 2092.0) == frozenset()


def test_a_door_of_unread_height_is_taken_to_reach_any_rail() -> None:
    assert reaching(a_house(openings=[a_door()]), 2300.0) == {"D1"}


def test_an_arch_reaches_as_high_as_its_crown() -> None:
    arched = replace(a_tall_door(), arch=Arch(rise_mm=200.0))
    assert reaching(a_house(openings=[arched]), 2291.0) == {"D1"}


def test_above_its_plinth_blocks_a_rail_meets_the_leg() -> None:
    block = Profile(name="PB95", width_mm=95.0, thickness_mm=25.0)
    door = replace(a_tall_door(), plinth="PB95", plinth_height_mm=200.0)
    room = a_room(a_wall("N", 4606, doors=[("D1", 640)]))
    house = a_house(rooms=[room], openings=[door], profiles=[SKIRTING, ARCHITRAVE, block])
    faces = []
    for low_mm in (0.0, 900.0):
        doors, _ = wall_doors(
            house, Shapes(), room, room.walls[0], frozenset(), low_mm=low_mm, only=frozenset({"D1"})
        )
        assert doors is not None
        faces.append(doors[0].trim.left_face_mm)
    assert faces == [95.0, 57.0]


def test_only_the_openings_named_interrupt_a_course() -> None:
    room = a_room(a_wall("N", 4606, doors=[("D1", 640), ("D2", 2600)]))
    house = a_house(rooms=[room], openings=[a_door("D1"), a_door("D2")])
    doors, _ = wall_doors(house, Shapes(), room, room.walls[0], frozenset(), only=frozenset({"D2"}))
    assert doors is not None
    assert [door.mark for door in doors] == ["D2"]

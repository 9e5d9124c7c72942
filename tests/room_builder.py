"""Small houses of rooms and runs for tests."""

import math
import tomllib
from collections.abc import Sequence
from pathlib import Path

from longpoint.quantities.length import Units
from longpoint.survey.house import Dialect, House
from longpoint.survey.house_file import read_house
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Layout, Opening, OpeningKind, PerSide
from longpoint.survey.profiles import Profile, Stock
from longpoint.survey.readings import OpeningReadings, Place, Reading
from longpoint.survey.rooms import Room, RoomDiagonal, Run, RunEnd, Wall, WallOpening

SCENARIOS = Path(__file__).parent / "scenarios"

SKIRTING = Profile(name="SK90", width_mm=90.0, thickness_mm=19.0)
ARCHITRAVE = Profile(name="AR57", width_mm=57.0, thickness_mm=19.0)


def a_house(
    *,
    rooms: Sequence[Room] = (),
    runs: Sequence[Run] = (),
    openings: Sequence[Opening] = (),
    profiles: Sequence[Profile] = (SKIRTING, ARCHITRAVE),
    stock: Sequence[Stock] = (Stock(profile="SK90", length_mm=5400.0),),
    units: Units = Units.MM,
    longest_run_mm: float | None = None,
) -> House:
    """Return a house with the usual profiles, one class II tape and one saw."""
    return House(
        name="Sample",
        units=units,
        dialect=Dialect.UK,
        profiles=tuple(profiles),
        tapes=(Tape(name="T1"),),
        saw=Saw(name="S1"),
        stock=tuple(stock),
        openings=tuple(openings),
        rooms=tuple(rooms),
        runs=tuple(runs),
        skirting_profile="SK90",
        longest_run_mm=longest_run_mm,
    )


def a_wall(
    mark: str,
    length_mm: float | None,
    corner_deg: float | None = 90.0,
    *,
    doors: Sequence[tuple[str, float | None]] = (),
    skirting: bool = False,
    profile: str = "",
) -> Wall:
    """Return a wall; doors as (mark, from the left)."""
    return Wall(
        mark=mark,
        length_mm=length_mm,
        corner_deg=corner_deg,
        openings=tuple(WallOpening(mark=door, from_left_mm=at) for door, at in doors),
        skirting=skirting,
        profile=profile,
    )


def a_room(
    *walls: Wall,
    name: str = "Den",
    closed: bool = True,
    diagonals: Sequence[tuple[str, str, float]] = (),
    accept: Sequence[str] = (),
) -> Room:
    """Return a room; diagonals as (wall, wall, length)."""
    return Room(
        name=name,
        closed=closed,
        walls=walls,
        diagonals=tuple(RoomDiagonal(start=a, end=b, length_mm=d) for a, b, d in diagonals),
        tape="T1",
        accept=tuple(accept),
    )


def a_run(
    mark: str,
    length_mm: float,
    left: str = "internal",
    right: str = "internal",
    *,
    room: str = "Den",
    wall: str = "",
    left_corner_deg: float | None = None,
    right_corner_deg: float | None = None,
    profile: str = "SK90",
) -> Run:
    """Return a run; its ends by their names in the house file."""
    return Run(
        mark=mark,
        room=room,
        wall=wall,
        profile=profile,
        length_mm=length_mm,
        left=RunEnd(left),
        right=RunEnd(right),
        left_corner_deg=left_corner_deg,
        right_corner_deg=right_corner_deg,
        tape="T1",
    )


def a_door(
    mark: str = "D1",
    *,
    top: float = 819.0,
    bottom: float | None = 819.0,
    room: str = "Den",
    kind: OpeningKind = OpeningKind.DOOR,
    faces: int = 1,
    left_quirk_mm: float = 5.0,
) -> Opening:
    """Return an opening with architraves of 57 and quirks of 5."""
    widths = [Reading(place=Place.TOP, value_mm=top, written=f"{top:g}")]
    if bottom is not None:
        widths.append(Reading(place=Place.BOTTOM, value_mm=bottom, written=f"{bottom:g}"))
    return Opening(
        mark=mark,
        room=room,
        kind=kind,
        layout=Layout.LEGS_AND_HEAD,
        readings=OpeningReadings(lengths=tuple(widths), tape="T1"),
        faces=faces,
        quirk_mm=PerSide(head=5.0, right=5.0, bottom=5.0, left=left_quirk_mm),
        profiles=PerSide(head="AR57", right="AR57", bottom="AR57", left="AR57"),
    )


def a_scenario(name: str) -> House:
    """Return one of the houses in `tests/scenarios`."""
    document = tomllib.loads((SCENARIOS / f"{name}.toml").read_text(encoding="utf-8"))
    return read_house(document).house


Plan = Sequence[tuple[float, float]]


def lengths_and_corners(plan: Plan) -> tuple[list[float], list[float]]:
    """Return wall lengths and corners in the room of a plan that turns to the right.

    By the cosine between neighbouring walls, so by another way than the fit.
    """
    count = len(plan)
    lengths = [math.dist(plan[i], plan[(i + 1) % count]) for i in range(count)]
    corners = []
    for i in range(count):
        before, here, after = plan[i], plan[(i + 1) % count], plan[(i + 2) % count]
        back = (before[0] - here[0], before[1] - here[1])
        onward = (after[0] - here[0], after[1] - here[1])
        cosine = (back[0] * onward[0] + back[1] * onward[1]) / (
            math.hypot(*back) * math.hypot(*onward)
        )
        angle = math.degrees(math.acos(max(-1.0, min(1.0, cosine))))
        turns_right = back[0] * onward[1] - back[1] * onward[0] > 0
        corners.append(angle if turns_right else 360.0 - angle)
    return lengths, corners


def room_of_plan(plan: Plan, *, with_diagonals: bool = True) -> Room:
    """Return a room read without error."""
    lengths, corners = lengths_and_corners(plan)
    count = len(plan)
    marks = [f"w{i}" for i in range(count)]
    pairs = [(i, (i + count // 2) % count) for i in range(count // 2)]
    diagonals = [
        (marks[a], marks[b], math.dist(plan[(a + 1) % count], plan[(b + 1) % count]))
        for a, b in pairs
        if with_diagonals and abs(a - b) > 1
    ]
    return a_room(
        *(a_wall(m, d, c) for m, d, c in zip(marks, lengths, corners, strict=True)),
        diagonals=diagonals,
    )

from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.trim import TRIM_WAITS, Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.piece import Role
from longpoint.pipeline import plan_house
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.keys import Key, Kind
from tests.house_documents import door, house, wall, window


def plan_shelf(asked: Asked) -> TrimPlan:
    length_mm = asked.get("length", 600.0)
    if length_mm > 4000.0:
        raise PieceError("The shelf is long.", "It would sag.", "Make two of it.")
    note = Finding(
        code="shelf-note", severity=Severity.NOTE, place=asked.mark, read="A.", wrong="B.", do="C."
    )
    pieces = (
        asked.piece("board", Role.SHELF, length_mm, notes=("round its edge",)),
        *(asked.piece(mark, Role.SHELF, 100.0) for mark in asked.entry.openings),
    )
    return TrimPlan(pieces=pieces, findings=(note,), lines=("Fix it level.",))


LENGTH = Key(name="length", kind=Kind.READING, meaning="Its length.", example=600, left_out="600")
SHELF = TrimKind(name="plank", title="a plank", asks=(LENGTH,), plan=plan_shelf)
ROOMY = TrimKind(
    name="roomy",
    title="a roomy plank",
    asks=(),
    plan=plan_shelf,
    needs_profile=False,
    needs_room=True,
)
AT_DOORS = TrimKind(
    name="at-doors", title="a plank at doors", asks=(), plan=plan_shelf, needs_openings=True
)
KINDS = (SHELF, ROOMY, AT_DOORS)


def planned(*entries: dict[str, Any], held: frozenset[str] = frozenset()) -> TrimsPlanned:
    document = house(
        trims=[{"mark": f"T{n}", **entry} for n, entry in enumerate(entries, start=1)],
        openings=[door(), window()],
        rooms=[{"name": "Hall", "walls": [wall(), wall("E")], "closed": False}],
    )
    survey = read_house(document, trim_tables(KINDS))
    assert survey.house.held == ()
    return plan_trims(survey.house, Shapes(), held, KINDS)


def test_a_trim_is_planned_by_its_kind() -> None:
    found = planned({"kind": "plank", "profile": "SK95", "length": 900})

    (trim,) = found.trims
    (piece,) = trim.plan.pieces
    assert (piece.mark, piece.trim, piece.place) == ("T1-board", "T1", "T1")
    assert (piece.inner_mm, piece.width_mm, piece.back_mm) == (900.0, 95.0, 900.0)
    assert piece.notes == ("round its edge",)
    assert [finding.code for finding in found.findings] == ["shelf-note"]


def test_one_that_its_kind_refuses_is_held_and_the_next_goes_on() -> None:
    found = planned(
        {"kind": "plank", "profile": "SK95", "length": 5000}, {"kind": "plank", "profile": "SK95"}
    )

    assert [trim.entry.mark for trim in found.trims] == ["T2"]
    stop = found.findings[0]
    assert (stop.code, stop.place, stop.severity) == (TRIM_NOT_PLANNED, "T1", Severity.STOP)
    assert (stop.read, stop.do) == ("The shelf is long.", "Make two of it.")


@pytest.mark.parametrize(
    ("entry", "missing"),
    [
        ({"kind": "plank"}, "a profile"),
        ({"kind": "roomy"}, "a room"),
        ({"kind": "at-doors", "profile": "SK95"}, "an opening"),
    ],
)
def test_what_a_kind_can_not_do_without_is_asked_for(entry: dict[str, Any], missing: str) -> None:
    (finding,) = planned(entry).findings

    assert finding.code == TRIM_NOT_PLANNED
    assert missing in finding.read


@pytest.mark.parametrize(
    "entry",
    [
        {"kind": "roomy", "room": "Attic", "profile": "SK95"},
        {"kind": "at-doors", "openings": ["D9"], "profile": "SK95"},
    ],
)
def test_a_room_or_opening_that_is_not_there_holds_the_trim(entry: dict[str, Any]) -> None:
    (finding,) = planned(entry).findings

    assert (finding.code, finding.severity) == (TRIM_NOT_PLANNED, Severity.STOP)


def test_a_trim_does_without_an_opening_that_is_held() -> None:
    entry = {"kind": "at-doors", "openings": ["D1", "W1"], "profile": "SK95"}
    found = planned(entry, held=frozenset({"D1"}))

    assert [piece.mark for piece in found.trims[0].plan.pieces] == ["T1-board", "T1-W1"]
    assert (found.findings[0].code, found.findings[0].severity) == (TRIM_WAITS, Severity.WARNING)


def test_a_trim_waits_while_all_its_openings_or_its_room_are_held() -> None:
    at_door = {"kind": "at-doors", "openings": ["D1"], "profile": "SK95"}
    in_hall = {"kind": "roomy", "room": "Hall", "profile": "SK95"}
    found = planned(at_door, in_hall, held=frozenset({"D1", "Hall"}))

    assert found.trims == ()
    assert [(f.place, f.severity) for f in found.findings] == [
        ("T1", Severity.STOP),
        ("T2", Severity.STOP),
    ]


def test_its_pieces_are_cut_from_sticks_with_all_others() -> None:
    document = house(
        trims=[{"mark": "T1", "kind": "plank", "profile": "SK95"}],
        stock=[{"profile": "SK95", "length": 3000}],
    )
    plan = plan_house(read_house(document, trim_tables(KINDS)), kinds=KINDS)

    assert [laid.piece for laid in plan.cut_plan.sticks[0].laid] == ["T1-board"]
    assert [trim.entry.mark for trim in plan.trims] == ["T1"]


def test_a_piece_too_long_for_any_stick_holds_its_trim() -> None:
    document = house(
        trims=[{"mark": "T1", "kind": "plank", "profile": "SK95", "length": 3500}],
        stock=[{"profile": "SK95", "length": 3000}],
    )
    plan = plan_house(read_house(document, trim_tables(KINDS)), kinds=KINDS)

    assert "T1" in plan.held
    assert plan.pieces == ()
    assert plan.trims == ()

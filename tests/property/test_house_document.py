"""A house written back as a document reads as the same house, whatever it holds."""

import json
import math
from collections.abc import Callable
from typing import Any

import jsonschema
from hypothesis import given, settings
from hypothesis import strategies as st

from longpoint.errors import Severity
from longpoint.survey.house_file import (
    house_document,
    house_schema,
    read_house,
    readings_code,
)

SCHEMA = jsonschema.Draft202012Validator(house_schema())

UNREADABLE = {"crew-unreadable", "season-unreadable", "as-built-unreadable"}

NAMES = st.text(
    st.characters(categories=("L", "N"), exclude_characters="\ufffe"), min_size=1, max_size=12
)


def lengths(low_mm: float, high_mm: float, units: str) -> st.SearchStrategy[Any]:
    """Draw a length as a person or a program writes it, within limits in mm."""
    factor = 25.4 if units == "in" else 1.0

    def as_sixteenths(length: float) -> str:
        whole, part = divmod(math.ceil(length * factor / 25.4 * 16), 16)
        return f'{whole} {part}/16"'

    forms: list[Callable[[float], Any]] = [
        lambda length: length,
        lambda length: round(length, 2),
        lambda length: f"{length:.3f}",
        as_sixteenths,
    ]
    return st.builds(
        lambda length, form: form(length),
        st.floats((low_mm + 0.01) / factor, high_mm / factor),
        st.sampled_from(forms),
    )


def or_repeated(one: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return st.one_of(one, st.lists(one, min_size=1, max_size=3))


def face(units: str) -> st.SearchStrategy[dict[str, Any]]:
    side = or_repeated(lengths(300, 3000, units))
    signed = or_repeated(st.floats(-0.5, 0.5))
    angle = or_repeated(st.floats(-5, 5))
    return st.fixed_dictionaries(
        {"top": side, "left": side},
        optional={
            "bottom": side,
            "right": side,
            "rising": side,
            "falling": side,
            "middle": st.fixed_dictionaries({}, optional={"height": side, "width": side}),
            "plane": st.fixed_dictionaries({}, optional=dict.fromkeys(("tl", "tr", "bl"), signed)),
            "plumb": st.fixed_dictionaries({}, optional={"right": angle, "left": angle}),
            "bevel": st.fixed_dictionaries({"tr": or_repeated(st.floats(80, 100))}),
            "level_u": st.floats(0.01, 1),
            "level": st.fixed_dictionaries({"floor": angle}),
            "tape": st.sampled_from(("T1", "T2")),
            "by": NAMES,
        },
    )


def as_built(units: str) -> st.SearchStrategy[dict[str, Any]]:
    factor = 25.4 if units == "in" else 1.0
    gap = st.floats(-3 / factor, 3 / factor)
    spot = st.one_of(gap, gap.map(lambda gap: f"{gap:.3f}"), st.just("?"))
    quirk = st.one_of(spot, st.lists(spot, min_size=1, max_size=3))
    step = st.one_of(st.floats(0, 3 / factor), st.just("?"))
    return st.fixed_dictionaries(
        {},
        optional={
            "gaps": st.fixed_dictionaries(
                {}, optional=dict.fromkeys(("bl", "br", "tr", "tl"), st.tuples(spot, spot))
            ),
            "quirks": st.fixed_dictionaries(
                {}, optional=dict.fromkeys(("head", "left", "right", "sill"), quirk)
            ),
            "steps": st.fixed_dictionaries({}, optional=dict.fromkeys(("bl", "tl"), step)),
        },
    )


def crews(units: str) -> st.SearchStrategy[dict[str, Any]]:
    factor = 25.4 if units == "in" else 1.0
    minutes = st.one_of(st.integers(0, 600), st.floats(0, 600))
    return st.fixed_dictionaries(
        {},
        optional={
            "walls": st.sampled_from(("new", "old")),
            "refit": minutes,
            "spoiled": minutes,
            "batch_saves": minutes,
            "stop_block": st.booleans(),
            "feeler": st.floats(0.02 / factor, 0.9 / factor),
            "slips": st.floats(0.0, 50.0),
            "minutes": st.fixed_dictionaries(
                {}, optional=dict.fromkeys(("proof", "diagonals", "stop_block"), minutes)
            ),
        },
    )


def seasons() -> st.SearchStrategy[dict[str, Any]]:
    air = st.fixed_dictionaries(
        {"humidity": st.floats(1, 99)}, optional={"temperature": st.integers(-20, 50)}
    )
    return st.fixed_dictionaries(
        {},
        optional={
            "fitting": air,
            "moisture": st.floats(3, 30),
            "driest": air,
            "dampest": air,
        },
    )


def fixings(units: str) -> st.SearchStrategy[dict[str, Any]]:
    nails = st.tuples(st.sampled_from((15, 16, 18, 23)), st.integers(15, 90)).map(
        lambda nail: f"{nail[0]} x {nail[1]} mm"
    )
    return st.fixed_dictionaries(
        {},
        optional={
            "country": st.sampled_from(("au", "nz", "uk", "ie", "us", "ca")),
            "nails": st.lists(nails, max_size=3, unique=True),
            "lining": lengths(8, 60, units),
            "board": lengths(5, 40, units),
            "stud_spacing": lengths(300, 1200, units),
            "frame_wood": st.sampled_from(("hem-fir", "red oak")),
            "built": st.integers(1600, 2100),
        },
    )


def handovers() -> st.SearchStrategy[dict[str, Any]]:
    days = st.dates().map(lambda day: day.isoformat())
    return st.fixed_dictionaries(
        {},
        optional={
            "place": st.sampled_from(("au", "au-nsw", "uk", "nz")),
            "contract": days,
            "handed_over": st.dates(),
            "bare_floor": st.booleans(),
            "fills": st.sampled_from(("carpenter", "painter")),
            "fixed": st.lists(NAMES, max_size=3),
        },
    )


def defects(units: str) -> st.SearchStrategy[list[dict[str, Any]]]:
    one = st.fixed_dictionaries(
        {"place": NAMES, "what": NAMES},
        optional={
            "kind": st.sampled_from(("joint", "skirting", "plumb", "flat")),
            "found": lengths(2, 50, units),
            "height": lengths(1000, 4000, units),
            "seen": st.dates(),
        },
    )
    return st.lists(one, max_size=3)


@st.composite
def openings(draw: st.DrawFn, units: str, mark: str) -> dict[str, Any]:
    opening = draw(face(units)) | {"mark": mark}
    opening["kind"] = draw(st.sampled_from(("window", "door", "cased")))
    opening |= draw(
        st.fixed_dictionaries(
            {},
            optional={
                "room": NAMES,
                "quirk": lengths(4, 6, units),
                "max_gap": lengths(2, 9, units),
                "method": st.sampled_from(("batch", "bench", "in-place")),
                "lining_edge": or_repeated(lengths(5, 40, units)),
                "raked": st.booleans(),
                "nominal": st.fixed_dictionaries(
                    dict.fromkeys(("width", "height"), lengths(300, 3000, units))
                ),
                "arch": st.fixed_dictionaries({"rise": lengths(50, 300, units)}),
                "batch": NAMES,
                "accept": st.lists(NAMES, max_size=2),
                "floor_cover": lengths(3, 40, units),
                "b": st.one_of(
                    face(units),
                    st.builds(dict, face(units), as_built=as_built(units)),
                    st.fixed_dictionaries({"as_built": as_built(units)}),
                ),
                "as_built": as_built(units),
                "mitres": st.sampled_from(("as-read", "at-stop")),
                "tap_room": lengths(0.1, 5, units),
                "architrave": st.fixed_dictionaries(
                    {"head": st.just("wide")}, optional={"left": st.just("A")}
                ),
            },
        )
    )
    if opening["kind"] == "window":
        opening["trim"] = draw(st.sampled_from(("all-round", "legs-and-head", "board-and-apron")))
        if opening["trim"] == "board-and-apron":
            opening |= draw(
                st.fixed_dictionaries(
                    {}, optional={"board": st.just("wide"), "horn": lengths(3, 50, units)}
                )
            )
    return opening


@st.composite
def documents(draw: st.DrawFn) -> dict[str, Any]:
    """Draw a house without faults."""
    units = draw(st.sampled_from(("mm", "in")))
    wall = st.fixed_dictionaries(
        {"length": or_repeated(lengths(300, 9000, units))},
        optional={
            "corner": or_repeated(st.floats(60, 300)),
            "corner_u": st.floats(0.1, 2),
            "bow": st.floats(-0.4, 0.4),
            "skirting": st.booleans(),
            "openings": st.lists(
                st.fixed_dictionaries(
                    {"mark": NAMES},
                    optional={"from_left": st.one_of(st.just(0), lengths(30, 2000, units))},
                ),
                max_size=2,
            ),
        },
    )
    walls = draw(st.lists(wall, min_size=2, max_size=4))
    room: dict[str, Any] = {
        "name": "Kitchen",
        "walls": [{"mark": f"{i}", **one} for i, one in enumerate(walls)],
        "closed": draw(st.booleans()),
        "tape": draw(st.sampled_from(("T1", "T2"))),
        "diagonals": [{"from": "0", "to": "1", "length": draw(lengths(500, 9000, units))}],
    }
    run = {
        "mark": "S1",
        "length": draw(or_repeated(lengths(300, 9000, units))),
        "left": "internal",
        "right": "external",
        "right_corner": draw(st.floats(200, 300)),
        "tape": draw(st.sampled_from(("T1", "T2"))),
    }
    marks = draw(st.lists(st.integers(1, 99), min_size=1, max_size=3, unique=True))
    document: dict[str, Any] = {
        "format": "longpoint-house/1",
        "name": draw(NAMES),
        "units": units,
        "profiles": {
            "A": {"face": draw(lengths(30, 100, units)), "thickness": draw(lengths(5, 30, units))},
            "wide": {
                "face": draw(lengths(60, 300, units)),
                "thickness": 0.75,
                "reversible": True,
                "section": draw(st.lists(st.lists(st.floats(-20, 20), min_size=2, max_size=2))),
            },
        },
        "tapes": {
            "T1": {"class": draw(st.sampled_from(("I", "II", "III")))},
            "T2": {
                "max_error": draw(lengths(2, 4, units)),
                "take_off": draw(st.sampled_from((0, 0.05, "-1/16", 0.7))),
                "check": {"stick": 10, "inside": 10.0},
            },
        },
        "defaults": {"architrave": "A", "skirting": "wide"},
        "stock": [{"profile": "A", "length": draw(lengths(2000, 6000, units)), "price": 0.1}],
        "offcuts": [{"profile": "A", "length": draw(lengths(500, 2000, units)), "count": 0}],
        "openings": [draw(openings(units, f"W{mark}")) for mark in marks],
        "rooms": [room],
        "runs": [run],
    }
    document["defaults"] |= draw(
        st.fixed_dictionaries(
            {},
            optional={
                "tape": st.sampled_from(("T1", "T2")),
                "saw_tape": st.sampled_from(("T1", "T2")),
                "mitres": st.sampled_from(("as-read", "at-stop")),
                "tap_room": lengths(0.1, 5, units),
                "quirk": lengths(3, 9, units),
                "floor_gap": lengths(1, 9, units),
                "max_run": lengths(1000, 5000, units),
                "board": st.just("wide"),
            },
        )
    )
    document |= draw(
        st.fixed_dictionaries(
            {},
            optional={
                "crew": crews(units),
                "season": seasons(),
                "fixing": fixings(units),
                "handover": handovers(),
                "defects": defects(units),
            },
        )
    )
    if draw(st.booleans()):
        document["saws"] = {"S1": {"kerf": draw(lengths(2, 6, units)), "found": {"left": 45.2}}}
        document["saws"]["S1"] |= draw(
            st.fixed_dictionaries(
                {},
                optional={
                    "blade": NAMES,
                    "setting": NAMES,
                    "dialled": st.fixed_dictionaries({"left": st.floats(-2, 2)}),
                },
            )
        )
    return document


@settings(max_examples=60)
@given(documents())
def test_a_house_written_back_reads_as_the_same_house(document: dict[str, Any]) -> None:
    first = read_house(document)
    assert not {f.code for f in first.findings} & UNREADABLE
    stops = {f.code for f in first.findings if f.severity is Severity.STOP}
    assert stops <= {"repeats-disagree"}

    written = json.loads(json.dumps(house_document(first.house)))

    assert list(SCHEMA.iter_errors(written)) == []
    again = read_house(written)
    assert again.house == first.house
    assert readings_code(again.house) == readings_code(first.house)

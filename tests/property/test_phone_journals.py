"""Two phones' journals give one house, in whatever order and however often their entries come."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.phone.fold import fold
from longpoint.phone.messages import Fold
from tests.phone_journals import Journal

pytestmark = pytest.mark.property

MARKS = st.sampled_from(["W1", "W2", "D1"])
LINES = st.sampled_from(["left", "top", "right", "plane.tl"])
FIGURES = st.sampled_from(["598", "600.5", "612", "-1", "12OO"])
WAYS = st.sampled_from(
    [
        ["rooms", "Loft"],
        ["rooms", "Loft", "walls", "N"],
        ["rooms", "Loft", "walls", "N", "openings", "D1"],
        ["runs", "S1"],
        ["trims", "B1"],
        ["trims", "B1", "lights", "1"],
    ]
)


@st.composite
def journals(draw: st.DrawFn) -> list[dict[str, Any]]:
    """Draw what two phones wrote of one house, each having seen some of the other's entries."""
    first = Journal("a")
    first.begin()
    second = Journal("b", seen=draw(st.integers(0, 6)))
    for phone in (first, second):
        for _ in range(draw(st.integers(0, 10))):
            _write(draw, phone, [*first.entries, *second.entries])
    return [*first.entries, *second.entries]


def _write(draw: st.DrawFn, phone: Journal, there: list[dict[str, Any]]) -> None:
    keys = st.sampled_from([{k: e[k] for k in ("device", "counter")} for e in there])
    match draw(st.integers(0, 8)):
        case 0:
            phone.write(
                "opening-added", opening=draw(MARKS), room="Main", kind="window", trim="all-round"
            )
        case 1:
            phone.write("undo", of=draw(keys))
        case 2:
            phone.write("opening-left-out", opening=draw(MARKS))
        case 3:
            phone.write("place-added", place=draw(WAYS), values={"kind": "bay"})
        case 4:
            phone.read_place(draw(WAYS), "length", draw(FIGURES), again=draw(st.booleans()))
        case 5:
            phone.write("setting", key=["defaults", "quirk"], value=draw(st.integers(3, 9)))
        case 6:
            phone.write("place-left-out", place=draw(WAYS))
        case _:
            over = draw(st.one_of(st.none(), st.lists(keys, max_size=3)))
            phone.read(
                draw(LINES), draw(FIGURES), draw(MARKS), again=draw(st.booleans()), over=over
            )


@given(journals(), st.data())
def test_neither_order_nor_repeats_change_the_house(
    entries: list[dict[str, Any]], data: st.DataObject
) -> None:
    once = fold(entries)
    repeats = data.draw(st.lists(st.sampled_from(entries), max_size=10))
    assert fold(data.draw(st.permutations([*entries, *repeats]))) == once


@given(st.lists(FIGURES, min_size=1, max_size=4), st.lists(FIGURES, min_size=1, max_size=4))
def test_what_two_phones_read_unseen_by_each_other_all_stands(
    mine: list[str], theirs: list[str]
) -> None:
    one = Journal("a")
    one.begin()
    one.write("opening-added", opening="W3", room="", kind="window", trim="all-round")
    other = Journal("b", seen=len(one.entries))
    for phone, figures in ((one, mine), (other, theirs)):
        before: list[dict[str, Any]] = []
        for figure in figures:
            before.append(phone.read("top", figure, over=before))
    found: Fold = fold([*other.entries, *one.entries])
    top = next(line for line in found.openings[0].lines if line.line == "top")
    assert len(top.texts) == 2
    assert set(top.texts) == {str(_number(mine[-1])), str(_number(theirs[-1]))}


def _number(text: str) -> int | float | str:
    try:
        return float(text) if "." in text or text.startswith("-") else int(text)
    except ValueError:
        return text

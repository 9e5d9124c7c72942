"""Entries of other hands: whatever they say, the house of the others stands."""

from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.phone import entries as kinds
from longpoint.phone.entry_shapes import is_whole
from longpoint.phone.fold import fold
from longpoint.phone.passing import came
from tests.phone_journals import Journal

WORDS = (
    *("openings", "rooms", "trims", "walls", "runs", "W3", "R1", "A", "defaults", "quirk"),
    *("mark", "name", "kind", "units", "dialect", "top", "plane.tl", "plane", "length", "", "1"),
    *("window", "door", "all-round", "format", "readings", "over", "corners", "cornice", "faces"),
)
FILES = (
    "openings = 3\nrooms = 'x'\n",
    "name = 1\nunits = []\n[[openings]]\nmark = 3\nkind = 'window'\n",
    "trims = [1, {}]\nrooms = {}\n[[openings]]\n",
    "[rooms]\nname = 'a'\nwalls = 2\n[openings]\nW3 = 1\n",
    "[[rooms]]\nname = 'R1'\nwalls = 2\nopenings = 1\n[[trims]]\nkind = 'cornice'\n",
)
word = st.sampled_from(WORDS)
anything = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-3, 3)
    | st.floats(allow_nan=False, allow_infinity=False)
    | word,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(word, inner, max_size=3),
    max_leaves=6,
)
SHAPED: dict[str, st.SearchStrategy[Any]] = {
    "key": st.lists(word, max_size=4),
    "place": st.lists(word, max_size=5),
    "value": anything,
    "values": st.dictionaries(word, anything, max_size=3),
    "text": st.sampled_from(FILES),
    "units": st.sampled_from(["mm", "in"]),
    "unit": st.sampled_from(["mm", "in", "deg"]),
    "again": st.booleans(),
    "over": st.just([]),
    "of": st.fixed_dictionaries({"device": st.just("p"), "counter": st.integers(1, 4)}),
    "gaps": st.dictionaries(word, st.lists(word, min_size=2, max_size=2), max_size=2),
}
KEYS = {each.__dataclass_fields__["what"].default: each for each in get_args(kinds.Entry)}


@st.composite
def said(draw: st.DrawFn) -> dict[str, Any]:
    """An entry of a kind that is known: in its shape mostly, else whatever it may be."""
    kind = draw(st.sampled_from(sorted(KEYS)))
    own = set(KEYS[kind].__dataclass_fields__) - {"device", "counter", "at", "house", "what"}
    drawn = {key: draw(SHAPED.get(key, word)) for key in sorted(own)}
    if kind == "place-changed":
        drawn["key"] = draw(word)
    if draw(st.integers(0, 4)) == 0:
        drawn |= draw(st.dictionaries(st.sampled_from(sorted(own)), anything, max_size=2))
    return {"what": kind, **drawn}


@given(st.lists(said(), max_size=5))
def test_no_entry_takes_the_house_down(drawn: list[dict[str, Any]]) -> None:
    journal = Journal()
    journal.begin()
    for one in drawn:
        journal.write(one.pop("what"), **one)
    journal.write("house-named", name="Still here")

    came(journal.entries)
    assert fold(journal.entries).name == "Still here"


def test_a_setting_without_its_value_does_not_count() -> None:
    journal = Journal()
    journal.begin()
    journal.write("setting", key=["defaults", "quirk"], value=None)

    assert is_whole(journal.entries[-1])
    journal.write("setting", key=["defaults", "quirk"])
    assert not is_whole(journal.entries[-1])
    assert fold(journal.entries).name == "Pipit"


@pytest.mark.parametrize("lacks", ["opening", "line", "value_text", "unit", "again"])
def test_a_reading_that_lacks_something_does_not_count(lacks: str) -> None:
    journal = Journal()
    journal.begin()
    journal.write("opening-added", opening="W3", room="Hall", kind="window", trim="all-round")
    journal.read("top", "1200")
    whole = journal.entries[-1]
    part = {key: value for key, value in whole.items() if key != lacks}

    assert is_whole(whole)
    assert not is_whole(part)
    assert is_whole({**whole, "what": "of a newer version"})
    assert fold([*journal.entries[:-1], part]).read == 0
    assert fold(journal.entries).read == 1


def test_a_place_in_a_kind_that_has_none_is_left_alone() -> None:
    named = {
        "device": "p",
        "counter": 1,
        "at": "",
        "house": "h",
        "what": "house-named",
        "name": "X",
    }
    assert is_whole({**named, "place": 7, "key": 7})

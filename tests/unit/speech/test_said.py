"""Texts keep what they say through all that is done with a text."""

import copy
import json
import pickle

import pytest

from longpoint.speech.said import Said, figure, instead, joined, lowered, raised, say, say_many


def test_a_text_is_its_english_for_everything_that_reads_it() -> None:
    text = say("held: {places}", places="W1, W2")
    assert text == "held: W1, W2"
    assert {text: 1}["held: W1, W2"] == 1
    assert json.dumps([text]) == '["held: W1, W2"]'


def test_a_text_remembers_message_and_values() -> None:
    text = say("{cut_mm:.1f} wide", cut_mm=2.25)
    assert isinstance(text, Said)
    assert (text.message, dict(text.given)) == ("{cut_mm:.1f} wide", {"cut_mm": 2.25})


def test_braces_of_a_value_are_no_names() -> None:
    assert say("room {room}", room="{x}") == "room {x}"


@pytest.mark.parametrize(
    "text",
    [
        say("held: {places}", places="W1"),
        say_many("{count} piece", "{count} pieces", count=2),
        joined(", ", ["W1", say("held")]),
        instead("casing", say("architrave")),
        raised(say("left leg")),
        lowered(say("Skirting")),
        figure("812.5"),
        say("held") + "; " + say("read again"),
    ],
)
def test_copies_and_other_processes_get_the_whole_of_it(text: Said) -> None:
    for other in (copy.deepcopy(text), pickle.loads(pickle.dumps(text))):
        assert type(other) is type(text)
        assert other == text
        assert [getattr(other, n) for n in _slots(text)] == [getattr(text, n) for n in _slots(text)]


def _slots(text: Said) -> list[str]:
    return [name for kind in type(text).__mro__ for name in getattr(kind, "__slots__", ())]

import json

import pytest

from longpoint.errors import SurveyError
from longpoint.journal import as_written, checked_entry, read_entry

GOOD = {"device": "p", "counter": 1, "at": "", "house": "h", "what": "house-named"}


def test_an_entry_is_one_text_whatever_the_order_of_its_keys() -> None:
    assert as_written(GOOD) == as_written(dict(reversed(GOOD.items())))


def test_a_browser_that_reads_it_and_writes_it_again_changes_no_sign() -> None:
    # JSON.stringify writes 3.0 as 3; ECMA-262, Number::toString.
    assert as_written({**GOOD, "value": [3.0, 2.5]}) == as_written({**GOOD, "value": [3, 2.5]})


def test_half_a_sign_from_a_browser_survives() -> None:
    text = as_written({**GOOD, "name": "a\ud800"})
    assert text.isascii()
    assert json.loads(text)["name"] == "a\ud800"


@pytest.mark.parametrize(
    "changed",
    [
        {"device": ""},
        {"device": 3},
        {"device": "x" * 101},
        {"device": "a\nb"},
        {"house": "a\0"},
        {"house": None},
        {"what": ""},
        {"counter": 0},
        {"counter": True},
        {"counter": 1.0},
        {"counter": 2**53},
        {"at": None},
    ],
)
def test_what_is_no_entry_is_refused(changed: dict[str, object]) -> None:
    with pytest.raises(SurveyError):
        checked_entry({**GOOD, **changed})


DEEP = "[" * 100_000
"""A parser that follows these ends the phone's Python itself: its stack is the browser's."""


@pytest.mark.parametrize("text", ["", "[1]", "{", '{"device":"p"}', DEEP, "NaN"])
def test_a_text_without_an_entry_is_refused(text: str) -> None:
    with pytest.raises(SurveyError):
        read_entry(text)


def test_what_no_text_can_hold_is_refused() -> None:
    with pytest.raises(SurveyError):
        as_written({**GOOD, "value": float("nan")})
    with pytest.raises(SurveyError):
        as_written({**GOOD, "value": {1, 2}})

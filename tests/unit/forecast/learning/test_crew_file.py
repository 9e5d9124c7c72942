import copy
import json
from typing import Any

import pytest

from longpoint.errors import ExchangeError
from longpoint.forecast.learning.crew_file import FORMAT, learned_document, read_learned
from longpoint.forecast.learning.setup import Learned, learn
from tests.unit.forecast.learning.test_setup import KEY, frame


@pytest.fixture
def learned() -> Learned:
    first, _ = learn([frame("W0", None), frame("W1"), frame("W2", 0.3)])
    return learn([frame("W3")], first.set_anew(KEY.angle))[0]


@pytest.fixture
def document(learned: Learned) -> dict[str, Any]:
    return learned_document(learned)


def test_what_was_learned_comes_back_as_it_was(learned: Learned) -> None:
    text = json.dumps(learned_document(learned))
    assert read_learned(json.loads(text)) == (learned, ())
    assert len(learned.terms) == 3


@pytest.mark.parametrize("written", [None, "longpoint-house/1", "longpoint-crew/2", 1])
def test_another_format_is_refused(written: object) -> None:
    with pytest.raises(ExchangeError):
        read_learned({"format": written})


def test_an_empty_book_is_no_trouble() -> None:
    assert read_learned({"format": FORMAT}) == (Learned(), ())


SPOILT: dict[str, tuple[tuple[str | int, ...], object]] = {
    "no table": (("terms", 1), 7),
    "no key": (("terms", 1), {}),
    "saw and tape": (("terms", 1, "tape"), "T1"),
    "name no text": (("terms", 1, "blade"), 3),
    "no prior": (("terms", 1, "prior"), None),
    "prior of nought": (("terms", 1, "prior", "spread"), 0.0),
    "prior no number": (("terms", 1, "prior", "mean"), "0"),
    "count of nought": (("terms", 1, "set_up"), 0),
    "count no count": (("terms", 1, "set_up"), True),
    "frame no table": (("terms", 1, "frames", 0), "W1"),
    "frame without mark": (("terms", 1, "frames", 0, "mark"), ""),
    "off no number": (("terms", 1, "frames", 0, "off"), True),
    "off not finite": (("terms", 1, "frames", 0, "off"), float("nan")),
    "off too far": (("terms", 1, "frames", 0, "off"), 45.0),
    "weight of nought": (("terms", 1, "frames", 0, "weight"), 0.0),
    "weight over one": (("terms", 1, "frames", 0, "weight"), 1.5),
    "angle along an axis": (("terms", 1, "frames", 0, "axis"), "width"),
    "size along no axis": (("terms", 0, "frames", 0, "axis"), "depth"),
    "frames no list": (("terms", 1, "frames"), "W1"),
    "terms no list": (("terms",), {"saw": "S1"}),
    "unknown key": (("saws",), []),
}


def spoilt(document: dict[str, Any], path: tuple[str | int, ...], value: object) -> dict[str, Any]:
    changed: Any = copy.deepcopy(document)
    at = changed
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    return dict(changed)


@pytest.mark.parametrize("name", SPOILT)
def test_a_bad_part_is_said_and_costs_no_good_one(
    name: str, learned: Learned, document: dict[str, Any]
) -> None:
    path, value = SPOILT[name]
    found, (finding,) = read_learned(spoilt(document, path, value))
    assert finding.code == "crew-figure-unreadable"
    assert all((finding.read, finding.wrong, finding.do))
    if len(path) == 1 and path != ("saws",):
        assert found == Learned()
    elif path == ("saws",):
        assert found == learned
    elif "frames" in path:
        assert len(found.terms) == 3
        spoilt_term, was = found.terms[int(path[1])], learned.terms[int(path[1])]
        assert set(spoilt_term.seen) < set(was.seen)
    else:
        assert found.terms == (learned.terms[0], learned.terms[2])


def test_every_bad_entry_is_said(document: dict[str, Any]) -> None:
    twice = spoilt(spoilt(document, ("terms", 0), 1), ("terms", 2), 1)
    found, findings = read_learned(twice)
    assert len(findings) == 2
    assert len(found.terms) == 1

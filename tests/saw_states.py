"""Small states at the saw, for tests of what two phones tell."""

import json

from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw, told
from longpoint.sticks.news.saw_document import KeptSaw, kept_saw, saw_document
from longpoint.sticks.news.saw_news import Cut
from longpoint.sticks.plan import Laid, StickSource

PIECES = {
    stick: tuple(f"W{n}-{part}" for part in ("head", "left-leg", "right-leg"))
    for n, stick in enumerate(("OG57-1", "OG57-2", "OG57-3"), start=1)
}


def stick(name: str) -> StickAtSaw:
    """Return a stick that nobody has cut yet, three pieces laid on it."""
    laid = tuple(
        Laid(piece=piece, turned=False, start_mm=10.0 + 900 * n, end_mm=890.0 + 900 * n)
        for n, piece in enumerate(PIECES[name])
    )
    return StickAtSaw(
        name=name, profile="OG57", length_mm=5400.0, source=StickSource.STOCK, next=laid
    )


def begun() -> AtTheSaw:
    """Return three sticks that nobody has cut yet."""
    return AtTheSaw(sticks=tuple(stick(name) for name in PIECES))


def as_text(state: AtTheSaw) -> str:
    """Return a state as a phone keeps it."""
    return json.dumps(saw_document(state, "K4X9TP", {}))


def from_text(text: str) -> KeptSaw:
    """Return what a phone kept; nothing is cut where it kept nothing."""
    if not text:
        return KeptSaw(state=begun(), readings_code="K4X9TP", shapes={})
    return kept_saw(json.loads(text))


def after_cutting(state: AtTheSaw, *pieces: str) -> AtTheSaw:
    """Return the state after pieces were cut."""
    return told(state, [Cut(piece=piece) for piece in pieces])

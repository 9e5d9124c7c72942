"""Counts that are taken in and counts that are too far ahead: the same for laptop and phone.

`app/tests/hand_over.test.mjs` reads the same file, and so holds the built app to it.
"""

import json
from pathlib import Path
from typing import Final, NamedTuple

_FILE: Final = Path(__file__).parent / "scenarios" / "counts-ahead.json"


class Ahead(NamedTuple):
    """A count that comes where another is the highest, and whether it is taken."""

    highest: int
    counter: int
    is_taken: bool


COUNTS_AHEAD: Final = tuple(Ahead(**each) for each in json.loads(_FILE.read_text(encoding="utf-8")))

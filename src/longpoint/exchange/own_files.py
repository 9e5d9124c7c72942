"""Files that longpoint wrote itself and reads again: as they were written, or not at all.

They lie on somebody's disk for months, and in folders that other programs bring up to date.
"""

import json
from pathlib import Path
from typing import Any, Final, NoReturn

DAMAGED: Final = (KeyError, TypeError, ValueError, AttributeError, ArithmeticError)
"""What comes of taking values out of a document that isn't as it was written."""


def own_document(path: Path) -> dict[str, Any] | None:
    """Return the table in a JSON file; None where there is no file, or none in it."""
    try:
        found = own_json(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None
    return found if isinstance(found, dict) else None


def own_json(text: str) -> object:
    """Return what a JSON text says.

    Raises:
        ValueError: It can't be read, is nested deeper than Python reads, or has a number that JSON
            doesn't know.

    Example:
        >>> own_json('{"sheets": 3}')
        {'sheets': 3}
    """
    try:
        return json.loads(text, parse_constant=_no_number)
    except RecursionError:
        raise ValueError("nested too deep") from None


def _no_number(written: str) -> NoReturn:
    raise ValueError(written)

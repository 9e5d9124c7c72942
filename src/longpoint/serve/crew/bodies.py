"""What requests bring along, read once and held to what they have to be."""

import json
from collections.abc import Mapping
from typing import Any, Final

from longpoint.errors import LongpointError
from longpoint.journal import MOST_COUNT, Entry, Seen, UpTo, as_written, checked_entry
from longpoint.journal.json_depth import is_nested_deeper
from longpoint.serve.crew.kept import MOST_ENTRIES, Share
from longpoint.serve.crew.refusals import Refused

DEEPEST: Final = 34
"""Brackets open at once: an entry's, and the few around it."""
LONGEST_NAME: Final = 60
LONGEST_SECRET: Final = 100
MOST_DEVICES: Final = 1_000


def read_body(body: bytes) -> Mapping[str, Any]:
    """Return a request's JSON object.

    Raises:
        Refused: It is none.
    """
    try:
        text = body.decode("utf-8")
        if is_nested_deeper(text, DEEPEST):
            raise wrong_body("It is nested deeper than anything that is shared.")
        found = json.loads(text)
    except (ValueError, RecursionError):
        raise wrong_body("It is no JSON.") from None
    if not isinstance(found, dict):
        raise wrong_body("It is no JSON object.")
    return found


def name_in(body: Mapping[str, Any], key: str, longest: int = LONGEST_NAME) -> str:
    """Return a short text of printable signs.

    Raises:
        Refused: It is none.
    """
    found = body.get(key)
    if not isinstance(found, str) or not len(found.strip()) > 0 or len(found) > longest:
        raise wrong_body(f'Its "{key}" is missing, or is no short text.')
    if not found.isprintable():
        raise wrong_body(f'There are signs in its "{key}" that can\'t be printed.')
    return found


def share_in(house: str, body: Mapping[str, Any]) -> Share:
    """Return what a phone gives of a house.

    Raises:
        Refused: It isn't as it should be.
    """
    entries = body.get("entries")
    if not isinstance(entries, list) or len(entries) > MOST_ENTRIES:
        raise wrong_body(f'Its "entries" are no list of up to {MOST_ENTRIES}.')
    return Share(
        house=house,
        seen=_seen_in(body.get("seen")),
        entries=tuple(_entry(house, entry) for entry in entries),
    )


def _seen_in(found: object) -> Seen:
    if not isinstance(found, dict) or len(found) > MOST_DEVICES:
        raise wrong_body('Its "seen" is no table of devices.')
    return {device: _up_to(device, each) for device, each in found.items()}


def _up_to(device: str, found: object) -> UpTo:
    if isinstance(found, dict) and device:
        counter, total = found.get("counter"), found.get("sum")
        is_sum = isinstance(total, str) and len(total) <= LONGEST_NAME
        if is_sum and type(counter) is int and 0 < counter < MOST_COUNT:
            return UpTo(counter, str(total))
    raise wrong_body('Under a device of "seen" stand no counter and sum.')


def _entry(house: str, found: object) -> Entry:
    try:
        entry = checked_entry(found)
        as_written(entry)
    except LongpointError as trouble:
        raise Refused(422, trouble.read, trouble.wrong, trouble.do) from None
    if entry["house"] != house:
        raise wrong_body("One of its entries is of another house.")
    return entry


def wrong_body(wrong: str) -> Refused:
    """Return the refusal of something that isn't as it should be."""
    return Refused(
        422,
        "Something was sent to the crew's laptop.",
        wrong,
        "Bring app and laptop to the same version, and share again.",
    )

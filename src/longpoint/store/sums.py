"""Sums by which a byte that changed, a row that went or a row that came is found.

Each row's sum is made of the row and of the sum before it, so the last one vouches for all, and for
their order. It stands apart, with the count: rows cut off at the end are missed as well.

References:
    Hash chain over SHA-256 (FIPS 180-4). It finds accidents; whoever can write to the file can
    make the sums anew.
"""

import hashlib
from collections.abc import Iterable, Mapping
from typing import Final

START: Final = bytes(32)
"""The sum before the first row."""


def next_sum(before: bytes, row: str) -> bytes:
    """Return the sum of a row that follows others.

    Args:
        before: Sum of the row before; `START` for the first.
        row: All of the row as text.

    Example:
        >>> next_sum(START, "a") == next_sum(START, "b")
        False
    """
    return hashlib.sha256(before + row.encode("utf-8", "surrogatepass")).digest()


def sum_of(rows: Iterable[str]) -> bytes:
    """Return the sum of all rows, in their order."""
    found = START
    for row in rows:
        found = next_sum(found, row)
    return found


def facts_sum(facts: Mapping[str, str]) -> str:
    """Return the sum of a few facts, whatever their order.

    Example:
        >>> facts_sum({"a": "1", "b": "2"}) == facts_sum({"b": "2", "a": "1"})
        True
    """
    return sum_of(f"{name}={facts[name]}" for name in sorted(facts)).hex()

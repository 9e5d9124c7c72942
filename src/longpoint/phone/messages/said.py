"""What is said of a place, and why there is no other answer."""

from dataclasses import dataclass
from typing import Any, Literal

Document = dict[str, Any]
"""A house file after it was parsed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """Something to be said of a place, in three sentences."""

    code: str
    severity: Literal["note", "warning", "stop"]
    place: str
    read: str
    wrong: str
    do: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why there is no other answer."""

    kind: Literal["refusal"] = "refusal"
    read: str
    wrong: str
    do: str

"""Trim that is neither round an opening nor a skirting run, as written down."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimEntry:
    """One entry of [[trims]].

    Attributes:
        mark: Its mark, unique in the house.
        kind: What it is, by its name in the catalogue: "picture-rail".
        room: Room it is in; may be empty.
        openings: Marks of the openings it is fixed to; may be empty.
        profile: Name of its profile; empty where none is named.
        tape: Name of the tape that read its lengths.
        values: What its kind asks for, by key: repeated readings as their mean, lengths in mm with
            the tape's known offset taken off, angles in degrees, inner tables as dicts.
        written: The whole entry as it stands in the house file.
        accept: Codes of findings that the crew accepts here.
    """

    mark: str
    kind: str
    room: str = ""
    openings: tuple[str, ...] = ()
    profile: str = ""
    tape: str
    values: Mapping[str, Any]
    written: Mapping[str, Any]
    accept: tuple[str, ...] = ()

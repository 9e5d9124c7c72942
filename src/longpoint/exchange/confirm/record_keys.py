"""What can be brought in: the keys of the house file that a single cell can hold."""

from collections.abc import Iterator
from enum import StrEnum
from functools import cache
from typing import Final

from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.opening_tables import OPENING
from longpoint.survey.house_file.room_tables import RUN
from longpoint.survey.house_file.tool_tables import PROFILE


class RecordKind(StrEnum):
    """What a line of a confirm list belongs to."""

    OPENING = "opening"
    RUN = "run"
    PROFILE = "profile"


TABLES: Final = {
    RecordKind.OPENING: OPENING,
    RecordKind.RUN: RUN,
    RecordKind.PROFILE: PROFILE,
}
LISTS: Final = {RecordKind.OPENING: "openings", RecordKind.RUN: "runs"}
"""Keys at the top of a house file whose entries carry a mark."""

_OPENING_SETTINGS: Final = (
    *("mark", "room", "kind", "trim", "lining_edge", "faces", "raked", "batch"),
    *("nominal.width", "nominal.height"),
)
_OPENING_READINGS: Final = (
    *("top", "bottom", "left", "right", "rising", "falling", "width", "height"),
    *("middle.width", "middle.height", "plane.tl", "plane.tr", "plane.br", "plane.bl"),
    *("plumb.left", "plumb.right", "plumb_u", "level.head", "level.floor", "level_u"),
    *("bevel.bl", "bevel.br", "bevel.tr", "bevel.tl", "bevel_u", "tape", "by"),
)
_RUN: Final = (
    *("mark", "room", "wall", "profile", "length", "left", "right", "left_corner"),
    *("right_corner", "left_rake", "right_rake", "lean", "left_lean", "right_lean", "tape"),
)
_PROFILE: Final = ("face", "thickness", "reversible", "material", "section")

PATHS: Final = {
    RecordKind.OPENING: (
        *_OPENING_SETTINGS,
        *_OPENING_READINGS,
        *(f"b.{path}" for path in _OPENING_READINGS),
    ),
    RecordKind.RUN: _RUN,
    RecordKind.PROFILE: _PROFILE,
}
"""In the order in which they are listed and written."""

REPEATED: Final = frozenset({Kind.READING, Kind.SIGNED_READING, Kind.ANGLE_READING})
"""Kinds that may be read more than once."""
LENGTHS: Final = frozenset(
    {Kind.LENGTH, Kind.SIGNED_LENGTH, Kind.READING, Kind.SIGNED_READING, Kind.POINTS}
)
ANGLES: Final = frozenset({Kind.ANGLE, Kind.ANGLE_READING})


@cache
def cell_keys(kind: RecordKind) -> dict[str, Key]:
    """Return the keys that a cell can fill, under their paths, in the order of the house file.

    Example:
        >>> list(cell_keys(RecordKind.OPENING))[:3]
        ['mark', 'room', 'kind']
        >>> cell_keys(RecordKind.OPENING)["plane.tl"].meaning
        "Reveal's edge against the wall's lining at the top left: + proud, - shy."
    """
    described = dict(_leaves("", TABLES[kind]))
    return {path: described[path] for path in PATHS[kind] if path in described}


def _leaves(path: str, table: Table) -> Iterator[tuple[str, Key]]:
    for key in table.keys:
        inner = f"{path}{key.name}"
        if key.kind is Kind.TABLE and key.table is not None:
            yield from _leaves(f"{inner}.", key.table)
        elif key.kind not in (Kind.TABLES, Kind.NAMED_TABLES):
            yield inner, key

"""The tables of a store, as numbered steps: a store knows which of them it has had."""

from dataclasses import dataclass
from typing import Final

APPLICATION_ID: Final = 0x4C506F69
"""By which a file says that it is a store of ours: "LPoi"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Migration:
    """One step from a version to the next.

    Attributes:
        does: What it is for, in a few words.
        statements: Run one after the other, in one transaction.
    """

    does: str
    statements: tuple[str, ...]


def _never_changed(table: str) -> tuple[str, ...]:
    return tuple(
        f"CREATE TRIGGER {table}_are_never_{done} BEFORE {act} ON {table} "
        f"BEGIN SELECT RAISE(ABORT, '{table} are only ever added'); END"
        for act, done in (("UPDATE", "changed"), ("DELETE", "taken_out"))
    )


MIGRATIONS: Final = (
    Migration(
        does="houses with their entries, revisions and plans",
        statements=(
            "CREATE TABLE facts (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT",
            "CREATE TABLE houses (house TEXT PRIMARY KEY, place INTEGER NOT NULL UNIQUE) STRICT",
            "CREATE TABLE entries ("
            " device TEXT NOT NULL,"
            " counter INTEGER NOT NULL CHECK (counter > 0),"
            " number INTEGER NOT NULL UNIQUE CHECK (number > 0),"
            " house TEXT NOT NULL REFERENCES houses (house),"
            " entry TEXT NOT NULL,"
            " sum BLOB NOT NULL CHECK (length(sum) = 32),"
            " PRIMARY KEY (device, counter)"
            ") STRICT",
            "CREATE INDEX entries_by_house ON entries (house, number)",
            "CREATE TABLE milestones ("
            " number INTEGER PRIMARY KEY CHECK (number > 0),"
            " house TEXT NOT NULL REFERENCES houses (house),"
            " milestone TEXT NOT NULL,"
            " sum BLOB NOT NULL CHECK (length(sum) = 32)"
            ") STRICT",
            "CREATE INDEX milestones_by_house ON milestones (house, number)",
            *_never_changed("houses"),
            *_never_changed("entries"),
            *_never_changed("milestones"),
        ),
    ),
)
"""What made each version; those that were published are never edited."""

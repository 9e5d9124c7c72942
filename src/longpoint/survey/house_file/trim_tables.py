"""The keys that every entry of [[trims]] has, whatever its kind."""

from collections.abc import Mapping
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.default_tables import ACCEPT, TAPE_NAME
from longpoint.survey.house_file.keys import Key, Kind, Table

TRIM: Final = Table(
    title=say("a trim"),
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning=say("Its mark; no two alike in the house, openings and runs included."),
            example="PR1",
            required=True,
        ),
        Key(
            name="kind",
            kind=Kind.TEXT,
            meaning=say(
                "What it is, by its name in the catalogue; that tells what else it asks for."
            ),
            example="picture-rail",
            required=True,
        ),
        Key(
            name="room",
            kind=Kind.TEXT,
            meaning=say("The room it is in."),
            example="Parlour",
            left_out=say("not printed"),
        ),
        Key(
            name="openings",
            kind=Kind.CODES,
            meaning=say("Marks of the openings it is fixed to."),
            example=["D3", "D4"],
            left_out="none",
        ),
        Key(
            name="profile",
            kind=Kind.TEXT,
            meaning=say("Its profile."),
            example="PR45",
            left_out=say("held where its kind can't do without one"),
        ),
        TAPE_NAME,
        ACCEPT,
    ),
)

COMMON_KEYS: Final = frozenset(TRIM.by_name)

TrimTables = Mapping[str, Table]
"""What may be written behind each kind of trim, by its name; common keys first."""


def trim_table(title: str, asks: tuple[Key, ...]) -> Table:
    """Return the table of one kind: the common keys, then its own.

    Raises:
        AssertionError: One of its keys has the name of a common one.
    """
    twice = COMMON_KEYS & {key.name for key in asks}
    if twice:
        raise AssertionError(f"{title} asks for {sorted(twice)[0]}, which every trim has")
    return Table(title=title, keys=(*TRIM.keys, *asks))

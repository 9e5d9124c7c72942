"""The keys of a counts file: a house before its walls are lined."""

from typing import Final

from longpoint.pricing.work import WorkKind
from longpoint.speech.said import say
from longpoint.survey.house import Dialect
from longpoint.survey.house_file.crew_tables import CREW
from longpoint.survey.house_file.default_tables import DEFAULTS
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.room_tables import LONGEST_WALL_MM
from longpoint.survey.house_file.tool_tables import OFFCUT, PROFILE, SAW, STOCK
from longpoint.survey.openings import Layout

COUNTS_FORMAT: Final = "longpoint-counts/1"
MOST_ALIKE: Final = 500
"""No house has more windows of one size; ours."""
ASSUMED_OPENING_SPREAD_MM: Final = 5.0
ASSUMED_WALL_SPREAD_MM: Final = 15.0
RUNNING: Final = (WorkKind.CORNICE, WorkKind.HANDRAIL, WorkKind.SHELF, WorkKind.OTHER_TRIM)


def _count(what: str) -> Key:
    return Key(
        name="count",
        kind=Kind.COUNT,
        meaning=say("How many {what}.", what=what),
        example=4,
        left_out="1",
        low=1.0,
        high=float(MOST_ALIKE),
    )


def _size(name: str, meaning: str, example: int) -> Key:
    return Key(
        name=name,
        kind=Kind.LENGTH,
        meaning=meaning,
        example=example,
        required=True,
        above=True,
        high=LONGEST_WALL_MM,
    )


_ROOM: Final = Key(
    name="room",
    kind=Kind.TEXT,
    meaning=say("The room."),
    example="Kitchen",
    left_out=say("not printed"),
)

WINDOW: Final = Table(
    title=say("a window"),
    keys=(
        _count("alike"),
        _ROOM,
        _size("width", say("Between the reveal faces, from the drawing."), 1200),
        _size("height", say("From sill to head, from the drawing."), 1050),
        Key(
            name="trim",
            kind=Kind.CHOICE,
            meaning=say("Which pieces surround it."),
            example="all-round",
            choices=tuple(each.value for each in Layout),
            left_out="all-round",
        ),
    ),
)

DOOR: Final = Table(
    title=say("a door"),
    keys=(
        _count("alike"),
        _ROOM,
        _size("width", say("Between the linings, from the drawing."), 826),
        _size("height", say("From finished floor to head, from the drawing."), 2040),
        Key(
            name="faces",
            kind=Kind.COUNT,
            meaning=say("Faces to trim."),
            example=2,
            left_out="2",
            low=1.0,
            high=2.0,
        ),
        Key(
            name="leaf",
            kind=Kind.FLAG,
            meaning=say("False for a lined opening without a door."),
            example=True,
            left_out="true",
        ),
    ),
)

SKIRTING: Final = Table(
    title=say("skirting"),
    keys=(
        _ROOM,
        _size("length", say("All of it together, doors left out."), 14200),
        Key(
            name="internal",
            kind=Kind.COUNT,
            meaning=say("Internal corners."),
            example=4,
            left_out="0",
            high=200.0,
        ),
        Key(
            name="external",
            kind=Kind.COUNT,
            meaning=say("External corners."),
            example=1,
            left_out="0",
            high=200.0,
        ),
        Key(
            name="pieces",
            kind=Kind.COUNT,
            meaning=say("In how many runs it lies; each draw splits the length among them anew."),
            example=6,
            left_out=say("as many as there are corners, at least 1"),
            low=1.0,
            high=float(MOST_ALIKE),
        ),
        Key(
            name="profile",
            kind=Kind.TEXT,
            meaning=say("Its profile."),
            example="SK95",
            left_out=say("skirting under defaults"),
        ),
    ),
)

OTHER: Final = Table(
    title=say("other running trim"),
    keys=(
        Key(
            name="kind",
            kind=Kind.CHOICE,
            meaning=say("What it is priced as; its timber isn't counted."),
            example="cornice",
            required=True,
            choices=tuple(each.value for each in RUNNING),
        ),
        _ROOM,
        _size("length", say("All of it together."), 14200),
    ),
)

SPREAD: Final = Table(
    title=say("the spread"),
    keys=(
        Key(
            name="opening",
            kind=Kind.LENGTH,
            meaning=say(
                "By how much widths and heights come out otherwise than drawn; standard deviation."
            ),
            example=5,
            left_out=say(
                "{assumed_opening_spread_mm:g} mm; ours, no source",
                assumed_opening_spread_mm=ASSUMED_OPENING_SPREAD_MM,
            ),
            high=1000.0,
        ),
        Key(
            name="wall",
            kind=Kind.LENGTH,
            meaning=say("The same of each run of skirting."),
            example=15,
            left_out=say(
                "{assumed_wall_spread_mm:g} mm; ours, no source",
                assumed_wall_spread_mm=ASSUMED_WALL_SPREAD_MM,
            ),
            high=5000.0,
        ),
    ),
)

ALLOW: Final = Table(
    title=say("the allowances"),
    keys=tuple(
        Key(
            name=kind.value,
            kind=Kind.COUNT,
            meaning=say("{meaning} allowed for, not seen yet.", meaning=meaning),
            example=2,
            left_out="0",
            high=float(MOST_ALIKE),
        )
        for kind, meaning in (
            (WorkKind.ODD_CORNER, say("Corners out of square")),
            (WorkKind.RESET_REVEAL, say("Reveals to be re-set")),
            (WorkKind.PACK_CORNER, say("Corners to be packed")),
        )
    ),
)

COUNTS: Final = Table(
    title=say("the counts"),
    keys=(
        Key(
            name="format",
            kind=Kind.TEXT,
            meaning=say("Which kind of file this is."),
            example=COUNTS_FORMAT,
            required=True,
        ),
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning=say("The house's name."),
            example=say("Plover House"),
            required=True,
        ),
        Key(
            name="units",
            kind=Kind.CHOICE,
            meaning=say("Unit of every bare number that is a length."),
            example="mm",
            choices=("mm", "in"),
            left_out="mm",
        ),
        Key(
            name="dialect",
            kind=Kind.CHOICE,
            meaning=say("Whose words stand on the sheets."),
            example="uk",
            choices=tuple(each.value for each in Dialect),
            left_out="uk",
        ),
        *(
            Key(
                name=name,
                kind=kind,
                meaning=say("{meaning}, as in the house file.", meaning=meaning),
                example={},
                left_out=say("as in the house file"),
                table=table,
                apart=kind is Kind.TABLE,
            )
            for name, kind, meaning, table in (
                ("defaults", Kind.TABLE, say("What holds everywhere"), DEFAULTS),
                ("crew", Kind.TABLE, say("The crew"), CREW),
                ("profiles", Kind.NAMED_TABLES, say("Moulding sections"), PROFILE),
                ("saws", Kind.NAMED_TABLES, "Saws", SAW),
                ("stock", Kind.TABLES, say("Sticks that can be bought"), STOCK),
                ("offcuts", Kind.TABLES, say("Sticks on the rack"), OFFCUT),
            )
        ),
        *(
            Key(
                name=name,
                kind=Kind.TABLES,
                meaning=meaning,
                example=[],
                left_out="none",
                table=table,
            )
            for name, meaning, table in (
                ("windows", say("Windows by size."), WINDOW),
                ("doors", say("Doors and cased openings by size."), DOOR),
                ("skirting", say("Skirting by the room."), SKIRTING),
                ("running", say("Other trim that runs."), OTHER),
            )
        ),
        Key(
            name="spread",
            kind=Kind.TABLE,
            meaning=say("How far the house will differ from its drawing."),
            example=SPREAD.example(),
            left_out=say("assumed, and said"),
            table=SPREAD,
        ),
        Key(
            name="allow",
            kind=Kind.TABLE,
            meaning=say("Work that is allowed for before anything is read."),
            example=ALLOW.example(),
            left_out=say("none, and said"),
            table=ALLOW,
        ),
    ),
)

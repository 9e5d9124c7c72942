"""The keys of the rack file."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.rack.records import Out

SECTION: Final = Table(
    title=say("a section"),
    keys=(
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning=say("The name it has in the house files."),
            example="OG57",
            required=True,
        ),
        Key(
            name="face",
            kind=Kind.LENGTH,
            meaning=say("Face across the wall; of skirting, its height."),
            example=57,
            required=True,
            above=True,
        ),
        Key(
            name="thickness",
            kind=Kind.LENGTH,
            meaning=say("Thickness off the wall."),
            example=18,
            required=True,
            above=True,
        ),
        Key(
            name="reversible",
            kind=Kind.FLAG,
            meaning=say("True when the section is the same from both edges."),
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="least",
            kind=Kind.LENGTH,
            meaning=say("Nothing shorter is worth a place on the rack."),
            example=300,
            left_out=say("what the house's saw says under keep"),
        ),
    ),
)

OFFCUT: Final = Table(
    title=say("an offcut"),
    keys=(
        Key(
            name="label",
            kind=Kind.TEXT,
            meaning=say("What is written on it; its last sign checks the others."),
            example="EMKR",
            required=True,
        ),
        Key(
            name="section",
            kind=Kind.TEXT,
            meaning=say("Its section, by its name under [sections]."),
            example="OG57",
            required=True,
        ),
        Key(
            name="length",
            kind=Kind.LENGTH,
            meaning=say("Length that can be used, square across; a kerf is lost at each end."),
            example=1310,
            required=True,
            above=True,
        ),
        Key(
            name="left",
            kind=Kind.TEXT,
            meaning=say("What its left end is, face up, outer edge away; no length hangs on it."),
            example=say("mitre 45.0"),
            default="rough",
            left_out="rough",
        ),
        Key(
            name="right",
            kind=Kind.TEXT,
            meaning=say("What its right end is."),
            example="rough",
            default="rough",
            left_out="rough",
        ),
        Key(
            name="house",
            kind=Kind.TEXT,
            meaning=say("The house where it was left over."),
            example=say("Wren House"),
            left_out=say("not known"),
        ),
        Key(
            name="origin",
            kind=Kind.TEXT,
            meaning=say("Readings and stick it comes from, so that it is put up once."),
            example=say("7XKQ4M OG57-3"),
            left_out=say("put up by hand"),
        ),
        Key(
            name="put_up",
            kind=Kind.DATE,
            meaning=say("When it was put up; the oldest of equals is used first."),
            example="2026-03-01",
            required=True,
        ),
        Key(
            name="note",
            kind=Kind.TEXT,
            meaning=say("What else is to be said of it."),
            example="primed",
            left_out="nothing",
        ),
        Key(
            name="gone",
            kind=Kind.CHOICE,
            meaning=say("What came of it."),
            example="used",
            choices=tuple(each.value for each in Out),
            left_out=say("it is on the rack"),
        ),
        Key(
            name="gone_on",
            kind=Kind.DATE,
            meaning=say("When that was written down; with gone, required."),
            example="2026-05-12",
            left_out=say("it is on the rack"),
        ),
        Key(
            name="gone_to",
            kind=Kind.TEXT,
            meaning=say("The house it was used for."),
            example=say("Plover House"),
            left_out=say("not said"),
        ),
    ),
)

RACK: Final = Table(
    title=say("the rack"),
    keys=(
        Key(
            name="format",
            kind=Kind.TEXT,
            meaning=say("Which kind of file this is."),
            example="longpoint-rack/1",
            required=True,
        ),
        Key(
            name="units",
            kind=Kind.CHOICE,
            meaning=say("What a bare number means, and how lengths are printed."),
            example="mm",
            choices=("mm", "in"),
            default="mm",
            left_out="mm",
        ),
        Key(
            name="old_after",
            kind=Kind.COUNT,
            meaning=say("An offcut that was there for more days than this is said to be old."),
            example=365,
            low=1.0,
            high=36_500.0,
            left_out=say("none is said to be old"),
        ),
        Key(
            name="sections",
            kind=Kind.NAMED_TABLES,
            meaning=say("Moulding sections, each under a name."),
            example={},
            left_out=say("there are none"),
            table=SECTION,
        ),
        Key(
            name="offcuts",
            kind=Kind.TABLES,
            meaning=say("Offcuts in the order in which they were put up, gone ones too."),
            example=[],
            left_out=say("there are none"),
            table=OFFCUT,
        ),
    ),
)

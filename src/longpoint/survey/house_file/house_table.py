"""The keys at the top of a house file."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house import Dialect
from longpoint.survey.house_file.crew_tables import CREW
from longpoint.survey.house_file.default_tables import DEFAULTS
from longpoint.survey.house_file.fixing_tables import FIXING
from longpoint.survey.house_file.handover_tables import DEFECT, HANDOVER
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.opening_tables import OPENING
from longpoint.survey.house_file.room_tables import ROOM, RUN
from longpoint.survey.house_file.season_tables import SEASON
from longpoint.survey.house_file.tool_tables import OFFCUT, PROFILE, SAW, STOCK, TAPE
from longpoint.survey.house_file.trim_tables import TRIM

FORMAT: Final = "longpoint-house/1"

HOUSE: Final = Table(
    title=say("the house"),
    keys=(
        Key(
            name="format",
            kind=Kind.TEXT,
            meaning=say("Which kind of file this is."),
            example=FORMAT,
            required=True,
            choices=(FORMAT,),
        ),
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning=say("The house's name."),
            example=say("Wren House"),
            required=True,
        ),
        Key(
            name="units",
            kind=Kind.CHOICE,
            meaning=say("Unit of every bare number that is a length."),
            example="mm",
            choices=("mm", "in"),
            default="mm",
            left_out="mm",
        ),
        Key(
            name="dialect",
            kind=Kind.CHOICE,
            meaning=say("Whose words stand on the sheets."),
            example="uk",
            choices=tuple(each.value for each in Dialect),
            default="uk",
            left_out="uk",
        ),
        Key(
            name="defaults",
            kind=Kind.TABLE,
            meaning=say("What holds wherever an opening, room or run says nothing else."),
            example=DEFAULTS.example(),
            left_out=say("what can be assumed is assumed, and said"),
            table=DEFAULTS,
        ),
        *(
            Key(
                name=name,
                kind=Kind.TABLE,
                meaning=meaning,
                example=table.example(),
                left_out=say("assumed, and said where there are openings"),
                table=table,
                apart=True,
            )
            for name, meaning, table in (
                ("crew", say("The crew: its walls, its time and its ways."), CREW),
                ("season", say("Air at fitting, and in the driest and dampest season."), SEASON),
            )
        ),
        Key(
            name="fixing",
            kind=Kind.TABLE,
            meaning=say("Nails, and the wall behind the trim."),
            example=FIXING.example(),
            left_out=say("what is assumed stands on the fixing sheet"),
            table=FIXING,
            apart=True,
        ),
        Key(
            name="handover",
            kind=Kind.TABLE,
            meaning=say("Handing over: by which guide, what is up, who fills."),
            example=HANDOVER.example(),
            left_out=say("what is assumed stands on the sheets"),
            table=HANDOVER,
            apart=True,
        ),
        *(
            Key(
                name=name,
                kind=Kind.NAMED_TABLES,
                meaning=meaning,
                example={named: table.example()},
                left_out=left_out,
                table=table,
            )
            for name, meaning, named, left_out, table in (
                (
                    "profiles",
                    say("Moulding sections, each under its name."),
                    "OG57",
                    "none",
                    PROFILE,
                ),
                ("tapes", say("Tapes, each under its name."), "T1", say("a class II tape"), TAPE),
                (
                    "saws",
                    say("Saws, each under its name."),
                    "S1",
                    say("kerf 3 mm, not proved"),
                    SAW,
                ),
            )
        ),
        *(
            Key(
                name=name,
                kind=Kind.TABLES,
                meaning=meaning,
                example=[table.example()],
                left_out="none",
                table=table,
            )
            for name, meaning, table in (
                ("stock", say("Sticks that can be bought."), STOCK),
                ("offcuts", say("Sticks on the rack, used first."), OFFCUT),
                ("openings", say("Windows, doors and cased openings."), OPENING),
                ("rooms", say("Rooms and chains of walls."), ROOM),
                ("runs", say("Skirting runs read on their own."), RUN),
                ("trims", say("All other trim, each by its kind in the catalogue."), TRIM),
                ("defects", say("What was found wrong."), DEFECT),
            )
        ),
    ),
)

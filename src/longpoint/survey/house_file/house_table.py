"""The keys at the top of a house file."""

from typing import Final

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
    title="the house",
    keys=(
        Key(
            name="format",
            kind=Kind.TEXT,
            meaning="Which kind of file this is.",
            example=FORMAT,
            required=True,
            choices=(FORMAT,),
        ),
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning="The house's name.",
            example="Wren House",
            required=True,
        ),
        Key(
            name="units",
            kind=Kind.CHOICE,
            meaning="Unit of every bare number that is a length.",
            example="mm",
            choices=("mm", "in"),
            default="mm",
            left_out="mm",
        ),
        Key(
            name="dialect",
            kind=Kind.CHOICE,
            meaning="Whose words stand on the sheets.",
            example="uk",
            choices=tuple(each.value for each in Dialect),
            default="uk",
            left_out="uk",
        ),
        Key(
            name="defaults",
            kind=Kind.TABLE,
            meaning="What holds wherever an opening, room or run says nothing else.",
            example=DEFAULTS.example(),
            left_out="what can be assumed is assumed, and said",
            table=DEFAULTS,
        ),
        *(
            Key(
                name=name,
                kind=Kind.TABLE,
                meaning=meaning,
                example=table.example(),
                left_out="assumed, and said where there are openings",
                table=table,
                apart=True,
            )
            for name, meaning, table in (
                ("crew", "The crew: its walls, its time and its ways.", CREW),
                ("season", "Air at fitting, and in the driest and dampest season.", SEASON),
            )
        ),
        Key(
            name="fixing",
            kind=Kind.TABLE,
            meaning="Nails, and the wall behind the trim.",
            example=FIXING.example(),
            left_out="what is assumed stands on the fixing sheet",
            table=FIXING,
            apart=True,
        ),
        Key(
            name="handover",
            kind=Kind.TABLE,
            meaning="Handing over: by which guide, what is up, who fills.",
            example=HANDOVER.example(),
            left_out="what is assumed stands on the sheets",
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
                ("profiles", "Moulding sections, each under its name.", "OG57", "none", PROFILE),
                ("tapes", "Tapes, each under its name.", "T1", "a class II tape", TAPE),
                ("saws", "Saws, each under its name.", "S1", "kerf 3 mm, not proved", SAW),
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
                ("stock", "Sticks that can be bought.", STOCK),
                ("offcuts", "Sticks on the rack, used first.", OFFCUT),
                ("openings", "Windows, doors and cased openings.", OPENING),
                ("rooms", "Rooms and chains of walls.", ROOM),
                ("runs", "Skirting runs read on their own.", RUN),
                ("trims", "All other trim, each by its kind in the catalogue.", TRIM),
                ("defects", "What was found wrong.", DEFECT),
            )
        ),
    ),
)

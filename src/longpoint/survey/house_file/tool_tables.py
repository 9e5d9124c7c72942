"""The keys of profiles, tapes, saws, stock and offcuts."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.instruments import SkirtingCut, TapeClass

ASSUMED_KERF_MM: Final = 3.0
ASSUMED_END_TRIM_MM: Final = 10.0
ASSUMED_KEEP_MM: Final = 300.0
STEP_MM: Final = 1.0
STEP_IN_INCHES_MM: Final = 25.4 / 16

PROFILE: Final = Table(
    title=say("a profile"),
    keys=(
        Key(
            name="face",
            kind=Kind.LENGTH,
            meaning=say("Width of the face across the wall; of skirting, its height."),
            example=57,
            required=True,
            above=True,
            high=600.0,
        ),
        Key(
            name="thickness",
            kind=Kind.LENGTH,
            meaning=say("How far it stands off the wall."),
            example=18,
            required=True,
            above=True,
            high=200.0,
        ),
        Key(
            name="reversible",
            kind=Kind.FLAG,
            meaning=say(
                "True when the section is the same from both edges, so a piece may be turned."
            ),
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="grain_matched",
            kind=Kind.FLAG,
            meaning=say(
                "True when an opening's pieces are wanted from one stick, "
                "where that costs nothing: for timber that stays visible."
            ),
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="material",
            kind=Kind.TEXT,
            meaning=say("What it is made of."),
            example=say("radiata pine"),
            left_out=say("not printed"),
        ),
        Key(
            name="section",
            kind=Kind.POINTS,
            meaning=say(
                "Corners of its cross-section in order round it, its back "
                "down: across from one edge of the face, up from the back. "
                "Drawn on the sheets; no length hangs on it."
            ),
            example=[[0, 0], [57, 0], [57, 12], [50, 18], [0, 18]],
            left_out=say("not drawn"),
            low=-600.0,
            high=600.0,
            most=400,
        ),
        Key(
            name="thin_edge",
            kind=Kind.LENGTH,
            meaning=say(
                "Thickness at the edge to the opening where the section is "
                "thinner there; for nails."
            ),
            example=9,
            left_out=say("as thick as the whole"),
            above=True,
            high=200.0,
        ),
    ),
)

TAPE_CHECK: Final = Table(
    title=say("a tape's check"),
    keys=(
        Key(
            name="stick",
            kind=Kind.LENGTH,
            meaning=say("Length of the stick it was checked on."),
            example=1000,
            required=True,
            above=True,
        ),
        Key(
            name="inside",
            kind=Kind.LENGTH,
            meaning=say("What it showed between two faces the stick's length apart."),
            example=1001.5,
            left_out=say("not checked"),
            above=True,
        ),
        Key(
            name="outside",
            kind=Kind.LENGTH,
            meaning=say("What it showed hooked over the end of the stick."),
            example=1000,
            left_out=say("not checked"),
            above=True,
        ),
    ),
)

TAPE: Final = Table(
    title=say("a tape"),
    keys=(
        Key(
            name="class",
            kind=Kind.CHOICE,
            meaning=say("Accuracy class printed on the blade."),
            example="II",
            choices=tuple(each.value for each in TapeClass),
            left_out=say("II, unless max_error is given"),
        ),
        Key(
            name="max_error",
            kind=Kind.LENGTH,
            meaning=say("Most it can be out by, at any length; stands instead of the class."),
            example=1.0,
            left_out=say("by its class"),
            high=50.0,
        ),
        Key(
            name="resolution",
            kind=Kind.LENGTH,
            meaning=say("Step to which it is read."),
            example=1,
            left_out=say("1 mm, or 1/16 in"),
            above=True,
            high=10.0,
        ),
        Key(
            name="take_off",
            kind=Kind.SIGNED_LENGTH,
            meaning=say("What it is known to read too much on an inside reading; taken off each."),
            example=1.5,
            default=0.0,
            left_out="0",
            low=-20.0,
            high=20.0,
        ),
        Key(
            name="check",
            kind=Kind.TABLE,
            meaning=say("What it showed on a stick of known length."),
            example={"stick": 1000, "inside": 1001.5, "outside": 1000},
            left_out=say("not checked"),
            table=TAPE_CHECK,
        ),
    ),
)

SAW_FOUND: Final = Table(
    title=say("a saw's test cuts"),
    keys=tuple(
        Key(
            name=swing,
            kind=Kind.ANGLE,
            meaning=(
                say(
                    "What a cut set to 45 with the saw swung {swing} really gave, in "
                    "degrees: 43 to 47, our limit.",
                    swing=swing,
                )
            ),
            example=example,
            left_out=say("that swing is not proved"),
            low=43.0,
            high=47.0,
            ours=True,
        )
        for swing, example in (("left", 45.1), ("right", 44.9))
    ),
)

SAW_DIALLED: Final = Table(
    title=say("what was dialled off"),
    keys=tuple(
        Key(
            name=swing,
            kind=Kind.ANGLE,
            meaning=(
                say(
                    "Degrees past 45 that the saw was set to, swung {swing}, when the "
                    "sets as built were cut: -2 to 2, our limit.",
                    swing=swing,
                )
            ),
            example=example,
            default=0.0,
            left_out="0",
            low=-2.0,
            high=2.0,
            ours=True,
        )
        for swing, example in (("left", -0.1), ("right", 0.1))
    ),
)

SAW: Final = Table(
    title=say("a saw"),
    keys=(
        Key(
            name="kerf",
            kind=Kind.LENGTH,
            meaning=say("Width of the saw cut."),
            example=2.4,
            default=ASSUMED_KERF_MM,
            left_out=say("3 mm"),
            above=True,
            high=20.0,
        ),
        Key(
            name="end_trim",
            kind=Kind.LENGTH,
            meaning=(
                say(
                    "Taken off both ends of a new stick; an offcut loses one kerf at "
                    "each end instead."
                )
            ),
            example=10,
            default=ASSUMED_END_TRIM_MM,
            left_out=say("10 mm"),
            high=1000.0,
        ),
        Key(
            name="found",
            kind=Kind.TABLE,
            meaning=say("What a cut set to 45 really gave."),
            example={"left": 45.1, "right": 44.9},
            left_out=say("the saw is not proved"),
            table=SAW_FOUND,
        ),
        Key(
            name="keep",
            kind=Kind.LENGTH,
            meaning=say("An offcut this long goes back on the rack."),
            example=300,
            default=ASSUMED_KEEP_MM,
            left_out=say("300 mm"),
        ),
        Key(
            name="skirting",
            kind=Kind.CHOICE,
            meaning=say(
                "How skirting is held for its bevels: lying flat, or standing at the fence."
            ),
            example="flat",
            choices=tuple(each.value for each in SkirtingCut),
            default="flat",
            left_out="flat",
        ),
        Key(
            name="blade",
            kind=Kind.TEXT,
            meaning=say("Name of the blade in it: what was learned with another doesn't hold."),
            example=say("60 tooth"),
            left_out=say("one blade for all that is written down"),
        ),
        Key(
            name="setting",
            kind=Kind.TEXT,
            meaning=say(
                "Name of the stop setting it stands at; a new one once the stop was set anew."
            ),
            example=say("after the move"),
            left_out=say("one setting for all that is written down"),
        ),
        Key(
            name="dialled",
            kind=Kind.TABLE,
            meaning=say("What was dialled off 45 when the sets as built were cut."),
            example={"left": -0.1, "right": 0.1},
            left_out=say("cut at the stop"),
            table=SAW_DIALLED,
        ),
    ),
)

_STICK_PROFILE: Final = Key(
    name="profile",
    kind=Kind.TEXT,
    meaning=say("Its profile, by its name under [profiles]."),
    example="OG57",
    required=True,
)

STOCK: Final = Table(
    title=say("a stick of stock"),
    keys=(
        _STICK_PROFILE,
        Key(
            name="length",
            kind=Kind.LENGTH,
            meaning=say("Length of a new stick."),
            example=5400,
            required=True,
            above=True,
        ),
        Key(
            name="price",
            kind=Kind.PRICE,
            meaning=say("Price of one stick, to the thousandth."),
            example=14.6,
            left_out=say("lengths are compared by metres"),
            high=1_000_000.0,
        ),
        Key(
            name="count",
            kind=Kind.COUNT,
            meaning=say("How many there are."),
            example=12,
            left_out=say("as many as needed"),
            high=100_000.0,
        ),
        Key(
            name="supplier",
            kind=Kind.TEXT,
            meaning=say("Who sells it; longpoint order writes one order for each."),
            example=say("Harrow Timber"),
            left_out=say("it stands in an order without a name"),
        ),
        Key(
            name="code",
            kind=Kind.TEXT,
            meaning=say("The supplier's own code for this stick; printed on the order."),
            example="HT-1057-54",
            left_out="none",
        ),
    ),
)

OFFCUT: Final = Table(
    title=say("an offcut"),
    keys=(
        _STICK_PROFILE,
        Key(
            name="length",
            kind=Kind.LENGTH,
            meaning=say("Its length."),
            example=1310,
            required=True,
            above=True,
        ),
        Key(
            name="count",
            kind=Kind.COUNT,
            meaning=say("How many there are; with a label, it is one."),
            example=2,
            default=1,
            left_out="1",
            high=100_000.0,
        ),
        Key(
            name="label",
            kind=Kind.MARK,
            meaning=say("Its label on the crew's rack; longpoint plan --rack writes it."),
            example="EMKR",
            left_out=say("it has none"),
        ),
    ),
)

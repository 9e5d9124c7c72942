"""The keys of profiles, tapes, saws, stock and offcuts."""

from typing import Final

from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.instruments import SkirtingCut, TapeClass

ASSUMED_KERF_MM: Final = 3.0
ASSUMED_END_TRIM_MM: Final = 10.0
ASSUMED_KEEP_MM: Final = 300.0
STEP_MM: Final = 1.0
STEP_IN_INCHES_MM: Final = 25.4 / 16

PROFILE: Final = Table(
    title="a profile",
    keys=(
        Key(
            name="face",
            kind=Kind.LENGTH,
            meaning="Width of the face across the wall; of skirting, its height.",
            example=57,
            required=True,
            above=True,
            high=600.0,
        ),
        Key(
            name="thickness",
            kind=Kind.LENGTH,
            meaning="How far it stands off the wall.",
            example=18,
            required=True,
            above=True,
            high=200.0,
        ),
        Key(
            name="reversible",
            kind=Kind.FLAG,
            meaning="True when the section is the same from both edges, so a piece may be turned.",
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="grain_matched",
            kind=Kind.FLAG,
            meaning="True when an opening's pieces are wanted from one stick, where that costs"
            " nothing: for timber that stays visible.",
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="material",
            kind=Kind.TEXT,
            meaning="What it is made of.",
            example="radiata pine",
            left_out="not printed",
        ),
        Key(
            name="section",
            kind=Kind.POINTS,
            meaning="Corners of its cross-section in order round it, its back down: across from one"
            " edge of the face, up from the back. Drawn on the sheets; no length hangs on it.",
            example=[[0, 0], [57, 0], [57, 12], [50, 18], [0, 18]],
            left_out="not drawn",
            low=-600.0,
            high=600.0,
            most=400,
        ),
        Key(
            name="thin_edge",
            kind=Kind.LENGTH,
            meaning="Thickness at the edge to the opening where the section is thinner there; "
            "for nails.",
            example=9,
            left_out="as thick as the whole",
            above=True,
            high=200.0,
        ),
    ),
)

TAPE_CHECK: Final = Table(
    title="a tape's check",
    keys=(
        Key(
            name="stick",
            kind=Kind.LENGTH,
            meaning="Length of the stick it was checked on.",
            example=1000,
            required=True,
            above=True,
        ),
        Key(
            name="inside",
            kind=Kind.LENGTH,
            meaning="What it showed between two faces the stick's length apart.",
            example=1001.5,
            left_out="not checked",
            above=True,
        ),
        Key(
            name="outside",
            kind=Kind.LENGTH,
            meaning="What it showed hooked over the end of the stick.",
            example=1000,
            left_out="not checked",
            above=True,
        ),
    ),
)

TAPE: Final = Table(
    title="a tape",
    keys=(
        Key(
            name="class",
            kind=Kind.CHOICE,
            meaning="Accuracy class printed on the blade.",
            example="II",
            choices=tuple(each.value for each in TapeClass),
            left_out="II, unless max_error is given",
        ),
        Key(
            name="max_error",
            kind=Kind.LENGTH,
            meaning="Most it can be out by, at any length; stands instead of the class.",
            example=1.0,
            left_out="by its class",
            high=50.0,
        ),
        Key(
            name="resolution",
            kind=Kind.LENGTH,
            meaning="Step to which it is read.",
            example=1,
            left_out="1 mm, or 1/16 in",
            above=True,
            high=10.0,
        ),
        Key(
            name="take_off",
            kind=Kind.SIGNED_LENGTH,
            meaning="What it is known to read too much on an inside reading; taken off each.",
            example=1.5,
            default=0.0,
            left_out="0",
            low=-20.0,
            high=20.0,
        ),
        Key(
            name="check",
            kind=Kind.TABLE,
            meaning="What it showed on a stick of known length.",
            example={"stick": 1000, "inside": 1001.5, "outside": 1000},
            left_out="not checked",
            table=TAPE_CHECK,
        ),
    ),
)

SAW_FOUND: Final = Table(
    title="a saw's test cuts",
    keys=tuple(
        Key(
            name=swing,
            kind=Kind.ANGLE,
            meaning=(
                f"What a cut set to 45 with the saw swung {swing} really gave, in degrees: "
                "43 to 47, our limit."
            ),
            example=example,
            left_out="that swing is not proved",
            low=43.0,
            high=47.0,
            ours=True,
        )
        for swing, example in (("left", 45.1), ("right", 44.9))
    ),
)

SAW_DIALLED: Final = Table(
    title="what was dialled off",
    keys=tuple(
        Key(
            name=swing,
            kind=Kind.ANGLE,
            meaning=(
                f"Degrees past 45 that the saw was set to, swung {swing}, when the sets as built "
                "were cut: -2 to 2, our limit."
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
    title="a saw",
    keys=(
        Key(
            name="kerf",
            kind=Kind.LENGTH,
            meaning="Width of the saw cut.",
            example=2.4,
            default=ASSUMED_KERF_MM,
            left_out="3 mm",
            above=True,
            high=20.0,
        ),
        Key(
            name="end_trim",
            kind=Kind.LENGTH,
            meaning=(
                "Taken off both ends of a new stick; an offcut loses one kerf at each end instead."
            ),
            example=10,
            default=ASSUMED_END_TRIM_MM,
            left_out="10 mm",
            high=1000.0,
        ),
        Key(
            name="found",
            kind=Kind.TABLE,
            meaning="What a cut set to 45 really gave.",
            example={"left": 45.1, "right": 44.9},
            left_out="the saw is not proved",
            table=SAW_FOUND,
        ),
        Key(
            name="keep",
            kind=Kind.LENGTH,
            meaning="An offcut this long goes back on the rack.",
            example=300,
            default=ASSUMED_KEEP_MM,
            left_out="300 mm",
        ),
        Key(
            name="skirting",
            kind=Kind.CHOICE,
            meaning="How skirting is held for its bevels: lying flat, or standing at the fence.",
            example="flat",
            choices=tuple(each.value for each in SkirtingCut),
            default="flat",
            left_out="flat",
        ),
        Key(
            name="blade",
            kind=Kind.TEXT,
            meaning="Name of the blade in it: what was learned with another doesn't hold.",
            example="60 tooth",
            left_out="one blade for all that is written down",
        ),
        Key(
            name="setting",
            kind=Kind.TEXT,
            meaning="Name of the stop setting it stands at; a new one once the stop was set anew.",
            example="after the move",
            left_out="one setting for all that is written down",
        ),
        Key(
            name="dialled",
            kind=Kind.TABLE,
            meaning="What was dialled off 45 when the sets as built were cut.",
            example={"left": -0.1, "right": 0.1},
            left_out="cut at the stop",
            table=SAW_DIALLED,
        ),
    ),
)

_STICK_PROFILE: Final = Key(
    name="profile",
    kind=Kind.TEXT,
    meaning="Its profile, by its name under [profiles].",
    example="OG57",
    required=True,
)

STOCK: Final = Table(
    title="a stick of stock",
    keys=(
        _STICK_PROFILE,
        Key(
            name="length",
            kind=Kind.LENGTH,
            meaning="Length of a new stick.",
            example=5400,
            required=True,
            above=True,
        ),
        Key(
            name="price",
            kind=Kind.PRICE,
            meaning="Price of one stick.",
            example=14.6,
            left_out="lengths are compared by metres",
            high=1_000_000.0,
        ),
        Key(
            name="count",
            kind=Kind.COUNT,
            meaning="How many there are.",
            example=12,
            left_out="as many as needed",
            high=100_000.0,
        ),
        Key(
            name="supplier",
            kind=Kind.TEXT,
            meaning="Who sells it; longpoint order writes one order for each.",
            example="Harrow Timber",
            left_out="it stands in an order without a name",
        ),
        Key(
            name="code",
            kind=Kind.TEXT,
            meaning="The supplier's own code for this stick; printed on the order.",
            example="HT-1057-54",
            left_out="none",
        ),
    ),
)

OFFCUT: Final = Table(
    title="an offcut",
    keys=(
        _STICK_PROFILE,
        Key(
            name="length",
            kind=Kind.LENGTH,
            meaning="Its length.",
            example=1310,
            required=True,
            above=True,
        ),
        Key(
            name="count",
            kind=Kind.COUNT,
            meaning="How many there are; with a label, it is one.",
            example=2,
            default=1,
            left_out="1",
            high=100_000.0,
        ),
        Key(
            name="label",
            kind=Kind.MARK,
            meaning="Its label on the crew's rack; longpoint plan --rack writes it.",
            example="EMKR",
            left_out="it has none",
        ),
    ),
)

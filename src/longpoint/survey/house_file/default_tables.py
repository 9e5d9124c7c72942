"""The keys of the defaults, most of which stand at openings and rooms too."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.openings import ApronEnds, Flush, Joint, Method, Mitres

WIDEST_QUIRK_MM: Final = 100.0
ASSUMED_QUIRK_MM: Final = 5.0
ASSUMED_BAND_MM: Final = 2.0
"""How far from its set quirk a trim may stand when the crew states no band; assumed."""
ASSUMED_MAX_GAP_MM: Final = 0.5

METHODS: Final = tuple(method.value for method in Method)

QUIRK: Final = Key(
    name="quirk",
    kind=Kind.SIDE_LENGTHS,
    meaning=say("Set-back of the architrave from the lining's edge: one figure, or one per side."),
    example={"head": 5, "left": 5, "right": 5, "sill": 5},
    default=ASSUMED_QUIRK_MM,
    left_out=say("5 mm on every side"),
    high=WIDEST_QUIRK_MM,
)
QUIRK_BAND: Final = Key(
    name="quirk_band",
    kind=Kind.BAND,
    meaning=say("Least and most quirk that the crew accepts anywhere along a side."),
    example=[3, 7],
    left_out=say("the quirk less 2 mm, but not under 0, to the quirk and 2 mm"),
    high=WIDEST_QUIRK_MM,
)
ARCHITRAVE: Final = Key(
    name="architrave",
    kind=Kind.SIDE_NAMES,
    meaning=say(
        "Profile round the opening: one name, or one per side (sill: sill piece or apron)."
    ),
    example="OG57",
    left_out=say("every opening has to name its own"),
)
BOARD: Final = Key(
    name="board",
    kind=Kind.TEXT,
    meaning=say("Profile of the window board, where a window has one to be cut."),
    example="WB140",
    left_out=say("no window board is cut"),
)
HORN: Final = Key(
    name="horn",
    kind=Kind.LENGTH,
    meaning=say("How far the window board runs past the architrave at each end."),
    example=20,
    default=0.0,
    left_out="0",
    high=1000.0,
)
TAPE_NAME: Final = Key(
    name="tape",
    kind=Kind.TEXT,
    meaning=say("The tape that read it, by its name under [tapes]."),
    example="T1",
    left_out=say("the default tape"),
)
MAX_GAP: Final = Key(
    name="max_gap",
    kind=Kind.LENGTH,
    meaning=say("Widest open joint that the crew lets pass."),
    example=0.5,
    default=ASSUMED_MAX_GAP_MM,
    left_out=say("0.5 mm"),
    above=True,
    high=10.0,
)
METHOD: Final = Key(
    name="method",
    kind=Kind.CHOICE,
    meaning=(
        say(
            "Way of fixing. batch: all cut, legs nailed once, tapped; in-place: marked "
            "off the pieces already up; bench: frames made first."
        )
    ),
    example="batch",
    choices=METHODS,
    default="batch",
    left_out="batch",
)
MITRES: Final = Key(
    name="mitres",
    kind=Kind.CHOICE,
    meaning=(
        say(
            "What the saw is set to for mitres cut in batch. as-read: the angles that "
            "the readings give; at-stop: its stop at 45, the quirk takes the "
            "difference."
        )
    ),
    example="as-read",
    choices=tuple(each.value for each in Mitres),
    default=Mitres.AS_READ.value,
    left_out="as-read",
)
TAP_ROOM: Final = Key(
    name="tap_room",
    kind=Kind.LENGTH,
    meaning=say("How far a leg can still be tapped over once its nails are in."),
    example=1,
    left_out=say("not limited"),
    high=100.0,
)
FLOOR_COVER: Final = Key(
    name="floor_cover",
    kind=Kind.LENGTH,
    meaning=say("Thickness still to be laid under legs and skirting."),
    example=0,
    default=0.0,
    left_out="0",
    high=300.0,
)
ACCEPT: Final = Key(
    name="accept",
    kind=Kind.CODES,
    meaning=say("Codes of findings that the crew has looked at and accepts here."),
    example=["diagonals-differ"],
    left_out="none",
)

JOINT: Final = Key(
    name="joint",
    kind=Kind.CHOICE,
    meaning=(
        say(
            "How the pieces of a set meet. mitre: bisecting each corner; butt: the "
            "head runs through over square legs; blocks: square pieces between corner "
            "blocks."
        )
    ),
    example="mitre",
    choices=tuple(each.value for each in Joint),
    default=Joint.MITRE.value,
    left_out="mitre",
)
HEAD_HORN: Final = Key(
    name="head_horn",
    kind=Kind.LENGTH,
    meaning=say("How far a butt head runs past the legs at each end."),
    example=12,
    default=0.0,
    left_out="0",
    high=500.0,
)
CORNER_BLOCK: Final = Key(
    name="corner_block",
    kind=Kind.TEXT,
    meaning=say("Profile of the corner blocks; its face is the block's side."),
    example="CB70",
    left_out=say("needed where joint is blocks"),
)
BACK_BAND: Final = Key(
    name="back_band",
    kind=Kind.TEXT,
    meaning=say("Profile that goes round the outer edge of the set."),
    example="BB22",
    left_out="none",
)
PLINTH: Final = Key(
    name="plinth",
    kind=Kind.TEXT,
    meaning=say("Profile of the plinth blocks under the legs."),
    example="PB70",
    left_out=say("none: the legs stand on the floor"),
)
PLINTH_HEIGHT: Final = Key(
    name="plinth_height",
    kind=Kind.LENGTH,
    meaning=say("Height of the plinth blocks."),
    example=150,
    left_out=say("needed where there are plinth blocks"),
    above=True,
    high=1000.0,
)
APRON_ENDS: Final = Key(
    name="apron_ends",
    kind=Kind.CHOICE,
    meaning=say(
        "How the apron's ends are finished. return: mitred, with a small piece to the wall."
    ),
    example="square",
    choices=tuple(each.value for each in ApronEnds),
    default=ApronEnds.SQUARE.value,
    left_out="square",
)
FLUSH: Final = Key(
    name="flush",
    kind=Kind.CHOICE,
    meaning=(
        say(
            "What is done where the lining stands proud or sits shy; one thing only. "
            "leave: cut flat; pack: both pieces to one tilt; back-bevel: backs "
            "relieved; re-set: the reveal first."
        )
    ),
    example="leave",
    choices=tuple(each.value for each in Flush),
    default=Flush.LEAVE.value,
    left_out=say("leave; the findings tell what each way would need"),
)
WEDGE: Final = Key(
    name="wedge",
    kind=Kind.TEXT,
    meaning=say(
        "Profile that small wedges are cut from, where they are to stand on the cut sheet."
    ),
    example="WG20",
    left_out=say("wedges are named, not cut"),
)

DEFAULTS: Final = Table(
    title=say("the defaults"),
    keys=(
        QUIRK,
        QUIRK_BAND,
        ARCHITRAVE,
        Key(
            name="skirting",
            kind=Kind.TEXT,
            meaning=say("Profile of the skirting."),
            example="SK95",
            left_out=say("every run and wall has to name its own"),
        ),
        BOARD,
        HORN,
        APRON_ENDS,
        JOINT,
        HEAD_HORN,
        CORNER_BLOCK,
        PLINTH,
        PLINTH_HEIGHT,
        BACK_BAND,
        FLUSH,
        WEDGE,
        Key(
            name="tape",
            kind=Kind.TEXT,
            meaning=say("The tape that read the house, by its name under [tapes]."),
            example="T1",
            left_out=say("the first tape described"),
        ),
        Key(
            name="saw_tape",
            kind=Kind.TEXT,
            meaning=say("The tape that marks at the saw, by its name under [tapes]."),
            example="T1",
            left_out=say("the tape that read the house"),
        ),
        Key(
            name="saw",
            kind=Kind.TEXT,
            meaning=say("The saw in use, by its name under [saws]."),
            example="S1",
            left_out=say("the first saw described"),
        ),
        MAX_GAP,
        METHOD,
        MITRES,
        TAP_ROOM,
        FLOOR_COVER,
        Key(
            name="floor_gap",
            kind=Kind.LENGTH,
            meaning=say("Gap left between the floor and the skirting."),
            example=1,
            default=0.0,
            left_out="0",
            high=100.0,
        ),
        Key(
            name="max_run",
            kind=Kind.LENGTH,
            meaning=say("Longest piece of skirting the crew will carry; longer runs get a joint."),
            example=4800,
            left_out=say("as long as the longest stick gives"),
            low=100.0,
        ),
    ),
)

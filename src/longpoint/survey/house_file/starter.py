"""The file that a carpenter starts from: it plans as it stands, and says what each line means."""

import json
from string import Template
from typing import Final

from longpoint.errors import SurveyError
from longpoint.quantities.length import Units
from longpoint.survey.house import Dialect
from longpoint.survey.house_file.house_table import FORMAT
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_text import read_text

COMMENT_COLUMN: Final = 27

_WORDS: Final = {
    "architrave": "architrave",
    "skirting": "skirting",
    "quirk": "quirk (margin)",
    "reveal": "lining",
    "board": "window board",
}
_WORDS_NORTH_AMERICA: Final = {
    "architrave": "casing",
    "skirting": "baseboard",
    "quirk": "reveal (set-back)",
    "reveal": "jamb",
    "board": "stool",
}
_WORDS_SOUTH: Final = {**_WORDS, "quirk": "quirk", "reveal": "reveal"}

_MM: Final = {
    "quirk": "5",
    "band": "[3, 7]",
    "gap": "0.5",
    "nail": "50",
    "brad": "30",
    "lining": "19",
    "floor_gap": "1",
    "face": "57",
    "thickness": "18",
    "height": "95",
    "depth": "16",
    "resolution": "1",
    "kerf": "2.4",
    "end_trim": "10",
    "keep": "300",
    "long": "5400",
    "short": "3600",
    "offcut": "1310",
    "top": "1187",
    "bottom": "1186",
    "left": "462",
    "right": "[462, 461]",
    "rising": "1274",
    "falling": "1273",
    "proud": "1",
    "edge": "19",
    "door_top": "764",
    "door_bottom": "763",
    "door_left": "2030",
    "door_right": "2031",
    "door_rising": "2169",
    "door_falling": "2169",
    "wall_long": "3600",
    "wall_short": "2800",
    "from_left": "900",
    "run": "2284",
    "gap_read": "[0.35, 0]",
    "check": "{ stick = 1000, inside = 1000.5, outside = 1000 }",
    "as_text": '1187 or "1187.5"',
}
_INCHES: Final = {
    "quirk": '"3/16"',
    "band": '["1/8", "1/4"]',
    "gap": '"1/64"',
    "nail": "2 1/2",
    "brad": "1 1/4",
    "lining": '"3/4"',
    "floor_gap": '"1/16"',
    "face": '"2 1/4"',
    "thickness": '"11/16"',
    "height": '"3 3/4"',
    "depth": '"5/8"',
    "resolution": '"1/16"',
    "kerf": '"3/32"',
    "end_trim": '"3/8"',
    "keep": "12",
    "long": '"16\'"',
    "short": '"12\'"',
    "offcut": '"51 1/2"',
    "top": '"46 3/4"',
    "bottom": '"46 11/16"',
    "left": '"18 3/16"',
    "right": '["18 3/16", "18 1/8"]',
    "rising": '"50 3/16"',
    "falling": '"50 1/8"',
    "proud": '"1/16"',
    "edge": '"3/4"',
    "door_top": '"30 1/16"',
    "door_bottom": '"30 1/16"',
    "door_left": '"79 15/16"',
    "door_right": '"79 15/16"',
    "door_rising": '"85 3/8"',
    "door_falling": '"85 7/16"',
    "wall_long": '"11\' 10\\""',
    "wall_short": '"9\' 2\\""',
    "from_left": '"35 1/2"',
    "run": '"89 15/16"',
    "gap_read": '["1/64", 0]',
    "check": '{ stick = 36, inside = "36 1/16", outside = 36 }',
    "as_text": '"46 3/4" or "3\' 10 3/4\\""',
}

_TEXT: Final = Template("""\
# One house, one file. Change the figures to what you read on site; take out what you don't need.
# A line that starts with # is for you only.
# Lengths are written like $as_text. Read something twice? Write both: [a, b].
# When a line can't be read, its opening, room or run is held and the sheets say why.

format  = "$format"
name    = $name
units   = "$units"              # mm, or in for inches
dialect = "$dialect"              # whose words stand on the sheets: au nz uk ie us ca

# What holds everywhere, unless an opening or a run says something else.
[defaults]
quirk = $quirk                   # $quirk_word: how far the $architrave stands back from the edge
quirk_band = $band         # the least and the most that looks right to you
architrave = "ARC1"         # $architrave, by its name further down
skirting   = "SKT1"         # $skirting, by its name further down
tape = "T1"                 # read and mark with the same tape: its error then cancels
saw  = "S1"
max_gap = $gap               # the widest open joint you let pass
method = "batch"            # batch: all cut first; in-place: marked off what is up; bench: frames
floor_cover = 0             # still to be laid under legs and $skirting; 0: the floor is finished
floor_gap = $floor_gap               # left free under the $skirting

# For the forecast: what your time is worth, in minutes, and the air the trim meets.
# [crew]
# walls = "old"               # new or old: how far out of square to expect
# refit = 12                  # a misfit taken off, recut and fitted again
# batch_saves = 1.2           # saved at each opening by cutting all in one batch
# [season]
# moisture = 11               # of the wood at fitting, percent; or fitting = { humidity = 55 }
# driest = { humidity = 35, temperature = 20 }
# dampest = { humidity = 65, temperature = 20 }

# For the fixing sheet and for handing over; all of it can wait until the pieces are cut.
# [fixing]
# nails = ["16 x $nail", "18 x $brad"]    # gauge x length of what you have
# lining = $lining                 # thickness of the linings' edge
# built = 1962                # year of the house, for old paint
# [handover]
# contract = 2026-03-01       # chooses the edition of the guide that joints are judged by
# fills = "painter"           # who fills nail holes; caulks likewise
# fixed = ["W1"]              # what is up; a room's name stands for all of it

# Each section you use. face: what you see across the wall; for $skirting, its height.
[profiles.ARC1]
face = $face
thickness = $thickness
reversible = false          # true: both edges alike, so a piece may be turned end for end
material = "pine, primed"

[profiles.SKT1]
face = $height
thickness = $depth
material = "pine, primed"

[tapes.T1]
class = "II"                # printed at the start of the blade
resolution = $resolution              # the step you read to
# check = $check   # what it shows on a known stick

[saws.S1]
kerf = $kerf                  # width of the cut
end_trim = $end_trim               # off both ends of a new stick
keep = $keep                  # an offcut this long goes back on the rack
# found = { left = 45.1, right = 44.9 }   # what a cut set to 45 really gave, each way

# What the merchant has. Leave price out and lengths are compared by metres.
[[stock]]
profile = "ARC1"
length = $long
price = 14.60
[[stock]]
profile = "SKT1"
length = $long
price = 19.40
[[stock]]
profile = "SKT1"
length = $short
price = 13.10

# What lies on the rack already.
[[offcuts]]
profile = "ARC1"
length = $offcut
count = 1

# A window, seen from inside the room. All between the faces of the $reveal, at its front edge.
[[openings]]
mark = "W1"
room = "Kitchen"
kind = "window"             # window, door, or cased: an opening without a door
trim = "all-round"          # all-round, legs-and-head, or board-and-apron (on a $board)
top = $top
bottom = $bottom
left = $left
right = $right
rising = $rising               # corner to corner, bottom left to top right
falling = $falling              # corner to corner, top left to bottom right
plane = { tl = 0, tr = 0, br = 0, bl = $proud }   # $reveal against the wall: + proud, - shy
lining_edge = $edge            # thickness of its edge that you see
# Once it is up, before filling: gaps at heel and toe, quirks; "?" where you read nothing.
# as_built = { gaps = { bl = $gap_read, tl = [0, "?"] }, quirks = { left = $quirk } }

# A door: left and right from the finished floor to the head, bottom at the floor.
[[openings]]
mark = "D1"
room = "Kitchen"
kind = "door"
trim = "legs-and-head"
top = $door_top
bottom = $door_bottom
left = $door_left
right = $door_right
rising = $door_rising
falling = $door_falling

# A room for its $skirting: its walls in order, turning to the right, facing each from inside.
[[rooms]]
name = "Kitchen"

[[rooms.walls]]
mark = "N"
length = $wall_long
corner = 90.0               # at its right-hand end; under 180 internal, over 180 external
skirting = true             # work out the pieces of this wall
[[rooms.walls]]
mark = "E"
length = $wall_short
corner = 90.0
skirting = true
[[rooms.walls]]
mark = "S"
length = $wall_long
corner = 90.0
openings = [{ mark = "D1", from_left = $from_left }]   # left-hand corner to the $reveal
skirting = true
[[rooms.walls]]
mark = "W"
length = $wall_short
corner = 90.0
skirting = true

# One length of $skirting read on its own.
[[runs]]
mark = "R1"
room = "Loft"
length = $run
left = "internal"           # internal, external, square, return, or architrave:
right = "square"            # then read to the outer edge of where the $architrave will be
""")


def starter_house(name: str, units: Units = Units.MM, dialect: Dialect = Dialect.UK) -> str:
    """Return a house file to start from, in TOML, each line explained.

    Args:
        name: Name of the house.
        units: Unit in which it will be read.
        dialect: Whose words stand in it and on the sheets.

    Raises:
        SurveyError: The name can't be printed, or is too long.

    Example:
        >>> print(starter_house("Wren House").splitlines()[6])
        name    = "Wren House"
    """
    try:
        text = read_text(name, "The house's name")
    except HouseFileTrouble as trouble:
        raise SurveyError(trouble.read, trouble.wrong, trouble.do) from None
    words = _words(dialect)
    figures = _INCHES if units is Units.INCH else _MM
    filled = _TEXT.substitute(
        figures,
        format=FORMAT,
        name=json.dumps(text, ensure_ascii=False),
        units=units.value,
        dialect=dialect.value,
        architrave=words["architrave"],
        skirting=words["skirting"],
        quirk_word=words["quirk"],
        reveal=words["reveal"],
        board=words["board"],
    )
    return "\n".join(_aligned(line) for line in filled.split("\n"))


def _aligned(line: str) -> str:
    """Return a line with the comment behind a value moved to the column of the others."""
    value, gap, comment = line.partition("  # ")
    if not gap or line.startswith("#"):
        return line
    return f"{value.rstrip():<{COMMENT_COLUMN}} # {comment.lstrip()}"


def _words(dialect: Dialect) -> dict[str, str]:
    match dialect:
        case Dialect.UK | Dialect.IE:
            return _WORDS
        case Dialect.AU | Dialect.NZ:
            return _WORDS_SOUTH
        case Dialect.US | Dialect.CA:
            return _WORDS_NORTH_AMERICA

"""A window bay as written down: its lights from left to right and the corners between them."""

from dataclasses import dataclass
from typing import Any, Final

from longpoint.catalogue.reveals.reveals import Reveal, reveal_of
from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.quantities.formatting import format_angle
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.trims.bays import BayEnd, bay_ends

LEAST_CORNER_DEG: Final = 60.0
"""Ours: a sharper corner asks for a mitre of more than 60, which a saw bench doesn't turn to."""

MOST_MM: Final = 10_000.0


def _reading(name: str, meaning: str, example: float, left_out: str) -> Key:
    return Key(
        name=name,
        kind=Kind.READING,
        meaning=meaning,
        example=example,
        left_out=left_out,
        high=MOST_MM,
    )


def _profile(name: str, what: str, example: str) -> Key:
    return Key(
        name=name,
        kind=Kind.TEXT,
        meaning=say("Profile of {what}.", what=what),
        example=example,
        left_out=say("none is cut"),
    )


LIGHT: Final = Table(
    title=say("a light of a bay"),
    keys=(
        Key(
            name="width",
            kind=Kind.READING,
            meaning=say(
                "Along the frame line, where the board's back edge lies, corner to corner."
            ),
            example=1180,
            required=True,
            above=True,
            high=MOST_MM,
        ),
        Key(
            name="opening",
            kind=Kind.TEXT,
            meaning=say("Mark of the opening in it."),
            example="W1",
            left_out=say("not looked at"),
        ),
        _reading(
            "left_wall",
            say("On the wall's face, from the left corner to the opening."),
            96,
            say("not read"),
        ),
        _reading(
            "right_wall",
            say("On the wall's face, from the opening to the right corner."),
            94,
            say("not read"),
        ),
    ),
)


def _past(side: str) -> Key:
    return Key(
        name=f"{side}_past",
        kind=Kind.SIGNED_LENGTH,
        meaning=say(
            "How far head and apron run past the bay at its {side}; negative: short of it.",
            side=side,
        ),
        example=0,
        default=0.0,
        left_out=say("to the end"),
        low=-MOST_MM,
        high=MOST_MM,
    )


ASKS: Final = (
    Key(
        name="lights",
        kind=Kind.TABLES,
        meaning=say("Its lights, from left to right as seen from the room."),
        example=[{"width": 520, "opening": "W2"}, {"width": 1180, "opening": "W1"}],
        required=True,
        table=LIGHT,
    ),
    Key(
        name="corners",
        kind=Kind.ANGLES,
        meaning=say(
            "Angle on the room's side at each corner between two lights, from left to right."
        ),
        example=[135],
        required=True,
        high=360.0,
    ),
    Key(
        name="end_corners",
        kind=Kind.ANGLES,
        meaning=say(
            "Angle on the room's side between the frame line and what the "
            "board ends on, left and right."
        ),
        example=[90, 90],
        left_out=say("90 at both ends"),
        low=30.0,
        high=150.0,
        ours=True,
    ),
    _reading(
        "mouth",
        say("Between the two ends of the frame line, to see that the bay closes."),
        1590,
        say("not looked at"),
    ),
    _reading(
        "reveal",
        say("From the frame line to the wall's face in the room."),
        100,
        say("no head or apron is cut"),
    ),
    _profile("board", say("the window board"), "WB225"),
    _reading(
        "board_depth",
        say("From the frame line to the board's front edge."),
        210,
        say("the whole profile"),
    ),
    _profile("head", say("a head that runs round the bay"), "OG90"),
    _profile("apron", say("the apron under the board"), "OG90"),
    _past("left"),
    _past("right"),
    _profile("cover", say("what covers the corners between the legs"), "ST32"),
    _reading("cover_height", say("Height of the corner covers."), 1400, say("no cover is cut")),
    Key(
        name="cover_kind",
        kind=Kind.CHOICE,
        meaning=say("pair: two strips that meet in the corner; strip: one across it."),
        example="pair",
        default="pair",
        choices=("pair", "strip"),
        left_out="pair",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Light:
    """One light of a bay.

    Attributes:
        number: From 1, left to right.
        line_mm: Along the frame line.
        left: Its left end in plan.
        right: Its right end.
        reveal: The opening in it; None where none is named.
        left_wall_mm: From the left corner to the opening on the wall's face; None: not read.
        right_wall_mm: From the opening to the right corner.
    """

    number: int
    line_mm: float
    left: BayEnd
    right: BayEnd
    reveal: Reveal | None
    left_wall_mm: float | None
    right_wall_mm: float | None

    @property
    def name(self) -> str:
        """Mark of its opening, or its number."""
        return (
            say("light {number}", number=self.number)
            if self.reveal is None
            else self.reveal.opening.mark
        )

    @property
    def short_mm_per_mm(self) -> tuple[float, float]:
        """How much a line into the room is shorter at its left and right end, per mm."""
        return self.left.short_mm(1.0), self.right.short_mm(1.0)

    @property
    def wall_read_mm(self) -> float | None:
        """Its wall from corner to corner as the opening and what stands beside it give it."""
        if self.reveal is None or self.left_wall_mm is None or self.right_wall_mm is None:
            return None
        return self.left_wall_mm + self.reveal.fitted.side_mm[0] + self.right_wall_mm


def read_lights(asked: Asked) -> tuple[Light, ...]:
    """Return the lights of a bay, left to right.

    Args:
        asked: The entry.

    Raises:
        PieceError: Corners and lights don't belong together, a corner can't be mitred, or a light
            names an opening that isn't there or is held.
    """
    written, corners = asked.get("lights"), asked.get("corners")
    if len(corners) != len(written) - 1 or not corners:
        raise PieceError(
            say(
                "{mark} has {written} lights and {corners} corners.",
                mark=asked.mark,
                written=len(written),
                corners=len(corners),
            ),
            say("Between the lights of a bay there is one corner fewer, and at least one."),
            say("Write every light and every corner between two, from left to right."),
        )
    for corner in corners:
        _check_corner(asked, corner)
    ends = asked.get("end_corners", (90.0, 90.0))
    if len(ends) != 2:
        raise PieceError(
            say("{mark} has {ends} end corners.", mark=asked.mark, ends=len(ends)),
            say("A bay has two ends."),
            say("Write the left and the right one."),
        )
    pairs = bay_ends(corners, (ends[0], ends[1]))
    return tuple(
        _light(asked, index, light, pair)
        for index, (light, pair) in enumerate(zip(written, pairs, strict=True), start=1)
    )


def _light(
    asked: Asked, number: int, written: dict[str, Any], ends: tuple[BayEnd, BayEnd]
) -> Light:
    mark = written.get("opening")
    return Light(
        number=number,
        line_mm=written["width"],
        left=ends[0],
        right=ends[1],
        reveal=None if mark is None else _reveal(asked, mark),
        left_wall_mm=written.get("left_wall"),
        right_wall_mm=written.get("right_wall"),
    )


def _reveal(asked: Asked, mark: str) -> Reveal:
    if mark not in {opening.mark for opening in asked.house.openings} or mark in asked.held:
        raise PieceError(
            say(
                "A light of {mark} names the opening {mark_2}.",
                mark=asked.mark,
                mark_2=mark,
            ),
            say("No such opening is described, or it is held."),
            say("Put it right, or take it out of the light."),
        )
    return reveal_of(asked, mark)


def _check_corner(asked: Asked, corner_deg: float) -> None:
    if corner_deg > 180.0:
        raise PieceError(
            say(
                "{mark} has a corner of {corner}°.",
                mark=asked.mark,
                corner=format_angle(corner_deg),
            ),
            say(
                "Read on the room's side, a bay that stands out from the room has "
                "corners under 180."
            ),
            say(
                "If it was read outside, write {corner}.",
                corner=format_angle(360.0 - corner_deg),
            ),
        )
    if corner_deg < LEAST_CORNER_DEG:
        raise PieceError(
            say(
                "{mark} has a corner of {corner}°.",
                mark=asked.mark,
                corner=format_angle(corner_deg),
            ),
            say(
                "Under {least_corner}° no saw bench turns far enough to mitre it (our limit).",
                least_corner=format_angle(LEAST_CORNER_DEG),
            ),
            say("Read the corner again; let one board run through and scribe the other to it."),
        )

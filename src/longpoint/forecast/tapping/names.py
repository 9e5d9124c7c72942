"""What pieces, ends and joints are called by someone who stands in the room."""

from dataclasses import dataclass
from typing import Final

from longpoint.forecast.fitup.frame import Frame, FrameSide
from longpoint.forecast.tapping.lie import Tap, TapPlace
from longpoint.shape.point import direction
from longpoint.speech.said import raised, say

_STEEP: Final = 0.8
"""A side is upright or level when its direction leans less than about 37 degrees off it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceName:
    """Words for one piece.

    Attributes:
        piece: Itself.
        start: Its first end, anticlockwise.
        end: Its other end.
        onward: The way it goes when it slides anticlockwise.
        back: The other way.
        out: The way its ends go when they go outwards.
        inwards: The way they go inwards.
    """

    piece: str
    start: str
    end: str
    onward: str
    back: str
    out: str
    inwards: str


SILL_PIECE: Final = PieceName(
    piece=say("sill piece"),
    start=say("left end"),
    end="right end",
    onward="right",
    back="left",
    out="down",
    inwards="up",
)
RIGHT_LEG: Final = PieceName(
    piece=say("right leg"),
    start="bottom",
    end="top",
    onward="up",
    back="down",
    out=say("tap out"),
    inwards=say("tap in"),
)
HEAD: Final = PieceName(
    piece="head",
    start=say("right end"),
    end="left end",
    onward="left",
    back="right",
    out="up",
    inwards="down",
)
LEFT_LEG: Final = PieceName(
    piece=say("left leg"),
    start="top",
    end="bottom",
    onward="down",
    back="up",
    out=say("tap out"),
    inwards=say("tap in"),
)


def piece_names(frame: Frame) -> tuple[PieceName, ...]:
    """Return what the pieces are called, as seen from inside the room.

    Args:
        frame: The set.

    Returns:
        Legs, head and sill piece by the way they lie, for a closed set of four or an open one of
        three or fewer; of any other set, numbers from 1.
    """
    count = len(frame.sides)
    plain = tuple(_plain(side) for side in frame.sides)
    is_common = count == 4 if frame.is_closed else count <= 3
    if is_common and None not in plain and len(set(plain)) == count:
        return tuple(name for name in plain if name is not None)
    return tuple(_numbered(index, frame) for index in range(count))


def joint_name(frame: Frame, joint: int) -> str:
    """Return what a joint is called, as 'the joint of head and left leg'."""
    names = piece_names(frame)
    before, after = frame.joints[joint].before, frame.joints[joint].after
    return say(
        "the joint of {piece} and {piece_2}",
        piece=names[before].piece,
        piece_2=names[after].piece,
    )


def tap_words(frame: Frame, tap: Tap) -> str:
    """Return one tap as one short sentence.

    Args:
        frame: The set.
        tap: The tap.

    Returns:
        As 'Left leg, top: tap out 0.8.' [mm]
    """
    name = piece_names(frame)[tap.piece]
    piece = raised(name.piece)
    return say(
        "{piece}{way} {move_mm:.1f}.",
        piece=piece,
        way=_way(name, tap),
        move_mm=abs(tap.move_mm),
    )


def _way(name: PieceName, tap: Tap) -> str:
    is_on = tap.move_mm > 0.0
    way = name.out if is_on else name.inwards
    match tap.place:
        case TapPlace.SLIDE:
            return say(": slide {onward}", onward=name.onward if is_on else name.back)
        case TapPlace.START:
            return say(", {start}: {way}", start=name.start, way=way)
        case TapPlace.END:
            return say(", {end}: {way}", end=name.end, way=way)


def _plain(side: FrameSide) -> PieceName | None:
    dx, dy = direction(side.start, side.end)
    if dx > _STEEP:
        return SILL_PIECE
    if dx < -_STEEP:
        return HEAD
    if dy > _STEEP:
        return RIGHT_LEG
    return LEFT_LEG if dy < -_STEEP else None


def _numbered(index: int, frame: Frame) -> PieceName:
    count = len(frame.sides)
    before, after = (index - 1) % count + 1, (index + 1) % count + 1
    is_first = not frame.is_closed and index == 0
    is_last = not frame.is_closed and index == count - 1
    at_start = (
        say("free end, away from piece {after}", after=after)
        if is_first
        else say(
            "end at piece {before}",
            before=before,
        )
    )
    at_end = (
        say("free end, away from piece {before}", before=before)
        if is_last
        else say(
            "end at piece {after}",
            after=after,
        )
    )
    return PieceName(
        piece=say("piece {index}", index=index + 1),
        start=at_start,
        end=at_end,
        onward=say("away from piece {before},", before=before)
        if is_last
        else say(
            "towards piece {after},",
            after=after,
        ),
        back=say("away from piece {after},", after=after)
        if is_first
        else say(
            "towards piece {before},",
            before=before,
        ),
        out=say("tap out"),
        inwards=say("tap in"),
    )

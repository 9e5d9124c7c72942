"""What a phone writes down: one record for each kind of entry of its journal."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryKey:
    """Which entry: the phone's name and its own count.

    A phone counts on from the highest count on it, whoever wrote that; so whatever an entry's
    author had in sight has a lower count than the entry.
    """

    device: str
    counter: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Written(EntryKey):
    """What every entry says: which phone, its count, when, and of which house."""

    at: str
    house: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseMade(Written):
    """A house was begun."""

    what: Literal["house-made"] = "house-made"
    name: str
    units: Literal["mm", "in"]
    dialect: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseNamed(Written):
    """A house got another name."""

    what: Literal["house-named"] = "house-named"
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingMade(Written):
    """A key of the house file got a value; the last one counts. None takes the key out.

    Attributes:
        key: The way to it, from the top of the house file.
        value: As it stands in a house file.
    """

    what: Literal["setting"] = "setting"
    key: tuple[str, ...]
    value: Any


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningAdded(Written):
    """An opening was found on the walk."""

    what: Literal["opening-added"] = "opening-added"
    opening: str
    room: str
    kind: str
    trim: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningChanged(Written):
    """A key of an opening got a value, as with a setting."""

    what: Literal["opening-changed"] = "opening-changed"
    opening: str
    key: tuple[str, ...]
    value: Any


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningLeftOut(Written):
    """An opening isn't to be trimmed after all."""

    what: Literal["opening-left-out"] = "opening-left-out"
    opening: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingKept(Written):
    """A line was read.

    Attributes:
        opening: Mark of the opening.
        line: Key of the line, such as "top" or "plane.tl".
        value_text: As it was typed.
        unit: In which it was typed.
        again: True for a second look at the same line, to be held against the first; False for
            the reading that counts from now on.
        over: The readings that it takes the place of: those that its author saw. What another
            phone read meanwhile is none of them, and stands beside it. An older app left this
            out: then it is all that the same phone had read.
    """

    what: Literal["reading"] = "reading"
    opening: str
    line: str
    value_text: str
    unit: Literal["mm", "in"]
    again: bool
    over: tuple[EntryKey, ...] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceAdded(Written):
    """A room, a wall, a run or other trim was found on the walk, or a part of one.

    Attributes:
        place: The way to it in the house file: a list and a mark, name or number in it, then
            another of each for what is part of it, as in "rooms", "Kitchen", "walls", "N".
        values: What is known of it at once.
    """

    what: Literal["place-added"] = "place-added"
    place: tuple[str, ...]
    values: dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceChanged(Written):
    """A line of such a place got a value; None takes it out."""

    what: Literal["place-changed"] = "place-changed"
    place: tuple[str, ...]
    key: str
    value: Any


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceLeftOut(Written):
    """Such a place isn't to be trimmed after all."""

    what: Literal["place-left-out"] = "place-left-out"
    place: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceRead(Written):
    """A line of such a place was read; the rest as with a reading of an opening."""

    what: Literal["place-read"] = "place-read"
    place: tuple[str, ...]
    line: str
    value_text: str
    unit: Literal["mm", "in", "deg"]
    again: bool
    over: tuple[EntryKey, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Undone(Written):
    """Another entry doesn't count; undone itself, it counts again."""

    what: Literal["undo"] = "undo"
    of: EntryKey


@dataclass(frozen=True, slots=True, kw_only=True)
class CutNews(Written):
    """Something happened at the saw.

    Attributes:
        told: In the words of `longpoint recut`, such as "spoiled W2-head 900".
        state: Where the cutting stands after it, as the core gave it.
    """

    what: Literal["cut-news"] = "cut-news"
    told: str
    state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WallGaps(Written):
    """A set on the wall was read: heel and toe of each joint, as typed; "?" for not read."""

    what: Literal["wall-gaps"] = "wall-gaps"
    opening: str
    gaps: dict[str, tuple[str, str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class FileOpened(Written):
    """A house file was opened; what is written after it changes it."""

    what: Literal["opened-file"] = "opened-file"
    text: str


Entry = (
    HouseMade
    | HouseNamed
    | SettingMade
    | OpeningAdded
    | OpeningChanged
    | OpeningLeftOut
    | ReadingKept
    | PlaceAdded
    | PlaceChanged
    | PlaceLeftOut
    | PlaceRead
    | Undone
    | CutNews
    | WallGaps
    | FileOpened
)


class LineState(StrEnum):
    """How far an opening or another place has come."""

    UNREAD = "unread"
    PART = "part"
    HELD = "held"
    READ = "read"

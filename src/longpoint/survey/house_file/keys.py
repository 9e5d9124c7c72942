"""How a key of the house file is described: once, for the reader, the schema and the pages."""

import math
from dataclasses import dataclass
from enum import StrEnum, auto


class Kind(StrEnum):
    """What may stand behind a key."""

    TEXT = auto()
    MARK = auto()
    """Short text that is printed on labels: letters, digits and a few signs."""
    CHOICE = auto()
    FLAG = auto()
    COUNT = auto()
    PRICE = auto()
    LENGTH = auto()
    SIGNED_LENGTH = auto()
    READING = auto()
    """A length, or a list of repeated readings of it."""
    SIGNED_READING = auto()
    ANGLE = auto()
    ANGLE_READING = auto()
    """An angle in degrees, or a list of repeated readings of it."""
    BAND = auto()
    """Least and most length."""
    SIDE_LENGTHS = auto()
    """One length, or one per side: head, left, right, sill."""
    SIDE_NAMES = auto()
    """One name, or one per side: head, left, right, sill."""
    CODES = auto()
    """A list of texts."""
    READINGS = auto()
    """A list of readings."""
    ANGLES = auto()
    """A list of angles."""
    NUMBER = auto()
    """A plain number of what the key's unit says."""
    LEAST_LIKELY_MOST = auto()
    """Three plain numbers in that order, or the likely one alone."""
    SPOT = auto()
    """A length that may carry a sign, or "?" where nothing was read."""
    HEEL_TOE = auto()
    """Two spots: at the heel and at the toe of a joint."""
    ALONG_SIDE = auto()
    """Spots along a side: start, middle and end; or both ends; or the middle alone."""
    DATE = auto()
    """A day of the calendar."""
    POINTS = auto()
    """A list of pairs of signed lengths."""
    TABLE = auto()
    TABLES = auto()
    """A list of tables."""
    NAMED_TABLES = auto()
    """Tables, each under a name."""


MOST_REPEATS = 50
"""What a list of readings or points may hold, unless its key says otherwise."""

SIDES = ("head", "left", "right", "sill")
"""Keys of what is given per side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """One key of one table.

    Attributes:
        name: As written in the file.
        kind: What may stand behind it.
        meaning: One plain sentence.
        example: A value that reads.
        required: True when the entry can't do without it.
        default: What holds when it is left out (lengths in mm); None: nothing, or it depends.
        left_out: In plain words, what happens when it is left out.
        choices: The words allowed for a choice.
        table: Description of the table or tables behind it.
        low: Least value allowed (mm or degrees).
        high: Largest value allowed (mm or degrees).
        above: True when the least value itself isn't allowed.
        ours: True when the limits are ours alone, which is then said.
        unit: What a plain number counts.
        most: How many values a list may hold.
        apart: True for a table that is read on its own, so that a bad part of it spoils nothing
            but itself.
    """

    name: str
    kind: Kind
    meaning: str
    example: object
    required: bool = False
    default: float | str | bool | None = None
    left_out: str = ""
    choices: tuple[str, ...] = ()
    table: "Table | None" = None
    low: float = 0.0
    high: float = math.inf
    above: bool = False
    ours: bool = False
    unit: str = ""
    most: int = MOST_REPEATS
    apart: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One kind of table.

    Attributes:
        title: What it describes, to stand in a sentence ("an opening").
        keys: Every key it may hold.
    """

    title: str
    keys: tuple[Key, ...]

    @property
    def by_name(self) -> dict[str, Key]:
        """Return the keys by their names."""
        return {key.name: key for key in self.keys}

    @property
    def required(self) -> tuple[str, ...]:
        """Return the names of the keys that it can't do without."""
        return tuple(key.name for key in self.keys if key.required)

    def example(self) -> dict[str, object]:
        """Return a table in which every key stands with its example."""
        return {key.name: key.example for key in self.keys}

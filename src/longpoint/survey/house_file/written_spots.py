"""Read what a feeler or a rule showed at single spots of a set, some of them not read."""

from collections.abc import Sequence
from typing import Final

from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_numbers import read_signed_length
from longpoint.survey.house_file.written_text import refuse

NOT_READ: Final = "?"


def read_spot(key: Key, written: object, units: Units, path: str) -> float | None:
    """Return a length that may carry a sign, in mm; None where "?" says that it wasn't read.

    Raises:
        HouseFileTrouble: It is neither, or lies outside the key's limits.
    """
    if isinstance(written, str) and written.strip() == NOT_READ:
        return None
    return read_signed_length(key, written, units, path)


def read_heel_toe(
    key: Key, written: object, units: Units, path: str
) -> tuple[float | None, float | None]:
    """Return what a joint showed at its heel and at its toe.

    Raises:
        HouseFileTrouble: It isn't two spots; what of them can be read is kept with the trouble.
    """
    if not isinstance(written, list | tuple) or len(written) != 2:
        refuse(
            path,
            written,
            say("A joint is read at its heel and at its toe."),
            say('Write both, heel first: [0.35, 0]; "?" for the one that wasn\'t read.'),
        )
    heel, toe = _spots(key, written, units, path)
    return (heel, toe)


def read_along_side(
    key: Key, written: object, units: Units, path: str
) -> tuple[float | None, float | None, float | None]:
    """Return what a side showed at its start, middle and end.

    Two figures are those of its ends, one is that of its middle.

    Raises:
        HouseFileTrouble: It isn't one to three spots; what of them can be read is kept with the
            trouble.
    """
    if not isinstance(written, list | tuple):
        written = [written]
    match list(written):
        case [middle]:
            spots = [NOT_READ, middle, NOT_READ]
        case [start, end]:
            spots = [start, NOT_READ, end]
        case [start, middle, end]:
            spots = [start, middle, end]
        case _:
            refuse(
                path,
                written,
                say("A side is read at its start, its middle and its end."),
                say(
                    'Write the three, both ends, or one figure for the middle; "?" for '
                    "one not read."
                ),
            )
    start_mm, middle_mm, end_mm = _spots(key, spots, units, path)
    return (start_mm, middle_mm, end_mm)


def _spots(key: Key, written: Sequence[object], units: Units, path: str) -> list[float | None]:
    spots: list[float | None] = []
    first: HouseFileTrouble | None = None
    for one in written:
        try:
            spots.append(read_spot(key, one, units, path))
        except HouseFileTrouble as trouble:
            first = first or trouble
            spots.append(None)
    if first is not None:
        first.kept = tuple(spots)
        raise first
    return spots

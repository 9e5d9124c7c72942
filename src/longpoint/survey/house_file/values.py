"""Read one value of a house file by the description of its key."""

from collections.abc import Callable
from typing import Any, TypeVar

from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import MOST_REPEATS, SIDES, Key, Kind
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, nearest, quoted, shown
from longpoint.survey.house_file.written_numbers import (
    read_angle,
    read_count,
    read_least_likely_most,
    read_length,
    read_number,
    read_price,
    read_signed_length,
)
from longpoint.survey.house_file.written_spots import read_along_side, read_heel_toe, read_spot
from longpoint.survey.house_file.written_text import read_date, read_mark, read_text, refuse

T = TypeVar("T")


def read_value(key: Key, written: object, units: Units, path: str) -> Any:  # noqa: ANN401
    """Return what is written behind a key, checked.

    Args:
        key: Description of the key; any kind but a table.
        written: What stands in the file.
        units: What a bare number means.
        path: The key as the reader of a finding would look for it ("plane.tl").

    Returns:
        Text, flag, whole number, `Decimal`, millimetres, degrees, or a tuple of these; a dict by
        side for what is given per side.

    Raises:
        HouseFileTrouble: It can't be read, or lies outside what is possible.
    """
    match key.kind:
        case Kind.TEXT:
            return read_text(written, path)
        case Kind.MARK:
            return read_mark(written, path)
        case Kind.CHOICE:
            return _choice(key, written, path)
        case Kind.FLAG:
            return _flag(written, path)
        case Kind.COUNT:
            return read_count(key, written, path)
        case Kind.PRICE:
            return read_price(key, written, path)
        case Kind.LENGTH:
            return read_length(key, written, units, path).value_mm
        case Kind.SIGNED_LENGTH:
            return read_signed_length(key, written, units, path)
        case Kind.READING:
            return _repeated(written, path, lambda one: read_length(key, one, units, path))
        case Kind.SIGNED_READING:
            return _repeated(written, path, lambda one: read_signed_length(key, one, units, path))
        case Kind.ANGLE:
            return read_angle(key, written, path)
        case Kind.ANGLE_READING:
            return _repeated(written, path, lambda one: read_angle(key, one, path))
        case Kind.BAND:
            return _band(key, written, units, path)
        case Kind.SIDE_LENGTHS:
            return _per_side(
                written, path, lambda one, at: read_length(key, one, units, at).value_mm
            )
        case Kind.SIDE_NAMES:
            return _per_side(written, path, read_text)
        case Kind.CODES:
            return _several(written, path, lambda one: read_text(one, path))
        case Kind.READINGS:
            return _several(
                written,
                path,
                lambda one: _repeated(one, path, lambda each: read_length(key, each, units, path)),
            )
        case Kind.ANGLES:
            return _several(written, path, lambda one: read_angle(key, one, path))
        case Kind.POINTS:
            return _several(written, path, lambda one: _point(key, one, units, path), key.most)
        case Kind.NUMBER:
            return read_number(key, written, path)
        case Kind.LEAST_LIKELY_MOST:
            return read_least_likely_most(key, written, path)
        case Kind.DATE:
            return read_date(written, path)
        case Kind.SPOT:
            return read_spot(key, written, units, path)
        case Kind.HEEL_TOE:
            return read_heel_toe(key, written, units, path)
        case Kind.ALONG_SIDE:
            return read_along_side(key, written, units, path)
        case Kind.TABLE | Kind.TABLES | Kind.NAMED_TABLES:
            raise AssertionError(f"{path} is read as a table")


def _choice(key: Key, written: object, path: str) -> str:
    if isinstance(written, str) and written in key.choices:
        return written
    wrong = say("It can only be one of: {choices}.", choices=joined(", ", key.choices))
    alike = nearest(written, key.choices) if isinstance(written, str) else ""
    do = (
        say("Did you mean {alike}?", alike=quoted(alike))
        if alike
        else say("Write one of these, in quotes.")
    )
    return refuse(path, written, wrong, do)


def _flag(written: object, path: str) -> bool:
    if not isinstance(written, bool):
        refuse(
            path,
            written,
            say("It can only be true or false."),
            say("Write true or false, no quotes."),
        )
    return written


def _band(key: Key, written: object, units: Units, path: str) -> tuple[float, float]:
    if not isinstance(written, list | tuple) or len(written) != 2:
        refuse(
            path,
            written,
            say("It has to be two lengths, least and most."),
            say("Write it like [3, 7]."),
        )
    least, most = (read_length(key, one, units, path).value_mm for one in written)
    if least > most:
        refuse(
            path,
            written,
            say("The first is larger than the second."),
            say("Write the least first."),
        )
    return (least, most)


def _point(key: Key, written: object, units: Units, path: str) -> tuple[float, float]:
    if not isinstance(written, list | tuple) or len(written) != 2:
        refuse(
            path,
            written,
            say("Each corner is two lengths."),
            say("Write across and up: [900, 1400]."),
        )
    across, up = (read_signed_length(key, one, units, path) for one in written)
    return (across, up)


def _several(
    written: object, path: str, read: Callable[[object], T], most: int = MOST_REPEATS
) -> tuple[T, ...]:
    if not isinstance(written, list | tuple):
        refuse(path, written, say("It has to be a list."), say("Put it between [ and ]."))
    if len(written) > most:
        refuse(
            path,
            written,
            say("More than {most} are too many.", most=most),
            say("Leave out the rest."),
        )
    return tuple(read(one) for one in written)


def _repeated(written: object, path: str, read: Callable[[object], T]) -> tuple[T, ...]:
    if not isinstance(written, list | tuple):
        return (read(written),)
    if not written:
        refuse(
            path,
            written,
            say("The list of readings is empty."),
            say("Write them in, or take it out."),
        )
    return _several(written, path, read)


def _per_side(written: object, path: str, read: Callable[[object, str], T]) -> dict[str, T]:
    if not isinstance(written, dict):
        one = read(written, path)
        return dict.fromkeys(SIDES, one)
    for side in written:
        if side not in SIDES:
            raise HouseFileTrouble(
                say("The key {shown} stands under {path}.", shown=shown(side), path=path),
                say("What is given per side has the keys head, left, right and sill."),
                instead(str(side), SIDES),
                code="unknown-key",
            )
    if not written:
        refuse(
            path, written, say("No side is named in it."), say("Name the sides, or take it out.")
        )
    return {side: read(value, f"{path}.{side}") for side, value in written.items()}

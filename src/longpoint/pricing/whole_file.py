"""Read a file that a price rests on: whole, or not at all."""

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from longpoint.errors import PricingError
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.entry import read_entry
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.trouble import HouseFileTrouble, shown

_Made = TypeVar("_Made")


def read_whole(
    document: Mapping[str, object],
    table: Table,
    file_format: str,
    kept: str,
    make: Callable[[dict[str, Any], Units], _Made],
) -> _Made:
    """Return what is made of a document once every key of it has been read.

    Args:
        document: The parsed TOML or JSON file.
        table: Description of its keys, `format` and `units` among them.
        file_format: The format that it has to name.
        kept: The sentence that says which format is wanted.
        make: Makes the record of its values; bare lengths mean the units.

    Raises:
        PricingError: It is another file, anything in it can't be used, or `make` raised a
            `HouseFileTrouble`.
    """
    try:
        if document.get("format") != file_format:
            raise HouseFileTrouble(
                say("The format is written as {shown}.", shown=shown(document.get("format"))),
                kept,
                say("Look whether it is another file, or one of a later version of this program."),
            )
        units = Units.INCH if document.get("units") == Units.INCH.value else Units.MM
        return make(whole_values(table, document, units), units)
    except HouseFileTrouble as trouble:
        raise PricingError(trouble.read, trouble.wrong, trouble.do) from None


def whole_values(
    table: Table, written: Mapping[Any, object], units: Units, path: str = ""
) -> dict[str, Any]:
    """Return the values of one table.

    Args:
        table: Description of its keys.
        written: The table as parsed.
        units: What a bare number means.
        path: What goes before a key to find it ("windows 2, ").

    Raises:
        HouseFileTrouble: The first thing that is wrong with it.
    """
    entry = read_entry(table, written, units, path)
    for trouble in entry.troubles:
        raise trouble
    return entry.values

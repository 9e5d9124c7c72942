"""Read what the crew tells of its nails and of the wall behind the trim."""

import re
from collections.abc import Iterable
from typing import Any, Final

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.fixing import FixingSetup, Nail
from longpoint.survey.house_file.entry import as_table, read_parts
from longpoint.survey.house_file.fixing_tables import (
    ASSUMED_FIXING,
    FIXING,
    NAIL_DIAMETER,
    NAIL_LENGTH,
)
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.trouble import HouseFileTrouble, quoted
from longpoint.survey.house_file.written_numbers import read_length

THINNEST_GAUGE: Final = 25
THICKEST_GAUGE: Final = 6
_CONSEQUENCE: Final = say("It changes no length of a piece; it is taken as if it weren't there.")


def read_fixing(written: object, remarks: Remarks) -> FixingSetup:
    """Return what is told of fixing; what can't be read is left out, and said.

    Args:
        written: What stands under fixing; None: no such table.
        remarks: Where to say what can't be used.
    """
    if written is None:
        return ASSUMED_FIXING
    try:
        table = as_table(written, "fixing")
    except HouseFileTrouble as trouble:
        _say(trouble, remarks)
        return ASSUMED_FIXING
    entry = read_parts(FIXING, table, remarks.units, "fixing.")
    for each in entry.troubles:
        _say(each, remarks)
    told: dict[str, Any] = entry.values
    return FixingSetup(
        country=told.get("country", ""),
        nails=tuple(_nails(told.get("nails", ()), remarks)),
        lining_mm=told.get("lining"),
        packing_mm=told.get("packing"),
        board_mm=told.get("board"),
        stud_face_mm=told.get("stud_face"),
        stud_depth_mm=told.get("stud_depth"),
        stud_spacing_mm=told.get("stud_spacing"),
        spacing_mm=told.get("spacing"),
        first_mm=told.get("first"),
        frame_wood=told.get("frame_wood", ""),
        built=told.get("built"),
    )


def read_nail(written: str, units: Units) -> Nail:
    """Return a nail as it is written: gauge x length, or gauge x length x diameter.

    Raises:
        HouseFileTrouble: It can't be read.

    Example:
        >>> read_nail("16 x 50", Units.MM)
        Nail(gauge=16, length_mm=50.0, diameter_mm=None)
        >>> read_nail("15 x 2 1/2", Units.INCH).length_mm
        63.5
    """
    parts = [part.strip() for part in re.split("[x×]", written)]
    if len(parts) not in (2, 3) or not parts[0].isdecimal():
        raise HouseFileTrouble(
            say("fixing.nails holds {written}.", written=quoted(written)),
            say("A nail is its gauge and its length."),
            say('Write it like "16 x 50", with the diameter off the box behind it if you like.'),
            key="nails",
        )
    gauge = int(parts[0][:4])
    if not THICKEST_GAUGE <= gauge <= THINNEST_GAUGE:
        raise HouseFileTrouble(
            say("fixing.nails holds {written}.", written=quoted(written)),
            say(
                "A gauge lies between {thickest_gauge} and {thinnest_gauge}; that limit is ours.",
                thickest_gauge=THICKEST_GAUGE,
                thinnest_gauge=THINNEST_GAUGE,
            ),
            say("Write the gauge first, then the length."),
            key="nails",
        )
    length = read_length(NAIL_LENGTH, parts[1], units, "fixing.nails")
    diameter = read_length(NAIL_DIAMETER, parts[2], units, "fixing.nails") if parts[2:] else None
    return Nail(
        gauge=gauge,
        length_mm=length.value_mm,
        diameter_mm=None if diameter is None else diameter.value_mm,
    )


def _nails(written: Iterable[str], remarks: Remarks) -> Iterable[Nail]:
    for one in dict.fromkeys(written):
        try:
            yield read_nail(one, remarks.units)
        except HouseFileTrouble as trouble:
            _say(trouble, remarks)


def _say(trouble: HouseFileTrouble, remarks: Remarks) -> None:
    remarks.trouble(trouble, _CONSEQUENCE, code="fixing-unreadable", severity=Severity.WARNING)

"""Write the rack as TOML that a person can read and mend."""

import json
from datetime import date
from typing import Final

from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.written_numbers import number_text
from longpoint.survey.rack.rack_file import FORMAT
from longpoint.survey.rack.records import Rack, RackPiece, Section

HEAD: Final = say(
    "# The crew's rack of offcuts. longpoint rack adds to it and marks what is "
    "gone; it may be\n# edited by hand. What is gone stays here, so that its label "
    "is never given again.\n"
)

Written = str | bool | int | float | date | None


def rack_text(rack: Rack) -> str:
    """Return a rack as text that `read_rack` reads back to the same rack.

    Example:
        >>> print(rack_text(Rack(old_after_days=365)).partition("again.")[2].strip())
        format = "longpoint-rack/1"
        units = "mm"
        old_after = 365
    """
    parts = [
        HEAD + _lines(format=FORMAT, units=rack.units.value, old_after=rack.old_after_days),
        *(_section(key, section, rack.units) for key, section in rack.sections),
        *(_piece(piece, rack.units) for piece in rack.pieces),
    ]
    return "\n".join(parts)


def _section(key: str, section: Section, units: Units) -> str:
    return f"[sections.{_text(key)}]\n" + _lines(
        name=section.name,
        face=_length(section.width_mm, units),
        thickness=_length(section.thickness_mm, units),
        reversible=section.reversible or None,
        least=_length(section.least_mm, units),
    )


def _piece(piece: RackPiece, units: Units) -> str:
    gone = piece.gone
    return "[[offcuts]]\n" + _lines(
        label=piece.label,
        section=piece.section,
        length=_length(piece.length_mm, units),
        left=piece.left,
        right=piece.right,
        house=piece.house or None,
        origin=piece.origin or None,
        put_up=piece.put_up,
        note=piece.note or None,
        gone=gone.why.value if gone else None,
        gone_on=gone.on if gone else None,
        gone_to=(gone.house or None) if gone else None,
    )


def _length(length_mm: float | None, units: Units) -> Written:
    """A bare number in mm; in a rack of inches, millimetres as text."""
    if length_mm is None:
        return None
    if units is Units.INCH:
        return say("{number} mm", number=number_text(length_mm))
    return int(length_mm) if float(length_mm).is_integer() else length_mm


def _lines(**keys: Written) -> str:
    return "".join(f"{key} = {_value(value)}\n" for key, value in keys.items() if value is not None)


def _value(value: Written) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case int() | float():
            return number_text(value)
        case date():
            return value.isoformat()
        case _:
            return _text(str(value))


def _text(text: str) -> str:
    """A basic string of TOML: that of JSON, but for DEL, which TOML wants escaped."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")

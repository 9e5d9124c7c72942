"""The house file's JSON Schema, made from the same descriptions that the reader follows."""

import json
import math
from types import MappingProxyType
from typing import Any, Final

from longpoint.speech.said import say
from longpoint.survey.house_file.house_table import FORMAT, HOUSE
from longpoint.survey.house_file.keys import MOST_REPEATS, SIDES, Key, Kind, Table
from longpoint.survey.house_file.trim_tables import TrimTables
from longpoint.survey.house_file.written_text import LONGEST_TEXT

DRAFT: Final = "https://json-schema.org/draft/2020-12/schema"

_TEXT: Final = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT}
_LENGTH: Final = {
    "description": say("A number in the house's units, or text as a carpenter writes it."),
    "anyOf": [{"type": "number", "minimum": 0}, _TEXT],
}
_SIGNED_LENGTH: Final = {
    "description": say("A length that may carry a sign."),
    "anyOf": [{"type": "number"}, _TEXT],
}
_DIGITS: Final = {"type": "string", "pattern": r"^\s*[0-9]+\s*$", "maxLength": LONGEST_TEXT}
_MARK: Final = {**_TEXT, "pattern": r"""^[^!"$%&'()*,:;<=>?@\[\\\]^`{|}~]+$"""}


def house_schema(trims: TrimTables = MappingProxyType({})) -> dict[str, Any]:
    """Return the schema of a house file, JSON Schema draft 2020-12.

    It tells a program which keys there are and what may stand behind them. The reader checks
    more: whether text can be read as a length, ranges in the house's units, and whether the keys
    agree with each other.

    Args:
        trims: What each kind of the catalogue may hold.

    References:
        JSON Schema, draft 2020-12.
    """
    tables: dict[str, Any] = {}
    house = _table(HOUSE, tables)
    if trims:
        house["properties"]["trims"]["items"] = {
            "anyOf": [_kind(name, table, tables) for name, table in trims.items()]
        }
    house["properties"]["format"] = {
        "const": FORMAT,
        "description": say("Which kind of file this is."),
    }
    return {
        "$schema": DRAFT,
        "title": FORMAT,
        "description": say("One house as read for its fix-out: lengths, angles, tools and stock."),
        **house,
        "$defs": {"length": _LENGTH, "signed length": _SIGNED_LENGTH, "mark": _MARK, **tables},
    }


def schema_text(trims: TrimTables = MappingProxyType({})) -> str:
    """Return the schema as the text of `docs/reference/house.schema.json`."""
    return json.dumps(house_schema(trims), indent=2, ensure_ascii=False) + "\n"


def _table(table: Table, tables: dict[str, Any]) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": {key.name: _property(key, tables) for key in table.keys},
        "required": list(table.required),
        "additionalProperties": False,
    }


def _kind(name: str, table: Table, tables: dict[str, Any]) -> dict[str, Any]:
    reference = _reference(table, tables)
    tables[_table_name(table)]["properties"]["kind"] = {"const": name}
    return reference


def _table_name(table: Table) -> str:
    return table.title.removeprefix("a ").removeprefix("an ").removeprefix("the ")


def _reference(table: Table | None, tables: dict[str, Any]) -> dict[str, Any]:
    if table is None:
        raise AssertionError("a table is described without its keys")
    name = _table_name(table)
    if name not in tables:
        tables[name] = {}
        tables[name] = _table(table, tables)
    return {"$ref": f"#/$defs/{name.replace(' ', '%20')}"}


def _property(key: Key, tables: dict[str, Any]) -> dict[str, Any]:
    said = (
        say("{meaning} Left out: {left_out}.", meaning=key.meaning, left_out=key.left_out)
        if key.left_out
        else key.meaning
    )
    value = {"description": said, **_value(key, tables)}
    plain = key.kind in {Kind.TEXT, Kind.CHOICE, Kind.FLAG, Kind.COUNT, Kind.ANGLE, Kind.NUMBER}
    if plain and key.default is not None:
        value["default"] = key.default
    return {**value, "examples": [key.example]}


def _value(key: Key, tables: dict[str, Any]) -> dict[str, Any]:
    match key.kind:
        case Kind.TEXT:
            return dict(_TEXT)
        case Kind.MARK:
            return {"$ref": "#/$defs/mark"}
        case Kind.CHOICE:
            return {"enum": list(key.choices)}
        case Kind.FLAG:
            return {"type": "boolean"}
        case Kind.COUNT:
            whole = {"type": "integer", "minimum": key.low, "maximum": key.high}
            return {"anyOf": [whole, _DIGITS]}
        case Kind.PRICE:
            return {"anyOf": [{"type": "number", "minimum": 0, "maximum": key.high}, _TEXT]}
        case Kind.LENGTH:
            return {"$ref": "#/$defs/length"}
        case Kind.SIGNED_LENGTH:
            return {"$ref": "#/$defs/signed%20length"}
        case Kind.READING:
            return _or_repeated({"$ref": "#/$defs/length"})
        case Kind.SIGNED_READING:
            return _or_repeated({"$ref": "#/$defs/signed%20length"})
        case Kind.ANGLE:
            return _angle(key)
        case Kind.ANGLE_READING:
            return _or_repeated(_angle(key))
        case Kind.BAND:
            return _list_of({"$ref": "#/$defs/length"}, 2, 2)
        case Kind.SIDE_LENGTHS:
            return _or_per_side({"$ref": "#/$defs/length"})
        case Kind.SIDE_NAMES:
            return _or_per_side(_TEXT)
        case Kind.CODES:
            return _list_of(_TEXT)
        case Kind.READINGS:
            return _list_of(_or_repeated({"$ref": "#/$defs/length"}))
        case Kind.ANGLES:
            return _list_of(_angle(key))
        case Kind.POINTS:
            return _list_of(_list_of({"$ref": "#/$defs/signed%20length"}, 2, 2), most=key.most)
        case Kind.NUMBER:
            return {"type": "number", "minimum": key.low, "maximum": key.high}
        case Kind.LEAST_LIKELY_MOST:
            number = {"type": "number", "minimum": key.low, "maximum": key.high}
            return {"anyOf": [number, _list_of(number, 3, 3)]}
        case Kind.DATE:
            return {"type": "string", "format": "date"}
        case Kind.SPOT:
            return {"$ref": "#/$defs/signed%20length"}
        case Kind.HEEL_TOE:
            return _list_of({"$ref": "#/$defs/signed%20length"}, 2, 2)
        case Kind.ALONG_SIDE:
            spot = {"$ref": "#/$defs/signed%20length"}
            return {"anyOf": [spot, _list_of(spot, 1, 3)]}
        case Kind.TABLE:
            return _reference(key.table, tables)
        case Kind.TABLES:
            return {"type": "array", "items": _reference(key.table, tables)}
        case Kind.NAMED_TABLES:
            return {
                "type": "object",
                "propertyNames": dict(_TEXT),
                "additionalProperties": _reference(key.table, tables),
            }


def _angle(key: Key) -> dict[str, Any]:
    low = "exclusiveMinimum" if key.above else "minimum"
    limits = {low: key.low}
    return {"type": "number", **limits, **({} if math.isinf(key.high) else {"maximum": key.high})}


def _list_of(item: dict[str, Any], least: int = 0, most: int = MOST_REPEATS) -> dict[str, Any]:
    return {"type": "array", "items": item, "minItems": least, "maxItems": most}


def _or_repeated(one: dict[str, Any]) -> dict[str, Any]:
    return {"anyOf": [one, _list_of(one, 1)]}


def _or_per_side(one: dict[str, Any]) -> dict[str, Any]:
    sides = {
        "type": "object",
        "properties": dict.fromkeys(SIDES, one),
        "minProperties": 1,
        "additionalProperties": False,
    }
    return {"anyOf": [one, sides]}

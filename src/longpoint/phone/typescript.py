"""The records of `messages` as TypeScript: `python -m longpoint.phone.typescript > messages.ts`."""

import dataclasses
import sys
import types
import typing
from enum import StrEnum
from typing import Any

from longpoint.phone import entries, messages
from longpoint.phone.messages import (
    crew,
    files,
    labels,
    limits,
    looking,
    news,
    planning,
    said,
    standing,
)

_MODULES = (entries, said, limits, standing, looking, planning, news, files, crew, labels, messages)

_PLAIN = {str: "string", int: "number", float: "number", bool: "boolean", type(None): "null"}


def typescript() -> str:
    """Return one interface for each record and one type for each union, in their order."""
    parts = ["// Made by `python -m longpoint.phone.typescript`; not to be changed by hand."]
    for module in _MODULES:
        for name, thing in vars(module).items():
            if getattr(thing, "__module__", None) == module.__name__ and isinstance(thing, type):
                parts.append(_declared(name, thing))
            elif isinstance(thing, types.UnionType):
                if module is not entries and name == "Entry":
                    continue
                members = "".join(f"\n  | {_type(each)}" for each in typing.get_args(thing))
                parts.append(f"export type {name} ={members};")
    return "\n\n".join(parts) + "\n"


def _declared(name: str, record: Any) -> str:  # noqa: ANN401
    if issubclass(record, StrEnum):
        return f"export type {name} = {' | '.join(_quoted(each.value) for each in record)};"
    hints = typing.get_type_hints(record)
    lines = "".join(
        f"\n  readonly {field.name}: {_type(hints[field.name])};"
        for field in dataclasses.fields(record)
    )
    return f"export interface {name} {{{lines}\n}}"


def _type(hint: object) -> str:
    if isinstance(hint, type) and hint in _PLAIN:
        return _PLAIN[hint]
    origin, inner = typing.get_origin(hint), typing.get_args(hint)
    if origin is typing.Literal:
        return " | ".join(map(_quoted, inner))
    if origin is tuple:
        if inner[-1] is not Ellipsis:
            return f"readonly [{', '.join(map(_type, inner))}]"
        item = _type(inner[0])
        return f"readonly ({item})[]" if " " in item else f"readonly {item}[]"
    if origin is dict:
        return f"Readonly<Record<{_type(inner[0])}, {_type(inner[1])}>>"
    if origin in (types.UnionType, typing.Union):
        return "Entry" if hint == entries.Entry else " | ".join(map(_type, inner))
    if hint is typing.Any:
        return "unknown"
    assert isinstance(hint, type)
    return hint.__name__


def _quoted(text: object) -> str:
    return f'"{text}"'


if __name__ == "__main__":
    sys.stdout.write(typescript())

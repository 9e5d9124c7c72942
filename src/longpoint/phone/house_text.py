"""A house's document as the text of a house file."""

import json
import re
from collections.abc import Mapping
from typing import Any, Final

_BARE: Final = re.compile(r"^[A-Za-z0-9_-]+$")


def house_text(document: Mapping[str, Any]) -> str:
    """Return a document as TOML.

    Args:
        document: Tables, lists, texts, numbers, truth values.

    Example:
        >>> print(house_text({"name": "Pipit", "openings": [{"mark": "W1", "top": [1187, 1186]}]}))
        name = "Pipit"
        <BLANKLINE>
        [[openings]]
        mark = "W1"
        top = [1187, 1186]
        <BLANKLINE>
    """
    return "\n".join(_table(document, ())).lstrip("\n") + "\n"


def _table(table: Mapping[str, Any], path: tuple[str, ...]) -> list[str]:
    """Return the lines of a table: its own keys, then what hangs below them."""
    lines = [f"{_key(key)} = {_value(value)}" for key, value in table.items() if not _hangs(value)]
    for key, value in table.items():
        here = (*path, key)
        name = ".".join(map(_key, here))
        if isinstance(value, Mapping) and _hangs(value):
            own = _table(value, here)
            lines += ["", f"[{name}]", *own] if own and own[0] != "" else own
        elif _hangs(value):
            for each in value:
                lines += ["", f"[[{name}]]", *_table(each, here)]
    return lines


def _hangs(value: object) -> bool:
    """Tell whether a value gets a head of its own: a list of tables, a table outside of them."""
    if isinstance(value, Mapping):
        return not all(isinstance(each, str | int | float) for each in value.values()) or len(
            value
        ) > len(_INLINE)
    return isinstance(value, list) and bool(value) and all(isinstance(v, Mapping) for v in value)


_INLINE: Final = ("tl", "tr", "br", "bl")


def _value(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        inner = ", ".join(f"{_key(key)} = {_value(each)}" for key, each in value.items())
        return f"{{ {inner} }}"
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(_value, value))}]"
    if isinstance(value, int | float):
        return repr(value)
    return _text(str(value))


def _key(key: str) -> str:
    return key if _BARE.match(key) else _text(key)


def _text(text: str) -> str:
    # A JSON string is a TOML string, but for the sign that ends at \x7f.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")

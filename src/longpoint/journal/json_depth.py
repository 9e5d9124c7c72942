"""How deep a JSON text is nested, found before it is parsed.

A parser written in C follows brackets with its own stack. On a laptop Python ends that with an
error; in a browser the whole interpreter ends, and the planner with it.
"""

import re
from typing import Final

_TEXT_OR_BRACKET: Final = re.compile(r'"(?:[^"\\]|\\.)*+"|[\[\]{}]', re.DOTALL)


def is_nested_deeper(text: str, most: int) -> bool:
    """Tell whether brackets stand inside more than so many others; those in quotes don't count.

    Args:
        text: JSON, or what should be.
        most: Brackets that may be open at once. > 0.

    Example:
        >>> is_nested_deeper('{"a": [1, "[[["]}', 2), is_nested_deeper('{"a": [[1]]}', 2)
        (False, True)
    """
    depth = 0
    for found in _TEXT_OR_BRACKET.finditer(text):
        match found[0]:
            case "[" | "{":
                depth += 1
                if depth > most:
                    return True
            case "]" | "}":
                depth -= 1
            case _:
                pass
    return False

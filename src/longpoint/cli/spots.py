"""What was read at a set, given on the command line: "bl 0.35 0, br 0.45 0"."""

import copy
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any, Final

from longpoint.errors import QuantityError
from longpoint.forecast.on_the_wall import CORNERS, AtCorners
from longpoint.quantities.length import Units, parse_signed_length
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.written_spots import NOT_READ

_FRACTION: Final = re.compile(r"^\d+/\d+$")
_WHOLE: Final = re.compile(r"^\d+$")


def spots(text: str) -> dict[str, list[str]]:
    """Return what is given for each corner or side.

    Args:
        text: Groups parted by commas, each a name and its figures; "?" for one not read.

    Raises:
        QuantityError: A group says nothing, or a name comes twice.

    Example:
        >>> spots("bl 0.35 0, br 0.45 ?")
        {'bl': ['0.35', '0'], 'br': ['0.45', '?']}
    """
    found: dict[str, list[str]] = {}
    for group in text.split(","):
        name, *figures = group.split() or [""]
        if not name or not figures or name in found:
            raise QuantityError(
                say("{text!r} was given.", text=text),
                say("{name} comes twice.", name=name)
                if name in found
                else say("A name or its figures are missing."),
                say(
                    "Part the groups by commas, each a name and its figures: bl 0.35 0, br 0.45 0."
                ),
            )
        found[name] = figures
    return found


def whole_figures(given: dict[str, list[str]]) -> dict[str, list[str]]:
    """Return what is given, where no figure can be taken for two.

    Raises:
        QuantityError: A whole number stands before a fraction.
    """
    for name, figures in given.items():
        for first, second in pairwise(figures):
            if _WHOLE.match(first) and _FRACTION.match(second):
                raise QuantityError(
                    say(
                        "{name} {figures} was given.",
                        name=name,
                        figures=joined(" ", figures),
                    ),
                    say(
                        "{first} {second} may be one figure or two.",
                        first=first,
                        second=second,
                    ),
                    say("Write {first}-{second} for one figure.", first=first, second=second),
                )
    return given


def at_corners(text: str, units: Units) -> AtCorners:
    """Return one figure for each corner.

    Args:
        text: Groups parted by commas, each a corner and its figure.
        units: What a bare number means.

    Raises:
        QuantityError: A corner isn't known, or its figure can't be read.

    Example:
        >>> at_corners("tr 0.3, tl -0.2", Units.MM)
        (None, None, 0.3, -0.2)
    """
    given = spots(text)
    wrong = [name for name, figures in given.items() if name not in CORNERS or len(figures) != 1]
    if wrong:
        raise QuantityError(
            say(
                "{wrong} {given} was given.",
                wrong=wrong[0],
                given=joined(" ", given[wrong[0]]),
            ),
            say(
                "One figure for each of these corners can be given: {corners}.",
                corners=joined(", ", CORNERS),
            ),
            say("Write it like: tr 0.3, tl -0.2."),
        )
    bl, br, tr, tl = (_spot(given.get(corner, [NOT_READ])[0], units) for corner in CORNERS)
    return (bl, br, tr, tl)


def _spot(written: str, units: Units) -> float | None:
    return None if written == NOT_READ else parse_signed_length(written, units)


def with_spots(
    document: dict[str, Any], mark: str, face: str, key: str, given: dict[str, list[str]]
) -> dict[str, Any]:
    """Return a house's document with readings of one set in the place of those it holds.

    Args:
        document: The document of the house.
        mark: Mark of the opening; nothing changes where there is none of it.
        face: "b" for the second face.
        key: "gaps" or "quirks".
        given: By corner or side.
    """
    changed = copy.deepcopy(document)
    for entry in _entries(changed, mark):
        place = entry.setdefault("b", {}) if face == "b" else entry
        if not isinstance(place, dict):
            continue
        as_built = place.get("as_built")
        place["as_built"] = {**(as_built if isinstance(as_built, dict) else {}), key: given}
    return changed


def _entries(document: dict[str, Any], mark: str) -> Iterator[dict[str, Any]]:
    openings = document.get("openings")
    for entry in openings if isinstance(openings, list) else []:
        if isinstance(entry, dict) and entry.get("mark") == mark:
            yield entry

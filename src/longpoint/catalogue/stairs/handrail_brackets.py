"""At which studs the brackets of a handrail go."""

import math
from collections.abc import Sequence
from itertools import pairwise

from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.speech.said import joined, say


def bracket_places(asked: Asked, pitch_deg: float, length_mm: float) -> tuple[float, ...]:
    """Return where brackets go, along the rail from its lower end; none where no stud was found.

    Raises:
        PieceError: No stud lies behind the rail, or two studs are further apart than brackets may
            be.
    """
    behind = [level_mm / _level(pitch_deg) for level_mm in _studs(asked, pitch_deg, length_mm)]
    found = sorted(mm for mm in behind if mm <= length_mm)
    if not found:
        if behind:
            raise PieceError(
                say(
                    "The first stud of {mark} lies {behind} along the rail, which is "
                    "{length} long.",
                    mark=asked.mark,
                    behind=format_with_unit(min(behind), asked.units),
                    length=format_with_unit(length_mm, asked.units),
                ),
                say("No stud lies behind the rail, so a bracket has nothing to hold to."),
                say(
                    "Find the studs again, level from the rail's lower end; or have backing put in."
                ),
            )
        return ()
    apart_mm = asked.get("bracket_apart")
    if apart_mm is None:
        return tuple(found)
    return fewest(asked, found, apart_mm)


def fewest(asked: Asked, studs: Sequence[float], apart_mm: float) -> tuple[float, ...]:
    """Return the fewest studs, first and last among them, that stand near enough to each other.

    Raises:
        PieceError: Two neighbouring studs are further apart than that.
    """
    gap_mm = max((b - a for a, b in pairwise(studs)), default=0.0)
    if gap_mm > apart_mm:
        raise PieceError(
            say(
                "Studs of {mark} lie {gap} apart along the rail; brackets may stand {apart} apart.",
                mark=asked.mark,
                gap=format_with_unit(gap_mm, asked.units),
                apart=format_length(apart_mm, asked.units),
            ),
            say("No choice of studs keeps that."),
            say("Have backing put in between, or look whether a stud was missed."),
        )
    chosen = [studs[0]]
    while chosen[-1] < studs[-1]:
        chosen.append(max(stud for stud in studs if stud - chosen[-1] <= apart_mm))
    return tuple(chosen)


def bracket_lines(asked: Asked, pitch_deg: float, brackets: Sequence[float]) -> tuple[str, ...]:
    """Return where the brackets go in plain words."""
    units = asked.units
    if not brackets:
        return (say("Brackets go to studs; none were written, so none are placed."),)
    along = joined(", ", (format_length(at_mm, units) for at_mm in brackets))
    level = joined(", ", (format_length(at_mm * _level(pitch_deg), units) for at_mm in brackets))
    return (
        say(
            "{brackets} brackets, along the rail from its lower end: {along}.",
            brackets=len(brackets),
            along=along,
        ),
        say(
            "Level from the same end that is {level}: what lies level between studs is "
            "longer along the rail by 1 / cos {pitch}.",
            level=level,
            pitch=format_angle(pitch_deg),
        ),
    )


def _studs(asked: Asked, pitch_deg: float, length_mm: float) -> Sequence[float]:
    """Return how far the studs lie from the rail's lower end, level."""
    found: Sequence[float] = asked.get("studs", ())
    first_mm, spacing_mm = asked.get("first_stud"), asked.get("stud_spacing")
    if found or first_mm is None or spacing_mm is None:
        return found
    room_mm = length_mm * _level(pitch_deg) - first_mm
    return [first_mm + spacing_mm * k for k in range(max(0, math.floor(room_mm / spacing_mm)) + 1)]


def _level(pitch_deg: float) -> float:
    return math.cos(math.radians(pitch_deg))

"""Openings that are far from the size on the drawing: rows swapped, or the wrong opening."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.survey.checks.siblings import size_mm
from longpoint.survey.house import House
from longpoint.survey.openings import Nominal, Opening
from longpoint.survey.readings import Place

OFF_MM: Final = 15.0
"""Further from its drawing than this in width or height, an opening may be another one."""

NEAR_MM: Final = 8.0
"""This close to another drawing in both, it is likely that one."""

OFF_NOMINAL_MM: Final = 25.0
"""Further off than this and like no other drawing: said by itself; assumed."""


def check_nominals(house: House) -> tuple[Finding, ...]:
    """Return a stop for both of two openings whose rows are swapped; a warning for one far off."""
    pairs = _swapped_pairs(house)
    findings = []
    for opening in house.openings:
        nominal = opening.nominal
        size = size_mm(opening)
        if nominal is None or size is None:
            continue
        if opening.mark in pairs:
            findings.append(_swapped(house, opening, pairs[opening.mark], size))
        elif _off_mm(size, nominal) > OFF_NOMINAL_MM and not _side_is_near(opening, nominal):
            findings.append(_off_nominal(house, opening, nominal, size))
    return tuple(findings)


def swapped_marks(house: House) -> frozenset[str]:
    """Return the marks of all openings whose rows look swapped."""
    return frozenset(_swapped_pairs(house))


def _swapped_pairs(house: House) -> dict[str, str]:
    """Return for each opening of a swapped pair the mark of the other, same room first."""
    strangers = [o for o in house.openings if _looks_like_another(house, o)]
    pairs: dict[str, str] = {}
    for same_room in (True, False):
        for i, one in enumerate(strangers):
            for other in strangers[i + 1 :]:
                if one.mark in pairs or other.mark in pairs:
                    continue
                if same_room and one.room != other.room:
                    continue
                if _fits(one, other.nominal) and _fits(other, one.nominal):
                    pairs[one.mark], pairs[other.mark] = other.mark, one.mark
    return pairs


def _looks_like_another(house: House, opening: Opening) -> bool:
    size = size_mm(opening)
    if opening.nominal is None or size is None or _off_mm(size, opening.nominal) <= OFF_MM:
        return False
    return any(_fits(opening, other.nominal) for other in house.openings)


def _fits(opening: Opening, nominal: Nominal | None) -> bool:
    size = size_mm(opening)
    return nominal is not None and size is not None and _off_mm(size, nominal) <= NEAR_MM


def _off_mm(size: tuple[float, float], nominal: Nominal) -> float:
    return max(abs(size[0] - nominal.width_mm), abs(size[1] - nominal.height_mm))


def _side_is_near(opening: Opening, nominal: Nominal) -> bool:
    """Tell whether one of two opposite sides agrees: then the other is a slip, said elsewhere."""
    sides = opening.readings.side_mm
    return all(
        any((mm := sides(place)) is not None and abs(mm - wanted) <= NEAR_MM for place in pair)
        for pair, wanted in (
            ((Place.TOP, Place.BOTTOM), nominal.width_mm),
            ((Place.LEFT, Place.RIGHT), nominal.height_mm),
        )
    )


def _shown(house: House, width_mm: float, height_mm: float) -> str:
    return f"{format_length(width_mm, house.units)} x {format_length(height_mm, house.units)}"


def _swapped(house: House, opening: Opening, other: str, size: tuple[float, float]) -> Finding:
    nominal = opening.nominal
    drawn = _shown(house, nominal.width_mm, nominal.height_mm) if nominal else ""
    return Finding(
        code="rows-swapped",
        severity=Severity.STOP,
        place=opening.mark,
        read=f"{opening.mark} is read as {_shown(house, *size)}; the drawing has {drawn}.",
        wrong=f"It has the size of {other}, and {other} has the size of {opening.mark}: the two "
        "look swapped.",
        do="Change the two rows over if that is so, or read one of them again.",
    )


def _off_nominal(
    house: House, opening: Opening, nominal: Nominal, size: tuple[float, float]
) -> Finding:
    turned = _off_mm(size, Nominal(width_mm=nominal.height_mm, height_mm=nominal.width_mm))
    drawn = _shown(house, nominal.width_mm, nominal.height_mm)
    return Finding(
        code="off-nominal",
        severity=Severity.WARNING,
        place=opening.mark,
        read=f"{opening.mark} is read as {_shown(house, *size)}; the drawing has {drawn}.",
        wrong=f"It is {format_with_unit(_off_mm(size, nominal), house.units)} off its drawing"
        + (": width and height look swapped." if turned <= NEAR_MM else "."),
        do="Make sure that it is this opening that was read, and this drawing that holds.",
    )

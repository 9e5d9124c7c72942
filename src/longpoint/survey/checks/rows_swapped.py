"""Openings that are far from the size they should have: rows swapped, or the wrong opening."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import say
from longpoint.survey.checks.batches import batched, size_mm, usual_size
from longpoint.survey.checks.siblings import told_siblings
from longpoint.survey.house import House
from longpoint.survey.openings import Nominal, Opening
from longpoint.survey.readings import Place

OFF_MM: Final = 15.0
"""Further from the size it should have than this in width or height, it may be another one."""

NEAR_MM: Final = 8.0
"""This close to the size of another in both, it is likely that one."""

OFF_NOMINAL_MM: Final = 25.0
"""Further off its drawing than this and like no other: said by itself; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wanted:
    """An opening as read, and the size it should have.

    Attributes:
        opening: The opening; its unit stands for its room.
        size: Width and height as read. [mm]
        nominal: What they should be.
        is_drawn: True for the size on a drawing, False for the median of its batch.
    """

    opening: Opening
    size: tuple[float, float]
    nominal: Nominal
    is_drawn: bool

    @property
    def mark(self) -> str:
        return self.opening.mark

    @property
    def off_mm(self) -> float:
        return _off_mm(self.size, self.nominal)

    def fits(self, other: "_Wanted") -> bool:
        return _off_mm(self.size, other.nominal) <= NEAR_MM


def check_nominals(house: House) -> tuple[Finding, ...]:
    """Return a stop for both of two openings whose rows are swapped; a warning for one far off.

    An opening should have the size on its drawing; without one, the median of a large batch. Only
    off a drawing it is said by itself here: each reading is compared with its batch elsewhere.
    """
    wanted = _all_wanted(house)
    pairs = _swapped_pairs(wanted)
    findings = []
    for one in wanted:
        if one.mark in pairs:
            findings.append(_swapped(house, one, pairs[one.mark]))
        elif one.is_drawn and one.off_mm > OFF_NOMINAL_MM and not _side_is_near(one):
            findings.append(_off_nominal(house, one))
    return tuple(findings)


def swapped_marks(house: House) -> frozenset[str]:
    """Return the marks of all openings whose rows look swapped."""
    return frozenset(_swapped_pairs(_all_wanted(house)))


def _all_wanted(house: House) -> tuple[_Wanted, ...]:
    usual = {
        opening.mark: nominal
        for group in told_siblings(house)
        if (nominal := usual_size(group.openings)) is not None
        for opening in group.openings
    }
    return tuple(
        _Wanted(opening=opening, size=size, nominal=nominal, is_drawn=opening.nominal is not None)
        for opening in batched(house).openings
        if (nominal := opening.nominal or usual.get(opening.mark)) is not None
        and (size := size_mm(opening)) is not None
    )


def _swapped_pairs(wanted: tuple[_Wanted, ...]) -> dict[str, str]:
    """Return for each opening of a swapped pair the mark of the other, same room first."""
    strangers = [
        one for one in wanted if one.off_mm > OFF_MM and any(one.fits(other) for other in wanted)
    ]
    pairs: dict[str, str] = {}
    for same_room in (True, False):
        for i, one in enumerate(strangers):
            for other in strangers[i + 1 :]:
                if one.mark in pairs or other.mark in pairs:
                    continue
                if same_room and one.opening.room != other.opening.room:
                    continue
                if one.fits(other) and other.fits(one):
                    pairs[one.mark], pairs[other.mark] = other.mark, one.mark
    return pairs


def _off_mm(size: tuple[float, float], nominal: Nominal) -> float:
    return max(abs(size[0] - nominal.width_mm), abs(size[1] - nominal.height_mm))


def _side_is_near(one: _Wanted) -> bool:
    """Tell whether one of two opposite sides agrees: then the other is a slip, said elsewhere."""
    sides = one.opening.readings.side_mm
    return all(
        any((mm := sides(place)) is not None and abs(mm - wanted) <= NEAR_MM for place in pair)
        for pair, wanted in (
            ((Place.TOP, Place.BOTTOM), one.nominal.width_mm),
            ((Place.LEFT, Place.RIGHT), one.nominal.height_mm),
        )
    )


def _read(house: House, one: _Wanted) -> str:
    def shown(width_mm: float, height_mm: float) -> str:
        return say(
            "{width} x {height}",
            width=format_length(width_mm, house.units),
            height=format_length(height_mm, house.units),
        )

    has = say("the drawing has") if one.is_drawn else say("the openings made like it are about")
    should = shown(one.nominal.width_mm, one.nominal.height_mm)
    return say(
        "{mark} is read as {shown}; {has} {should}.",
        mark=one.mark,
        shown=shown(*one.size),
        has=has,
        should=should,
    )


def _swapped(house: House, one: _Wanted, other: str) -> Finding:
    return Finding(
        code="rows-swapped",
        severity=Severity.STOP,
        place=one.mark,
        read=_read(house, one),
        wrong=say(
            "It has the size of {other}, and {other} has the size of {mark}: the two look swapped.",
            other=other,
            mark=one.mark,
        ),
        do=say("Change the two rows over if that is so, or read one of them again."),
    )


def _off_nominal(house: House, one: _Wanted) -> Finding:
    nominal = one.nominal
    turned = _off_mm(one.size, Nominal(width_mm=nominal.height_mm, height_mm=nominal.width_mm))
    return Finding(
        code="off-nominal",
        severity=Severity.WARNING,
        place=one.mark,
        read=_read(house, one),
        wrong=say(
            "It is {off} off its drawing",
            off=format_with_unit(one.off_mm, house.units),
        )
        + (say(": width and height look swapped.") if turned <= NEAR_MM else "."),
        do=say("Make sure that it is this opening that was read, and this drawing that holds."),
    )

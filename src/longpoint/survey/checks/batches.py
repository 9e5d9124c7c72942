"""Batches that the marks tell: openings that end alike behind the number of their unit."""

import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from statistics import median
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Nominal, Opening, OpeningKind
from longpoint.survey.readings import Place

FEWEST_UNITS: Final = 6
"""Fewer openings that end alike may be those of the floors, or of the rooms, of one house."""

ALIKE_MM: Final = 10.0
"""Openings made alike keep within this of their median in width and height; assumed."""

ALIKE_SHARE: Final = 2.0 / 3.0
"""So many of a batch have to: the others may hold a slip, or two rows swapped; assumed."""

MOST_NAMED: Final = 8

_MARK: Final = re.compile(r"(?P<unit>.*(?:\d|[\W_]))(?P<part>[^\W\d_]+\d+)")


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkParts:
    """A mark that names a unit and an opening of it.

    Attributes:
        unit: The unit, as a place of findings.
        part: What the openings made alike share, in capitals.
    """

    unit: str
    part: str


def mark_parts(mark: str) -> MarkParts | None:
    """Return the unit and the last part of a mark, None where it has no unit in front.

    The unit ends in a digit, a separator or a space; the last part is letters, then digits.

    Example:
        >>> [mark_parts(m) for m in ("W1", "12", "Unit 3")][:2]
        [None, None]
        >>> parts = [mark_parts(m) for m in ("1-W1", "U4-W1", "K7/D2", "Unit 3 W1", "4.w2")]
        >>> [(p.unit, p.part) for p in parts if p]
        [('Unit 1', 'W1'), ('U4', 'W1'), ('K7', 'D2'), ('Unit 3', 'W1'), ('Unit 4', 'W2')]
    """
    found = _MARK.fullmatch(mark.strip())
    if found is None:
        return None
    unit = re.sub(r"^[\W_]+|[\W_]+$", "", found["unit"])
    if not unit:
        return None
    return MarkParts(
        unit=say("Unit {unit}", unit=unit) if unit.isdecimal() else unit, part=found["part"].upper()
    )


def batched(house: House) -> House:
    """Return the house with every batch that is written or that the marks tell.

    An opening of a told batch gets its name, the nominal size that is written at others of it,
    and its unit for a room: the room that is written, where one room stands for one unit.

    Args:
        house: The house as read; what is written stays as it is.
    """
    told = _told(house)
    if not told:
        return house
    rooms = _rooms_of_units(told)
    changed: dict[str, Opening] = {}
    for name, openings in told.items():
        nominals = {o.nominal for o in openings} - {None}
        nominal = next(iter(nominals), None)
        for opening, parts in openings.items():
            changed[opening.mark] = replace(
                opening, batch=name.part, nominal=nominal, room=rooms[parts.unit.casefold()]
            )
    return replace(house, openings=tuple(changed.get(o.mark, o) for o in house.openings))


def check_batches(house: House) -> tuple[Finding, ...]:
    """Return a note that names the batches taken from the marks, none where there are none."""
    told = _told(house)
    if not told:
        return ()
    names = sorted(
        say("{part} ({openings})", part=name.part, openings=len(openings))
        for name, openings in told.items()
    )
    listed = joined(", ", names[:MOST_NAMED]) + (" ..." if len(names) > MOST_NAMED else "")
    first, second = [o.mark for o in next(iter(told.values()))][:2]
    return (
        Finding(
            code="batch-inferred",
            severity=Severity.NOTE,
            place=house.name,
            read=say(
                "Marks such as {first} and {second} end alike, and the openings "
                "behind them are of one size.",
                first=first,
                second=second,
            ),
            wrong=say(
                "They are taken as made alike, each batch by the end of its "
                "marks: {listed}; they are compared with each other.",
                listed=listed,
            ),
            do=say("Write batch at the openings that are made otherwise."),
        ),
    )


def usual_size(openings: Sequence[Opening]) -> Nominal | None:
    """Return the median width and height of openings; None when they are few, or not alike."""
    sizes = [size for opening in openings if (size := size_mm(opening)) is not None]
    if len(sizes) < FEWEST_UNITS:
        return None
    width_mm, height_mm = median(w for w, _ in sizes), median(h for _, h in sizes)
    alike = sum(abs(w - width_mm) <= ALIKE_MM and abs(h - height_mm) <= ALIKE_MM for w, h in sizes)
    if alike < ALIKE_SHARE * len(openings):
        return None
    return Nominal(width_mm=width_mm, height_mm=height_mm)


def size_mm(opening: Opening) -> tuple[float, float] | None:
    """Return the width and height as read (the median where two sides are), None if not read."""
    widths = [opening.readings.side_mm(p) for p in (Place.TOP, Place.BOTTOM)]
    heights = [opening.readings.side_mm(p) for p in (Place.LEFT, Place.RIGHT)]
    known_widths = [w for w in widths if w is not None]
    known_heights = [h for h in heights if h is not None]
    if not known_widths or not known_heights:
        return None
    return median(known_widths), median(known_heights)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Name:
    kind: OpeningKind
    part: str


def _told(house: House) -> dict[_Name, dict[Opening, MarkParts]]:
    """Return the batches that the marks tell: enough units, of one size and one drawing."""
    groups: dict[_Name, dict[Opening, MarkParts]] = defaultdict(dict)
    for opening in house.openings:
        parts = None if opening.batch else mark_parts(opening.mark)
        if parts is not None:
            groups[_Name(kind=opening.kind, part=parts.part)][opening] = parts
    return {name: openings for name, openings in groups.items() if _is_batch(openings)}


def _is_batch(openings: dict[Opening, MarkParts]) -> bool:
    units = {parts.unit.casefold() for parts in openings.values()}
    drawn = {o.nominal for o in openings} - {None}
    is_one_size = len(drawn) <= 1 and usual_size(tuple(openings)) is not None
    return is_one_size and len(units) >= FEWEST_UNITS


def _rooms_of_units(told: dict[_Name, dict[Opening, MarkParts]]) -> dict[str, str]:
    """Return the room of each unit: the one written, or its own name when that tells no unit."""
    written: dict[str, set[str]] = defaultdict(set)
    own: dict[str, str] = {}
    for openings in told.values():
        for opening, parts in openings.items():
            unit = parts.unit.casefold()
            own.setdefault(unit, parts.unit)
            written[unit] |= {opening.room} - {""}
    rooms = {unit: next(iter(written[unit])) for unit in own if len(written[unit]) == 1}
    shared = len(set(rooms.values())) < len(rooms)
    return own if shared else {**own, **rooms}

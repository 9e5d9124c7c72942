"""Openings that should be alike: told to be by a batch or a drawing, or found to be."""

from collections import defaultdict
from dataclasses import dataclass
from statistics import median
from typing import Final

from longpoint.survey.checks.batches import ALIKE_MM, batched
from longpoint.survey.house import House
from longpoint.survey.openings import Opening, OpeningKind
from longpoint.survey.readings import DIAGONALS, SIDES, Place

PLACES: Final = (*SIDES, *DIAGONALS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Siblings:
    """Openings of one size, in the order of the house.

    Attributes:
        openings: Two or more.
        is_told: True when a batch or a nominal size says so; found ones support a proposal only.
    """

    openings: tuple[Opening, ...]
    is_told: bool

    def median_mm(self, place: Place, *, without: frozenset[str] = frozenset()) -> float | None:
        """Return the median of a reading over the openings not named, None when none has it."""
        values = [
            value_mm
            for opening in self.openings
            if opening.mark not in without
            and (value_mm := opening.readings.side_mm(place)) is not None
        ]
        return median(values) if values else None

    def others_mm(self, mark: str, place: Place) -> tuple[float, ...]:
        """Return a reading of every other opening."""
        return tuple(
            value_mm
            for opening in self.openings
            if opening.mark != mark and (value_mm := opening.readings.side_mm(place)) is not None
        )


def told_siblings(house: House) -> tuple[Siblings, ...]:
    """Return the groups that a batch or a nominal size makes, of two openings or more.

    A batch is written, or told by the marks; there an opening's unit stands for its room.
    """
    groups: dict[object, list[Opening]] = defaultdict(list)
    for opening in batched(house).openings:
        if opening.batch or opening.nominal is not None:
            groups[(opening.kind, opening.batch, opening.nominal)].append(opening)
    return tuple(
        Siblings(openings=tuple(group), is_told=True) for group in groups.values() if len(group) > 1
    )


def all_siblings(house: House) -> dict[str, Siblings]:
    """Return the group of every opening that has one, by mark: told, or else found by size."""
    found = {o.mark: group for group in told_siblings(house) for o in group.openings}
    rest = [o for o in house.openings if o.mark not in found]
    for kind in OpeningKind:
        for group in _alike([o for o in rest if o.kind is kind]):
            if len(group) > 1:
                siblings = Siblings(openings=tuple(group), is_told=False)
                found.update((o.mark, siblings) for o in group)
    return found


def _alike(openings: list[Opening]) -> list[list[Opening]]:
    """Return openings joined wherever one is within reach of another."""
    groups: list[list[Opening]] = []
    for opening in openings:
        near = [g for g in groups if any(_are_near(opening, other) for other in g)]
        joined = [o for g in near for o in g]
        groups = [g for g in groups if g not in near]
        groups.append([*joined, opening])
    return groups


def _are_near(one: Opening, other: Opening) -> bool:
    """Tell whether two openings have both a width and a height side within reach."""
    return all(
        any(
            abs(a - b) <= ALIKE_MM
            for p in pair
            for q in pair
            if (a := one.readings.side_mm(p)) is not None
            and (b := other.readings.side_mm(q)) is not None
        )
        for pair in ((Place.TOP, Place.BOTTOM), (Place.LEFT, Place.RIGHT))
    )

"""What can still be had once some of the stock list and of the rack lies at the saw."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from longpoint.sticks.news.at_the_saw import AtTheSaw
from longpoint.sticks.plan import StickSource
from longpoint.survey.profiles import Offcut, Stock


def stock_left(state: AtTheSaw, stock: Iterable[Stock]) -> tuple[Stock, ...]:
    """Return the stock list less the counted sticks that lie at the saw already."""
    taken = _at_the_saw(state, StickSource.STOCK)
    left = []
    for entry in stock:
        key = (entry.profile, entry.length_mm)
        used = min(entry.count or 0, taken[key])
        taken[key] -= used
        count = None if entry.count is None else entry.count - used
        left.append(replace(entry, count=count))
    return tuple(left)


def rack_left(state: AtTheSaw, offcuts: Iterable[Offcut]) -> tuple[Offcut, ...]:
    """Return the offcuts on the rack that the plan left there."""
    labels = {stick.label for stick in state.sticks}
    taken = _at_the_saw(state, StickSource.OFFCUT)
    left = []
    for entry in offcuts:
        key = (entry.profile, entry.length_mm)
        used = entry.label in labels if entry.label else min(entry.count, taken[key])
        taken[key] -= 0 if entry.label else used
        left.append(replace(entry, count=entry.count - used))
    return tuple(entry for entry in left if entry.count > 0)


def _at_the_saw(state: AtTheSaw, source: StickSource) -> Counter[tuple[str, float]]:
    """Count the sticks without a label that lie at the saw, by profile and length as listed."""
    return Counter(
        (stick.profile, stick.listed_mm or stick.length_mm)
        for stick in state.sticks
        if stick.source is source and not stick.label
    )

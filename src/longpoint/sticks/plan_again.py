"""Plan the rest again after something went wrong, with as little new timber as can be.

What was cut stays where it is. What is left of each stick, sticks that are not begun, and rests of
spoiled pieces cost nothing any more: they are there. First the loose pieces alone are tried on
what the plan would have left over, so that nothing else moves; only where that needs a stick that
isn't there is the whole rest planned anew, and kept if it needs less new timber.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.linear.port import LinearSolver
from longpoint.pieces.piece import EndCut, Piece
from longpoint.sticks.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.effort import AT_THE_SAW, Effort
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from longpoint.survey.profiles import Offcut, Stock

_PER_MM: Final = 100.0
_ROUNDING: Final = 1e-6
_LEAST_MM: Final = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedAgain:
    """The rest, planned again.

    Attributes:
        state: Every stick as it lies, with what is to come off it now; new sticks at the end.
        new: Names of the sticks that must be bought or opened beyond those of the plan.
        findings: What is to be said of pieces that no stick is left for.
    """

    state: AtTheSaw
    new: tuple[str, ...]
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class _Part:
    """A stretch of a stick that can still be used, as an offcut that loses a kerf at each end."""

    stick: StickAtSaw
    start_mm: float
    length_mm: float


def plan_again(
    state: AtTheSaw,
    pieces: Sequence[Piece],
    house: House,
    solver: LinearSolver | None = None,
    effort: Effort = AT_THE_SAW,
) -> PlannedAgain:
    """Return a state in which no piece is loose any more, as far as there is timber.

    Args:
        state: Where the cutting stands.
        pieces: All pieces of the house, cut ones included.
        house: Its stock and its saw.
        solver: As for the first plan.
        effort: Limits; small ones, since somebody stands at the saw.
    """
    if not state.loose:
        return PlannedAgain(state=state, new=())
    again = _Again(house, {piece.mark: piece for piece in pieces}, solver, effort)
    best = again.placed(state)
    if best.new or best.state.loose:
        whole = again.placed(_all_loose(state))
        if again.worth(whole) < again.worth(best):
            best = whole
    return best


def _all_loose(state: AtTheSaw) -> AtTheSaw:
    marks = tuple(laid.piece for stick in state.sticks for laid in stick.next)
    emptied = tuple(replace(stick, next=()) for stick in state.sticks)
    return AtTheSaw(sticks=emptied, loose=(*marks, *state.loose))


def moved_pieces(before: AtTheSaw, after: AtTheSaw) -> tuple[str, ...]:
    """Return the marks of pieces that come off another stick than they were to before."""
    was = {laid.piece: stick.name for stick in before.sticks for laid in stick.next}
    return tuple(
        laid.piece
        for stick in after.sticks
        for laid in stick.next
        if was.get(laid.piece) != stick.name
    )


class _Again:
    """Places loose pieces for one house."""

    def __init__(
        self,
        house: House,
        by_mark: Mapping[str, Piece],
        solver: LinearSolver | None,
        effort: Effort,
    ) -> None:
        self.house, self.by_mark = house, by_mark
        self.solver, self.effort = solver, effort
        # Whichever piece comes next behind a cut, its own end may slant more than that cut.
        self._widest: defaultdict[str, float] = defaultdict(lambda: 1.0)
        for piece in by_mark.values():
            steeper = max(_stretch(piece.left), _stretch(piece.right))
            self._widest[piece.profile] = max(self._widest[piece.profile], steeper)

    def placed(self, state: AtTheSaw) -> PlannedAgain:
        """Return the state with its loose pieces on what is left, and on new sticks."""
        parts = [part for stick in state.sticks for part in self._parts(stick)]
        offcuts = (Offcut(profile=p.stick.profile, length_mm=p.length_mm) for p in parts)
        plan = plan_sticks(
            tuple(self.by_mark[mark] for mark in state.loose),
            replace(self.house, offcuts=tuple(offcuts), stock=self._stock_left(state)),
            self.solver,
            self.effort,
        )
        return _merged(state, plan, parts)

    def worth(self, planned: PlannedAgain) -> tuple[int, float, int]:
        """Rank a plan: pieces without timber, what the new sticks cost, how many they are."""
        new = [stick for stick in planned.state.sticks if stick.name in planned.new]
        prices = {
            (entry.profile, entry.length_mm): float(entry.price)
            for entry in self.house.stock
            if entry.price is not None
        }
        costs = (prices.get((s.profile, s.length_mm), s.length_mm / 1000.0) for s in new)
        return (len(planned.state.loose), math.fsum(costs), len(new))

    def _parts(self, stick: StickAtSaw) -> list[_Part]:
        """Return what can still be used of a stick behind the pieces that stay on it.

        A bad zone parts it. The cut behind the last piece takes its kerf, and a new stick keeps
        its end trims; a part is then taken as an offcut, which loses a kerf at each of its ends.
        """
        kerf_mm = self.house.saw.kerf_mm
        is_stock = stick.source is StickSource.STOCK
        trim_mm = max(self.house.saw.end_trim_mm, kerf_mm) if is_stock else kerf_mm
        stays = (*stick.done, *stick.next)
        start_mm = trim_mm - kerf_mm
        if stays or stick.is_begun:
            ends = [laid.end_mm for laid in stays]
            widest = self._widest[stick.profile]
            start_mm = max(stick.spent_mm, *ends, 0.0) + kerf_mm * (widest - 1.0)
        stretches = [(start_mm, stick.length_mm - (trim_mm - kerf_mm))]
        for from_mm, to_mm in sorted(stick.bad):
            stretches = [
                (start, end)
                for low, high in stretches
                for start, end in ((low, min(high, from_mm)), (max(low, to_mm), high))
                if end > start
            ]
        return [
            _Part(stick, start, math.floor((end - start) * _PER_MM + _ROUNDING) / _PER_MM)
            for start, end in stretches
            if end - start > 2.0 * kerf_mm + _LEAST_MM
        ]

    def _stock_left(self, state: AtTheSaw) -> tuple[Stock, ...]:
        """Return the stock list less the counted sticks that lie at the saw already."""
        taken = Counter(
            (stick.profile, stick.length_mm)
            for stick in state.sticks
            if stick.source is StickSource.STOCK
        )
        left = []
        for entry in self.house.stock:
            key = (entry.profile, entry.length_mm)
            used = min(entry.count or 0, taken[key])
            taken[key] -= used
            count = None if entry.count is None else entry.count - used
            left.append(replace(entry, count=count))
        return tuple(left)


def _stretch(cut: EndCut) -> float:
    """Return how much of the stick a unit of kerf takes at a cut."""
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    return 1.0 / (math.cos(mitre) * math.cos(bevel))


def _merged(state: AtTheSaw, plan: CutPlan, parts: Iterable[_Part]) -> PlannedAgain:
    """Return the state with what was planned on its parts laid where they lie on their sticks."""
    free = list(parts)
    added: dict[str, list[Laid]] = {}
    fresh: list[CutStick] = []
    for stick in plan.sticks:
        if stick.source is StickSource.STOCK:
            fresh.append(stick)
            continue
        part = next(
            p for p in free if (p.stick.profile, p.length_mm) == (stick.profile, stick.length_mm)
        )
        free.remove(part)
        added.setdefault(part.stick.name, []).extend(
            replace(
                laid,
                start_mm=laid.start_mm + part.start_mm,
                end_mm=laid.end_mm + part.start_mm,
            )
            for laid in stick.laid
        )
    sticks = tuple(
        replace(
            stick,
            next=tuple(
                sorted((*stick.next, *added.get(stick.name, ())), key=lambda laid: laid.start_mm)
            ),
        )
        for stick in state.sticks
    )
    new = _named(fresh, [stick.name for stick in state.sticks])
    return PlannedAgain(
        state=AtTheSaw(sticks=(*sticks, *new), loose=plan.unplaced),
        new=tuple(stick.name for stick in new),
        findings=tuple(f for f in plan.findings if f.severity is not Severity.NOTE),
    )


def _named(fresh: Sequence[CutStick], taken: Sequence[str]) -> list[StickAtSaw]:
    """Return new sticks under names that no stick at the saw has."""
    names, named = set(taken), []
    for stick in fresh:
        number = 1
        while f"{stick.profile}-{number}" in names:
            number += 1
        names.add(f"{stick.profile}-{number}")
        named.append(
            StickAtSaw(
                name=f"{stick.profile}-{number}",
                profile=stick.profile,
                length_mm=stick.length_mm,
                source=stick.source,
                next=stick.laid,
            )
        )
    return named

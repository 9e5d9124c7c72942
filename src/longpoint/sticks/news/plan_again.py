"""Plan the rest again after something went wrong, with as little new timber as can be.

What was cut stays where it is. What is left of each stick, sticks that are not begun, rests of
spoiled pieces and offcuts on the rack cost nothing any more: they are there. First the loose pieces
alone are tried on what the plan would have left over, so that nothing else moves. Where that needs
a stick that isn't there, a piece that waits is cut from the rest of a spoiled one, which frees its
place; and last the whole rest is planned anew, and kept if it needs less new timber.
"""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.linear.port import LinearSolver
from longpoint.pieces.piece import Piece
from longpoint.speech.said import say
from longpoint.sticks.effort import AT_THE_SAW, Effort
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.check_rests import check_on_rest
from longpoint.sticks.news.rest_seats import Bench, seated, swapped
from longpoint.sticks.news.stick_parts import Part, usable_parts, widest_cuts
from longpoint.sticks.news.stock_left import rack_left, stock_left
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from longpoint.survey.profiles import Offcut

_PART: Final = say("at the saw, {{}}")
"""Label of a stretch of a stick while the nester has it; no label of a rack has a blank."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedAgain:
    """The rest, planned again.

    Attributes:
        state: Every stick as it lies, with what is to come off it now; new sticks at the end.
        new: Names of the sticks that must be bought or opened beyond those of the plan.
        fetched: Names of offcuts to be fetched from the rack beyond those of the plan.
        findings: What is to be said of pieces that no stick is left for.
        placed: Marks of the pieces that had no place before.
    """

    state: AtTheSaw
    new: tuple[str, ...]
    fetched: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()
    placed: tuple[str, ...] = ()


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
    by_mark = {piece.mark: piece for piece in pieces}
    state = replace(state, loose=tuple(mark for mark in state.loose if mark in by_mark))
    if not state.loose:
        return PlannedAgain(state=state, new=())
    again = _Again(house, by_mark, solver, effort)
    best: PlannedAgain | None = None
    for way in _ways(state, Bench(house, by_mark)):
        found = again.placed(way)
        if best is None or again.worth(found) < again.worth(best):
            best = found
        if not best.new and not best.state.loose:
            break
    return replace(best or again.placed(state), placed=state.loose)


def _ways(state: AtTheSaw, bench: Bench) -> Iterator[AtTheSaw]:
    """Give states to plan from, those that move least first."""
    at_once = seated(state, bench)
    yield at_once
    if at_once is not state:
        yield state
    yield from swapped(state, bench)
    yield seated(_all_loose(state, {bench.by_mark[mark].profile for mark in state.loose}), bench)


def _all_loose(state: AtTheSaw, profiles: Set[str]) -> AtTheSaw:
    """Return the state in which all that waits of some profiles has to find its place anew."""
    marks = tuple(
        laid.piece for stick in state.sticks if stick.profile in profiles for laid in stick.next
    )
    sticks = tuple(
        replace(stick, next=()) if stick.profile in profiles else stick for stick in state.sticks
    )
    return replace(state, sticks=sticks, loose=(*marks, *state.loose))


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
        self._widest = widest_cuts(by_mark.values())

    def placed(self, state: AtTheSaw) -> PlannedAgain:
        """Return the state with its loose pieces on what is left, and on new sticks."""
        parts = [
            part for stick in state.sticks for part in usable_parts(stick, self.house, self._widest)
        ]
        offcuts = (
            Offcut(profile=p.stick.profile, length_mm=p.length_mm, label=_PART.format(n))
            for n, p in enumerate(parts)
        )
        plan = plan_sticks(
            tuple(self.by_mark[mark] for mark in state.loose),
            replace(
                self.house,
                offcuts=(*offcuts, *rack_left(state, self.house.offcuts)),
                stock=stock_left(state, self.house.stock),
            ),
            self.solver,
            self.effort,
        )
        planned = _merged(state, plan, parts)
        for stick in planned.state.sticks:
            if stick.next and not stick.done:
                check_on_rest(stick, self.by_mark, self.house)
        return planned

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


def _merged(state: AtTheSaw, plan: CutPlan, parts: Iterable[Part]) -> PlannedAgain:
    """Return the state with what was planned on its parts laid where they lie on their sticks."""
    by_label = {_PART.format(n): part for n, part in enumerate(parts)}
    added: dict[str, list[Laid]] = {}
    fresh: list[CutStick] = []
    for stick in plan.sticks:
        part = by_label.get(stick.label)
        if part is None:
            fresh.append(stick)
            continue
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
        state=replace(state, sticks=(*sticks, *new), loose=plan.unplaced),
        new=tuple(stick.name for stick in new if stick.source is StickSource.STOCK),
        fetched=tuple(stick.name for stick in new if stick.source is not StickSource.STOCK),
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
                label=stick.label,
            )
        )
    return named

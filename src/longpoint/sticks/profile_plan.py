"""The cut plan of one profile: packing, bound, tidying, cutting order."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final, Protocol

from longpoint.linear.port import LinearSolver
from longpoint.speech.said import say
from longpoint.sticks.aims.after_cost import after_cost
from longpoint.sticks.aims.goals import Limits, packing_goals, together_goal
from longpoint.sticks.batch.many_pieces import part_planner, plan_many
from longpoint.sticks.batch.parts_of_sticks import PartPlanner
from longpoint.sticks.effort import Effort
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import Floor, floor_of, simple_bound
from longpoint.sticks.lay.demand import PER_MM
from longpoint.sticks.lay.fit import Filled, Packing, cost_of, fit, score
from longpoint.sticks.lay.full_sticks import full_sticks
from longpoint.sticks.lay.laying import Workload, left_over, positions_mm, used_length
from longpoint.sticks.lay.ordering import best_order
from longpoint.sticks.lay.together import gathered
from longpoint.sticks.lay.weighed_bound import weighed_bound
from longpoint.sticks.plan import CutStick, Laid, Proof, Reached, StickSource
from longpoint.sticks.search.best_packing import Improved
from longpoint.sticks.search.improve import improve

BY_FULL: Final = say("sticks filled one by one; bound by sums")
BY_FIT: Final = say("best fit and moves; bound by sums")
BY_COLUMNS: Final = say("column generation and dives")
_DEARER: Final = 10
_AGAIN: Final = 60
"""Pricings for some sticks of a batch that are planned again."""


@dataclass(frozen=True, slots=True)
class ProfilePlan:
    """What is planned for one profile.

    Attributes:
        sticks: Its sticks, biggest pieces first.
        proof: How good they are.
        packing: What lies on the same sticks, in the same order.
        limits: What no plan of that cost can better, where that is known; None: by sums.
    """

    sticks: tuple[CutStick, ...]
    proof: Proof
    packing: Packing
    limits: Limits | None = None

    @property
    def unplaced(self) -> tuple[int, ...]:
        """Numbers of the pieces no stick was left for."""
        return self.packing.unplaced


@dataclass(frozen=True, slots=True)
class ProfileJob:
    """The pieces of one profile that are to be planned; it knows of no other.

    Attributes:
        profile: Name of the profile.
        work: The pieces.
        bars: The lengths.
        openings: The opening or run of each piece, where those of one are wanted from one stick;
            else empty.
    """

    profile: str
    work: Workload
    bars: Bars
    openings: tuple[str, ...] = ()


class ProfilePlanner(Protocol):
    """Plans profiles: one after the other, or several at once where a machine has the cores."""

    def __call__(
        self, jobs: Sequence[ProfileJob], solver: LinearSolver | None, effort: Effort
    ) -> Sequence[ProfilePlan]:
        """Return what `plan_profile` makes of each job, in their order."""
        ...


def one_by_one(
    jobs: Sequence[ProfileJob], solver: LinearSolver | None, effort: Effort
) -> list[ProfilePlan]:
    """Return the plan of each job, made here."""
    return [
        plan_profile(job.profile, job.work, job.bars, solver, effort, job.openings) for job in jobs
    ]


def plan_profile(
    profile: str,
    work: Workload,
    bars: Bars,
    solver: LinearSolver | None,
    effort: Effort,
    openings: Sequence[str] = (),
) -> ProfilePlan:
    """Return the plan of one profile.

    Where counted sticks run out, the pieces that stay over are planned on sticks that don't exist,
    so dear that none is used in vain, and are unplaced.

    Args:
        profile: Name of the profile.
        work: The pieces.
        bars: The lengths.
        solver: Solves the masters; None: best fit and a bound by sums.
        effort: Limits, as counts.
        openings: The opening or run of each piece, where those of one are wanted from one stick.
    """
    found = _packed(work, bars, solver, effort)
    if found.packing.unplaced:
        found = _short(work, bars, solver, effort)
    after = after_cost(work, bars, found, solver, effort)
    packing = after.packing
    if openings:
        packing = gathered(work, bars.bars, openings, packing)
    ordered = (_ordered(work, bars, stick) for stick in packing.sticks)
    sticks = sorted(ordered, key=lambda stick: _biggest_first(work, bars, stick))
    packing = replace(packing, sticks=tuple(sticks))
    cost = cost_of(bars.bars, packing)
    proof = Proof(
        profile=profile,
        cost=cost / bars.per_unit,
        lower_bound=min(cost, found.bound) / bars.per_unit,
        optimal=cost <= found.bound and not packing.unplaced,
        unit=bars.unit,
        solver=found.solved_by,
    )
    return ProfilePlan(cut_sticks(profile, work, bars, packing), proof, packing, after.limits)


def profile_goals(
    profile: str,
    work: Workload,
    bars: Bars,
    openings: Sequence[str],
    packing: Packing,
    limits: Limits | None = None,
) -> tuple[Reached, ...]:
    """Return how far a packing gets with the goals that follow the cost, but for those of the saw.

    Args:
        profile: Name of the profile.
        work: The pieces.
        bars: The lengths.
        openings: The opening or run of each piece, where those of one are wanted from one stick.
        packing: All pieces on their sticks, laid as they are cut.
        limits: What no plan of that cost can better; None: by sums.
    """
    floor = floor_of(work, bars.bars)
    reached = packing_goals(profile, work, bars, floor, packing, limits)
    if openings:
        reached = (*reached, together_goal(profile, floor, openings, packing))
    return reached


def _packed(work: Workload, bars: Bars, solver: LinearSolver | None, effort: Effort) -> Improved:
    planner = part_planner(work, bars, solver)
    if planner is not None:
        return _planned_in_parts(work, bars, planner, solver, effort)
    return _planned_one_by_one(work, bars, solver, effort)


def _planned_one_by_one(
    work: Workload, bars: Bars, solver: LinearSolver | None, effort: Effort
) -> Improved:
    floor = floor_of(work, bars.bars)
    first = _first_packing(work, bars, floor, effort.refills)
    packing, bound = first.packing, first.bound
    if solver is None or packing.unplaced:
        return first
    found = improve(work, bars, packing, floor, bound, solver, effort)
    by = (
        say("{by_columns} ({solved_by})", by_columns=BY_COLUMNS, solved_by=found.solved_by)
        if found.solved_by
        else first.solved_by
    )
    return replace(found, solved_by=by)


def _planned_in_parts(
    work: Workload,
    bars: Bars,
    planner: PartPlanner,
    solver: LinearSolver | None,
    effort: Effort,
) -> Improved:
    quick = replace(effort, dives=min(effort.dives, 1), pricings=min(effort.pricings, _AGAIN))

    def rest(some: Workload, left: Bars) -> Packing:
        return _planned_one_by_one(some, left, solver, effort).packing

    def again(some: Workload, left: Bars) -> Packing:
        return _planned_one_by_one(some, left, solver, quick).packing

    found = plan_many(work, bars, planner, rest, again, effort.stop)
    by = say("{by_columns} ({solved_by})", by_columns=BY_COLUMNS, solved_by=found.solved_by)
    return Improved(found.packing, found.bound, by)


def _first_packing(work: Workload, bars: Bars, floor: Floor, refills: int) -> Improved:
    """A plan without a solver, and a bound; where full sticks meet it, nothing else is tried."""
    bound = simple_bound(floor, bars)
    full = full_sticks(work, bars.bars, bound)
    if full is not None:
        bound = _bettered(bound, floor, bars, full)
        if cost_of(bars.bars, full) <= bound:
            return Improved(full, bound, BY_FULL)
    if full is None:
        fitted = fit(work, bars.bars, refills)
        return Improved(fitted, _bettered(bound, floor, bars, fitted), BY_FIT)
    fitted = fit(work, bars.bars, refills, enough=bound)
    if score(work, bars.bars, full) < score(work, bars.bars, fitted):
        return Improved(full, bound, BY_FULL)
    return Improved(fitted, bound, BY_FIT)


def _bettered(bound: int, floor: Floor, bars: Bars, packing: Packing) -> int:
    cost = cost_of(bars.bars, packing)
    if bound >= cost or packing.unplaced:
        return bound
    return max(bound, weighed_bound(floor, bars, cost))


def _short(work: Workload, bars: Bars, solver: LinearSolver | None, effort: Effort) -> Improved:
    """Plan with sticks that don't exist beside the others; then give them up."""
    longest = max(bars.bars, key=lambda bar: bar.room)
    dear = _DEARER * max(1, *(bar.cost for bar in bars.bars))
    needed = max(work.alone)
    missing = replace(
        longest,
        length=max(longest.length, needed + 2 * longest.trim),
        cost=dear,
        count=None,
        source=StickSource.STOCK,
    )
    with_missing = replace(bars, bars=(*bars.bars, missing))
    found = _packed(work, with_missing, solver, effort)
    real = tuple(s for s in found.packing.sticks if s.bar < len(bars.bars))
    placed = [place.piece for stick in real for place in stick.places]
    unplaced = tuple(sorted(set(range(len(work.mid))) - set(placed)))
    if unplaced:
        floor = floor_of(work, bars.bars)
        bases = tuple(floor.bases[piece] for piece in placed)
        bound = simple_bound(replace(floor, bases=bases), bars)
        return Improved(Packing(real, unplaced), bound, found.solved_by)
    return Improved(Packing(real), found.bound, found.solved_by)


def cut_sticks(profile: str, work: Workload, bars: Bars, packing: Packing) -> tuple[CutStick, ...]:
    """Return the sticks of a packing as they are laid and in their order, numbered."""
    return tuple(
        _cut_stick(f"{profile}-{number}", profile, work, bars, stick)
        for number, stick in enumerate(packing.sticks, 1)
    )


def _ordered(work: Workload, bars: Bars, stick: Filled) -> Filled:
    places = best_order(work, [place.piece for place in stick.places])
    used, room = used_length(work, places), bars.bars[stick.bar].room
    if left_over(work, places, room) < left_over(work, stick.places, room):
        return stick
    return Filled(stick.bar, places, used) if used <= stick.used else stick


def _biggest_first(work: Workload, bars: Bars, stick: Filled) -> tuple[int, ...]:
    lengths = sorted(-work.mid[place.piece] for place in stick.places)
    return (*lengths, -bars.bars[stick.bar].length)


def _cut_stick(name: str, profile: str, work: Workload, bars: Bars, stick: Filled) -> CutStick:
    bar = bars.bars[stick.bar]
    ends_mm = positions_mm(work, stick.places, bar.trim)
    return CutStick(
        name=name,
        profile=profile,
        length_mm=bar.length_mm,
        source=bar.source,
        laid=tuple(
            Laid(
                piece=work.demands[place.piece].mark,
                turned=place.turned,
                start_mm=start_mm,
                end_mm=end_mm,
            )
            for place, (start_mm, end_mm) in zip(stick.places, ends_mm, strict=True)
        ),
        used_mm=(stick.used + 2 * bar.trim) / PER_MM,
        left_mm=left_over(work, stick.places, bar.room) / PER_MM,
    )


def marks(work: Workload, numbers: Sequence[int]) -> tuple[str, ...]:
    """Return the marks of pieces."""
    return tuple(work.demands[number].mark for number in numbers)

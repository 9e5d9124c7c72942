"""All pieces of a house onto sticks: the cut plan, checked before it is handed on."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from longpoint.errors import Finding
from longpoint.linear.port import LinearSolver
from longpoint.pieces.piece import Piece
from longpoint.sticks.aims.goals import order_goals
from longpoint.sticks.check import check_plan
from longpoint.sticks.effort import STANDARD, Effort
from longpoint.sticks.labelled import with_labels
from longpoint.sticks.laid_code import plan_code
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import PER_MM, profile_demand
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.order.saw_order import saw_steps
from longpoint.sticks.order.sawn_order import sawn_order
from longpoint.sticks.plan import CutPlan, Saved, StickSource
from longpoint.sticks.profile_plan import (
    ProfileJob,
    ProfilePlan,
    ProfilePlanner,
    cut_sticks,
    marks,
    one_by_one,
    profile_goals,
)
from longpoint.sticks.saved import saved
from longpoint.sticks.stock_findings import (
    TooLong,
    bought_finding,
    longer_than_stock_finding,
    no_stock_finding,
    stock_short_finding,
)
from longpoint.survey.house import House


def plan_sticks(
    pieces: tuple[Piece, ...],
    house: House,
    solver: LinearSolver | None = None,
    effort: Effort = STANDARD,
    planner: ProfilePlanner = one_by_one,
) -> CutPlan:
    """Return the cut plan of a house, verified.

    Every profile is planned by itself. Goals in their order: least cost (metres bought, where a
    price of the profile is missing), offcuts first and free; fewest sticks opened; one long offcut
    rather than many short ones; big pieces cut first; the pieces of an opening from one stick,
    where the profile asks for it; few settings of the saw.

    An opening or run with a piece that no stick can give is held as a whole, and left out.

    Args:
        pieces: All pieces, marks unique.
        house: Its profiles, stock, offcuts and saw.
        solver: Solves the linear and integer masters; None: best fit and a bound by sums.
        effort: Limits, as counts.
        planner: Has the profiles planned.

    Raises:
        StockError: The finished plan failed the checker: a fault of the program, never of the data.
    """
    jobs = _jobs(pieces, house)
    too_long = tuple(found for job in jobs for found in _too_long(job, pieces))
    held = {found.place for found in too_long}
    kept = tuple(piece for piece in pieces if _place(piece) not in held)
    jobs = _jobs(kept, house)
    stocked = [job for job in jobs if job.bars.bars]
    made = dict(
        zip((job.profile for job in stocked), planner(stocked, solver, effort), strict=True)
    )
    plan = _planned(jobs, made, kept, house)
    left_out = tuple(piece.mark for piece in pieces if _place(piece) in held)
    plan = replace(
        plan,
        findings=(*(_held_findings(too_long, house)), *plan.findings),
        unplaced=(*left_out, *plan.unplaced),
        code=plan_code(plan),
    )
    check_plan(plan, pieces, house)
    return with_labels(plan, house.offcuts)


def _planned(
    jobs: Iterable[ProfileJob],
    made: Mapping[str, ProfilePlan],
    pieces: Sequence[Piece],
    house: House,
) -> CutPlan:
    plans: list[tuple[ProfileJob, ProfilePlan]] = []
    savings: list[Saved] = []
    findings: list[Finding] = []
    unplaced: list[str] = []
    for job in jobs:
        plan = made.get(job.profile)
        if plan is None:
            lengths_mm = [demand.mid / PER_MM for demand in job.work.demands]
            findings.append(no_stock_finding(job.profile, lengths_mm, house))
            unplaced.extend(demand.mark for demand in job.work.demands)
            continue
        plans.append((job, plan))
        savings.append(saved(job.work, job.bars, plan.proof, all_placed=not plan.unplaced))
        if plan.unplaced:
            missing = marks(job.work, plan.unplaced)
            lengths_mm = [job.work.alone[piece] / PER_MM for piece in plan.unplaced]
            findings.append(stock_short_finding(job.profile, missing, lengths_mm, house))
            unplaced.extend(missing)
        if plan.sticks:
            findings.append(bought_finding(plan.proof, plan.sticks, house))
    return _sawn(
        plans,
        pieces,
        house,
        CutPlan(
            proofs=tuple(plan.proof for _, plan in plans),
            savings=tuple(savings),
            findings=tuple(findings),
            unplaced=tuple(unplaced),
        ),
    )


def _sawn(
    plans: Sequence[tuple[ProfileJob, ProfilePlan]],
    pieces: Sequence[Piece],
    house: House,
    plan: CutPlan,
) -> CutPlan:
    """Return the plan with its sticks in the order of sawing, and how far its goals are met."""
    by_mark = {piece.mark: piece for piece in pieces}
    order = sawn_order(
        [(job.work, job.bars, each.packing) for job, each in plans], by_mark, house.saw
    )
    sawn = [
        (job, packing, each.limits)
        for (job, each), packing in zip(plans, order.packings, strict=True)
    ]
    plan = replace(
        plan,
        sticks=tuple(
            stick
            for job, packing, _ in sawn
            for stick in cut_sticks(job.profile, job.work, job.bars, packing)
        ),
    )
    reached = tuple(
        reached
        for job, packing, limits in sawn
        for reached in profile_goals(job.profile, job.work, job.bars, job.openings, packing, limits)
    )
    steps = saw_steps(plan, pieces, house.saw)
    return replace(plan, reached=(*reached, *order_goals(plan.sticks, steps, order.fewest_changes)))


def _jobs(pieces: Sequence[Piece], house: House) -> list[ProfileJob]:
    """One job per profile, in the order of the house's profiles."""
    by_profile: dict[str, list[Piece]] = {}
    for piece in pieces:
        by_profile.setdefault(piece.profile, []).append(piece)
    order = {profile.name: number for number, profile in enumerate(house.profiles)}
    jobs = []
    for name in sorted(by_profile, key=lambda name: order.get(name, len(order))):
        demand = profile_demand(by_profile[name], house.profile(name), house.saw.kerf_mm)
        bars = bars_of(name, house.stock, house.offcuts, house.saw)
        place_of = {piece.mark: piece.place for piece in by_profile[name]}
        wanted = demand.demands if house.profile(name).grain_matched else ()
        openings = tuple(place_of[one.mark] for one in wanted)
        jobs.append(ProfileJob(name, workload(demand.demands), bars, openings))
    return jobs


def _place(piece: Piece) -> str:
    return piece.place


def _too_long(job: ProfileJob, pieces: Sequence[Piece]) -> Iterable[TooLong]:
    """Pieces longer than every stick of their profile has between its trims.

    Where only offcuts are known, stock is merely short.
    """
    if all(bar.source is StickSource.OFFCUT for bar in job.bars.bars):
        return
    longest = max(job.bars.bars, key=lambda bar: bar.room)
    by_mark = {piece.mark: piece for piece in pieces}
    for number, demand in enumerate(job.work.demands):
        needed = job.work.alone[number] + 2 * longest.trim
        if needed > longest.length:
            piece = by_mark[demand.mark]
            yield TooLong(
                place=_place(piece),
                piece=demand.mark,
                role=piece.role,
                profile=job.profile,
                thickness_mm=piece.thickness_mm,
                needed_mm=needed / PER_MM,
                longest_mm=longest.length_mm,
                trims_mm=2 * longest.trim / PER_MM,
            )


def _held_findings(too_long: Iterable[TooLong], house: House) -> list[Finding]:
    by_place: dict[str, list[TooLong]] = {}
    for found in too_long:
        by_place.setdefault(found.place, []).append(found)
    return [longer_than_stock_finding(found, house) for found in by_place.values()]

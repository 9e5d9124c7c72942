"""The last word on a cut plan: lays every piece again as a solid and measures.

It knows pieces, sticks and the saw, and nothing of how a plan is made: none of the nester's sums
is used here. A piece is a bar with four long edges (outer and inner edge of face and of back); an
end cut gives each edge its own end. Between neighbours every edge must leave room for each of
their two cuts, and nothing may reach into the trims.

Along an edge a cut takes kerf / (m . d) of the stick, m the unit normal of the blade and d the
direction of the stick; the blade is flat, so a cut that clears a piece at its four edges clears
it everywhere.
"""

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.speech.said import say
from longpoint.sticks.laid_solids import (
    PRINTED_MM,
    TOLERANCE_MM,
    Solid,
    check_gaps,
    laid_solid,
    refuse,
)
from longpoint.sticks.plan import CutPlan, CutStick, Proof, StickSource
from longpoint.survey.house import House

_COST_TOLERANCE: Final = 1e-6


def check_plan(plan: CutPlan, pieces: Sequence[Piece], house: House) -> None:
    """Make sure that a plan can be cut, and that it says the truth about itself.

    Args:
        plan: The plan, whoever made it.
        pieces: All pieces it was made for.
        house: The profiles, sticks and saw.

    Raises:
        StockError: A piece is missing, cut twice, turned though its section isn't reversible, too
            near its neighbour or the stick's end; a stick isn't in the list, or not that often;
            costs don't add up, or the bound is above the cost.
    """
    by_mark = {piece.mark: piece for piece in pieces}
    _check_every_piece_once(plan, by_mark)
    _check_counts(plan, house)
    _check_names(plan)
    for stick in plan.sticks:
        _check_stick(stick, by_mark, house)
    for proof in plan.proofs:
        _check_proof(proof, plan, house)


def _check_every_piece_once(plan: CutPlan, by_mark: dict[str, Piece]) -> None:
    laid = Counter(laid.piece for stick in plan.sticks for laid in stick.laid)
    laid.update(plan.unplaced)
    for mark, times in laid.items():
        if mark not in by_mark:
            raise refuse(say("piece {mark}", mark=mark), say("There is no such piece."))
        if times > 1:
            raise refuse(
                say("piece {mark}", mark=mark), say("It is planned {times} times.", times=times)
            )
    missing = sorted(set(by_mark) - set(laid))
    if missing:
        raise refuse(
            say("piece {missing}", missing=missing[0]),
            say(
                "{missing} piece(s) are missing from the plan.",
                missing=len(missing),
            ),
        )
    if plan.unplaced and not plan.findings:
        raise refuse(
            say("piece {unplaced}", unplaced=plan.unplaced[0]),
            say("It is left out, and no finding says why."),
        )


def _check_counts(plan: CutPlan, house: House) -> None:
    opened = Counter((stick.profile, stick.length_mm, stick.source) for stick in plan.sticks)
    for (profile, length_mm, source), times in opened.items():
        counts: list[int | None]
        match source:
            case StickSource.STOCK:
                counts = [
                    entry.count
                    for entry in house.stock
                    if entry.profile == profile and entry.length_mm == length_mm
                ]
            case StickSource.OFFCUT:
                counts = [
                    entry.count
                    for entry in house.offcuts
                    if entry.profile == profile and entry.length_mm == length_mm
                ]
            case StickSource.REST:
                counts = []
        where = say(
            "{profile} {length_mm:g} mm ({source})",
            profile=profile,
            length_mm=length_mm,
            source=source,
        )
        if not counts:
            raise refuse(where, say("There is no such stick."))
        held = [count for count in counts if count is not None]
        if len(held) == len(counts) and times > sum(held):
            raise refuse(
                where,
                say(
                    "{times} are planned, {held} are there.",
                    times=times,
                    held=sum(held),
                ),
            )


def _check_names(plan: CutPlan) -> None:
    for name, times in Counter(stick.name for stick in plan.sticks).items():
        if times > 1:
            raise refuse(
                say("stick {name}", name=name), say("{times} sticks have this name.", times=times)
            )


def check_laid(stick: CutStick, by_mark: Mapping[str, Piece], house: House) -> None:
    """Make sure that the pieces of one stick can be cut from it as they are laid.

    Args:
        stick: The stick; what it says of its used length isn't looked at.
        by_mark: The pieces.
        house: The profiles and the saw.

    Raises:
        StockError: They can't.
    """
    _laid_solids(stick, by_mark, house)


def _check_stick(stick: CutStick, by_mark: Mapping[str, Piece], house: House) -> None:
    if not stick.laid:
        raise refuse(say("stick {stick}", stick=stick.name), say("Nothing is cut from it."))
    solids = _laid_solids(stick, by_mark, house)
    _check_lengths_said(stick, max(solids[-1].rights_mm), _trim_mm(stick, house))


def _trim_mm(stick: CutStick, house: House) -> float:
    kerf_mm = house.saw.kerf_mm
    if stick.source is StickSource.STOCK:
        return max(kerf_mm, house.saw.end_trim_mm)
    return kerf_mm


def _laid_solids(stick: CutStick, by_mark: Mapping[str, Piece], house: House) -> list[Solid]:
    kerf_mm, trim_mm = house.saw.kerf_mm, _trim_mm(stick, house)
    solids = [laid_solid(stick, laid, by_mark[laid.piece], house) for laid in stick.laid]
    if not solids:
        return solids
    if min(solids[0].lefts_mm) < trim_mm - TOLERANCE_MM:
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{piece} reaches into the left trim.",
                piece=stick.laid[0].piece,
            ),
        )
    end_mm = max(solids[-1].rights_mm)
    if end_mm > stick.length_mm - trim_mm + TOLERANCE_MM:
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{piece} reaches into the right trim.",
                piece=stick.laid[-1].piece,
            ),
        )
    check_gaps(stick, solids, kerf_mm)
    return solids


def _check_lengths_said(stick: CutStick, end_mm: float, trim_mm: float) -> None:
    used_mm = end_mm + trim_mm
    if abs(stick.used_mm - used_mm) > PRINTED_MM * (len(stick.laid) + 2):
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{used_mm:.2f} mm are said to be used, not {used_mm_2:.2f}.",
                used_mm=stick.used_mm,
                used_mm_2=used_mm,
            ),
        )
    if not -TOLERANCE_MM <= stick.left_mm <= stick.length_mm - end_mm + TOLERANCE_MM:
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{left_mm:.2f} mm can't be left over.",
                left_mm=stick.left_mm,
            ),
        )


def _check_proof(proof: Proof, plan: CutPlan, house: House) -> None:
    where = say("profile {profile}", profile=proof.profile)
    opened = Counter(
        stick.length_mm
        for stick in plan.sticks
        if stick.profile == proof.profile and stick.source is StickSource.STOCK
    )
    cost = sum(
        times * length_mm / 1000.0
        if proof.unit == "m"
        else _least_price(proof.profile, length_mm, times, house)
        for length_mm, times in opened.items()
    )
    if not math.isclose(cost, proof.cost, rel_tol=1e-9, abs_tol=_COST_TOLERANCE):
        raise refuse(
            where,
            say(
                "Its sticks cost {cost:.4f}, not {cost_2:.4f} as said.",
                cost=cost,
                cost_2=proof.cost,
            ),
        )
    if proof.lower_bound > proof.cost + _COST_TOLERANCE:
        raise refuse(
            where,
            say(
                "The bound {lower_bound:.4f} is above the cost.",
                lower_bound=proof.lower_bound,
            ),
        )
    if proof.optimal and proof.cost - proof.lower_bound > _COST_TOLERANCE:
        raise refuse(where, say("It is called the best, and cost and bound don't meet."))


def _least_price(profile: str, length_mm: float, times: int, house: House) -> float:
    """Price of some sticks of one length, the cheapest of that length first."""
    entries = sorted(
        (entry.price, times if entry.count is None else entry.count)
        for entry in house.stock
        if entry.profile == profile and entry.length_mm == length_mm and entry.price is not None
    )
    total = 0.0
    for price, count in entries:
        taken = min(times, count)
        total += float(price) * taken
        times -= taken
    if times:
        raise refuse(
            say("profile {profile}", profile=profile),
            say(
                "A stick of {length_mm:g} mm has no price.",
                length_mm=length_mm,
            ),
        )
    return total

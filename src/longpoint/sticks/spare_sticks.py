"""Which sticks to have spare, so that pieces can be cut again whichever of them are spoiled.

Where so many pieces may be spoiled, the spares hold the longest so many of the profile: any other
so many are no longer, one for one, and as none is turned to nest in its neighbour they can be cut
as well. What the plan leaves over, and what it leaves on the rack, serves first, at no cost.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from longpoint.pieces.piece import Piece
from longpoint.sticks.effort import QUICK
from longpoint.sticks.news.at_the_saw import nothing_cut
from longpoint.sticks.news.stock_left import rack_left, stock_left
from longpoint.sticks.plan import CutPlan, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from longpoint.survey.instruments import Saw
from longpoint.survey.profiles import Offcut


@dataclass(frozen=True, slots=True, kw_only=True)
class SpareSticks:
    """Spares of one profile.

    Attributes:
        profile: Name of the profile.
        covered: Marks of the pieces that the spares hold, the longest first.
        longest_mm: Length of the longest of them, points included; 0: there is none. [mm]
        buy: (length [mm], how many) to buy on top of the plan, the longest first.
        rests: Names of the plan's sticks whose rests serve as spares.
        rack: (label, length [mm]) of offcuts on the rack, not used by the plan, that serve too.
        missing: How many of the pieces no stick is left for.
    """

    profile: str
    covered: tuple[str, ...] = ()
    longest_mm: float = 0.0
    buy: tuple[tuple[float, int], ...] = ()
    rests: tuple[str, ...] = ()
    rack: tuple[tuple[str, float], ...] = ()
    missing: int = 0


def spare_sticks(
    plan: CutPlan, pieces: Sequence[Piece], house: House, counts: Mapping[str, int]
) -> tuple[SpareSticks, ...]:
    """Return the spares of every profile that the plan cuts.

    Args:
        plan: The cut plan.
        pieces: Its pieces; those without a stick are left out.
        house: Its profiles, sticks and saw.
        counts: How many pieces of each profile are to be covered. >= 0
    """
    laid = {one.piece for stick in plan.sticks for one in stick.laid}
    left = _what_is_left(plan, house)
    spares = []
    for profile in dict.fromkeys(stick.profile for stick in plan.sticks):
        ours = [piece for piece in pieces if piece.profile == profile and piece.mark in laid]
        longest = sorted(ours, key=lambda piece: (-_longest_mm(piece), piece.mark))
        wanted = tuple(longest[: counts.get(profile, 0)])
        spares.append(_spare(profile, wanted, left, _rests(plan, profile, house.saw)))
    return tuple(spares)


def _spare(
    profile: str, wanted: tuple[Piece, ...], left: House, rests: Sequence[Offcut]
) -> SpareSticks:
    with_rests = replace(left, offcuts=(*rests, *left.offcuts))
    found = plan_sticks(wanted, with_rests, effort=QUICK)
    bought = Counter(s.length_mm for s in found.sticks if s.source is StickSource.STOCK)
    held = [piece for piece in wanted if piece.mark not in found.unplaced]
    kept = {(rest.label, rest.length_mm) for rest in rests}
    reused = [(s.label, s.length_mm) for s in found.sticks if s.source is StickSource.OFFCUT]
    return SpareSticks(
        profile=profile,
        covered=tuple(piece.mark for piece in held),
        longest_mm=max(map(_longest_mm, held), default=0.0),
        buy=tuple(sorted(bought.items(), reverse=True)),
        rests=tuple(label for label, length_mm in reused if (label, length_mm) in kept),
        rack=tuple(one for one in reused if one not in kept),
        missing=len(found.unplaced),
    )


def _what_is_left(plan: CutPlan, house: House) -> House:
    """The house with the sticks that are left once the plan has taken its own."""
    state = nothing_cut(plan)
    return replace(
        house,
        profiles=tuple(replace(each, reversible=False) for each in house.profiles),
        stock=tuple(entry for entry in stock_left(state, house.stock) if entry.count != 0),
        offcuts=rack_left(state, house.offcuts),
    )


def _rests(plan: CutPlan, profile: str, saw: Saw) -> tuple[Offcut, ...]:
    """What is kept of the sticks of a profile, under the sticks' names."""
    return tuple(
        Offcut(profile=profile, length_mm=stick.left_mm, label=stick.name)
        for stick in plan.sticks
        if stick.profile == profile and stick.left_mm >= saw.keep_mm and stick.left_mm > 0.0
    )


def _longest_mm(piece: Piece) -> float:
    return max(piece.long_mm, piece.back_mm)

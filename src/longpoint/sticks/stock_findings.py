"""What is to be said about the sticks: missing, too short, and how many metres are bought."""

from collections.abc import Sequence
from dataclasses import dataclass

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit, running_length
from longpoint.sticks.plan import CutStick, Proof, StickSource
from longpoint.survey.house import House

LONGER_THAN_STOCK = "longer-than-stock"
NO_STOCK = "no-stock"
STOCK_SHORT = "stock-short"
STICKS_BOUGHT = "sticks-bought"

_MOST_NAMED = 6
_MOST_NEEDS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class TooLong:
    """A piece that no stick of its profile can give.

    Attributes:
        place: Mark of its opening or run.
        piece: Its mark.
        profile: Name of its profile.
        needed_mm: Length of a stick that would do, trims included.
        longest_mm: Length of the longest stick there is.
    """

    place: str
    piece: str
    profile: str
    needed_mm: float
    longest_mm: float


def longer_than_stock_finding(found: Sequence[TooLong], house: House) -> Finding:
    """Return the finding that holds one opening or run."""
    worst = sorted(found, key=lambda one: -one.needed_mm)[:_MOST_NEEDS]
    needs = "; ".join(
        f"{one.piece} needs one {one.profile} stick of "
        f"{format_with_unit(one.needed_mm, house.units)} with its end trims"
        for one in worst
    )
    if len(found) > len(worst):
        needs += f"; and {len(found) - len(worst)} more, none of them longer"
    longest = "; ".join(
        f"the longest {profile} stick is {format_with_unit(longest_mm, house.units)}"
        for profile, longest_mm in sorted({(one.profile, one.longest_mm) for one in found})
    )
    return Finding(
        code=LONGER_THAN_STOCK,
        severity=Severity.STOP,
        place=found[0].place,
        read=f"{needs}.",
        wrong=f"No stick can give that: {longest}.",
        do="Add a longer stick to the stock list, or plan a joint; nothing of this place is cut.",
    )


def no_stock_finding(profile: str, lengths_mm: Sequence[float], house: House) -> Finding:
    """Return the warning that nothing is known about the sticks of a profile."""
    return Finding(
        code=NO_STOCK,
        severity=Severity.WARNING,
        place=house.name,
        read=f"{_count(len(lengths_mm), 'piece')} of {profile},"
        f" {running_length(sum(lengths_mm), house.units)} together.",
        wrong=f"No stick of {profile} that can be used is in the stock list, so these pieces are"
        " on no stick.",
        do=f"Write the lengths that {profile} can be had in under [[stock]] and plan again.",
    )


def stock_short_finding(
    profile: str, missing: Sequence[str], lengths_mm: Sequence[float], house: House
) -> Finding:
    """Return the warning that the counted sticks ran out."""
    named = ", ".join(missing[:_MOST_NAMED]) + (" ..." if len(missing) > _MOST_NAMED else "")
    return Finding(
        code=STOCK_SHORT,
        severity=Severity.WARNING,
        place=house.name,
        read=f"The {profile} sticks in the stock list and on the rack.",
        wrong=f"They don't give {_count(len(missing), 'piece')} ({named}), together"
        f" {running_length(sum(lengths_mm), house.units)}; the longest is"
        f" {format_with_unit(max(lengths_mm), house.units)}.",
        do=f"Get more {profile} and plan again, or cut these pieces from sticks not in the list.",
    )


def bought_finding(proof: Proof, sticks: Sequence[CutStick], house: House) -> Finding:
    """Return the note on what is bought, and what is needed at least."""
    new = [stick for stick in sticks if stick.source is StickSource.STOCK]
    offcuts = len(sticks) - len(new)
    running = running_length(sum(stick.length_mm for stick in new), house.units)
    bought = f"{running} of {proof.profile} in {_count(len(new), 'stick')}"
    if offcuts:
        bought += f", and {_count(offcuts, 'offcut')} from the rack"
    if proof.unit == "m":
        least = f"at least {running_length(proof.lower_bound * 1000.0, house.units)}"
    else:
        bought += f", for {proof.cost:.2f}"
        least = f"at least {proof.lower_bound:.2f}"
    if proof.optimal:
        wrong = "No plan with these sticks does with less."
        do = "Nothing to do."
    else:
        wrong = f"It is the best plan found; {least} is needed whatever the plan."
        do = "Buy this, or plan again with more effort."
    return Finding(
        code=STICKS_BOUGHT,
        severity=Severity.NOTE,
        place=house.name,
        read=f"{bought}.",
        wrong=wrong,
        do=do,
    )


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"

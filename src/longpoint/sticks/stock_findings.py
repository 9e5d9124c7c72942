"""What is to be said about the sticks: missing, too short, and how many metres are bought."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import Role
from longpoint.pieces.scarfs import SCARF_DEG, SCARFED, scarf_for
from longpoint.quantities.formatting import format_with_unit, running_length
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.plan import CutStick, Proof, StickSource
from longpoint.survey.house import House

LONGER_THAN_STOCK = "longer-than-stock"
NO_STOCK = "no-stock"
STOCK_SHORT = "stock-short"
STICKS_BOUGHT = "sticks-bought"

_MOST_NAMED = 6
_MOST_NEEDS = 3
_KINDS: Final = {
    Role.LEFT_LEG: "leg",
    Role.RIGHT_LEG: "leg",
    Role.BOARD: say("window board"),
    Role.SIDE: say("side of a frame"),
    Role.STOP: say("door stop"),
}
"""Where a role's own name doesn't read well in a sentence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TooLong:
    """A piece that no stick of its profile can give.

    Attributes:
        place: Mark of its opening or run.
        piece: Its mark.
        role: What it is in its place.
        profile: Name of its profile.
        thickness_mm: Its thickness.
        needed_mm: Length of a stick that would do, trims included.
        longest_mm: Length of the longest stick there is.
        trims_mm: What is lost of either stick at its two ends together.
    """

    place: str
    piece: str
    role: Role
    profile: str
    thickness_mm: float
    needed_mm: float
    longest_mm: float
    trims_mm: float


def longer_than_stock_finding(found: Sequence[TooLong], house: House) -> Finding:
    """Return the finding that holds one opening or run."""
    worst = sorted(found, key=lambda one: -one.needed_mm)[:_MOST_NEEDS]
    needs = joined(
        "; ",
        (
            say(
                "{piece} needs one {profile} stick of {needed} with its end trims",
                piece=one.piece,
                profile=one.profile,
                needed=format_with_unit(one.needed_mm, house.units),
            )
            for one in worst
        ),
    )
    if len(found) > len(worst):
        needs += say(
            "; and {found} more, none of them longer",
            found=len(found) - len(worst),
        )
    longest = joined(
        "; ",
        (
            say(
                "the longest {profile} stick is {longest}",
                profile=profile,
                longest=format_with_unit(longest_mm, house.units),
            )
            for profile, longest_mm in sorted({(one.profile, one.longest_mm) for one in found})
        ),
    )
    return Finding(
        code=LONGER_THAN_STOCK,
        severity=Severity.STOP,
        place=found[0].place,
        read=say("{needs}.", needs=needs),
        wrong=say("No stick can give that: {longest}.", longest=longest),
        do=say(
            "{remedies} Until then nothing of this place is cut.",
            remedies=joined(" ", _remedies(found, worst, house)),
        ),
    )


def _remedies(found: Sequence[TooLong], worst: Sequence[TooLong], house: House) -> list[str]:
    """What to buy for each profile, and the scarf of each piece that may have one."""
    longest: dict[str, TooLong] = {}
    for one in sorted(found, key=lambda one: one.needed_mm):
        longest[one.profile] = one
    buy = [
        say(
            "Add to the stock list one {profile} stick of {needed} or more.",
            profile=profile,
            needed=format_with_unit(one.needed_mm, house.units),
        )
        for profile, one in sorted(longest.items())
    ]
    kinds = sorted({_kind(one.role) for one in found if one.role not in SCARFED})
    if kinds:
        buy.append(
            say(
                "A scarf is no remedy: in {kinds} it shows or is weak.",
                kinds=joined(say(" or "), kinds),
            )
        )
    return buy + [_scarf_words(one, house) for one in worst if one.role in SCARFED]


def _kind(role: Role) -> str:
    name = _KINDS.get(role, role.value.replace("-", " "))
    return say("{an} {name}", an=say("an") if name[0] in "aeiou" else say("a"), name=name)


def _scarf_words(one: TooLong, house: House) -> str:
    scarf = scarf_for(one.needed_mm - one.trims_mm, one.thickness_mm, one.longest_mm - one.trims_mm)
    if scarf is None:
        return say(
            "No scarf helps {piece}: a part would be too short to hold, or still too long.",
            piece=one.piece,
        )
    parts = joined(" + ", (format_with_unit(part_mm, house.units) for part_mm in scarf.parts_mm))
    return say(
        "Or scarf {piece} in {parts_mm} parts, {parts} long point to long point: "
        "they lap {overlap}, {scarf_deg:g} degrees through the thickness. Where "
        "the studs are isn't known here: put each joint over one.",
        piece=one.piece,
        parts_mm=len(scarf.parts_mm),
        parts=parts,
        overlap=format_with_unit(scarf.overlap_mm, house.units),
        scarf_deg=SCARF_DEG,
    )


def no_stock_finding(profile: str, lengths_mm: Sequence[float], house: House) -> Finding:
    """Return the warning that nothing is known about the sticks of a profile."""
    return Finding(
        code=NO_STOCK,
        severity=Severity.WARNING,
        place=house.name,
        read=say(
            "{count} of {profile}, {lengths} together.",
            count=say_many("{count} piece", "{count} pieces", count=len(lengths_mm)),
            profile=profile,
            lengths=running_length(sum(lengths_mm), house.units),
        ),
        wrong=say(
            "No stick of {profile} that can be used is in the stock list, so "
            "these pieces are on no stick.",
            profile=profile,
        ),
        do=say(
            "Write the lengths that {profile} can be had in under [[stock]] and plan again.",
            profile=profile,
        ),
    )


def stock_short_finding(
    profile: str, missing: Sequence[str], lengths_mm: Sequence[float], house: House
) -> Finding:
    """Return the warning that the counted sticks ran out."""
    named = joined(", ", missing[:_MOST_NAMED]) + (" ..." if len(missing) > _MOST_NAMED else "")
    return Finding(
        code=STOCK_SHORT,
        severity=Severity.WARNING,
        place=house.name,
        read=say("The {profile} sticks in the stock list and on the rack.", profile=profile),
        wrong=say(
            "They don't give {count} ({named}), together {lengths}; the longest is {lengths_2}.",
            count=say_many("{count} piece", "{count} pieces", count=len(missing)),
            named=named,
            lengths=running_length(sum(lengths_mm), house.units),
            lengths_2=format_with_unit(max(lengths_mm), house.units),
        ),
        do=say(
            "Get more {profile} and plan again, or cut these pieces from sticks not in the list.",
            profile=profile,
        ),
    )


def bought_finding(proof: Proof, sticks: Sequence[CutStick], house: House) -> Finding:
    """Return the note on what is bought, and what is needed at least."""
    new = [stick for stick in sticks if stick.source is StickSource.STOCK]
    offcuts = len(sticks) - len(new)
    running = running_length(sum(stick.length_mm for stick in new), house.units)
    bought = say(
        "{running} of {profile} in {count}",
        running=running,
        profile=proof.profile,
        count=say_many("{count} stick", "{count} sticks", count=len(new)),
    )
    if offcuts:
        bought += say(
            ", and {count} from the rack",
            count=say_many("{count} offcut", "{count} offcuts", count=offcuts),
        )
    if proof.unit == "m":
        least = say(
            "at least {lower_bound}",
            lower_bound=running_length(proof.lower_bound * 1000.0, house.units),
        )
    else:
        bought += say(", for {cost:.2f}", cost=proof.cost)
        least = say("at least {lower_bound:.2f}", lower_bound=proof.lower_bound)
    if proof.optimal:
        wrong = say("No plan with these sticks does with less.")
        do = say("Nothing to do.")
    else:
        wrong = say(
            "It is the best plan found; {least} is needed whatever the plan.",
            least=least,
        )
        do = say("Buy this, or plan again with more effort.")
    return Finding(
        code=STICKS_BOUGHT,
        severity=Severity.NOTE,
        place=house.name,
        read=say("{bought}.", bought=bought),
        wrong=wrong,
        do=do,
    )

"""A variation: what the readings ask for beyond what was quoted, each with its reason."""

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from longpoint.errors import PricingError
from longpoint.pricing.quote import Quote, Row, price_row
from longpoint.pricing.tax import Sums, sums
from longpoint.pricing.timber import Stick
from longpoint.pricing.work import Task, WorkKind
from longpoint.speech.said import joined, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Variation:
    """A variation of a quote, to be signed before its work is done.

    Attributes:
        number: 1 for the first of a quote.
        quote: Number of the quote.
        day: The day it was given.
        made_from: Short code of the readings that ask for it.
        rows: What is more, or less, at the quote's prices.
        sums: What stands below.
        enough: Profiles of which the timber quoted is enough.
        held: Marks that are in doubt, and counted as before.
        tasks: All work as it stands with this variation.
        sticks: All sticks as they stand with it.
    """

    number: int
    quote: str
    day: date
    made_from: str
    rows: tuple[Row, ...]
    sums: Sums
    enough: tuple[str, ...]
    held: tuple[str, ...]
    tasks: tuple[Task, ...]
    sticks: Mapping[Stick, int]


def quoted_sticks(quote: Quote) -> Mapping[Stick, int]:
    """Return the sticks that a quote holds."""
    return {row.stick: int(row.quantity) for row in quote.rows if row.stick is not None}


def make_variation(
    quote: Quote,
    earlier: Sequence[Variation],
    tasks: Iterable[Task],
    sticks: Mapping[Stick, int],
    *,
    day: date,
    made_from: str,
    held: Iterable[str] = (),
) -> Variation:
    """Return what is to be paid otherwise than quoted.

    Work is compared kind by kind, at the quote's own prices: more of it is a row, less of it is
    taken off. Of timber a profile is looked at as a whole: where it costs more than quoted, the
    sticks that are more and those that are fewer are rows; where it costs no more, what was quoted
    stands, since it was quoted to be enough.

    Args:
        quote: The quote as given.
        earlier: Variations given before.
        tasks: The work as the readings have it.
        sticks: The timber as the readings have it.
        day: The day.
        made_from: Short code of the readings.
        held: Marks that are in doubt; their work stays as it was.

    Raises:
        PricingError: Nothing differs, or something is asked for that the quote has no price for.
    """
    before = earlier[-1].tasks if earlier else quote.tasks
    had = earlier[-1].sticks if earlier else quoted_sticks(quote)
    now = _as_before(before, tasks, set(held))
    rows = _work_rows(quote, before, now)
    timber, enough, stands = (
        _timber_rows(quote, had, sticks) if quote.stick_prices else ([], (), {})
    )
    rows += timber
    if not rows:
        raise PricingError(
            say("The readings were held against quote {number}.", number=quote.number),
            say("They ask for nothing that costs more or less than what was quoted."),
            say("No variation is needed; the quote stands."),
        )
    return Variation(
        number=len(earlier) + 1,
        quote=quote.number,
        day=day,
        made_from=made_from,
        rows=tuple(rows),
        sums=sums([row.amount for row in rows], quote.tax, quote.currency),
        enough=enough,
        held=tuple(held),
        tasks=now,
        sticks=stands,
    )


def _as_before(
    before: Iterable[Task], tasks: Iterable[Task], held: Container[str]
) -> tuple[Task, ...]:
    """Return the work as read, but that of marks in doubt as it was counted before."""
    return (
        *(task for task in tasks if task.place not in held),
        *(task for task in before if task.place in held),
    )


def _work_rows(quote: Quote, before: Sequence[Task], now: Sequence[Task]) -> list[Row]:
    was, is_now = _quantities(before), _quantities(now)
    rows = []
    for kind in WorkKind:
        more = is_now.get(kind, Decimal(0)) - was.get(kind, Decimal(0))
        if not more or kind not in quote.prices:
            continue
        why = _reason(kind, before, now, was.get(kind, Decimal(0)), is_now.get(kind, Decimal(0)))
        rows.append(price_row(more, quote.prices[kind], work=kind, why=why))
    return rows


def unpriced_work(quote: Quote, tasks: Iterable[Task]) -> tuple[WorkKind, ...]:
    """Return the kinds of work that are asked for and that the quote has no price for."""
    asked = {task.kind for task in tasks} - {WorkKind.PIECE, WorkKind.JOINT}
    return tuple(kind for kind in WorkKind if kind in asked and kind not in quote.prices)


def _reason(
    kind: WorkKind, before: Sequence[Task], now: Sequence[Task], was: Decimal, is_now: Decimal
) -> str:
    known = {(task.place, task.why) for task in before}
    found = [
        say("{place}: {why}", place=task.place, why=task.why)
        for task in now
        if task.kind is kind and task.why and (task.place, task.why) not in known
    ]
    counted = say(
        "{normalize:f} now, {normalize_2:f} quoted",
        normalize=is_now.normalize(),
        normalize_2=was.normalize(),
    )
    return (
        say("{found} ({counted})", found=joined("; ", found), counted=counted) if found else counted
    )


def _timber_rows(
    quote: Quote, had: Mapping[Stick, int], now: Mapping[Stick, int]
) -> tuple[list[Row], tuple[str, ...], Mapping[Stick, int]]:
    rows: list[Row] = []
    enough = []
    stands: dict[Stick, int] = {}
    for profile in sorted({profile for profile, _ in (*had, *now)}):
        old = {stick: count for stick, count in had.items() if stick[0] == profile}
        new = {stick: count for stick, count in now.items() if stick[0] == profile}
        if _worth(quote, new) <= _worth(quote, old):
            enough.append(profile)
            stands |= old
            continue
        stands |= new
        counted = say(
            "{values} sticks of {profile} now, {values_2} quoted",
            values=sum(new.values()),
            profile=profile,
            values_2=sum(old.values()),
        )
        for stick in sorted({*old, *new}, key=lambda each: -each[1]):
            more = new.get(stick, 0) - old.get(stick, 0)
            if more:
                each = quote.stick_prices[stick]
                rows.append(price_row(Decimal(more), each, stick=stick, why=counted))
    return rows, tuple(enough), stands


def _worth(quote: Quote, sticks: Mapping[Stick, int]) -> Decimal:
    for profile, length_mm in sticks:
        if (profile, length_mm) not in quote.stick_prices:
            raise PricingError(
                say(
                    "The readings take sticks of {profile}, {length_mm:g} mm long.",
                    profile=profile,
                    length_mm=length_mm,
                ),
                say("Quote {number} has no price for them.", number=quote.number),
                say("Plan with the lengths that were quoted, or give a new quote."),
            )
    amounts = (quote.stick_prices[stick].amount * count for stick, count in sticks.items())
    return sum(amounts, Decimal(0))


def _quantities(tasks: Iterable[Task]) -> Mapping[WorkKind, Decimal]:
    found: dict[WorkKind, Decimal] = {}
    for task in tasks:
        found[task.kind] = found.get(task.kind, Decimal(0)) + task.quantity
    return found

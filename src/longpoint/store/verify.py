"""Is everything in a store as it was written?"""

from collections.abc import Iterable, Iterator
from typing import Any, Final

from longpoint.errors import Finding, Severity, StoreError, SurveyError
from longpoint.journal import read_entry
from longpoint.speech.said import raised, say
from longpoint.store.link import Link
from longpoint.store.milestone_text import read_milestone
from longpoint.store.sums import START
from longpoint.store.tail import Tail, is_sum, read_tail

DAMAGED: Final = "store-damaged"
MOST_SAID: Final = 20
"""So many findings are said; more of them tell nothing new."""

Row = tuple[Any, ...]


def verified(link: Link) -> tuple[Finding, ...]:
    """Return what is wrong with a store, the database's own checks first.

    Every entry and milestone is read and summed again, and counted.
    """
    try:
        with link.transaction(writes=False):
            found = [*link.inspected(), *_rows_changed(link)]
    except StoreError as error:
        return (damaged(link.name, error.read, error.wrong),)
    return tuple(found[:MOST_SAID])


def damaged(store: str, read: str, wrong: str) -> Finding:
    """Return the finding that something isn't as it was written."""
    return Finding(
        code=DAMAGED,
        severity=Severity.STOP,
        place=store,
        read=read,
        wrong=wrong,
        do=say(
            "Write nothing more to it. `longpoint restore` takes your last backup "
            "and what is still sound here."
        ),
    )


def _rows_changed(link: Link) -> Iterator[Finding]:
    tail = read_tail(dict(link.rows("SELECT name, value FROM facts")), link.name)
    entries = link.rows(
        "SELECT number, entry, sum, device, counter, house FROM entries ORDER BY number"
    )
    milestones = link.rows("SELECT number, milestone, sum, house FROM milestones ORDER BY number")
    yield from _chain_broken(link.name, "entry", entries, tail.entries, tail.entries_sum)
    yield from _chain_broken(
        link.name, "milestone", milestones, tail.milestones, tail.milestones_sum
    )
    yield from _columns_changed(link.name, entries, milestones)
    yield from _houses_changed(link, entries, tail)


def _chain_broken(
    store: str, what: str, rows: Iterable[Row], count: int, last: bytes
) -> Iterator[Finding]:
    before: object = START
    expected = 0
    for number, text, total, *_ in rows:
        expected += 1
        if number != expected:
            wrong = say(
                "The one before it is missing: number {expected} was due.",
                expected=expected,
            )
            yield damaged(store, say("There is {what} {number}.", what=what, number=number), wrong)
            return
        if not is_sum(total, before, number, text):
            wrong = say("It isn't as it was written.")
            yield damaged(
                store,
                say(
                    "{what} {number} was read.",
                    what=raised(what),
                    number=number,
                ),
                wrong,
            )
        before = total
    if expected != count or before != last:
        yield damaged(
            store,
            say(
                "{expected} were found of what is kept as {what}.",
                expected=expected,
                what=what,
            ),
            say(
                "There were {count}, or the last of them isn't as it was written.",
                count=count,
            ),
        )


def _columns_changed(
    store: str, entries: Iterable[Row], milestones: Iterable[Row]
) -> Iterator[Finding]:
    """Yield where what is searched by disagrees with what was written."""
    for number, text, _, *columns in entries:
        if not isinstance(text, str):
            yield damaged(
                store,
                say("Entry {number} was read.", number=number),
                say("It isn't text any more."),
            )
            continue
        try:
            entry = read_entry(text)
        except SurveyError as error:
            yield damaged(store, say("Entry {number} was read.", number=number), error.wrong)
            continue
        if [entry["device"], entry["counter"], entry["house"]] != columns:
            yield damaged(
                store,
                say("Entry {number} was read.", number=number),
                say("It stands under another's name."),
            )
    for number, text, _, house in milestones:
        try:
            stands = read_milestone(number, text).house == house
        except (ValueError, KeyError, TypeError):
            stands = False
        if not stands:
            yield damaged(
                store,
                say("Milestone {number} was read.", number=number),
                say("It isn't as it was written."),
            )


def _houses_changed(link: Link, entries: Iterable[Row], tail: Tail) -> Iterator[Finding]:
    there = [tuple(row) for row in link.rows("SELECT house, place FROM houses ORDER BY place")]
    due = dict.fromkeys(row[5] for row in entries)
    if there != [(house, place) for place, house in enumerate(due, start=1)]:
        yield damaged(
            link.name,
            say(
                "{there} houses are listed; the {entries} entries are of {due}.",
                there=len(there),
                entries=tail.entries,
                due=len(due),
            ),
            say("The list isn't as it was written."),
        )

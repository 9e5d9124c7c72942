"""What an estimate rests on, and what it leaves out."""

from longpoint.errors import Severity
from longpoint.pricing.job import Job
from longpoint.pricing.work import ALLOWED, CREWS_OWN, WorkKind
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Note
from longpoint.sheets.money_words import quantity_words, work_words
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, lowered, say


def running_units(job: Job) -> Units:
    """Return the units of a job's running lengths: those of its rates, else of its house."""
    return job.house.units if job.rates is None else job.rates.units


def not_priced(job: Job) -> tuple[Block, ...]:
    """Return a warning of the work that no figure is known for; nothing where there is none."""
    if not job.estimate.without_rate:
        return ()
    named = joined(
        "; ",
        (
            say(
                "{work}: {quantity} ({kind})",
                work=work_words(kind, job.house.dialect),
                quantity=quantity_words(quantity, kind, running_units(job)),
                kind=shown(kind.value),
            )
            for kind, quantity in job.estimate.without_rate
        ),
    )
    return (
        Note(
            severity=Severity.WARNING,
            title=say("LOOK · no hours"),
            text=say(
                "Not in the hours, since no figure is known: {named}. Write hours "
                "for it under [hours] of the rates file.",
                named=named,
            ),
        ),
    )


def assumptions(job: Job) -> tuple[str, ...]:
    """Return what an estimate rests on, a sentence or two each."""
    units, found = job.house.units, []
    if job.doubt is not None:
        ours = say("; ours, no source") if job.is_spread_assumed else ""
        opening, wall = (
            format_with_unit(each, units) for each in (job.doubt.opening_mm, job.doubt.wall_mm)
        )
        found.append(
            say(
                "Nothing is read yet: every opening is taken as drawn and square. "
                "Widths and heights are drawn with a standard deviation of {opening}, "
                "runs with {wall}{ours}.",
                opening=opening,
                wall=wall,
                ours=ours,
            )
        )
        if not any(task.place == ALLOWED for task in job.tasks):
            found.append(say("Nothing is allowed for odd corners, reveals to re-set or packing."))
    own = sum(line.rate.source.startswith(CREWS_OWN) for line in job.estimate.lines)
    started = len(job.estimate.lines) - own
    if started:
        found.append(
            say(
                "{started} of {lines} kinds of work rest on figures to start from, "
                "named in the table; published hours for one thing differ several "
                "times over. Write your own.",
                started=started,
                lines=len(job.estimate.lines),
            )
        )
    if job.stood_in:
        found.append(
            say(
                "In doubt: {stood_in}. Counted by what was read, openings as if square; "
                "what their readings would ask for isn't.",
                stood_in=joined(", ", job.stood_in),
            )
        )
    if job.uncounted:
        found.append(
            say(
                "Can't be read, and not counted at all: {uncounted}.",
                uncounted=joined(", ", job.uncounted),
            )
        )
    if job.labour_only:
        named = joined(
            ", ", (lowered(work_words(kind, job.house.dialect)) for kind in job.labour_only)
        )
        found.append(
            say(
                "Of {named} the work is counted and no timber: only its length is known.",
                named=named,
            )
        )
    if job.left_alone:
        found.append(
            say(
                "Corners proud or shy at {left_alone} are priced as left alone, as the "
                "house file has it.",
                left_alone=joined(", ", job.left_alone),
            )
        )
    if not any(line.kind is WorkKind.SET_UP for line in job.estimate.lines):
        found.append(say("Setting up and travel are not counted: set_up has no hours."))
    found.append(say("Nails, glue, filler and other sundries are not counted."))
    return tuple(found)

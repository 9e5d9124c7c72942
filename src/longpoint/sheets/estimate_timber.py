"""The timber of an estimate: how many sticks are enough, and how often."""

from longpoint.errors import Severity
from longpoint.pricing.job import Job
from longpoint.pricing.rates import Timber
from longpoint.quantities.formatting import format_with_unit
from longpoint.sheets.blocks import Block, Column, Heading, Note, Paragraph, Table
from longpoint.sheets.money_words import in_hundred
from longpoint.speech.said import joined, say


def timber_blocks(job: Job) -> tuple[Block, ...]:
    """Return the sticks that are enough in half the jobs, those quoted for, and nine in ten."""
    timber = job.estimate.timber
    half, sure, nine = (timber.at(chance).sticks for chance in (0.5, job.sure, 0.9))
    every = sorted({*half, *sure, *nine}, key=lambda stick: (stick[0], -stick[1]))
    if not every:
        return ()
    columns = (
        Column(title=say("Profile and length"), share=3.2),
        Column(title=say("half the jobs"), is_number=True, share=1.4),
        Column(
            title=say("{in_hundred} jobs", in_hundred=in_hundred(job.sure)),
            is_number=True,
            share=1.6,
        ),
        Column(title=say("9 jobs in 10"), is_number=True, share=1.4),
    )
    rows = tuple(
        (
            say(
                "{profile}, {length}",
                profile=profile,
                length=format_with_unit(length_mm, job.house.units),
            ),
            *(
                say("{house}", house=house.get((profile, length_mm), 0))
                for house in (half, sure, nine)
            ),
        )
        for profile, length_mm in every
    )
    slips = job.house.crew.slips_counted
    ours = say(" (ours, no source)") if job.house.crew.slips is None else ""
    sizes = say("sizes drawn round the drawing's") if job.doubt else say("the sizes as read")
    text = say(
        "{draws} houses were nested, with {sizes} and {slips:g} in a hundred "
        "pieces cut twice{ours}; waste is what came of it, no percentage. Each "
        "column is one of these houses, the one whose timber is enough so often.",
        draws=len(timber.draws),
        sizes=sizes,
        slips=slips,
        ours=ours,
    )
    return (
        Heading(text=say("Timber")),
        Table(columns=columns, rows=rows, is_close=True),
        Paragraph(text=text, is_small=True),
        *_timber_notes(job),
    )


def _timber_notes(job: Job) -> tuple[Block, ...]:
    timber = job.estimate.timber
    notes: list[Block] = []
    if timber.unpriced and job.rates is not None and job.rates.timber is Timber.OURS:
        named = joined(
            ", ",
            (
                say(
                    "{profile} {length}",
                    profile=profile,
                    length=format_with_unit(length_mm, job.house.units),
                )
                for profile, length_mm in timber.unpriced
            ),
        )
        text = say(
            "{named} has no price: its cost isn't in the sums, and no quote is made without it.",
            named=named,
        )
        notes.append(Note(severity=Severity.WARNING, title=say("LOOK · no price"), text=text))
    without = max(draw.without for draw in timber.draws)
    if without:
        text = say(
            "In some house {without} pieces had no stick long enough; write longer stock.",
            without=without,
        )
        notes.append(Note(severity=Severity.WARNING, title=say("LOOK · no stick"), text=text))
    return tuple(notes)

"""The estimate, for the crew: hours, sticks and money as ranges, and where each comes from."""

from decimal import Decimal
from fractions import Fraction
from typing import Final

from longpoint.errors import Severity
from longpoint.pricing.accuracy import Recuts
from longpoint.pricing.estimate import WorkLine
from longpoint.pricing.job import Job
from longpoint.pricing.money import Money, MoneyText, rounded
from longpoint.pricing.quote import Quote
from longpoint.pricing.rates import Rates, Timber
from longpoint.pricing.work import ALLOWED, CREWS_OWN, WorkKind
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.accuracy_block import accuracy_blocks
from longpoint.sheets.blocks import (
    Block,
    Cell,
    Column,
    Heading,
    Note,
    Paragraph,
    Sheet,
    Table,
)
from longpoint.sheets.money_blocks import list_blocks, part_sums
from longpoint.sheets.money_words import (
    percent_words,
    quantity_cell,
    quantity_words,
    tax_words,
    work_words,
)
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, lowered, say

SHORT_JOB_H: Final = 10.0
"""Hours of a job shorter than this are told to the half."""


def estimate_sheet(
    job: Job, quote: Quote | None, money: MoneyText, accuracy: tuple[Recuts, ...] = ()
) -> Sheet:
    """Return the sheet of an estimate.

    Args:
        job: The job.
        quote: What a quote on it would be; None where there are no rates, or timber has no price.
        money: How money is written.
        accuracy: What is cut again as things are and with better means; may be empty.
    """
    return Sheet(
        name="estimate",
        title=say("Estimate"),
        house=job.house.name,
        readings_code=job.made_from,
        made_from=say("readings") if job.is_read else say("counts"),
        subtitle=say("For the crew alone: the client gets the quote."),
        blocks=(
            *_in_short(job, quote, money),
            *_hours(job),
            *_why(job),
            *_timber(job),
            *_money(job, quote, money),
            *accuracy_blocks(accuracy, job.house, money),
            *_not_priced(job),
            *list_blocks(say("What it rests on"), _assumptions(job)),
        ),
    )


def _in_short(job: Job, quote: Quote | None, money: MoneyText) -> tuple[Block, ...]:
    hours = job.estimate.hours
    rows: list[tuple[str | Cell, ...]] = [
        (
            say("Hours of one person"),
            _hours_text(hours.low),
            Cell(text=_hours_text(hours.middle), is_key=True),
            _hours_text(hours.high),
        )
    ]
    cost = job.estimate.cost
    if cost is not None and job.rates is not None:
        low, middle, high = (
            money.text(_coarse(each, job.rates)) for each in (cost.low, cost.middle, cost.high)
        )
        rows.append((say("Cost, before margin and tax"), low, Cell(text=middle, is_key=True), high))
    columns = (
        Column(title="", share=3.0),
        Column(title=say("9 jobs in 10 take more"), is_number=True, share=2.0),
        Column(title=say("half take more"), is_number=True, share=2.0),
        Column(title=say("1 job in 10 takes more"), is_number=True, share=2.0),
    )
    blocks: list[Block] = [Table(columns=columns, rows=tuple(rows))]
    if quote is not None:
        blocks.append(
            Paragraph(
                lead=say("A quote on it:"),
                text=say(
                    "{gross} to pay. {part_sums}",
                    gross=money.text(quote.sums.gross),
                    part_sums=part_sums(quote, money),
                ),
            )
        )
    return tuple(blocks)


def _hours(job: Job) -> tuple[Block, ...]:
    estimate = job.estimate
    columns = (
        Column(title=say("Work"), share=4.0),
        Column(title=say("Quantity"), is_number=True, share=1.3),
        Column(title=say("Hours for one: least, likely, most"), is_number=True, share=2.4),
        Column(title=say("Hours expected"), is_number=True, share=1.3),
    )
    rows = tuple(_hours_row(job, line) for line in estimate.lines)
    mean = _figure(estimate.mean_hours, 1)
    total = (Cell(text=say("Expected together")), "", "", Cell(text=mean, is_key=True))
    return (
        Heading(text=say("Hours")),
        Table(columns=columns, rows=(*rows, total), is_close=True),
        Paragraph(
            is_small=True,
            text=say(
                "Expected is the mean of the three figures. What the crew takes "
                "for one kind of work is drawn once for a job, so the range does "
                "not shrink with the count; half of what makes a job slow is "
                "taken to be shared by all its kinds (ours, no source)."
            ),
        ),
    )


def _hours_row(job: Job, line: WorkLine) -> tuple[str | Cell, ...]:
    hours = line.rate.hours
    three = joined(
        ", ", (_figure(Fraction(each), 3) for each in (hours.least, hours.likely, hours.most))
    )
    return (
        Cell(text=work_words(line.kind, job.house.dialect), small=(line.rate.source,)),
        quantity_cell(line.quantity, line.kind, _running(job)),
        three,
        _figure(line.mean_hours, 2),
    )


def _why(job: Job) -> tuple[Block, ...]:
    found = [
        say(
            "{work}: {whys}.",
            work=work_words(line.kind, job.house.dialect),
            whys=joined("; ", line.whys),
        )
        for line in job.estimate.lines
        if line.whys
    ]
    return list_blocks(say("Why there is extra work"), found)


def _timber(job: Job) -> tuple[Block, ...]:
    timber = job.estimate.timber
    half, sure, nine = (timber.at(chance).sticks for chance in (0.5, job.sure, 0.9))
    every = sorted({*half, *sure, *nine}, key=lambda stick: (stick[0], -stick[1]))
    if not every:
        return ()
    columns = (
        Column(title=say("Profile and length"), share=3.2),
        Column(title=say("half the jobs"), is_number=True, share=1.4),
        Column(
            title=say("{in_hundred} jobs", in_hundred=_in_hundred(job.sure)),
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


def _money(job: Job, quote: Quote | None, money: MoneyText) -> tuple[Block, ...]:
    rates = job.rates
    if rates is None:
        text = say("No money: no rates file was named. Name one with --rates.")
        return (Heading(text=say("Money")), Paragraph(text=text))
    ours = say(" (ours, no source)") if rates.is_sure_assumed else ""
    lines = [
        say(
            "An hour is {hour}. {margin}",
            hour=money.text(rates.hour),
            margin=_margin(rates),
        ),
        say(
            "A quote is made on hours and timber that are enough in "
            "{in_hundred}{ours}: every expected hour is charged as {normalize:f}, "
            "{sure_hours:.1f} hours in all.",
            in_hundred=_in_hundred(rates.sure),
            ours=ours,
            normalize=job.estimate.ready.normalize(),
            sure_hours=job.estimate.sure_hours,
        ),
        tax_words(rates.tax),
        say("The price of an hour and the prices of sticks are taken as without tax."),
    ]
    if quote is not None:
        spent = rounded(quote.sums.net.exact / (1 + rates.markup), rates.currency)
        kept = quote.sums.net - spent
        lines.append(
            say(
                "Of {net} without tax, about {kept} is margin if it takes the hours it "
                "is quoted at.",
                net=money.text(quote.sums.net),
                kept=money.text(kept),
            )
        )
    return (Heading(text=say("Money")), *(Paragraph(text=line) for line in lines))


def _margin(rates: Rates) -> str:
    if not rates.markup:
        return say("No margin is put on.")
    of_cost = _figure(rates.markup * 100, 2)
    of_price = _figure(rates.markup / (1 + rates.markup) * 100, 2)
    return say(
        "The margin is {of_price} percent of the price, which is {of_cost} percent on the cost.",
        of_price=of_price,
        of_cost=of_cost,
    )


def _not_priced(job: Job) -> tuple[Block, ...]:
    if not job.estimate.without_rate:
        return ()
    named = joined(
        "; ",
        (
            say(
                "{work}: {quantity} ({kind})",
                work=work_words(kind, job.house.dialect),
                quantity=quantity_words(quantity, kind, _running(job)),
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


def _assumptions(job: Job) -> tuple[str, ...]:
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
                "In doubt: {stood_in}. Counted by mean width and height, as if square; "
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


def _running(job: Job) -> Units:
    return job.house.units if job.rates is None else job.rates.units


def _in_hundred(chance: float) -> str:
    return say("{chance:.0f} in 100", chance=100 * chance)


def _figure(value: Fraction, digits: int) -> str:
    """Return a figure rounded to so many digits, without empty ones."""
    scaled = Decimal(round(value * 10**digits)).scaleb(-digits)
    return percent_words(scaled)


def _coarse(amount: float, rates: Rates) -> Money:
    """Return a sum of a range to three figures: no range is known to the penny."""
    digits = max(0, len(say("{amount:.0f}", amount=abs(amount))) - 3)
    return rounded(round(amount / 10**digits) * 10**digits, rates.currency)


def _hours_text(hours: float) -> str:
    """Return hours as precisely as they are worth: halves in a short job, else whole.

    Example:
        >>> _hours_text(3.4), _hours_text(8.0), _hours_text(14.6)
        ('3.5', '8', '15')
    """
    return (
        say("{hours:g}", hours=round(2.0 * hours) / 2.0)
        if hours < SHORT_JOB_H
        else say(
            "{hours:.0f}",
            hours=hours,
        )
    )

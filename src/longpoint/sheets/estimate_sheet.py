"""The estimate, for the crew: hours, sticks and money as ranges, and where each comes from."""

from decimal import Decimal
from fractions import Fraction
from typing import Final

from longpoint.pricing.accuracy import Recuts
from longpoint.pricing.estimate import WorkLine
from longpoint.pricing.job import Job
from longpoint.pricing.money import Money, MoneyText, rounded
from longpoint.pricing.quote import Quote
from longpoint.pricing.rates import Rates
from longpoint.sheets.accuracy_block import accuracy_blocks
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Paragraph, Sheet, Table
from longpoint.sheets.estimate_basis import assumptions, not_priced, running_units
from longpoint.sheets.estimate_timber import timber_blocks
from longpoint.sheets.money_blocks import list_blocks, part_sums
from longpoint.sheets.money_words import (
    in_hundred,
    percent_words,
    quantity_cell,
    tax_words,
    work_words,
)
from longpoint.speech.said import joined, say

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
            *timber_blocks(job),
            *_money(job, quote, money),
            *accuracy_blocks(accuracy, job.house, money),
            *not_priced(job),
            *list_blocks(say("What it rests on"), assumptions(job)),
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
        quantity_cell(line.quantity, line.kind, running_units(job)),
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
            in_hundred=in_hundred(rates.sure),
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

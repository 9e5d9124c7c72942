"""The quote, for the client."""

from longpoint.pricing.money import MoneyText
from longpoint.pricing.quote import Quote
from longpoint.pricing.rates import Timber
from longpoint.sheets.blocks import Block, Heading, Paragraph, Sheet
from longpoint.sheets.money_blocks import (
    crew_blocks,
    list_blocks,
    part_sums,
    row_table,
    sign_table,
    sum_table,
)
from longpoint.sheets.money_words import MONEY_RULE, day_words, tax_words


def quote_sheet(quote: Quote, money: MoneyText) -> Sheet:
    """Return the sheet of a quote.

    Args:
        quote: The quote.
        money: How money is written.
    """
    return Sheet(
        name="quote",
        title=f"Quote {quote.number}",
        house=quote.house,
        readings_code=quote.made_from,
        made_from="readings" if quote.is_read else "counts",
        subtitle=f"{day_words(quote.day)}. Good until {day_words(quote.valid_until)}.",
        blocks=(
            *crew_blocks(quote),
            Paragraph(text=_rests_on(quote)),
            row_table(quote.rows, quote, money),
            sum_table(quote.sums, quote.tax, money, pay="To pay"),
            Paragraph(text=f"{part_sums(quote, money)} {tax_words(quote.tax)} {MONEY_RULE}"),
            *list_blocks("What is not in it", quote.exclusions),
            *_changes(quote),
            sign_table("Taken up"),
        ),
    )


def _rests_on(quote: Quote) -> str:
    timber = (
        "The mouldings are in the price."
        if quote.timber is Timber.OURS
        else "The mouldings are not in the price."
    )
    if quote.is_read:
        return (
            "The price is fixed for what is listed. It rests on readings taken in the house. "
            f"{timber}"
        )
    return (
        "The price is fixed for what is listed. It rests on the number of openings and on sizes "
        f"from the drawing; nothing has been read on site yet. {timber}"
    )


def _changes(quote: Quote) -> tuple[Block, ...]:
    lines = [
        "When the walls are lined they are read with a tape. What comes out otherwise than listed "
        "is told as a variation, with its reason and its price, and is done when it is signed."
    ]
    if quote.held:
        lines.append(
            f"In doubt when this was written, and priced as if square: {', '.join(quote.held)}."
        )
    return (Heading(text="If something changes"), *(Paragraph(text=line) for line in lines))

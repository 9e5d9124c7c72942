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
from longpoint.speech.said import joined, say


def quote_sheet(quote: Quote, money: MoneyText) -> Sheet:
    """Return the sheet of a quote.

    Args:
        quote: The quote.
        money: How money is written.
    """
    return Sheet(
        name="quote",
        title=say("Quote {number}", number=quote.number),
        house=quote.house,
        readings_code=quote.made_from,
        made_from=say("readings") if quote.is_read else say("counts"),
        subtitle=say(
            "{day}. Good until {day_2}.",
            day=day_words(quote.day),
            day_2=day_words(quote.valid_until),
        ),
        blocks=(
            *crew_blocks(quote),
            Paragraph(text=_rests_on(quote)),
            row_table(quote.rows, quote, money),
            sum_table(quote.sums, quote.tax, money, pay=say("To pay")),
            Paragraph(
                text=say(
                    "{part_sums} {tax} {money_rule}",
                    part_sums=part_sums(quote, money),
                    tax=tax_words(quote.tax),
                    money_rule=MONEY_RULE,
                )
            ),
            *list_blocks(say("What is not in it"), quote.exclusions),
            *_changes(quote),
            sign_table(say("Taken up")),
        ),
    )


def _rests_on(quote: Quote) -> str:
    timber = (
        say("The mouldings are in the price.")
        if quote.timber is Timber.OURS
        else say("The mouldings are not in the price.")
    )
    if quote.is_read:
        return say(
            "The price is fixed for what is listed. It rests on readings taken in "
            "the house. {timber}",
            timber=timber,
        )
    return say(
        "The price is fixed for what is listed. It rests on the number of openings "
        "and on sizes from the drawing; nothing has been read on site yet. {timber}",
        timber=timber,
    )


def _changes(quote: Quote) -> tuple[Block, ...]:
    lines = [
        say(
            "When the walls are lined they are read with a tape. What comes out "
            "otherwise than listed is told as a variation, with its reason and its "
            "price, and is done when it is signed."
        )
    ]
    if quote.held:
        lines.append(
            say(
                "In doubt when this was written, and priced by what was read, openings as if "
                "square: {held}.",
                held=joined(", ", quote.held),
            )
        )
    return (Heading(text=say("If something changes")), *(Paragraph(text=line) for line in lines))

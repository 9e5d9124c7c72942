"""A variation, to be signed before its work is done."""

from longpoint.pricing.money import MoneyText
from longpoint.pricing.quote import Quote
from longpoint.pricing.variation import Variation, unpriced_work
from longpoint.sheets.blocks import Paragraph, Sheet
from longpoint.sheets.money_blocks import crew_blocks, row_table, sign_table, sum_table
from longpoint.sheets.money_words import MONEY_RULE, day_words, tax_words, work_words
from longpoint.speech.said import joined, lowered, say


def variation_line(variation: Variation, money: MoneyText) -> str:
    """Return a variation in a sentence: which, of when, and what it comes to.

    Args:
        variation: The variation.
        money: How sums are written.
    """
    return say(
        "Variation {number} of {day} to quote {quote}: {gross}. Not to be begun before both have "
        "signed it.",
        number=variation.number,
        day=day_words(variation.day),
        quote=variation.quote,
        gross=money.text(variation.sums.gross),
    )


def variation_sheet(variation: Variation, quote: Quote, money: MoneyText) -> Sheet:
    """Return the sheet of a variation.

    Args:
        variation: The variation.
        quote: The quote it goes by.
        money: How money is written.
    """
    notes = []
    if variation.enough:
        notes.append(
            say(
                "The timber quoted is enough of {enough}.",
                enough=joined(", ", variation.enough),
            )
        )
    if variation.held:
        notes.append(
            say(
                "Still in doubt, and not in this variation: {held}.",
                held=joined(", ", variation.held),
            )
        )
    unpriced = unpriced_work(quote, variation.tasks)
    if unpriced:
        named = joined(", ", (lowered(work_words(kind, quote.dialect)) for kind in unpriced))
        notes.append(
            say(
                "The quote has no price for this, so it is in neither: {named}.",
                named=named,
            )
        )
    is_less = variation.sums.gross.amount < 0
    return Sheet(
        name=f"variation-{variation.number}",
        title=say("Variation {number}", number=variation.number),
        house=quote.house,
        readings_code=variation.made_from,
        subtitle=say(
            "{day}. To quote {number} of {day_2}.",
            day=day_words(variation.day),
            number=quote.number,
            day_2=day_words(quote.day),
        ),
        blocks=(
            *crew_blocks(quote),
            Paragraph(
                text=say(
                    "The walls were read. They ask for this otherwise than "
                    "quoted, at the prices of the quote; the reason stands below "
                    "each row."
                )
            ),
            row_table(variation.rows, quote, money),
            sum_table(
                variation.sums,
                quote.tax,
                money,
                pay=say("To be taken off") if is_less else say("To pay on top"),
            ),
            *(Paragraph(text=note) for note in notes),
            Paragraph(
                text=say(
                    "{tax} {money_rule} Nothing of it is done before both have signed.",
                    tax=tax_words(quote.tax),
                    money_rule=MONEY_RULE,
                )
            ),
            sign_table(say("Agreed")),
        ),
    )

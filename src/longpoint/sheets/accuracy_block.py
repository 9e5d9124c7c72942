"""What accuracy is worth on this job, on the crew's estimate."""

from longpoint.pricing.accuracy import Means, Recuts
from longpoint.pricing.money import MoneyText
from longpoint.sheets.blocks import Block, Column, Heading, Paragraph, Table
from longpoint.speech.said import say
from longpoint.survey.house import House


def accuracy_blocks(found: tuple[Recuts, ...], house: House, money: MoneyText) -> tuple[Block, ...]:
    """Return what is cut again as things are and with better means; nothing where there is none.

    Args:
        found: As things are first.
        house: The house, for the minutes of a refit.
        money: How money is written.
    """
    if not found:
        return ()
    now = found[0]
    columns = (
        Column(title=say("Cut in one batch"), share=3.0),
        Column(title=say("Sets that won't fit"), is_number=True, share=1.8),
        Column(title=say("Cutting again costs"), is_number=True, share=2.0),
        Column(title=say("Saved"), is_number=True, share=1.6),
    )
    rows = tuple(
        (
            means_words(each.means),
            say("{misfits:.2f}", misfits=each.misfits),
            money.text(each.cost),
            "" if each is now else money.text(now.cost - each.cost),
        )
        for each in found
    )
    ours = say(" (ours until you say)") if house.crew.has_our_minutes else ""
    text = say(
        "On average of the imagined houses; {refit_min:g} minutes a refit{ours} "
        "and the timber of one piece each, before margin and tax. A saved sum is "
        "for this job alone, and a minus is chance. Figures of a model.",
        refit_min=house.crew.refit_min,
        ours=ours,
    )
    return (
        Heading(text=say("What accuracy is worth here")),
        Table(columns=columns, rows=rows, is_close=True),
        Paragraph(text=text, is_small=True),
    )


def means_words(means: Means) -> str:
    """Return with what a job is done, in a few words."""
    match means:
        case Means.AS_IT_IS:
            return say("as things are")
        case Means.SAW_PROVED:
            return say("with the saw proved")
        case Means.BETTER_TAPE:
            return say("with a tape of class I")

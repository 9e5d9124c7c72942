"""`longpoint thumb`: rules of thumb beside what is so, for a crew's own figures."""

from typing import Final

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paragraphs import paragraphs
from longpoint.cli.spoken import speak
from longpoint.quantities.length import MM_PER_INCH, Units, parse_length
from longpoint.sheets.thumb_words import NO_SOURCE, figures_line, thumb_texts
from longpoint.speech.said import say
from longpoint.trims.thumb_figures import ThumbFigures

ADD_IN_INCHES_MM: Final = MM_PER_INCH / 32.0
"""What the add-on rule adds where nothing else is given, in inches: a thirty-second."""


@click.command(name="thumb")
@click.option("--face", metavar="LENGTH", help="Face width of the architrave. [66]")
@click.option("--quirk", metavar="LENGTH", help="Quirk. [5]")
@click.option("--size", metavar="LENGTH", help="Opening along the piece. [1180]")
@click.option("--height", metavar="LENGTH", help="The opening's other size. [620]")
@click.option("--add", metavar="LENGTH", help="What your rule adds for the slant. [1]")
@click.option("--corner", type=float, metavar="DEGREES", help="A corner that isn't square. [91]")
@click.option("--beside", metavar="LENGTH", help="Face of a wider or narrower piece. [57]")
@click.option("--depth", metavar="LENGTH", help="Thickest less thinnest of a skirting. [12]")
@click.option("--apart", metavar="LENGTH", help="How far diagonals may differ. [3]")
@click.option("--thickness", metavar="LENGTH", help="Thickness of the architrave. [19]")
@click.option("--lining", metavar="LENGTH", help="Thickness of the lining's edge. [20]")
@click.option("--proud", metavar="LENGTH", help="How far the lining stands out. [3]")
@click.option("--limit", metavar="LENGTH", help="Largest gap or error that passes. [0.5]")
@click.option(
    "--units",
    type=click.Choice([unit.value for unit in Units]),
    default=Units.MM.value,
    show_default=True,
    help="Unit of the figures given and printed.",
)
@exits
def command(units: str, corner: float | None, **written: str | None) -> Outcome:
    """Say what rules of thumb come to with your figures, and where each of them breaks.

    What isn't given is taken from the example of the page, in mm: the figure in brackets.
    """
    unit = Units(units)
    given = {
        _field(name): parse_length(text, unit) for name, text in written.items() if text is not None
    }
    if unit is Units.INCH:
        given.setdefault("add_mm", ADD_IN_INCHES_MM)
    if corner is not None:
        given["corner_deg"] = corner
    figures = ThumbFigures(**given)
    told = ((text.rule, (text.here, text.holds, text.truth)) for text in thumb_texts(figures, unit))
    speak(paragraphs(((say("Rules of thumb"), (figures_line(figures, unit), NO_SOURCE)), *told)))
    return Outcome.DONE


def _field(option: str) -> str:
    return "neighbour_mm" if option == "beside" else say("{option}_mm", option=option)

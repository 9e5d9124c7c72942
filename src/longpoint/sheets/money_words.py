"""The words of estimate, quote, variation and invoice."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal
from typing import Final

from longpoint.pricing.quote import Row
from longpoint.pricing.rates import Timber
from longpoint.pricing.tax import Tax, TaxRounding, TaxShown
from longpoint.pricing.work import WorkKind
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.dialects import in_words, words_for
from longpoint.speech.said import joined, lowered, raised, say
from longpoint.survey.house import Dialect

_MONTHS: Final = (
    *(say("January"), say("February"), say("March"), say("April"), say("May"), say("June")),
    *(
        say("July"),
        say("August"),
        say("September"),
        say("October"),
        say("November"),
        say("December"),
    ),
)

NO_BREAK: Final = "\N{NO-BREAK SPACE}"
MONEY_RULE: Final = say(
    "Each row is its quantity times its price, rounded to the nearest smallest "
    "coin of the currency, halves up; sums are of the rows as they stand."
)


def day_words(day: date) -> str:
    """Return a day so that no country reads it as another.

    Example:
        >>> day_words(date(2026, 3, 2))
        '2 March 2026'
    """
    return say(
        "{day} {months} {year}",
        day=day.day,
        months=_MONTHS[day.month - 1],
        year=day.year,
    )


def work_words(kind: WorkKind, dialect: Dialect) -> str:
    """Return what a kind of work is called on paper.

    Example:
        >>> work_words(WorkKind.DOOR_FACE, Dialect.UK)
        'Architrave round doors and lined openings, by the face'
        >>> work_words(WorkKind.INTERNAL_CORNER, Dialect.US)
        'Inside corners of baseboard, coped'
    """
    words = words_for(dialect)
    is_american = dialect in (Dialect.US, Dialect.CA)
    lining = say("Jambs") if is_american else say("Reveals")
    inside, outside = (
        (say("Inside"), say("Outside")) if is_american else (say("Internal"), say("External"))
    )
    scribed = say("{scribe}d", scribe=words.scribe)
    trim = raised(words.architrave)
    match kind:
        case WorkKind.SET_UP:
            return say("Setting up and clearing away")
        case WorkKind.WINDOW_FOUR_SIDES:
            return say("{trim} round windows, four sides", trim=trim)
        case WorkKind.WINDOW_THREE_SIDES:
            return say(
                "{trim} round windows, three sides or with board and apron",
                trim=trim,
            )
        case WorkKind.DOOR_FACE:
            return say("{trim} round doors and lined openings, by the face", trim=trim)
        case WorkKind.LONG_SIDE:
            return say("Long sides of windows, extra")
        case WorkKind.ODD_CORNER:
            return say("Corners out of square, extra")
        case WorkKind.ARCH:
            return say("Arched heads, extra")
        case WorkKind.RESET_REVEAL:
            return say("{lining} taken loose and re-set", lining=lining)
        case WorkKind.PACK_CORNER:
            return say("Corners proud or shy, packed or relieved")
        case WorkKind.WINDOW_BOARD:
            return raised(in_words(say("window boards"), words))
        case WorkKind.SKIRTING:
            return raised(words.skirting)
        case WorkKind.INTERNAL_CORNER:
            return say(
                "{inside} corners of {skirting}, {scribed}",
                inside=inside,
                skirting=words.skirting,
                scribed=scribed,
            )
        case WorkKind.EXTERNAL_CORNER:
            return say(
                "{outside} corners of {skirting}, {mitred}",
                outside=outside,
                skirting=words.skirting,
                mitred=in_words(say("mitred"), words),
            )
        case WorkKind.FLOOR_SCRIBE:
            return say(
                "{skirting} fitted to an uneven floor",
                skirting=raised(words.skirting),
            )
        case WorkKind.CORNICE:
            return raised(words.cornice)
        case WorkKind.HANDRAIL:
            return say("Handrail")
        case WorkKind.SHELF:
            return say("Shelving")
        case WorkKind.OTHER_TRIM:
            return say("Linings, stops, rails, beads and panelling")
        case WorkKind.PIECE:
            return say("Pieces cut and fixed")
        case WorkKind.JOINT:
            return say("Joints")


def row_words(row: Row, dialect: Dialect, units: Units) -> str:
    """Return what a row is for."""
    if row.work is not None:
        return work_words(row.work, dialect)
    if row.stick is not None:
        profile, length_mm = row.stick
        return say(
            "{profile}, lengths of {length}",
            profile=profile,
            length=format_with_unit(length_mm, units),
        )
    return say("Other")


def quantity_words(quantity: Decimal, kind: WorkKind | None, running: Units) -> str:
    """Return a quantity with its unit, where it has one.

    Example:
        >>> quantity_words(Decimal("14.20"), WorkKind.SKIRTING, Units.MM)
        '14.2 m'
        >>> quantity_words(Decimal(3), WorkKind.ARCH, Units.MM)
        '3'
    """
    unit = unit_words(kind, running)
    figure = say("{normalize:f}", normalize=quantity.normalize())
    return say("{figure} {unit}", figure=figure, unit=unit) if unit else figure


def quantity_cell(quantity: Decimal, kind: WorkKind | None, running: Units) -> str:
    """Return the same for a narrow column: figure and unit never part."""
    return quantity_words(quantity, kind, running).replace(" ", NO_BREAK)


def unit_words(kind: WorkKind | None, running: Units) -> str:
    """Return the unit of a kind of work: metres, feet, or none for what is counted."""
    if kind is None or not kind.is_running:
        return ""
    return say("m") if running is Units.MM else say("ft")


def percent_words(percent: Decimal) -> str:
    """Return a rate without empty digits behind its point.

    Example:
        >>> percent_words(Decimal("20.0")), percent_words(Decimal("12.5"))
        ('20', '12.5')
    """
    return say("{normalize:f}", normalize=percent.normalize())


def tax_words(tax: Tax | None) -> str:
    """Return what the sheet says of tax and of how it is rounded."""
    if tax is None:
        return say("No tax is charged: none was named.")
    rate = say(
        "{tax} at {percent} percent",
        tax=tax.name,
        percent=percent_words(tax.percent),
    )
    where = (
        say("rounded on each row and added up")
        if tax.rounding is TaxRounding.LINE
        else say("rounded once, on the whole")
    )
    number = say(" {tax} number {number}.", tax=tax.name, number=tax.number) if tax.number else ""
    if tax.shown is TaxShown.INCLUDED:
        return say(
            "Every price holds {rate}; what is said of it below is {where}.{number}",
            rate=rate,
            where=where,
            number=number,
        )
    return say(
        "Prices are without {tax}; {rate} is added below them, {where}.{number}",
        tax=tax.name,
        rate=rate,
        where=where,
        number=number,
    )


def excluded(
    own: tuple[str, ...],
    timber: Timber,
    dialect: Dialect,
    *,
    labour_only: Iterable[WorkKind] = (),
    uncounted: Iterable[str] = (),
    unpriced: Iterable[WorkKind] = (),
) -> tuple[str, ...]:
    """Return what a price doesn't hold, in words: what this tool never counts, then the crew's own.

    Args:
        own: The crew's own exclusions.
        timber: Who buys the mouldings.
        dialect: Whose words.
        labour_only: Kinds of work whose timber isn't known.
        uncounted: Marks that couldn't be read at all.
        unpriced: Kinds of work that the job asks for and that have no hours.
    """
    lining = say("jambs") if dialect in (Dialect.US, Dialect.CA) else say("reveals")
    mine = (
        say("filling, caulking and painting"),
        say("hanging doors, locks and hinges"),
        say("nails, glue and other sundries, unless they are in the price of an hour"),
        say("walls, {lining} and floors put right beyond what is listed", lining=lining),
        say("taking old trim down, and anything found behind it"),
        say("waste taken away"),
    )
    timbers = tuple(
        say("timber for: {work}", work=lowered(work_words(kind, dialect))) for kind in labour_only
    )
    if timber is Timber.CLIENTS:
        timbers = (say("all mouldings: they are bought by the client"),)
    unread = joined(", ", uncounted)
    unreadable = (say("what couldn't be read: {unread}", unread=unread),) if unread else ()
    unworked = tuple(
        say("work on: {work}", work=lowered(work_words(kind, dialect))) for kind in unpriced
    )
    return tuple(dict.fromkeys((*unreadable, *unworked, *timbers, *own, *mine)))


def in_hundred(chance: float) -> str:
    """Return a chance as so many in a hundred.

    Args:
        chance: [0, 1]
    """
    return say("{chance:.0f} in 100", chance=100 * chance)

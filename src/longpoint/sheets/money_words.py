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
from longpoint.sheets.dialects import words_for
from longpoint.survey.house import Dialect

_MONTHS: Final = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)

NO_BREAK: Final = "\N{NO-BREAK SPACE}"
MONEY_RULE: Final = (
    "Each row is its quantity times its price, rounded to the nearest smallest coin of the "
    "currency, halves up; sums are of the rows as they stand."
)


def day_words(day: date) -> str:
    """Return a day so that no country reads it as another.

    Example:
        >>> day_words(date(2026, 3, 2))
        '2 March 2026'
    """
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


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
    lining = "Jambs" if is_american else "Reveals"
    inside, outside = ("Inside", "Outside") if is_american else ("Internal", "External")
    scribed = f"{words.scribe}d"
    trim = words.architrave.capitalize()
    match kind:
        case WorkKind.SET_UP:
            return "Setting up and clearing away"
        case WorkKind.WINDOW_FOUR_SIDES:
            return f"{trim} round windows, four sides"
        case WorkKind.WINDOW_THREE_SIDES:
            return f"{trim} round windows, three sides or with board and apron"
        case WorkKind.DOOR_FACE:
            return f"{trim} round doors and lined openings, by the face"
        case WorkKind.LONG_SIDE:
            return "Long sides of windows, extra"
        case WorkKind.ODD_CORNER:
            return "Corners out of square, extra"
        case WorkKind.ARCH:
            return "Arched heads, extra"
        case WorkKind.RESET_REVEAL:
            return f"{lining} taken loose and re-set"
        case WorkKind.PACK_CORNER:
            return "Corners proud or shy, packed or relieved"
        case WorkKind.WINDOW_BOARD:
            return f"{words.board.capitalize()}s"
        case WorkKind.SKIRTING:
            return words.skirting.capitalize()
        case WorkKind.INTERNAL_CORNER:
            return f"{inside} corners of {words.skirting}, {scribed}"
        case WorkKind.EXTERNAL_CORNER:
            return f"{outside} corners of {words.skirting}, {words.mitre}ed".replace("reed", "red")
        case WorkKind.FLOOR_SCRIBE:
            return f"{words.skirting.capitalize()} fitted to an uneven floor"
        case WorkKind.CORNICE:
            return words.cornice.capitalize()
        case WorkKind.HANDRAIL:
            return "Handrail"
        case WorkKind.SHELF:
            return "Shelving"
        case WorkKind.OTHER_TRIM:
            return "Linings, stops, rails, beads and panelling"
        case WorkKind.PIECE:
            return "Pieces cut and fixed"
        case WorkKind.JOINT:
            return "Joints"


def row_words(row: Row, dialect: Dialect, units: Units) -> str:
    """Return what a row is for."""
    if row.work is not None:
        return work_words(row.work, dialect)
    if row.stick is not None:
        profile, length_mm = row.stick
        return f"{profile}, lengths of {format_with_unit(length_mm, units)}"
    return "Other"


def quantity_words(quantity: Decimal, kind: WorkKind | None, running: Units) -> str:
    """Return a quantity with its unit, where it has one.

    Example:
        >>> quantity_words(Decimal("14.20"), WorkKind.SKIRTING, Units.MM)
        '14.2 m'
        >>> quantity_words(Decimal(3), WorkKind.ARCH, Units.MM)
        '3'
    """
    unit = unit_words(kind, running)
    figure = f"{quantity.normalize():f}"
    return f"{figure} {unit}" if unit else figure


def quantity_cell(quantity: Decimal, kind: WorkKind | None, running: Units) -> str:
    """Return the same for a narrow column: figure and unit never part."""
    return quantity_words(quantity, kind, running).replace(" ", NO_BREAK)


def unit_words(kind: WorkKind | None, running: Units) -> str:
    """Return the unit of a kind of work: metres, feet, or none for what is counted."""
    if kind is None or not kind.is_running:
        return ""
    return "m" if running is Units.MM else "ft"


def percent_words(percent: Decimal) -> str:
    """Return a rate without empty digits behind its point.

    Example:
        >>> percent_words(Decimal("20.0")), percent_words(Decimal("12.5"))
        ('20', '12.5')
    """
    return f"{percent.normalize():f}"


def tax_words(tax: Tax | None) -> str:
    """Return what the sheet says of tax and of how it is rounded."""
    if tax is None:
        return "No tax is charged: none was named."
    rate = f"{tax.name} at {percent_words(tax.percent)} percent"
    where = (
        "rounded on each row and added up"
        if tax.rounding is TaxRounding.LINE
        else "rounded once, on the whole"
    )
    number = f" {tax.name} number {tax.number}." if tax.number else ""
    if tax.shown is TaxShown.INCLUDED:
        return f"Every price holds {rate}; what is said of it below is {where}.{number}"
    return f"Prices are without {tax.name}; {rate} is added below them, {where}.{number}"


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
    lining = "jambs" if dialect in (Dialect.US, Dialect.CA) else "reveals"
    mine = (
        "filling, caulking and painting",
        "hanging doors, locks and hinges",
        "nails, glue and other sundries, unless they are in the price of an hour",
        f"walls, {lining} and floors put right beyond what is listed",
        "taking old trim down, and anything found behind it",
        "waste taken away",
    )
    timbers = tuple(f"timber for: {work_words(kind, dialect).lower()}" for kind in labour_only)
    if timber is Timber.CLIENTS:
        timbers = ("all mouldings: they are bought by the client",)
    unread = ", ".join(uncounted)
    unreadable = (f"what couldn't be read: {unread}",) if unread else ()
    unworked = tuple(f"work on: {work_words(kind, dialect).lower()}" for kind in unpriced)
    return tuple(dict.fromkeys((*unreadable, *unworked, *timbers, *own, *mine)))

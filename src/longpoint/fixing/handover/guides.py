"""Which published tolerances judge a house, by place and day; none of them is the law."""

from dataclasses import dataclass
from datetime import date
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house import Dialect, House
from longpoint.trims.tolerances import Guide, Jurisdiction, Tolerance, tolerances

DAYS_OF_A_MONTH: Final = 30.4375

_WHERE: Final = {
    "au-nsw": Jurisdiction.NEW_SOUTH_WALES,
    "au-vic": Jurisdiction.VICTORIA,
    "uk": Jurisdiction.UNITED_KINGDOM,
    "us": Jurisdiction.UNITED_STATES,
}
_NONE_HELD: Final = {
    "au": say(
        "In Australia each state has its own guide: write place under [handover], like au-nsw."
    ),
    "au-vic": say("The figures of the Victorian guide were not read, so none is used."),
    "nz": say(
        "The New Zealand guide was read in its front matter only, so none of its "
        "figures is used. Trade bodies give 12 months for repairs."
    ),
    "ie": say("No Irish guide was read."),
    "ca": say("No Canadian guide was read."),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ChosenGuides:
    """The limits that judge a house.

    Attributes:
        place: Where, as told or by the dialect.
        limits: Limits of one edition of one guide; none where none is held.
        guide: That guide; None where none is held.
        why: Why this one, in a sentence or two.
    """

    place: str
    limits: tuple[Tolerance, ...]
    guide: Guide | None
    why: str


def place_of(house: House) -> str:
    """Return where a house is judged: as told under handover, or by its dialect."""
    if house.handover.place:
        return house.handover.place
    return Dialect(house.dialect).value


def chosen_guides(house: House) -> ChosenGuides:
    """Return the limits by which a house is judged: one guide's, of one edition.

    The edition is the newest that was out in the year of the contract; without a contract's day
    the newest that is held. An undated guide counts as older than any dated one.

    Example:
        >>> from longpoint.survey.house_file import read_house
        >>> told = {"contract": "2019-05-01"}
        >>> head = {"format": "longpoint-house/1", "name": "W", "dialect": "uk"}
        >>> chosen_guides(read_house({**head, "handover": told}).house).guide.edition
        '2019'
    """
    place = place_of(house)
    where = _WHERE.get(place)
    held = () if where is None else tolerances(where)
    if not held:
        return ChosenGuides(place=place, limits=(), guide=None, why=_NONE_HELD[place])
    contract = house.handover.contract
    guides = sorted(dict.fromkeys(limit.guide for limit in held), key=_year)
    out = [guide for guide in guides if contract is None or _year(guide) <= contract.year]
    if not out:
        return ChosenGuides(
            place=place,
            limits=(),
            guide=None,
            why=say(
                "No edition from {year} or before is held; the oldest is of {edition}.",
                year=contract.year if contract else "",
                edition=guides[0].edition,
            ),
        )
    guide = out[-1]
    limits = tuple(limit for limit in held if limit.guide == guide)
    return ChosenGuides(place=place, limits=limits, guide=guide, why=_why(guide, contract))


def months_since(handed_over: date | None, on: date) -> float:
    """Return the months since handing over; 0 before it, and where it isn't told.

    Example:
        >>> months_since(date(2026, 1, 1), date(2026, 7, 2)) > 5.9, months_since(None, date.max)
        (True, 0.0)
    """
    if handed_over is None or on <= handed_over:
        return 0.0
    return (on - handed_over).days / DAYS_OF_A_MONTH


def _year(guide: Guide) -> int:
    return int(guide.edition) if guide.edition.isdecimal() else 0


def _why(guide: Guide, contract: date | None) -> str:
    known = say(" It was {note}.", note=guide.note) if guide.note else ""
    if not guide.edition.isdecimal():
        return say("The copy that was read bears no year.{known}", known=known)
    if contract is None:
        return say(
            "No day of a contract is written, so the newest edition that is held "
            "was taken; a newer one may be out.{known}",
            known=known,
        )
    return say(
        "It is the newest edition held that was out in {year}, the year of the "
        "contract; a later one may have been in force.{known}",
        year=contract.year,
        known=known,
    )

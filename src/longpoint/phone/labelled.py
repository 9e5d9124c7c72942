"""The house that a label is of, among those on the phone."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import LongpointError, SheetError
from longpoint.journal import Entry, in_order
from longpoint.phone.entry_words import entry_words
from longpoint.phone.fold import fold
from longpoint.phone.messages import Document, LabelHouse, Said
from longpoint.phone.planned import surveyed
from longpoint.sheets.labels.piece_code import read_piece_code
from longpoint.speech.said import say
from longpoint.survey.house_file import read_house, readings_code

MOST_STEPS: Final = 120
"""How many entries a house is looked back through: a label is rarely older than a day's work."""


def labelled(text: str, journals: Sequence[Mapping[str, Any]]) -> LabelHouse:
    """Return which house a label is of, and whether that was read on since.

    A house that stands as the label says goes before one that once stood so.

    Args:
        text: What the code says.
        journals: As `messages.JournalHere` describes them.

    Raises:
        SheetError: It is no label, or of no house here.
    """
    code, piece = read_piece_code(text)
    houses = [(str(each["house"]), in_order(each["entries"])) for each in journals]
    for house, entries in houses:
        if code in _codes(entries):
            return _found(house, entries, piece)
    for house, entries in houses:
        for earlier, later in _back(entries):
            if code in _codes(earlier):
                return _found(house, entries, piece, later)
    raise SheetError(
        say("The label is of piece {piece}, cut from readings {code}.", piece=piece, code=code),
        say(
            "No house on this phone has those readings, nor had any in its last {most} entries.",
            most=MOST_STEPS,
        ),
        say("Open the house that it is of; its sheets carry the same code."),
    )


def house_codes(document: Document, held: Sequence[Said]) -> frozenset[str]:
    """Return the codes that a house's sheets carry: a laptop's, and those of a phone's plan.

    They differ while a phone holds an opening: the phone plans without it.
    """
    try:
        surveys = (read_house(document, trim_tables()), surveyed(document, held))
    except LongpointError:
        # Nothing can be cut of it, so no label is of it.
        return frozenset()
    return frozenset(readings_code(survey.house) for survey in surveys)


def _codes(entries: Sequence[Entry]) -> frozenset[str]:
    found = fold(entries)
    return house_codes(found.document, found.held)


def _found(
    house: str, entries: Sequence[Entry], piece: str, since: Entry | None = None
) -> LabelHouse:
    return LabelHouse(
        house=house,
        name=fold(entries).name,
        piece=piece,
        is_old=since is not None,
        since=entry_words(since) if since else "",
    )


def _back(entries: Sequence[Entry]) -> Iterator[tuple[Sequence[Entry], Entry]]:
    """The house before each of its last entries, and that entry."""
    for count in range(len(entries) - 1, max(0, len(entries) - 1 - MOST_STEPS), -1):
        yield entries[:count], entries[count]

"""Whatever a writer is handed, with every text in it in one language."""

from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from typing import Any, Final, TypeVar

from longpoint.sheets.blocks import Sheet, Word
from longpoint.sheets.dialects import english_of
from longpoint.sheets.text_width import text_width_mm
from longpoint.speech.said import Said
from longpoint.speech.tongue import ENGLISH, Country, Tongue
from longpoint.survey.house import Dialect

T = TypeVar("T")

LEAST_SIZE: Final = 0.62
"""A word on a drawing gets no smaller than this part of its size; common practice, no source."""


def in_tongue(thing: T, tongue: Tongue) -> T:
    """Return a record, or a tuple of them, in which no text remembers more than its words.

    A word on a drawing that comes out longer than the English one is set smaller, so that it
    keeps to the room that was measured for it.

    Args:
        thing: Sheets, drawings, pages of labels: records of records and texts.
        tongue: The language.
    """
    return _told(thing, tongue) if tongue is not ENGLISH else thing


def country_tongue(dialect: Dialect, catalogue: Callable[[str], bytes]) -> Tongue:
    """Return English as a house's country speaks it.

    Args:
        dialect: Of the house.
        catalogue: Gives the contents of the .mo file of that name, "en_US".
    """
    code = english_of(dialect)
    return ENGLISH if code == ENGLISH.code else Country(code, catalogue(code.replace("-", "_")))


def spoken(sheet: Sheet) -> Sheet:
    """Return a sheet in its own language."""
    return in_tongue(sheet, sheet.tongue)


def _told(thing: Any, tongue: Tongue) -> Any:  # noqa: ANN401
    if isinstance(thing, Said):
        return tongue.text(thing)
    if isinstance(thing, tuple):
        texts = [_told(each, tongue) for each in thing]
        # A drawing is mostly points: what no language changes is passed on as it is.
        is_same = all(told is each for told, each in zip(texts, thing, strict=True))
        return thing if is_same else tuple(texts)
    if isinstance(thing, int | float | Enum) or not is_dataclass(thing) or isinstance(thing, type):
        return thing
    changed = {}
    for field in fields(thing):
        value = getattr(thing, field.name)
        told = _told(value, tongue)
        if told is not value:
            changed[field.name] = told
    if isinstance(thing, Sheet):
        changed["tongue"] = tongue
    if not changed:
        return thing
    if isinstance(thing, Word):
        changed["size_mm"] = thing.size_mm * _share(thing.text, changed["text"])
    return replace(thing, **changed)


def _share(english: str, told: str) -> float:
    wide, wider = text_width_mm(english, 1.0), text_width_mm(told, 1.0)
    return 1.0 if wider <= wide else max(LEAST_SIZE, wide / wider)

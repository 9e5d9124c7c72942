"""Rates, counts, and the folder in which a quote and what follows it are kept."""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

from longpoint.errors import ExchangeError
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.safe_files import write_new_text
from longpoint.pricing.paper_document import (
    quote_document,
    read_quote,
    read_variation,
    variation_document,
)
from longpoint.pricing.quote import Quote
from longpoint.pricing.rates import Rates
from longpoint.pricing.rates_file import read_rates
from longpoint.pricing.variation import Variation
from longpoint.speech.said import say

QUOTE: Final = "quote.json"
MOST_VARIATIONS: Final = 999


def load_rates(path: Path) -> Rates:
    """Return the rates in a file.

    Raises:
        ExchangeError: It can't be read.
        PricingError: It is no rates file, or anything in it can't be used.
    """
    return read_rates(load_house_document(path))


def keep_quote(folder: Path, quote: Quote) -> None:
    """Keep a quote in a folder that has none yet: what was given is never written over.

    Raises:
        ExchangeError: There is one already, or it can't be written.
    """
    _make(folder)
    if (folder / QUOTE).exists():
        raise ExchangeError(
            say("A quote was to be kept in {folder}.", folder=folder),
            say(
                "There is one in it already, and what was given to a client is never written over."
            ),
            say("Name another folder with --out."),
        )
    write_new_text(folder / QUOTE, _text(quote_document(quote)))


def kept_quote(folder: Path) -> Quote:
    """Return the quote in a folder.

    Raises:
        ExchangeError: There is none.
        PricingError: It isn't as it was given.
    """
    return read_quote(load_house_document(folder / QUOTE))


def keep_variation(folder: Path, variation: Variation) -> None:
    """Keep a variation beside its quote.

    Raises:
        ExchangeError: There is one of that number already, or it can't be written.
    """
    path = folder / _variation_name(variation.number)
    write_new_text(path, _text(variation_document(variation)))


def kept_variations(folder: Path, quote: Quote) -> tuple[Variation, ...]:
    """Return the variations in a folder, in the order of their numbers.

    Raises:
        PricingError: One isn't as it was given.
    """
    found = []
    for number in range(1, MOST_VARIATIONS + 1):
        path = folder / _variation_name(number)
        if not path.exists():
            break
        found.append(read_variation(load_house_document(path), quote))
    return tuple(found)


def _variation_name(number: int) -> str:
    return f"variation-{number}.json"


def _text(document: Mapping[str, Any]) -> str:
    return json.dumps(document, ensure_ascii=False, indent=1) + "\n"


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("The papers are to go to {folder}.", folder=folder),
            say("That folder can't be made: {strerror}.", strerror=error.strerror or error),
            say("Name another folder with --out."),
        ) from error

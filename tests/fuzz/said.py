"""Words and codes that come from outside: labels, what is told at the saw, tables of checks."""

from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Final

from click.testing import CliRunner

from longpoint.cli.main import main
from longpoint.journal import Entry
from longpoint.phone.labelled import labelled
from longpoint.quantities.length import Units
from longpoint.sticks.news.delivery import delivery_in_words
from longpoint.sticks.news.news_words import told_in_words
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests.bench.cutting_stock import read_cutting_stock
from tests.fuzz.refusing import refused_or_read, told
from tests.house_documents import house, window
from tests.phone_journals import Journal
from tests.saw_states import begun

CREPT_OR_NOT: Final = (0, 1)
"""How `longpoint creep` ends when it could read its table."""


def label(data: bytes) -> bool:
    """What a code says that a phone read off a label, or off anything else."""
    text = data.decode("utf-8", "replace")
    return told(lambda: labelled(text, [{"house": "h", "entries": _journal()}]))


@cache
def _journal() -> tuple[Entry, ...]:
    made = Journal()
    made.begin()
    made.write("opening-added", opening="W3", room="Main", kind="window", trim="all-round")
    made.read("top", "1187")
    return tuple(made.entries)


def news(data: bytes) -> bool:
    """What is told at the saw, a sentence a line."""
    lines = data.decode("utf-8", "replace").splitlines()
    return told(lambda: told_in_words(begun(), lines, Units.MM))


def delivery(data: bytes) -> bool:
    """What is told of a delivery, a sentence a line."""
    lines = data.decode("utf-8", "replace").splitlines()
    return told(lambda: delivery_in_words(lines, _house()))


@cache
def _house() -> House:
    return read_house(house(openings=[window()])).house


def checks(data: bytes) -> bool:
    """A table of checked pieces, in the order of cutting."""
    codes: list[int] = []

    def work(path: Path) -> None:
        done = CliRunner().invoke(main, ["creep", str(path)], catch_exceptions=False)
        assert done.exit_code in (*CREPT_OR_NOT, 2)
        codes.append(done.exit_code)

    return refused_or_read(work, data, ".csv") and codes[0] in CREPT_OR_NOT


def instance(data: bytes) -> bool:
    """An instance of a public collection, for the measurements; whoever measures reads why not."""
    is_instance: list[bool] = []

    def work(path: Path) -> None:
        with suppress(ValueError):
            read_cutting_stock(path)
            is_instance.append(True)

    return refused_or_read(work, data, ".txt") and bool(is_instance)


TARGETS: Final = {
    "label": label,
    "news": news,
    "delivery": delivery,
    "checks": checks,
    "instance": instance,
}
"""Each by its name."""

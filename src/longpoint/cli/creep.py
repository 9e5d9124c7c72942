"""`longpoint creep`: does the saw's stop creep, or a framing jig, by checks in their order."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.errors import ExchangeError, QuantityError
from longpoint.exchange.tables.open_tables import open_tables
from longpoint.forecast.learning.stop_creep import FALSE_EVERY, Creep, stop_creep
from longpoint.quantities.formatting import format_tenth, format_unit
from longpoint.quantities.length import Units, parse_length
from longpoint.speech.said import say

_COLUMNS: Final = 3


@dataclass(frozen=True, slots=True)
class _Check:
    piece: str
    off_mm: float


@click.command(name="creep")
@click.argument("checks", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--units",
    type=click.Choice([unit.value for unit in Units]),
    default=Units.MM.value,
    show_default=True,
    help="Units of the lengths in CHECKS.",
)
@click.option(
    "--spread",
    type=click.FloatRange(0.01, 5.0),
    metavar="MM",
    default=0.25,
    show_default=True,
    help="Standard deviation of one check while nothing moves, tape included.",
)
@click.option(
    "--jig",
    is_flag=True,
    help="CHECKS holds the two diagonals of each frame: say whether the jig has moved.",
)
@exits
def command(checks: Path, units: str, spread: float, jig: bool) -> Outcome:
    """Say whether the stop creeps, and from which piece on.

    CHECKS is a table (CSV or XLSX) with a row for each checked piece in the order of cutting: its
    mark, the length it was to have, the length it has. Begin a new one when the stop is set anew.

    With --jig each row is a frame as it comes off the jig, or the opening it was set in: its mark
    and its two diagonals, always in the same order.
    """
    unit = Units(units)
    found = list(_checks(checks, unit))
    if not found:
        raise ExchangeError(
            say("The table {name} was read for checked pieces.", name=checks.name),
            say("No row of it has a mark and two lengths."),
            say("Write a row for each piece: mark, length wanted, length measured."),
        )
    creep = stop_creep([check.off_mm for check in found], spread)
    if creep is None:
        said = _square(len(found)) if jig else _still(len(found), spread, unit)
    else:
        said = _leaning(creep, found, unit) if jig else _crept(creep, found, unit)
    for line in said:
        speak(line)
    return Outcome.DONE if creep is None else Outcome.HELD


def _checks(path: Path, unit: Units) -> Iterator[_Check]:
    for table in open_tables(path):
        for number, row in enumerate(table.rows, start=1):
            texts = [cell.text for cell in row[:_COLUMNS]]
            if not any(texts):
                continue
            try:
                piece, wanted, measured = texts
                off_mm = parse_length(measured, unit) - parse_length(wanted, unit)
            except (ValueError, QuantityError):
                # The first row is mostly the names of the columns.
                if number > 1:
                    speak(
                        say(
                            "Row {number} was left out: it wants a mark and two lengths.",
                            number=number,
                        ),
                        err=True,
                    )
                continue
            yield _Check(piece, off_mm)


def _still(count: int, spread: float, unit: Units) -> tuple[str, ...]:
    return (
        say("{count} pieces were looked at in the order of cutting.", count=count),
        say("None of it shows that the stop creeps."),
        say(
            "Go on, and go on checking: a creep of {spread} is told after some 10 pieces.",
            spread=_shown(spread, unit),
        ),
    )


def _crept(creep: Creep, checks: list[_Check], unit: Units) -> tuple[str, ...]:
    first, told = checks[creep.begins].piece, checks[creep.told].piece
    size = _shown(abs(creep.by_mm), unit)
    if creep.is_one_piece:
        return (
            say("Piece {first} was read in the order of cutting.", first=first),
            say("It is {size} too long.", size=size)
            if creep.by_mm > 0
            else say("It is {size} too short.", size=size),
            say(
                "Measure it again before you touch the stop: a single piece may be a slip of the "
                "tape, or a chip at the stop."
            ),
        )
    return (
        say(
            "{count} pieces from {first} to {told} were read in the order of cutting.",
            count=creep.told - creep.begins + 1,
            first=first,
            told=told,
        ),
        say("From about {first} on they are {size} too long.", first=first, size=size)
        if creep.by_mm > 0
        else say("From about {first} on they are {size} too short.", first=first, size=size),
        say(
            "Stop cutting, clean and set the stop anew, and measure every piece since {first}; "
            "then begin a new table. While nothing creeps, one alarm in some {every} pieces is "
            "false.",
            first=first,
            every=FALSE_EVERY,
        ),
    )


def _square(count: int) -> tuple[str, ...]:
    return (
        say("{count} frames were looked at in the order in which they were made.", count=count),
        say("None of it shows that the jig has moved."),
        say("Go on, and write the next frames below these."),
    )


def _leaning(creep: Creep, checks: list[_Check], unit: Units) -> tuple[str, ...]:
    first, told = checks[creep.begins].piece, checks[creep.told].piece
    size = _shown(abs(creep.by_mm), unit)
    count = creep.told - creep.begins + 1
    return (
        say(
            "{count} frames from {first} to {told} were read in the order in which they were made.",
            count=count,
            first=first,
            told=told,
        ),
        say(
            "From about {first} on the second diagonal is {size} the longer.",
            first=first,
            size=size,
        )
        if creep.by_mm > 0
        else say(
            "From about {first} on the second diagonal is {size} the shorter.",
            first=first,
            size=size,
        ),
        say(
            "Read both diagonals of {told} again; if they stand, the jig has moved: square it "
            "before the next frame, cut the trim of those since {first} to their own readings, and "
            "begin a new table.",
            told=told,
            first=first,
        ),
    )


def _shown(length_mm: float, unit: Units) -> str:
    return say("{length} {unit}", length=format_tenth(length_mm, unit), unit=format_unit(unit))

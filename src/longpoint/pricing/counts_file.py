"""Read a counts file, and make of it a house as drawn."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Any, Final

from longpoint.errors import Severity
from longpoint.pricing.counts_tables import (
    ASSUMED_OPENING_SPREAD_MM,
    ASSUMED_WALL_SPREAD_MM,
    COUNTS,
    COUNTS_FORMAT,
    DOOR,
    OTHER,
    SKIRTING,
    WINDOW,
)
from longpoint.pricing.drawn_sizes import SizeDoubt
from longpoint.pricing.whole_file import read_whole, whole_values
from longpoint.pricing.work import ALLOWED, Task, WorkKind
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.speech.said import say
from longpoint.survey.house import SurveyResult
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.entry import as_table
from longpoint.survey.house_file.house_table import FORMAT
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.trouble import HouseFileTrouble

_AS_WRITTEN: Final = (
    "name",
    "units",
    "dialect",
    "defaults",
    "crew",
    "profiles",
    "saws",
    "stock",
    "offcuts",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """A house as counted from its drawing.

    Attributes:
        survey: The house, every opening as drawn and square.
        doubt: How far it will differ from the drawing.
        tasks: Work that makes no pieces here: other running trim, and what is allowed for.
        is_spread_assumed: True when any of that spread is ours.
    """

    survey: SurveyResult
    doubt: SizeDoubt
    tasks: tuple[Task, ...] = ()
    is_spread_assumed: bool = False


def read_counts(document: Mapping[str, object]) -> Counts:
    """Return the house in a counts document.

    Args:
        document: The parsed TOML or JSON file.

    Raises:
        PricingError: It is no counts file, or anything in it can't be used.
    """
    kept = say(
        'Counts are kept in a file of format "{counts_format}".',
        counts_format=COUNTS_FORMAT,
    )
    return read_whole(
        document, COUNTS, COUNTS_FORMAT, kept, lambda values, units: _made(document, values, units)
    )


def _made(document: Mapping[str, object], values: Mapping[str, Any], units: Units) -> Counts:
    openings = [
        *_openings(values.get("windows", ()), WINDOW, "windows", "W", units),
        *_openings(values.get("doors", ()), DOOR, "doors", "D", units),
    ]
    runs, shared = _runs(values.get("skirting", ()), units)
    house = {
        "format": FORMAT,
        **{key: document[key] for key in _AS_WRITTEN if key in document},
        "openings": openings,
        "runs": runs,
    }
    survey = read_house(house)
    for finding in survey.findings:
        if finding.severity is Severity.STOP:
            raise HouseFileTrouble(
                say(
                    "{place}: {read}",
                    place=finding.place,
                    read=finding.read,
                ),
                finding.wrong,
                finding.do,
            )
    spread = values.get("spread", {})
    return Counts(
        survey=survey,
        doubt=SizeDoubt(
            opening_mm=spread.get("opening", ASSUMED_OPENING_SPREAD_MM),
            wall_mm=spread.get("wall", ASSUMED_WALL_SPREAD_MM),
            shared=shared,
        ),
        tasks=(*_running(values.get("running", ()), units), *_allowed(values.get("allow", {}))),
        is_spread_assumed=not {"opening", "wall"} <= spread.keys(),
    )


def _openings(
    entries: list[object], table: Table, name: str, letter: str, units: Units
) -> Iterator[dict[str, Any]]:
    number = 0
    for index, written in enumerate(entries, start=1):
        values = _entry(table, written, say("{name} {index}", name=name, index=index), units)
        kind = {"W": "window", "D": "door" if values.get("leaf", True) else "cased"}[letter]
        for _ in range(values.get("count", 1)):
            number += 1
            opening = {
                "mark": f"{letter}{number}",
                "kind": kind,
                "width": _written(values["width"], units),
                "height": _written(values["height"], units),
            }
            for key in ("room", "trim"):
                if key in values:
                    opening[key] = values[key]
            if letter == "D":
                opening["faces"] = values.get("faces", 2)
            yield opening


def _runs(
    entries: list[object], units: Units
) -> tuple[list[dict[str, Any]], tuple[tuple[str, ...], ...]]:
    """Return the runs, and which of them share one length."""
    runs: list[dict[str, Any]] = []
    shared: list[tuple[str, ...]] = []
    for index, written in enumerate(entries, start=1):
        values = _entry(SKIRTING, written, say("skirting {index}", index=index), units)
        corners = ["internal"] * values.get("internal", 0) + ["external"] * values.get(
            "external", 0
        )
        count = values.get("pieces", max(1, len(corners)))
        if len(corners) > count:
            raise HouseFileTrouble(
                say(
                    "skirting {index} has {count} pieces and {corners} corners.",
                    index=index,
                    count=count,
                    corners=len(corners),
                ),
                say("A corner stands between two runs, so there can't be more corners than runs."),
                say("Write how many runs there are, or leave pieces out."),
            )
        # Each corner closes one run at its right and opens the next at its left.
        ends = [*corners, *["square"] * (count - len(corners))]
        marks = []
        for number in range(count):
            mark = f"S{index}-{number + 1}"
            marks.append(mark)
            run = {
                "mark": mark,
                "length": _written(values["length"] / count, units),
                "left": ends[number - 1],
                "right": ends[number],
            }
            run |= {key: values[key] for key in ("room", "profile") if key in values}
            runs.append(run)
        shared.append(tuple(marks))
    return runs, tuple(shared)


def _running(entries: list[object], units: Units) -> Iterator[Task]:
    for index, written in enumerate(entries, start=1):
        values = _entry(OTHER, written, say("running {index}", index=index), units)
        one_mm = 1000.0 if units is Units.MM else 12 * MM_PER_INCH
        quantity = Decimal(values["length"] / one_mm).quantize(Decimal("0.01"), ROUND_HALF_UP)
        yield Task(
            kind=WorkKind(values["kind"]),
            quantity=max(quantity, Decimal("0.01")),
            place=say("T{index}", index=index),
            room=values.get("room", ""),
        )


def _allowed(values: Mapping[str, int]) -> Iterator[Task]:
    for key, count in values.items():
        if count:
            yield Task(
                kind=WorkKind(key),
                quantity=Decimal(count),
                place=ALLOWED,
                why=say("allowed for, not seen yet"),
            )


def _entry(table: Table, written: object, path: str, units: Units) -> dict[str, Any]:
    return whole_values(table, as_table(written, path), units, say("{path}, ", path=path))


def _written(length_mm: float, units: Units) -> float:
    return length_mm if units is Units.MM else length_mm / MM_PER_INCH

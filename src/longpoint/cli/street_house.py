"""One house of a street: planned as `longpoint plan` does, and known again when nothing changed."""

import contextlib
import hashlib
import importlib.metadata
import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import longpoint
from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.plan_folder import PDF, PLAN, READINGS, void_sheets
from longpoint.cli.planning import plan_and_write, with_crew
from longpoint.cli.spoken import tongue
from longpoint.errors import ExchangeError, LongpointError
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.own_files import DAMAGED, own_document
from longpoint.exchange.safe_files import write_text_safely
from longpoint.render.paper import Paper
from longpoint.sheets.street_json import row_document, row_in
from longpoint.sheets.street_pieces import cut_values, piece_in
from longpoint.sheets.street_rows import HouseRow, HouseState, house_row, refused_row
from longpoint.speech.said import say
from longpoint.sticks.joint_buying import Alone, BatchHouse
from longpoint.survey.house_file import read_house

RECORD: Final = "street-house.json"
RECORD_FORMAT: Final = "longpoint-street-house/2"
_ENGINES: Final = ("highspy", "numpy", "typst")
"""What a plan or its sheets may hang on, besides this program."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseTask:
    """A house that is to be planned.

    Attributes:
        file: Its house file.
        out: Folder of its sheets.
        paper: Paper of the PDF; None: that of the house's country.
        draws: How many houses its forecast imagines; None: as `longpoint plan` does.
        crew: File of the crew's own figures; None: none.
    """

    file: Path
    out: Path
    paper: Paper | None
    draws: int | None = None
    crew: Path | None = None


def task_key(task: HouseTask) -> str:
    """Return a sum over all that the plan of a house is made from: bytes, program, options.

    Raises:
        ExchangeError: A file can't be read.
    """
    said = {
        "program": longpoint.__version__,
        "engines": {name: _version(name) for name in _ENGINES},
        "paper": task.paper.value if task.paper else None,
        "tongue": tongue().code,
        "draws": task.draws,
        "house": _sum_of(task.file),
        "crew": _sum_of(task.crew) if task.crew else None,
    }
    return hashlib.sha256(json.dumps(said, sort_keys=True).encode()).hexdigest()


def kept_row(task: HouseTask) -> HouseRow | None:
    """Return what was planned from the same, where it still lies there whole; else None."""
    record = own_document(task.out / RECORD)
    try:
        if record is None or record["format"] != RECORD_FORMAT or record["key"] != task_key(task):
            return None
        if record["plan_sum"] != _sum_of(task.out / PLAN) or not (task.out / PDF).exists():
            return None
        row = row_in(record["house"])
    except (OSError, *DAMAGED, LongpointError):
        return None
    # A house file of another name may hold the same bytes.
    return row if (row.file, row.folder) == (task.file.name, task.out.name) else None


def plan_task(task: HouseTask) -> HouseRow:
    """Plan a house and write its sheets; its record comes last, so that half a house is none.

    Whatever is wrong with it is said in its row: one bad house never stops a street.
    """
    try:
        return _planned(task)
    except LongpointError as error:
        return _refused(task, (error.read, error.wrong, error.do))
    except Exception as error:  # one house must not take the others down
        return _refused(
            task,
            (
                say("The house in {file} was being planned.", file=task.file.name),
                say(
                    "The program failed: {name}: {error}.",
                    name=type(error).__name__,
                    error=error,
                ),
                say("Plan it by itself with `longpoint plan` and report what that shows."),
            ),
        )


def lost_row(task: HouseTask) -> HouseRow:
    """Return the row of a house whose process ended twice without an answer."""
    return _refused(
        task,
        (
            say("The house in {file} was being planned.", file=task.file.name),
            say(
                "The process at work on it was ended from outside, twice; too little "
                "memory is the likely reason."
            ),
            say("Plan it by itself with `longpoint plan`, or the street with --at-once 1."),
        ),
    )


def batch_house(task: HouseTask, row: HouseRow) -> BatchHouse | None:
    """Return a planned house as one of a delivery batch; None where it can't be one.

    Args:
        task: How it was planned.
        row: What the summary says of it.
    """
    if row.state is HouseState.REFUSED:
        return None
    record = own_document(task.out / RECORD)
    if record is None:
        return None
    try:
        pieces = tuple(piece_in(values) for values in record["pieces"])
        house = read_house(load_house_document(task.out / READINGS), trim_tables()).house
    except (OSError, *DAMAGED, LongpointError):
        return None
    alone = {
        each.profile: Alone(cost=each.cost, unit=each.unit, buys=dict(each.buys))
        for each in row.profiles
    }
    return BatchHouse(name=row.folder, house=house, pieces=pieces, alone=alone)


def _planned(task: HouseTask) -> HouseRow:
    key = task_key(task)
    with _voided_when_refused(task):
        document = load_house_document(task.file)
        survey = read_house(document, trim_tables())
    survey, learned, _ = with_crew(survey, task.crew)
    # From here on what lies there is no longer what the old record says.
    with contextlib.suppress(OSError):
        (task.out / RECORD).unlink(missing_ok=True)
    plan, _ = plan_and_write(survey, learned, document, task.out, task.paper, task.draws)
    written = json.loads((task.out / PLAN).read_text(encoding="utf-8"))
    row = house_row(task.file.name, task.out.name, survey.house.units, written)
    laid = {each.piece for stick in plan.cut_plan.sticks for each in stick.laid}
    record = {
        "format": RECORD_FORMAT,
        "key": key,
        "plan_sum": _sum_of(task.out / PLAN),
        "house": row_document(row),
        "pieces": [cut_values(piece) for piece in plan.pieces if piece.mark in laid],
    }
    write_text_safely(task.out / RECORD, _json(record))
    return row


@contextlib.contextmanager
def _voided_when_refused(task: HouseTask) -> Iterator[None]:
    try:
        yield
    except LongpointError:
        with contextlib.suppress(LongpointError):
            void_sheets(task.out, task.paper)
        raise


def _refused(task: HouseTask, sentences: tuple[str, ...]) -> HouseRow:
    return refused_row(task.file.name, task.out.name, sentences)


def _sum_of(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError as error:
        raise ExchangeError(
            say("The file {path} was to be read.", path=path.name),
            say(
                "The system refuses: {strerror}.",
                strerror=(error.strerror or str(error)).lower(),
            ),
            say("Check the name, that it may be read, and that its disk or card is sound."),
        ) from None


def _version(package: str) -> str | None:
    try:
        return importlib.metadata.version(package)
    except importlib.metadata.PackageNotFoundError:
        return None


def _json(document: dict[str, Any]) -> str:
    return json.dumps(document, indent=1, ensure_ascii=False) + "\n"

"""`longpoint street`: every house file of a folder planned, and one summary of them."""

import hashlib
import json
import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final, Protocol

import click

from longpoint.cli.cluster import Certificates, cluster
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper, paper_of
from longpoint.cli.plan import LEAST_DRAWS, MOST_DRAWS
from longpoint.cli.sheet_folder import make_folder
from longpoint.cli.spoken import speak, spoken_sheets
from longpoint.cli.street_files import folder_names, house_files
from longpoint.cli.street_hands import Cluster, Hands, OwnProcesses
from longpoint.cli.street_house import HouseTask, batch_house, kept_row
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.html import sheet_html
from longpoint.sheets.joint_blocks import saved_lines
from longpoint.sheets.street_json import row_document, street_document
from longpoint.sheets.street_rows import HouseRow, HouseState
from longpoint.sheets.street_sheet import said_of, states_said, street_sheet
from longpoint.speech.said import joined, say
from longpoint.sticks.joint_buying import Joint, batches, left_out
from longpoint.survey.house_file.readings_code import short_code

MOST_AT_ONCE: Final = 64


@click.command(name="street")
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False, exists=True))
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    required=True,
    help="Folder for the summary, and in it a folder for each house.",
)
@on_paper
@click.option(
    "--draws",
    type=click.IntRange(LEAST_DRAWS, MOST_DRAWS),
    metavar="N",
    help="How many houses each forecast imagines. [default: as longpoint plan]",
)
@click.option(
    "--crew",
    type=click.Path(path_type=Path, dir_okay=False),
    default=None,
    help="File of the crew's own figures, for the forecasts; see longpoint learn.",
)
@click.option(
    "--at-once",
    type=click.IntRange(1, MOST_AT_ONCE),
    metavar="N",
    default=None,
    help="How many houses are planned at a time. [default: the cores of this machine]",
)
@click.option(
    "--together/--apart",
    default=True,
    show_default=True,
    help="Say what buying for several houses together saves; takes a few seconds a delivery.",
)
@click.option(
    "--scheduler",
    metavar="ADDRESS",
    default=None,
    help="Plan on the Dask cluster whose scheduler is there, like tcp://10.0.0.5:8786.",
)
@click.option(
    "--tls",
    type=click.Path(path_type=Path, dir_okay=False, exists=True),
    nargs=3,
    metavar="AUTHORITY CERTIFICATE KEY",
    default=None,
    help="PEM files for a scheduler at tls://...",
)
@exits
def command(
    folder: Path,
    out: Path,
    paper: Paper | None,
    draws: int | None,
    crew: Path | None,
    at_once: int | None,
    together: bool,
    scheduler: str | None,
    tls: tuple[Path, Path, Path] | None,
) -> Outcome:
    """Plan every house file of FOLDER, each into a folder of its own.

    What was planned from the same file with the same program and options is not planned again, so
    a street that was broken off goes on where it stood. A house that can't be used is named in the
    summary, and the others go on. The summary is street.pdf, street.html and street.json.
    """
    files, left_alone = house_files(folder, out)
    if left_alone:
        named = joined(", ", (file.name for file in left_alone))
        speak(say("No house files, left alone: {named}.", named=named))
    make_folder(out)
    tasks = [
        HouseTask(file=file, out=out / name, paper=paper, draws=draws, crew=crew)
        for file, name in zip(files, folder_names(files), strict=True)
    ]
    try:
        with _hands(scheduler, tls, at_once) as hands:
            houses = planned_houses(tasks, hands)
            joint = bought_together(tasks, houses, hands) if together else ()
    except KeyboardInterrupt:
        speak(
            say(
                "Broken off. The houses that are done stay done: the same command goes "
                "on from there."
            ),
            err=True,
        )
        return Outcome.UNUSABLE
    write_summary(folder.resolve().name, houses, joint, out, paper_of(paper, None))
    for row in houses:
        if row.state is not HouseState.READY:
            speak(said_of(row))
    speak(states_said(houses))
    for line in saved_lines(joint):
        speak(line)
    speak(f"Summary: {out / 'street.pdf'}")
    return _outcome(houses)


@contextmanager
def _hands(
    scheduler: str | None, tls: tuple[Path, Path, Path] | None, at_once: int | None
) -> Iterator[Hands]:
    if scheduler is None:
        yield OwnProcesses(at_once or os.cpu_count() or 1)
        return
    if tls is None:
        speak(
            say(
                "Nothing is encrypted on the way to {scheduler}, and whoever reaches it can run "
                "programs on its machines and on this one: for a network of your own only.",
                scheduler=scheduler,
            ),
            err=True,
        )
    with cluster(scheduler, Certificates(*tls) if tls is not None else None) as client:
        yield Cluster(client)


def planned_houses(tasks: Sequence[HouseTask], hands: Hands) -> list[HouseRow]:
    """Return the row of every house, in their order; what is unchanged isn't planned again."""
    rows = {place: row for place, task in enumerate(tasks) if (row := kept_row(task)) is not None}
    if rows:
        speak(
            say(
                "{rows} of {tasks} unchanged since they were planned.",
                rows=len(rows),
                tasks=len(tasks),
            ),
            err=True,
        )
    left = [place for place in range(len(tasks)) if place not in rows]
    done = hands.plan([tasks[place] for place in left])
    with closing(done), _progress(len(left)) as tell:
        for each in done:
            place = left[each.place]
            if each.answer is None:
                tell.say(f"{tasks[place].out.name}: its process was killed; tried once more")
                continue
            rows[place] = each.answer
            tell.step(said_of(rows[place]))
    return [rows[place] for place in range(len(tasks))]


def bought_together(
    tasks: Sequence[HouseTask], houses: Sequence[HouseRow], hands: Hands
) -> tuple[Joint, ...]:
    """Return what buying together comes to, delivery by delivery."""
    each = (batch_house(task, row) for task, row in zip(tasks, houses, strict=True))
    loads = batches([house for house in each if house is not None])
    found: dict[int, Joint] = {}
    with closing(hands.buy(loads)) as done:
        for one in (one for one in done if one.is_last):
            lost = left_out(loads[one.place], say("the process at work on it was ended twice"))
            found[one.place] = one.answer or lost
            speak(say("Bought together: {profile}", profile=found[one.place].profile), err=True)
    return tuple(found[place] for place in range(len(loads)))


class _Teller(Protocol):
    def step(self, line: str) -> None: ...
    def say(self, line: str) -> None: ...


class _Lines:
    """A plain line a house, where nobody watches a bar."""

    def __init__(self, count: int) -> None:
        self._count, self._done = count, 0

    def step(self, line: str) -> None:
        self._done += 1
        speak(f"[{self._done}/{self._count}] {line}", err=True)

    def say(self, line: str) -> None:
        speak(line, err=True)


@contextmanager
def _progress(count: int) -> Iterator[_Teller]:
    if not sys.stderr.isatty():
        yield _Lines(count)
        return
    with click.progressbar(length=count, label=say("Houses"), file=sys.stderr) as bar:

        class _Bar:
            def step(self, line: str) -> None:
                bar.update(1)

            def say(self, line: str) -> None:
                speak(f"\n{line}", err=True)

        yield _Bar()


def write_summary(
    name: str, houses: Sequence[HouseRow], joint: Sequence[Joint], out: Path, paper: Paper
) -> None:
    """Write the summary as sheet, page and document, whole files only."""
    text = json.dumps([row_document(row) for row in houses], sort_keys=True)
    code = short_code(hashlib.sha256(text.encode()).digest())
    (sheet,) = spoken_sheets((street_sheet(name, code, houses, joint),), None)
    document = street_document(name, code, houses, joint)
    write_text_safely(
        out / "street.json", json.dumps(document, indent=1, ensure_ascii=False) + "\n"
    )
    write_text_safely(out / "street.html", sheet_html(sheet))
    write_bytes_safely(out / "street.pdf", render_pdf((sheet,), paper))


def _outcome(houses: Sequence[HouseRow]) -> Outcome:
    states = {row.state for row in houses}
    if states == {HouseState.REFUSED}:
        return Outcome.UNUSABLE
    return Outcome.DONE if states == {HouseState.READY} else Outcome.HELD

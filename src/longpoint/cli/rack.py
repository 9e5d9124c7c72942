"""`longpoint rack`: the crew's rack of offcuts, through all houses."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Final

import click

from longpoint.cli.days import old_after, on_day
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper, paper_of
from longpoint.cli.plan_folder import STATE
from longpoint.cli.rack_places import RackInStore, RackPlace, RackType, rack_place
from longpoint.cli.saw_folder import at_the_saw_in, planned_in
from longpoint.cli.spoken import speak, spoken_sheets
from longpoint.cli.store_options import at_moment, store_option
from longpoint.cli.store_places import StorePlace
from longpoint.errors import ExchangeError, QuantityError, SurveyError
from longpoint.exchange.house_files import load_house
from longpoint.exchange.rack_files import load_rack
from longpoint.exchange.safe_files import write_bytes_safely, write_new_text, write_text_safely
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import parse_length
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.html import sheet_html
from longpoint.sheets.rack_sheet import rack_sheets, rack_text_lines
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.news.kept_offcuts import after_plan, after_saw
from longpoint.sticks.news.settle_rack import Settled, settled
from longpoint.survey.rack import (
    Gone,
    Out,
    Rack,
    RackPiece,
    rack_changes,
    rack_text,
    rack_words,
    with_file,
)

_SHOWN: Final = 12
"""So many changes are told one by one."""

_RACK = click.argument("rack", type=RackType())


@click.group(name="rack")
def command() -> None:
    """Keep the crew's rack of offcuts: one for all houses.

    RACK is a TOML file, or the word store: then it is kept in the store, with its history.
    Each offcut has a label of four signs, the last of which checks the others. `longpoint plan
    --rack` cuts from the rack first.
    """


@command.command(name="list")
@_RACK
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=None,
    help="Folder for the list and the labels on paper; made when it isn't there.",
)
@click.option("--label", "named", multiple=True, help="Print this label only; may be repeated.")
@on_paper
@on_day
@old_after
@store_option
@exits
def list_rack(
    rack: Path | str,
    out: Path | None,
    named: tuple[str, ...],
    paper: Paper | None,
    on: date,
    old_after_days: int | None,
    store: StorePlace,
) -> Outcome:
    """List what is on RACK, and print it with its labels."""
    place = rack_place(rack, store)
    found = place.load()
    labels = tuple(found.piece(each) for each in named) or found.there
    for line in rack_text_lines(found, on, old_after_days):
        speak(line)
    for finding in place.findings():
        speak(str(finding), err=True)
    if out is not None:
        _print(out, paper_of(paper, None), found, on, labels, old_after_days)
    return Outcome.DONE


@command.command()
@_RACK
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@on_day
@store_option
@at_moment
@exits
def settle(rack: Path | str, sheets: Path, on: date, store: StorePlace, at: str) -> Outcome:
    """Settle a house that is cut: SHEETS is the folder of its plan.

    What came off RACK for it is taken out, and every offcut that is worth keeping is put up. Where
    `longpoint recut` was told what happened, that counts. Settling twice changes nothing.
    """
    plan = planned_in(sheets)
    if (sheets / STATE).exists():
        kept, _ = at_the_saw_in(sheets, plan)
        after = after_saw(kept.state, plan.pieces, plan.house)
    else:
        after = after_plan(plan.cut_plan, plan.pieces)
    place = rack_place(rack, store)
    before = place.load_or_begin()
    done = settled(before, after, plan.house, plan.readings_code, on)
    _save(place, before, done.rack, at)
    for line in _settled_lines(done):
        speak(line)
    return Outcome.DONE


@command.command()
@_RACK
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.argument("profile")
@click.argument("lengths", nargs=-1, required=True, metavar="LENGTH...")
@click.option("--note", default="", help="What else is to be said of them.")
@on_day
@store_option
@at_moment
@exits
def put(
    rack: Path | str,
    house: Path,
    profile: str,
    lengths: tuple[str, ...],
    note: str,
    on: date,
    store: StorePlace,
    at: str,
) -> Outcome:
    """Put offcuts up by hand: of a PROFILE of HOUSE, each LENGTH in the house's unit."""
    known = load_house(house).house
    section = known.profile(profile)
    place = rack_place(rack, store)
    before = place.load_or_begin()
    after, key = before.with_section(section)
    put_up = []
    for written in lengths:
        try:
            length_mm = parse_length(written, known.units)
        except QuantityError as error:
            raise SurveyError(error.read, error.wrong, error.do) from None
        if length_mm <= 2.0 * known.saw.kerf_mm:
            raise SurveyError(
                say("An offcut of {written} was to be put up.", written=written),
                say("That is no longer than the two cuts at its ends."),
                say("Write its whole length, in the house's unit."),
            )
        after, piece = after.with_piece(
            RackPiece(label="", section=key, length_mm=length_mm, put_up=on, note=note.strip())
        )
        put_up.append(piece)
    _save(place, before, after, at)
    for line in _put_up_lines(after, put_up):
        speak(line)
    return Outcome.DONE


@command.command()
@_RACK
@click.argument("labels", nargs=-1, required=True, metavar="LABEL...")
@click.option(
    "--why",
    type=click.Choice([each.value for each in Out]),
    default=Out.THROWN.value,
    show_default=True,
    help="What came of them.",
)
@on_day
@store_option
@at_moment
@exits
def take(
    rack: Path | str, labels: tuple[str, ...], why: str, on: date, store: StorePlace, at: str
) -> Outcome:
    """Take offcuts out of RACK: thrown away, used otherwise, or missing."""
    place = rack_place(rack, store)
    before = place.load()
    after = before
    for each in labels:
        after = after.without(each, Gone(why=Out(why), on=on))
    _save(place, before, after, at)
    speak(
        say(
            "Out of the rack, {why}: {offcuts}.",
            why=why,
            offcuts=say_many("{count} offcut", "{count} offcuts", count=len(labels)),
        )
    )
    return Outcome.DONE


@command.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@store_option
@at_moment
@exits
def add(file: Path, store: StorePlace, at: str) -> Outcome:
    """Put a rack FILE into the store, or what is new or mended in it.

    What the file doesn't have stays in the store, and what is gone there stays gone.
    """
    place = RackInStore(store)
    before = place.load_or_begin()
    after = with_file(before, load_rack(file))
    changes = rack_changes(before, after)
    place.save(before, after, at)
    for change in changes[:_SHOWN]:
        speak(f"  {rack_words(change)}")
    if len(changes) > _SHOWN:
        speak(
            say(
                "  and {more} more; `longpoint history --rack` lists them",
                more=len(changes) - _SHOWN,
            )
        )
    if not changes:
        speak(say("All of it was in the store already."))
    speak(say("On the rack in the store: {there}.", there=_offcuts(len(after.there))))
    return Outcome.DONE


@command.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@store_option
@exits
def write(file: Path, store: StorePlace) -> Outcome:
    """Write the rack of the store to a rack FILE that isn't there yet."""
    found = RackInStore(store).load()
    write_new_text(file, rack_text(found))
    speak(
        say(
            "The rack is in {file}, as it stands in the store: {there}.",
            file=file,
            there=_offcuts(len(found.there)),
        )
    )
    return Outcome.DONE


def _offcuts(count: int) -> str:
    return say_many("{count} offcut", "{count} offcuts", count=count)


def _save(place: RackPlace, before: Rack, after: Rack, at: str) -> None:
    copy = place.save(before, after, at)
    if copy is not None:
        speak(
            say(
                "The file as it was, with what was written in it by hand: {copy}",
                copy=copy,
            )
        )


def _print(
    out: Path,
    paper: Paper,
    rack: Rack,
    on: date,
    labels: Sequence[RackPiece],
    old_after_days: int | None,
) -> None:
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("The list is to go to {out}.", out=out),
            say("That folder can't be made: {strerror}.", strerror=error.strerror or error),
            say("Name another folder with --out."),
        ) from error
    sheets = spoken_sheets(rack_sheets(rack, on, labels, old_after_days), None)
    for sheet in sheets:
        write_text_safely(out / f"{sheet.name}.html", sheet_html(sheet))
    write_bytes_safely(out / "rack.pdf", render_pdf(sheets, paper))
    speak(say("\nOn paper: {out}", out=out / "rack.pdf"))


def _settled_lines(done: Settled) -> list[str]:
    lines = [say("Out of the rack: {taken}.", taken=joined(", ", done.taken))] if done.taken else []
    lines += _put_up_lines(done.rack, done.put_up)
    if done.too_short:
        lines.append(
            say(
                "Too short to keep: {offcuts}.",
                offcuts=say_many("{count} offcut", "{count} offcuts", count=done.too_short),
            )
        )
    if done.known:
        lines.append(say("Put up before: {known}.", known=joined(", ", done.known)))
    if done.elsewhere:
        lines.append(
            say(
                "Gone before, for something else: {elsewhere}. Look what this house was cut from.",
                elsewhere=joined(", ", done.elsewhere),
            )
        )
    if done.strange:
        lines.append(
            say(
                "Not in this file: {strange}. Look whether it is the rack that the "
                "house was planned with.",
                strange=joined(", ", done.strange),
            )
        )
    return lines


def _put_up_lines(rack: Rack, put_up: Sequence[RackPiece]) -> list[str]:
    if not put_up:
        return [say("Nothing was put up.")]
    lines = [say("Put up; write on each its label:")]
    for piece in put_up:
        length = format_with_unit(piece.length_mm, rack.units)
        lines.append(f"  {piece.label}  {piece.section}, {length}, {piece.left} / {piece.right}")
    return lines

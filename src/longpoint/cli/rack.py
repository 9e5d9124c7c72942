"""`longpoint rack`: the crew's rack of offcuts, through all houses."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import old_after, on_day
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper, paper_of
from longpoint.cli.plan_folder import STATE
from longpoint.cli.saw_folder import at_the_saw_in, planned_in
from longpoint.cli.spoken import speak, spoken_sheets
from longpoint.errors import ExchangeError, QuantityError, SurveyError
from longpoint.exchange.house_files import load_house
from longpoint.exchange.rack_files import load_or_begin_rack, load_rack, save_rack
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import parse_length
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.html import sheet_html
from longpoint.sheets.rack_sheet import rack_sheets, rack_text_lines
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.kept_offcuts import after_plan, after_saw
from longpoint.sticks.settle_rack import Settled, settled
from longpoint.survey.rack import Gone, Out, Rack, RackPiece

_FILE = click.argument("rack", type=click.Path(path_type=Path, dir_okay=False))


@click.group(name="rack")
def command() -> None:
    """Keep the crew's rack of offcuts: one TOML file for all houses.

    Each offcut has a label of four signs, the last of which checks the others. `longpoint plan
    --rack` cuts from the rack first.
    """


@command.command(name="list")
@_FILE
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
@exits
def list_rack(
    rack: Path,
    out: Path | None,
    named: tuple[str, ...],
    paper: Paper | None,
    on: date,
    old_after_days: int | None,
) -> Outcome:
    """List what is on RACK, and print it with its labels."""
    found = load_rack(rack)
    labels = tuple(found.piece(each) for each in named) or found.there
    for line in rack_text_lines(found, on, old_after_days):
        speak(line)
    if out is not None:
        _print(out, paper_of(paper, None), found, on, labels, old_after_days)
    return Outcome.DONE


@command.command()
@_FILE
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@on_day
@exits
def settle(rack: Path, sheets: Path, on: date) -> Outcome:
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
    before = load_or_begin_rack(rack)
    done = settled(before, after, plan.house, plan.readings_code, on)
    _save(rack, before, done.rack)
    for line in _settled_lines(done):
        speak(line)
    return Outcome.DONE


@command.command()
@_FILE
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.argument("profile")
@click.argument("lengths", nargs=-1, required=True, metavar="LENGTH...")
@click.option("--note", default="", help="What else is to be said of them.")
@on_day
@exits
def put(
    rack: Path, house: Path, profile: str, lengths: tuple[str, ...], note: str, on: date
) -> Outcome:
    """Put offcuts up by hand: of a PROFILE of HOUSE, each LENGTH in the house's unit."""
    known = load_house(house).house
    section = known.profile(profile)
    before = load_or_begin_rack(rack)
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
    _save(rack, before, after)
    for line in _put_up_lines(after, put_up):
        speak(line)
    return Outcome.DONE


@command.command()
@_FILE
@click.argument("labels", nargs=-1, required=True, metavar="LABEL...")
@click.option(
    "--why",
    type=click.Choice([each.value for each in Out]),
    default=Out.THROWN.value,
    show_default=True,
    help="What came of them.",
)
@on_day
@exits
def take(rack: Path, labels: tuple[str, ...], why: str, on: date) -> Outcome:
    """Take offcuts out of RACK: thrown away, used otherwise, or missing."""
    before = load_rack(rack)
    after = before
    for each in labels:
        after = after.without(each, Gone(why=Out(why), on=on))
    _save(rack, before, after)
    speak(
        say(
            "Out of the rack, {why}: {offcuts}.",
            why=why,
            offcuts=say_many("{count} offcut", "{count} offcuts", count=len(labels)),
        )
    )
    return Outcome.DONE


def _save(path: Path, before: Rack, after: Rack) -> None:
    copy = save_rack(path, before, after)
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

"""`longpoint bring`: other people's files in, with every figure confirmed by a person."""

from collections.abc import Sequence
from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import shown_name
from longpoint.exchange.confirm.columns import TableMapping, propose_mapping
from longpoint.exchange.confirm.confirm_list import from_others, merged, read_list, write_list
from longpoint.exchange.confirm.decimal_sign import DecimalSign
from longpoint.exchange.confirm.found_values import FoundValue, found_values
from longpoint.exchange.confirm.house_put import put_in_house_file
from longpoint.exchange.confirm.record_keys import LENGTHS, RecordKind, cell_keys
from longpoint.exchange.confirm.section_values import section_values
from longpoint.exchange.models.read_ifc import model_values
from longpoint.exchange.safe_files import free_name, write_bytes_safely
from longpoint.exchange.sections.read_section import read_section
from longpoint.exchange.sections.svg_file import MM_IN
from longpoint.exchange.tables.csv_table import DELIMITERS
from longpoint.exchange.tables.open_tables import open_tables
from longpoint.exchange.tables.records import ForeignTable, column_letters
from longpoint.speech.said import joined, say

_LIST = click.option(
    "--list",
    "to",
    type=click.Path(path_type=Path, dir_okay=False),
    required=True,
    help="The list to confirm, .csv or .xlsx; what you said on it is kept when it is made again.",
)


@click.group(name="bring")
def command() -> None:
    """Bring in other people's files.

    What they hold goes into a list, a line for each value with the cell it came from. You go
    through the list; `longpoint bring put` then puts what you confirmed into a house file.
    """


@command.command()
@click.argument("table", type=click.Path(path_type=Path, dir_okay=False))
@_LIST
@click.option(
    "--column",
    "told",
    multiple=True,
    metavar="HEADER=KEY",
    help="What a column holds, by its header or its letters: 'Breite=width (cm)', 'C=top'. An "
    "empty key leaves it out. May be repeated.",
)
@click.option(
    "--rows",
    "kind",
    type=click.Choice([RecordKind.OPENING.value, RecordKind.RUN.value]),
    help="What each row is; left out: told from the headers.",
)
@click.option("--headers", type=click.IntRange(0, 5000), help="Row of the headers; 0: none.")
@click.option("--tab", help="Only the tab of this name.")
@click.option(
    "--units",
    type=click.Choice(["mm", "cm", "m", "in"]),
    help="Unit of figures without one. [default: mm]",
)
@click.option("--decimal", type=click.Choice([s.value for s in DecimalSign]))
@click.option("--delimiter", help="What stands between the cells of a CSV file; tab for a tab.")
@exits
def table(
    table: Path,
    to: Path,
    told: tuple[str, ...],
    kind: str | None,
    headers: int | None,
    tab: str | None,
    units: str | None,
    decimal: str | None,
    delimiter: str | None,
) -> Outcome:
    """Read readings from TABLE, a CSV file or an .xlsx workbook, into a list to confirm."""
    said = dict(_told(each) for each in told)
    found: list[FoundValue] = []
    for each in _tabs(table, tab, delimiter):
        mapping = propose_mapping(each, said, RecordKind(kind) if kind else None, headers)
        for line in _mapping_lines(each, mapping, units):
            speak(line)
        if mapping is not None:
            sign = DecimalSign(decimal) if decimal else None
            found += found_values(each, mapping, units or "mm", sign)
    if not found:
        raise ExchangeError(
            say("The table {table} was looked through for readings.", table=table.name),
            say("Nothing in it can be told to be a mark with readings."),
            say("Say what the columns hold: --column 'A=mark' --column 'B=top' and so on."),
        )
    return write_to_list(to, _once(table, found), shown_name(table))


@command.command()
@click.argument("drawing", type=click.Path(path_type=Path, dir_okay=False))
@_LIST
@click.option("--profile", required=True, help="Name of the profile in the house file.")
@click.option(
    "--units",
    type=click.Choice(list(MM_IN)),
    help="What one step of the drawing is. [default: what the drawing says]",
)
@exits
def section(drawing: Path, to: Path, profile: str, units: str | None) -> Outcome:
    """Read a profile's cross-section from DRAWING, a DXF or SVG file, into a list to confirm."""
    found = read_section(drawing, units)
    speak(
        say(
            "{drawing}: {width_mm:.2f} across the face, {thickness_mm:.2f} thick, "
            "{area_mm2:.1f} mm2, {outline} corners.",
            drawing=drawing.name,
            width_mm=found.width_mm,
            thickness_mm=found.thickness_mm,
            area_mm2=found.area_mm2,
            outline=len(found.outline),
        )
    )
    speak(
        say("It is the same from both edges, to 0.1 mm: a piece of it may be turned.")
        if found.reversible
        else say("It differs from edge to edge: a piece of it can't be turned.")
    )
    speak(say("The longer way is taken for the face, its flattest long side for the back."))
    for note in found.notes:
        speak(note)
    return write_to_list(to, section_values(found, drawing, profile), shown_name(drawing))


@command.command()
@click.argument("model", type=click.Path(path_type=Path, dir_okay=False))
@_LIST
@exits
def model(model: Path, to: Path) -> Outcome:
    """Read doors, windows and bare openings of MODEL, an IFC file, into a list to confirm.

    Their sizes are those of the drawing: they go under `nominal` and are never readings.
    """
    found = model_values(model)
    marks = dict.fromkeys(value.mark for value in found)
    speak(
        say(
            "{model}: {marks} openings, as drawn: {marks_2}.",
            model=model.name,
            marks=len(marks),
            marks_2=joined(", ", marks),
        )
    )
    speak(say("These are sizes of the drawing, none of them read: no piece is cut from them."))
    speak(say("The storey is proposed as the room; write the room beside it."))
    return write_to_list(to, found, shown_name(model))


@command.command()
@click.argument("confirmed", type=click.Path(path_type=Path, dir_okay=False))
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@exits
def put(confirmed: Path, house: Path) -> Outcome:
    """Put what was CONFIRMED on a list into HOUSE; nothing else, and nothing twice."""
    plan = put_in_house_file(house, read_list(confirmed))
    for line in plan.said:
        speak(line)
    for line in plan.refused:
        speak(say("NOT PUT  {line}", line=line))
    if plan.waiting:
        speak(
            say(
                "Still to be confirmed, so nothing of them is used: {waiting}.",
                waiting=joined(", ", plan.waiting),
            )
        )
    if plan.is_empty:
        speak(say("{house} stays as it was.", house=house))
    else:
        speak(say("Written: {house}. Now: longpoint check {house}", house=house))
    return Outcome.HELD if plan.waiting or plan.refused else Outcome.DONE


def write_to_list(to: Path, found: Sequence[FoundValue], file: str) -> Outcome:
    """Write a list to confirm, keep what a person said on an earlier one, and say how it stands.

    Lines from other files stay on the list.
    """
    before = read_list(to) if to.exists() or to.is_symlink() else ()
    others = from_others(before, file)
    own = [line for line in before if line not in others]
    places = {line.place for line in found}
    twice = next((line for line in others if line.place in places), None)
    if twice is not None:
        raise ExchangeError(
            say("The list {to} was to get what {file} holds.", to=to.name, file=file),
            say(
                "{mark} {path} stands on it already, from {source}.",
                mark=twice.mark,
                path=twice.path,
                source=twice.source,
            ),
            say(
                "Make a list of its own for each of the two files, or take those lines out of one."
            ),
        )
    lines, lost = merged(own, found)
    lines = (*others, *lines)
    if lost:
        copy = free_name(to)
        write_bytes_safely(copy, to.read_bytes())
        speak(
            say(
                "{lost} confirmed lines aren't the same any more and have to be looked "
                "at anew; the list as it was: {copy}",
                lost=len(lost),
                copy=copy,
            )
        )
    write_bytes_safely(to, write_list(to, lines))
    troubled = [line for line in lines if line.trouble]
    for line in troubled:
        read = f" ({line.written})" if line.written else ""
        speak(
            say(
                "LOOK  {mark} {path}, {source}{read}: {trouble}",
                mark=line.mark,
                path=line.path,
                source=line.source,
                read=read,
                trouble=line.trouble,
            )
        )
    waiting = sum(not line.is_settled for line in lines)
    speak(
        say(
            "{lines} values, {waiting} to be confirmed, {troubled} with trouble.",
            lines=len(lines),
            waiting=waiting,
            troubled=len(troubled),
        )
    )
    speak(say("List: {to}. Go through it, then: longpoint bring put {to} HOUSE", to=to))
    return Outcome.HELD if troubled else Outcome.DONE


def _told(text: str) -> tuple[str, str]:
    name, equals, meaning = text.rpartition("=")
    if not equals or not name.strip():
        raise ExchangeError(
            say("A column was told as {text!r}.", text=text),
            say("It has no header or letters, an equals sign, and a key behind it."),
            say("Write it like --column 'C=top'."),
        )
    return name.strip(), meaning.strip()


def _tabs(table: Path, tab: str | None, delimiter: str | None) -> tuple[ForeignTable, ...]:
    sign = "\t" if delimiter == "tab" else delimiter
    if sign is not None and len(sign) != 1:
        raise ExchangeError(
            say(
                "The cells of {table} were said to be parted by {sign!r}.",
                table=table.name,
                sign=sign,
            ),
            say("That is not one sign."),
            say(
                "Name one of: {values}, as the sign itself or the word tab.",
                values=joined(", ", DELIMITERS.values()),
            ),
        )
    found = open_tables(table, sign)
    if tab is None:
        return found
    named = tuple(each for each in found if each.tab == tab)
    if not named:
        raise ExchangeError(
            say("The tab {tab!r} of {table} is asked for.", tab=tab, table=table.name),
            say("It has no tab of that name with anything in it."),
            say(
                "Name one of: {found}.",
                found=joined(", ", (each.tab for each in found)) or "(none)",
            ),
        )
    return named


def _mapping_lines(
    table: ForeignTable, mapping: TableMapping | None, units: str | None
) -> list[str]:
    name = say("{file}, tab {tab}", file=table.file, tab=table.tab) if table.tab else table.file
    if mapping is None:
        return [
            say(
                "{name}: not used; no row of it has headers of readings with a mark.",
                name=name,
            )
        ]
    lines = [say("{name}: each row is taken for {a}.", name=name, a=_a(mapping.kind)), *table.notes]
    for column in mapping.columns:
        number = f" {column.number}" if column.number > 1 else ""
        meant = f"{column.path}{number}" if column.path else say("not used")
        unit = say(" in {unit}", unit=column.unit) if column.unit else ""
        lines.append(f"  {column_letters(column.column):>3}  {column.header:<24} -> {meant}{unit}")
    keys = cell_keys(mapping.kind)
    if units is None and any(not c.unit and keys[c.path].kind in LENGTHS for c in mapping.used):
        lines.append(say("Lengths without a unit are taken for mm; --units says otherwise."))
    return lines


def _a(kind: RecordKind) -> str:
    return say("an opening") if kind is RecordKind.OPENING else say("a {kind}", kind=kind.value)


def _once(table: Path, found: Sequence[FoundValue]) -> list[FoundValue]:
    """Return the values, when no mark stands on two tabs."""
    seen: dict[tuple[RecordKind, str, str, int], FoundValue] = {}
    for each in found:
        other = seen.setdefault(each.place, each)
        if other is not each:
            raise ExchangeError(
                say("The tabs of {table} were read.", table=table.name),
                say(
                    "{mark} stands on two of them: {source} and {source_2}.",
                    mark=each.mark,
                    source=other.source,
                    source_2=each.source,
                ),
                say("Name the tab to read with --tab, or give each its own mark."),
            )
    return list(found)

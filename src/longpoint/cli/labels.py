"""`longpoint labels`: a label for each piece, and the list of bundles."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper, paper_of
from longpoint.cli.saw_folder import printed_plan_in
from longpoint.cli.sheet_folder import write_file, write_sheets
from longpoint.cli.spoken import speak, tongue
from longpoint.errors import QuantityError, SheetError
from longpoint.quantities.length import Units, parse_length
from longpoint.render.label_pdf import render_labels
from longpoint.render.paper import Paper
from longpoint.render.qr import qr_modules
from longpoint.sheets.in_tongue import in_tongue
from longpoint.sheets.labels.bundle_sheet import bundle_sheet
from longpoint.sheets.labels.grid import A4, GRIDS, LETTER, LabelGrid, read_grid
from longpoint.sheets.labels.label_pages import LabelOrder, label_pages, labelled, trial_page
from longpoint.speech.said import joined, say, say_many

LABELS = "labels.pdf"
TEST_PRINT = "labels-test.pdf"
USUAL = {Paper.A4: "a4-3x8", Paper.US_LETTER: "letter-3x10"}


@click.command(name="labels", epilog=f"Grids known by name: {', '.join(GRIDS)}.")
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@click.option(
    "--grid",
    default=None,
    help='A grid by name; its numbers in mm, like "3x8 63.5x33.9 at 7.2x12.9 every 66x33.9"; or '
    '"62x29", a label on a roll. [default: a4-3x8, or letter-3x10]',
)
@click.option(
    "--nudge", default="0,0", show_default=True, help="Move the print right,down; mm, - is back."
)
@click.option(
    "--order",
    type=click.Choice([each.value for each in LabelOrder]),
    default=LabelOrder.SAW.value,
    show_default=True,
    help="As the pieces come off the saw, or bundle by bundle.",
)
@click.option(
    "--skip", type=click.IntRange(0), default=0, help="Labels of the first page that are used up."
)
@click.option("--test", "is_test", is_flag=True, help="Write only the test print.")
@on_paper
@exits
def command(
    sheets: Path,
    grid: str | None,
    nudge: str,
    order: str,
    skip: int,
    is_test: bool,
    paper: Paper | None,
) -> Outcome:
    """Write a label for each piece of a plan: SHEETS is the folder that `longpoint plan` wrote.

    The folder gets labels.pdf, bundles.pdf with the list by which pieces are tied together, and
    with --test labels-test.pdf, the edges of the labels with rulers.
    """
    plan = printed_plan_in(sheets)
    on = paper_of(paper, plan.house.dialect)
    spoken = tongue(plan.house.dialect)
    used = read_grid(grid or USUAL[on], A4 if on is Paper.A4 else LETTER)
    used = _nudged(used, nudge)
    if is_test:
        made = write_file(
            sheets,
            TEST_PRINT,
            render_labels(in_tongue((trial_page(used),), spoken), say("Test print")),
        )
        speak(
            say(
                "Print it at 100 % on plain paper and hold it against the labels; what "
                "it is off goes into --nudge.\nTest print: {made}",
                made=made,
            )
        )
        return Outcome.DONE
    pages = label_pages(plan, used, qr_modules, LabelOrder(order), skip)
    made = write_file(
        sheets,
        LABELS,
        render_labels(
            in_tongue(pages, spoken),
            say(
                "{house}: labels",
                house=plan.house.name,
            ),
        ),
    )
    bundles = write_sheets(sheets, "bundles.pdf", (bundle_sheet(plan),), on, plan.house.dialect)
    speak(
        say(
            "{labels} on {pages} of {columns} x {rows}.",
            labels=say_many(
                "{count} label", "{count} labels", count=len(labelled(plan, LabelOrder.SAW))
            ),
            pages=say_many("{count} page", "{count} pages", count=len(pages)),
            columns=used.columns,
            rows=used.rows,
        )
    )
    if plan.held:
        speak(say("Held back, labelled HOLD: {held}.", held=joined(", ", sorted(plan.held))))
    speak(f"Labels: {made}\nBundles: {bundles}")
    return Outcome.HELD if plan.held else Outcome.DONE


def _nudged(grid: LabelGrid, written: str) -> LabelGrid:
    right, _, down = written.partition(",")
    try:
        return grid.nudged(_signed(right), _signed(down or "0"))
    except QuantityError:
        raise SheetError(
            say("The nudge is written as {written!r}.", written=written[:40]),
            say("It must be two lengths in mm with a comma between, right and down."),
            say('Write it like "0.5,-1": half a millimetre to the right, one up.'),
        ) from None


def _signed(written: str) -> float:
    text = written.strip()
    length_mm = parse_length(text.lstrip("+-"), Units.MM)
    return -length_mm if text.startswith("-") else length_mm

"""`longpoint order`: what to send to each supplier."""

import re
from dataclasses import replace
from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import a_day, on_day
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.plan_folder import PLAN
from longpoint.cli.saw_folder import document_in, house_in
from longpoint.cli.spoken import speak, tongue
from longpoint.exchange.order_files import order_csv, order_xlsx
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.exchange.ubl_order import ubl_order
from longpoint.sheets.order_text import OrderHead, order_text
from longpoint.sheets.plan_file import bought_in
from longpoint.speech.said import joined, say
from longpoint.sticks.order_lines import by_supplier, order_lines


@click.command(name="order")
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@click.option("--buyer", default="", help="Who orders; the XML needs it.")
@click.option("--deliver-to", default="", help="Where the sticks are to go.")
@click.option(
    "--wanted-by",
    callback=a_day,
    default=None,
    metavar="DAY",
    help="By which day they are wanted, like 2026-03-01.",
)
@click.option("--currency", default="", help="Currency of the prices, ISO 4217, like GBP.")
@click.option("--number", default=None, help="Number of the order. [default: the readings' code]")
@on_day
@exits
def command(
    sheets: Path,
    buyer: str,
    deliver_to: str,
    wanted_by: date | None,
    currency: str,
    number: str | None,
    on: date,
) -> Outcome:
    """Write the order of a plan: SHEETS is the folder that `longpoint plan` wrote.

    The folder gets order.csv and order.xlsx with all lines, and for each supplier the text to send
    and, where buyer and supplier are named, a UBL 2.1 Order. The spares of the order sheet are in.
    """
    house = house_in(sheets)
    bought = bought_in(document_in(sheets, PLAN))
    lines = order_lines(house, bought.needed, bought.spares)
    if not lines:
        speak(say("Nothing has to be bought."))
        return Outcome.DONE
    head = OrderHead(
        number=number or bought.readings_code,
        house=house.name,
        on=on,
        buyer=buyer.strip(),
        deliver_to=deliver_to.strip(),
        wanted_by=wanted_by,
        currency=currency.strip().upper(),
    )
    texts = {}
    files: dict[str, bytes] = {}
    each = by_supplier(lines)
    for place, (supplier, theirs) in enumerate(each.items(), 1):
        name = f"order-{file_name(supplier)}" if supplier else "order"
        own = replace(head, number=f"{head.number}-{place}") if len(each) > 1 else head
        texts[name] = tongue(house.dialect).text(order_text(own, supplier, theirs, house.units))
        if head.buyer and supplier:
            files[f"{name}.xml"] = ubl_order(own, supplier, theirs)
    write_text_safely(sheets / "order.csv", order_csv(lines))
    write_bytes_safely(sheets / "order.xlsx", order_xlsx(lines))
    for name, text in texts.items():
        write_text_safely(sheets / f"{name}.txt", text)
        speak(text)
    for name, data in files.items():
        write_bytes_safely(sheets / name, data)
    for said in _left_out(head, tuple(each)):
        speak(said)
    made = ("order.csv", "order.xlsx", *(f"{name}.txt" for name in texts), *files)
    speak(say("Files in {sheets}: {made}", sheets=sheets, made=joined(", ", made)))
    return Outcome.DONE


def file_name(supplier: str) -> str:
    """Return a supplier's name as part of a file name.

    Example:
        >>> file_name("Harrow & Finch Timber"), file_name("..")
        ('harrow-finch-timber', 'unnamed')
    """
    plain = re.sub(r"[^a-z0-9]+", "-", supplier.casefold()).strip("-")
    return plain[:40] or "unnamed"


def _left_out(head: OrderHead, suppliers: tuple[str, ...]) -> tuple[str, ...]:
    said = []
    if not head.buyer:
        said.append(say("No XML was written: name who orders with --buyer."))
    if "" in suppliers:
        said.append(
            say(
                "Some sticks have no supplier, and there is no XML for these: write "
                "supplier at the [[stock]] of the house file, and plan again."
            )
        )
    if head.buyer and not head.currency:
        said.append(say("The XML gives no prices: name their currency with --currency."))
    return tuple(said)

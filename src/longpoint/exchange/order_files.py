"""An order as tables for other programs: CSV and XLSX. No text in either is ever a formula."""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Final

from longpoint.exchange.tables.csv_table import csv_text
from longpoint.exchange.tables.write_xlsx import Tab, write_workbook
from longpoint.sticks.order_lines import OrderLine

COLUMNS: Final = (
    "supplier",
    "profile",
    "face_mm",
    "thickness_mm",
    "material",
    "length_mm",
    "count",
    "of_them_spare",
    "metres",
    "supplier_code",
    "price_each",
    "sum",
)
TEXTS: Final = ("supplier", "profile", "material", "supplier_code")
"""Columns whose cells stay texts, also where they look like numbers."""

Value = str | int | float | Decimal | None


def order_csv(lines: Iterable[OrderLine]) -> str:
    """Return an order as CSV, with a line of titles."""
    return csv_text(_table(lines))


def order_xlsx(lines: Sequence[OrderLine]) -> bytes:
    """Return an order as an XLSX workbook of one sheet; the same order gives the same bytes."""
    as_text = tuple(COLUMNS.index(name) for name in TEXTS)
    return write_workbook([Tab(name="Order", rows=_table(lines), as_text=as_text)])


def _table(lines: Iterable[OrderLine]) -> list[tuple[str, ...]]:
    return [COLUMNS, *(tuple(map(_written, _row(line))) for line in lines)]


def _row(line: OrderLine) -> tuple[Value, ...]:
    profile = line.profile
    return (
        line.supplier,
        profile.name,
        round(profile.width_mm, 2),
        round(profile.thickness_mm, 2),
        profile.material,
        round(line.length_mm, 2),
        line.count,
        line.spares,
        round(line.running_mm / 1000.0, 3),
        line.code,
        line.price,
        line.total,
    )


def _written(value: Value) -> str:
    match value:
        case None:
            return ""
        case str():
            return value
        case Decimal():
            return f"{value:.2f}"
        case _:
            return f"{value:g}" if abs(value) < 1e5 else f"{value:.2f}"

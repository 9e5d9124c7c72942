import csv
import io
from decimal import Decimal

import openpyxl
import pytest

from longpoint.exchange.order_files import COLUMNS, order_csv, order_xlsx
from longpoint.exchange.tables.csv_table import FORMULA_SIGNS
from longpoint.sticks.order_lines import OrderLine
from longpoint.survey.profiles import Profile

OG57 = Profile(name="OG57", width_mm=57.0, thickness_mm=18.0, material="primed pine")
LINES = (
    OrderLine(
        profile=OG57,
        length_mm=5400.0,
        count=8,
        spares=1,
        supplier="Harrow, Timber",
        code="HT-1",
        price=Decimal("15.20"),
    ),
    OrderLine(profile=OG57, length_mm=2700.0, count=1),
)


def csv_rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline="")))


def xlsx_rows(data: bytes) -> list[tuple[object, ...]]:
    sheet = openpyxl.load_workbook(io.BytesIO(data)).active
    assert sheet is not None
    return list(sheet.iter_rows(values_only=True))


def test_csv_has_a_line_for_each_and_ends_as_the_rfc_asks() -> None:
    text = order_csv(LINES)
    first, second = csv_rows(text)
    assert text.endswith("\r\n")
    assert first["supplier"] == "Harrow, Timber"
    assert [first[k] for k in ("length_mm", "count", "of_them_spare", "metres", "sum")] == [
        "5400",
        "8",
        "1",
        "43.2",
        "121.60",
    ]
    assert (second["price_each"], second["sum"], second["supplier"]) == ("", "", "")


def test_xlsx_says_the_same_in_numbers_and_texts() -> None:
    titles, first, second = xlsx_rows(order_xlsx(LINES))
    assert titles == COLUMNS
    assert first == (
        *("Harrow, Timber", "OG57", 57, 18, "primed pine", 5400, 8, 1, 43.2, "HT-1"),
        *(15.2, 121.6),
    )
    assert second[-2:] == (None, None)


def test_the_same_order_gives_the_same_workbook() -> None:
    assert order_xlsx(LINES) == order_xlsx(LINES)


@pytest.mark.parametrize("sign", FORMULA_SIGNS)
def test_no_text_is_ever_a_formula(sign: str) -> None:
    text = f'{sign}HYPERLINK("//x")'
    profile = Profile(name=text, width_mm=57.0, thickness_mm=18.0, material=text)
    line = OrderLine(profile=profile, length_mm=1.0, count=1, supplier=text, code=text)
    (row,) = csv_rows(order_csv([line]))
    assert all(row[k] == f"'{text}" for k in ("supplier", "profile", "material", "supplier_code"))
    sheet = openpyxl.load_workbook(io.BytesIO(order_xlsx([line]))).active
    assert sheet is not None
    cells = [cell for row in sheet.iter_rows() for cell in row]
    assert {cell.data_type for cell in cells} <= {"s", "n"}
    assert not any(cell.hyperlink for cell in cells)


def test_a_link_stays_a_text() -> None:
    profile = Profile(name="https://x.example", width_mm=57.0, thickness_mm=18.0)
    sheet = openpyxl.load_workbook(
        io.BytesIO(order_xlsx([OrderLine(profile=profile, length_mm=1.0, count=1)]))
    ).active
    assert sheet is not None
    assert sheet["B2"].hyperlink is None
    assert sheet["B2"].value == "https://x.example"

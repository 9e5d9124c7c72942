"""What other people's bytes are thrown at; each either reads them or refuses in three sentences."""

import io
import zipfile
from pathlib import Path
from typing import Final

from longpoint.errors import LongpointError
from longpoint.exchange.confirm.columns import propose_mapping
from longpoint.exchange.confirm.confirm_list import read_list
from longpoint.exchange.confirm.found_values import FoundValue, found_values
from longpoint.exchange.confirm.house_put import put_in_house_file
from longpoint.exchange.confirm.record_keys import RecordKind
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.sections.read_section import read_section
from longpoint.exchange.tables.csv_table import read_csv_table
from longpoint.exchange.tables.write_xlsx import Tab, write_workbook
from longpoint.exchange.tables.xlsx_table import read_workbook
from tests.fuzz import crews, devices, drawings, kept, said
from tests.fuzz.refusing import refused_or_read

SHEET: Final = "xl/worksheets/sheet1.xml"
EMPTY: Final = write_workbook([Tab(name="a", rows=[("mark", "top (mm)"), ("W1", "1187")])])
PARTS: Final = tuple(zipfile.ZipFile(io.BytesIO(EMPTY)).namelist())
CONFIRMED: Final = (
    FoundValue(
        kind=RecordKind.OPENING,
        mark="W1",
        path="kind",
        value="window",
        written="window",
        source="a.csv B2",
        confirmed="yes",
    ),
    FoundValue(
        kind=RecordKind.OPENING,
        mark="W1",
        path="bottom",
        value="1186",
        unit="mm",
        written="1186",
        source="a.csv C2",
        confirmed="yes",
    ),
)


def table(data: bytes) -> bool:
    """A CSV file, its mapping and its values."""

    def work(path: Path) -> None:
        found = read_csv_table(path)
        mapping = propose_mapping(found, {})
        if mapping is not None:
            found_values(found, mapping)

    return refused_or_read(work, data, ".csv")


def workbook(data: bytes) -> bool:
    """A whole workbook."""
    return refused_or_read(read_workbook, data, ".xlsx")


def sheet(data: bytes) -> bool:
    """The XML of a sheet inside a sound workbook."""
    return _with_part(SHEET, data)


def part(data: bytes) -> bool:
    """Another part of a sound workbook: its name in the first line, then what is in it."""
    name, _, text = data.partition(b"\n")
    wanted = name.decode("ascii", "replace").strip()
    return _with_part(wanted if wanted in PARTS else PARTS[len(name) % len(PARTS)], text)


def _with_part(name: str, text: bytes) -> bool:
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(EMPTY)) as old, zipfile.ZipFile(out, "w") as new:
        for each in old.namelist():
            new.writestr(each, text if each == name else old.read(each))
    return refused_or_read(read_workbook, out.getvalue(), ".xlsx")


def confirmed(data: bytes) -> bool:
    """A list that a person went through."""
    return refused_or_read(read_list, data, ".csv")


def house(data: bytes) -> bool:
    """A house file that gets what was confirmed; refused or not, it still reads as it did."""

    def work(path: Path) -> None:
        try:
            before = load_house_document(path)
            put_in_house_file(path, CONFIRMED)
        except LongpointError:
            assert path.read_bytes() == data
            raise
        after = load_house_document(path)
        assert {k: v for k, v in before.items() if k != "openings"} == {
            k: v for k, v in after.items() if k != "openings"
        }

    return refused_or_read(work, data, ".toml")


def svg(data: bytes) -> bool:
    """A section as SVG."""
    return refused_or_read(read_section, data, ".svg")


TARGETS: Final = {
    "table": table,
    "workbook": workbook,
    "sheet": sheet,
    "part": part,
    "confirmed": confirmed,
    "house": house,
    "svg": svg,
    **drawings.TARGETS,
    **crews.TARGETS,
    **devices.TARGETS,
    **kept.TARGETS,
    **said.TARGETS,
}
"""Each by its name; its seeds stand in tests/corpus/foreign under the same name."""

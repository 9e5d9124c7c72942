"""Workbooks: what is read of a sound one, and what is refused of one that is a trap."""

import io
import stat
import xml.etree.ElementTree as ET
import zipfile
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.tables.records import MOST_COLUMNS, MOST_ROWS, MOST_TABS
from longpoint.exchange.tables.write_xlsx import Tab, write_workbook
from longpoint.exchange.tables.xlsx_table import DATE, FORMULA, read_workbook


def workbook(fill: Callable[[Any], None]) -> bytes:
    """Return a workbook made by another library than the one that writes ours."""
    book = openpyxl.Workbook()
    fill(book)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def sound(book: Any) -> None:  # noqa: ANN401
    sheet = book.active
    sheet.title = "Kitchen"
    sheet.append(["mark", "top", "left"])
    sheet.append(["W1", 1187.5, 462])


def changed(data: bytes, change: Callable[[str, bytes], bytes]) -> bytes:
    """Return a workbook whose parts are changed, all else as it was."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", 8) as new:
        for part in old.infolist():
            new.writestr(part.filename, change(part.filename, old.read(part)))
    return out.getvalue()


def with_part(data: bytes, name: str | zipfile.ZipInfo, content: bytes) -> bytes:
    out = io.BytesIO(data)
    with zipfile.ZipFile(out, "a", zipfile.ZIP_DEFLATED) as book:
        book.writestr(name, content)
    return out.getvalue()


def in_sheet(change: Callable[[bytes], bytes]) -> bytes:
    return changed(
        workbook(sound),
        lambda name, content: change(content) if name.endswith("sheet1.xml") else content,
    )


def saved(folder: Path, data: bytes) -> Path:
    path = folder / "a.xlsx"
    path.write_bytes(data)
    return path


def test_a_sound_workbook_is_read_with_the_address_of_each_cell(tmp_path: Path) -> None:
    (table,) = read_workbook(saved(tmp_path, workbook(sound)))
    assert [cell.text for cell in table.rows[1]] == ["W1", "1187.5", "462"]
    assert [cell.is_number for cell in table.rows[1]] == [False, True, True]
    assert table.address(1, 1) == "Kitchen!B2"


def test_a_formula_a_date_and_an_error_say_what_they_are(tmp_path: Path) -> None:
    def fill(book: Any) -> None:  # noqa: ANN401
        day = datetime(2026, 2, 1)  # noqa: DTZ001
        book.active.append(["mark", "=1187+1", day, "#REF!", True, "  46 3/4 "])

    (table,) = read_workbook(saved(tmp_path, workbook(fill)))
    _, formula, day, error, flag, text = table.rows[0]
    assert (formula.trouble, day.trouble) == (FORMULA, DATE)
    assert error.trouble
    assert (flag.text, text.text) == ("true", "46 3/4")


def test_a_format_far_below_the_last_reading_costs_nothing(tmp_path: Path) -> None:
    data = in_sheet(
        lambda xml: xml.replace(b"</sheetData>", b'<row r="1048576" ht="20"/></sheetData>')
    )
    (table,) = read_workbook(saved(tmp_path, data))
    assert len(table.rows) == 2


def test_a_workbook_that_lies_about_its_extent_is_read_as_it_is(tmp_path: Path) -> None:
    data = in_sheet(lambda xml: xml.replace(b"A1:C2", b"A1:XFD1048576"))
    assert b"XFD1048576" in zipfile.ZipFile(io.BytesIO(data)).read("xl/worksheets/sheet1.xml")
    (table,) = read_workbook(saved(tmp_path, data))
    assert len(table.rows) == 2


def link() -> zipfile.ZipInfo:
    info = zipfile.ZipInfo("xl/media/link")
    info.create_system = 3
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    return info


def billion_laughs(xml: bytes) -> bytes:
    head, _, rest = xml.partition(b"<worksheet")
    lines = b'<!DOCTYPE x [<!ENTITY a "ha">' + b"".join(
        b'<!ENTITY %c "&%c;&%c;">' % (98 + n, 97 + n, 97 + n) for n in range(20)
    )
    return head + lines + b"]><worksheet" + rest.replace(b"W1", b"&u;")


def outside_file(xml: bytes) -> bytes:
    head, _, rest = xml.partition(b"<worksheet")
    return head + b'<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]><worksheet' + rest


def split_doctype(xml: bytes) -> bytes:
    """The word lies across the border between two chunks."""
    head, _, rest = xml.partition(b"<worksheet")
    pad = b"<!--" + b"x" * (65_536 - len(head) - 4 - 3 - 5) + b"-->"
    return head + pad + b"<!DOCTYPE x [<!ENTITY a 'b'>]><worksheet" + rest


def many_tabs(book: Any) -> None:  # noqa: ANN401
    for n in range(MOST_TABS + 1):
        book.create_sheet(f"t{n}")


def many_rows(book: Any) -> None:  # noqa: ANN401
    for n in range(MOST_ROWS + 1):
        book.active.append([f"W{n}", 1187])


HOSTILE: dict[str, Callable[[], bytes]] = {
    "a bomb": lambda: with_part(workbook(sound), "xl/media/a.bin", b"\0" * 30_000_000),
    "a bomb in a sheet": lambda: in_sheet(
        lambda xml: xml.replace(b"</sheetData>", b" " * 25_000_000 + b"</sheetData>")
    ),
    "bombs in many parts": lambda: with_part(
        with_part(
            with_part(workbook(sound), "xl/a.xml", bytes(range(256)) * 78_000),
            "xl/b.xml",
            bytes(range(256)) * 78_000,
        ),
        "xl/c.xml",
        bytes(range(256)) * 78_000,
    ),
    "many parts": lambda: many_parts(workbook(sound)),
    "entities": lambda: in_sheet(billion_laughs),
    "an entity from outside": lambda: in_sheet(outside_file),
    "a doctype across two chunks": lambda: in_sheet(split_doctype),
    "xml in another encoding": lambda: in_sheet(
        lambda xml: xml.decode().replace("UTF-8", "UTF-16").encode("utf-16")
    ),
    "xml in yet another encoding": lambda: in_sheet(
        lambda xml: b"<?xml version='1.0' encoding='UTF-7'?>" + xml.partition(b"?>")[2]
    ),
    "deep nesting": lambda: in_sheet(
        lambda xml: xml.replace(
            b"</sheetData>", b"<a>" * 50_000 + b"</a>" * 50_000 + b"</sheetData>"
        )
    ),
    "a giant cell": lambda: in_sheet(
        lambda xml: xml.replace(
            b"</sheetData>",
            b'<row r="3"><c r="A3" t="inlineStr"><is><t>'
            + b"".join(b"%d" % n for n in range(9_000))
            + b"</t></is></c></row></sheetData>",
        )
    ),
    "a column beyond the last": lambda: in_sheet(
        lambda xml: xml.replace(b'r="C2"', b'r="ZZZZZZZ2"')
    ),
    "a far column": lambda: in_sheet(lambda xml: xml.replace(b'r="C2"', b'r="XFD2"')),
    "a row without end": lambda: in_sheet(
        lambda xml: xml.replace(b'r="2"', b'r="999999999"').replace(b"B2", b"B999999999")
    ),
    "many tabs": lambda: workbook(many_tabs),
    "many rows": lambda: workbook(many_rows),
    "many columns": lambda: workbook(
        lambda book: book.active.append(["mark", *range(MOST_COLUMNS + 1)])
    ),
    "a link": lambda: with_part(workbook(sound), link(), b"/etc/passwd"),
    "a part outside": lambda: with_part(workbook(sound), "../../evil.xml", b"<a/>"),
    "a part at the root": lambda: with_part(workbook(sound), "/etc/evil.xml", b"<a/>"),
    "macros": lambda: with_part(workbook(sound), "xl/vbaProject.bin", b"x"),
    "links to other files": lambda: with_part(
        workbook(sound), "xl/externalLinks/externalLink1.xml", b"<a/>"
    ),
    "two parts of one name": lambda: with_part(
        workbook(sound), "XL/worksheets/Sheet1.xml", b"<a/>"
    ),
    "a zip of something else": lambda: with_part(zipped(), "readme.txt", b"hello"),
    "half a workbook": lambda: workbook(sound)[:3000],
    "a broken part": lambda: broken(workbook(sound)),
    "no zip": lambda: b"mark,top\nW1,1187\n",
    "an old workbook": lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"x" * 600,
    "a sheet cut short": lambda: in_sheet(lambda xml: xml[: len(xml) // 2]),
    "nothing": lambda: b"",
    "noughts": lambda: b"\0" * 5000,
}


def zipped() -> bytes:
    out = io.BytesIO()
    zipfile.ZipFile(out, "w").close()
    return out.getvalue()


def many_parts(data: bytes) -> bytes:
    out = io.BytesIO(data)
    with zipfile.ZipFile(out, "a") as book:
        for n in range(600):
            book.writestr(f"xl/media/{n}.bin", b"x")
    return out.getvalue()


def broken(data: bytes) -> bytes:
    at = data.index(b"xl/worksheets/sheet1.xml") + 60
    return data[:at] + bytes(255 - byte for byte in data[at : at + 20]) + data[at + 20 :]


@pytest.mark.parametrize("trap", HOSTILE)
@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_a_hostile_workbook_is_refused_in_three_sentences(tmp_path: Path, trap: str) -> None:
    with pytest.raises(ExchangeError) as caught:
        read_workbook(saved(tmp_path, HOSTILE[trap]()))
    for sentence in (caught.value.read, caught.value.wrong, caught.value.do):
        assert sentence.endswith(".")
        assert len(sentence) < 250


def test_a_workbook_of_ours_holds_no_formula_and_reads_back(tmp_path: Path) -> None:
    rows = [("mark", "top (mm)"), ("7", "1187.5"), ("=1+1", "46 3/4"), ("-W", "007")]
    data = write_workbook([Tab(name="openings", rows=rows, as_text=(0,))])
    (table,) = read_workbook(saved(tmp_path, data))
    texts = [tuple(cell.text for cell in row) for row in table.rows]
    assert texts[:2] == rows[:2]
    assert texts[3] == rows[3]
    sheet = openpyxl.load_workbook(io.BytesIO(data))["openings"]
    assert [sheet["A2"].data_type, sheet["B2"].data_type] == ["s", "n"]
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        assert b"<f>" not in book.read("xl/worksheets/sheet1.xml")


def test_the_same_rows_make_the_same_workbook() -> None:
    tab = Tab(name="openings", rows=[("mark", "top (mm)"), ("W1", "1187")])
    assert write_workbook([tab]) == write_workbook([tab])


def test_every_part_of_a_workbook_of_ours_is_declared_and_every_link_leads_to_one() -> None:
    """Facts of ECMA-376 part 2, from memory: what a program repairs when they don't hold."""
    tabs = [Tab(name=name, rows=[("mark",), ("W1",)]) for name in ("openings", "runs")]
    with zipfile.ZipFile(io.BytesIO(write_workbook(tabs))) as book:
        names = set(book.namelist())
        types = ET.fromstring(book.read("[Content_Types].xml"))
        declared = {part.get("PartName", "").lstrip("/") for part in types if part.get("PartName")}
        endings = {part.get("Extension") for part in types if part.get("Extension")}
        for name in names:
            ET.fromstring(book.read(name))
            assert name in declared or name.rpartition(".")[2] in endings, name
        assert declared <= names
        for name in (each for each in names if each.endswith(".rels")):
            folder = name.partition("_rels/")[0]
            for link in ET.fromstring(book.read(name)):
                target = link.get("Target", "")
                assert (target.lstrip("/") if target[:1] == "/" else folder + target) in names

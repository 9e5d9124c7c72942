import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main
from tests.house_documents import house, window

STOCK = [
    {"profile": "OG57", "length": 3600, "price": 9, "supplier": "Harrow & Co"},
    {"profile": "OG57", "length": 5400, "price": 14, "supplier": "Harrow & Co"},
]


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


def planned(folder: Path, **changes: object) -> Path:
    file = folder / "house.json"
    document = house(**{"openings": [window(), window(mark="W2")], "stock": STOCK, **changes})
    file.write_text(json.dumps(document), encoding="utf-8")
    done = run("plan", str(file), "--out", str(folder / "sheets"), "--draws", "100")
    assert done.exit_code in (0, 1), done.output
    return folder / "sheets"


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return planned(tmp_path_factory.mktemp("order"))


def test_an_order_is_written_for_each_supplier(sheets: Path) -> None:
    done = run("order", str(sheets), "--buyer", "Tarn", "--currency", "gbp", "--on", "2026-03-01")
    assert done.exit_code == 0, done.output
    for name in ("order.csv", "order.xlsx", "order-harrow-co.txt", "order-harrow-co.xml"):
        assert (sheets / name).exists()
    assert "To: Harrow & Co" in done.output
    assert 'currencyID="GBP"' in (sheets / "order-harrow-co.xml").read_text(encoding="utf-8")


def test_what_the_xml_lacks_is_said(sheets: Path) -> None:
    assert "name who orders with --buyer" in run("order", str(sheets)).output
    assert "gives no prices" in run("order", str(sheets), "--buyer", "Tarn").output


def test_sticks_without_a_supplier_stand_in_an_order_without_a_name(tmp_path: Path) -> None:
    bare = planned(tmp_path, stock=[{"profile": "OG57", "length": 5400}])
    done = run("order", str(bare), "--buyer", "Tarn")
    assert done.exit_code == 0, done.output
    assert "Some sticks have no supplier" in done.output
    assert (bare / "order.txt").exists()
    assert not list(bare.glob("*.xml"))


def test_nothing_to_buy_is_said(tmp_path: Path) -> None:
    empty = planned(tmp_path, openings=[])
    assert "Nothing has to be bought." in run("order", str(empty)).output


def test_void_sheets_and_no_sheets_are_refused(tmp_path: Path) -> None:
    assert run("order", str(tmp_path)).exit_code == 2
    void = planned(tmp_path)
    file = void / "plan.json"
    file.write_text(file.read_text(encoding="utf-8").replace('"current"', '"stale"'))
    done = run("order", str(void))
    assert done.exit_code == 2
    assert "VOID" in done.output


def test_a_day_or_a_currency_that_is_none_is_refused(sheets: Path) -> None:
    assert run("order", str(sheets), "--wanted-by", "soon").exit_code == 2
    done = run("order", str(sheets), "--buyer", "Tarn", "--currency", "pounds")
    assert done.exit_code == 2
    assert "ISO 4217" in done.output


def test_a_supplier_named_since_does_not_void_the_sheets(sheets: Path, tmp_path: Path) -> None:
    named = planned(tmp_path, stock=[{**each, "supplier": "Pennyfield"} for each in STOCK])
    codes = [
        json.loads((each / "plan.json").read_text(encoding="utf-8"))["readings_code"]
        for each in (sheets, named)
    ]
    assert codes[0] == codes[1]

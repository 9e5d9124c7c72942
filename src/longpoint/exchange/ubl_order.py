"""An order as a UBL 2.1 Order document, for a merchant whose system reads it.

References:
    OASIS Universal Business Language 2.1 (ISO/IEC 19845:2015): the schema UBL-Order-2.1.xsd of
    04 November 2013 gives the elements, their order and which are required. Units: UN/ECE
    Recommendation 20, C62 = one, MMT = millimetre, read in the UN/CEFACT unit code list of 2005.
    Currencies: ISO 4217.
"""

import re
from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal
from typing import Final
from xml.etree import ElementTree

from longpoint.errors import ExchangeError
from longpoint.pricing.currency import currency_of
from longpoint.sheets.order_text import TERMS, OrderHead
from longpoint.sticks.order_lines import OrderLine

ORDER: Final = "urn:oasis:names:specification:ubl:schema:xsd:Order-2"
AGGREGATE: Final = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2"
BASIC: Final = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2"
ONE: Final = "C62"
MILLIMETRE: Final = "MMT"
CENT: Final = Decimal("0.01")

_NO_XML: Final = re.compile("[^\t\n\r\\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Signs that XML 1.0 doesn't allow."""

Element = ElementTree.Element


def ubl_order(head: OrderHead, supplier: str, lines: Sequence[OrderLine]) -> bytes:
    """Return the order to one supplier as a UBL 2.1 Order.

    Prices stand in it only where the currency is known. Totals don't: whether tax is in the prices
    isn't.

    Args:
        head: What stands above it; the buyer is required.
        supplier: Who it goes to; required.
        lines: At least one.

    Raises:
        PricingError: There is no such currency.
        ExchangeError: Buyer or supplier isn't named, or there is no line.
    """
    _check(head, supplier, lines)
    root = ElementTree.Element(f"{{{ORDER}}}Order")
    _basic(root, "UBLVersionID", "2.1")
    _basic(root, "ID", head.number)
    _basic(root, "IssueDate", head.on.isoformat())
    _basic(root, "Note", f"For {head.house}. {' '.join(TERMS)}")
    if head.currency:
        _basic(root, "DocumentCurrencyCode", head.currency)
    _basic(root, "CustomerReference", head.house)
    _basic(root, "LineCountNumeric", str(len(lines)))
    _party(_aggregate(root, "BuyerCustomerParty"), head.buyer)
    _party(_aggregate(root, "SellerSupplierParty"), supplier)
    _delivery(root, head)
    for number, line in enumerate(lines, 1):
        _line(root, number, line, head.currency)
    ElementTree.indent(root, " ")
    for prefix, space in (("", ORDER), ("cac", AGGREGATE), ("cbc", BASIC)):
        ElementTree.register_namespace(prefix, space)
    text = ElementTree.tostring(root, encoding="unicode", xml_declaration=False)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{text}\n'.encode()


def _check(head: OrderHead, supplier: str, lines: Sequence[OrderLine]) -> None:
    if not head.buyer or not supplier:
        raise ExchangeError(
            "An order is to be written as UBL XML.",
            f"It must name who {'orders' if supplier else 'sells'}, and that isn't said.",
            "Name the buyer with --buyer; write supplier at the [[stock]] of the house file.",
        )
    if head.currency:
        currency_of(head.currency)
    if not lines:
        raise ExchangeError(
            "An order is to be written as UBL XML.",
            "Nothing has to be bought, and an order must have a line.",
            "No order is needed.",
        )


def _delivery(root: Element, head: OrderHead) -> None:
    if not head.deliver_to and head.wanted_by is None:
        return
    delivery = _aggregate(root, "Delivery")
    if head.wanted_by is not None:
        _basic(delivery, "LatestDeliveryDate", head.wanted_by.isoformat())
    if head.deliver_to:
        address = _aggregate(_aggregate(delivery, "DeliveryLocation"), "Address")
        _basic(_aggregate(address, "AddressLine"), "Line", head.deliver_to)


def _line(root: Element, number: int, line: OrderLine, currency: str) -> None:
    outer = _aggregate(root, "OrderLine")
    if line.spares:
        _basic(outer, "Note", f"{line.spares} of {line.count} spare")
    item_line = _aggregate(outer, "LineItem")
    _basic(item_line, "ID", str(number))
    _basic(item_line, "Quantity", str(line.count), unitCode=ONE)
    priced = currency if line.price is not None else ""
    if priced and line.total is not None:
        _basic(item_line, "LineExtensionAmount", _money(line.total), currencyID=priced)
    if priced and line.price is not None:
        price = _aggregate(item_line, "Price")
        _basic(price, "PriceAmount", _money(line.price), currencyID=priced)
        _basic(price, "BaseQuantity", "1", unitCode=ONE)
    item = _aggregate(item_line, "Item")
    _basic(item, "Description", _described(line))
    _basic(item, "Name", line.profile.name)
    if line.code:
        _basic(_aggregate(item, "SellersItemIdentification"), "ID", line.code)
    for name, length_mm in (
        ("Length", line.length_mm),
        ("Width", line.profile.width_mm),
        ("Thickness", line.profile.thickness_mm),
    ):
        size = _aggregate(item, "Dimension")
        _basic(size, "AttributeID", name)
        _basic(size, "Measure", f"{round(length_mm, 2):g}", unitCode=MILLIMETRE)


def _described(line: OrderLine) -> str:
    profile = line.profile
    section = f"{profile.width_mm:g} x {profile.thickness_mm:g} mm {profile.material}".strip()
    return f"{profile.name}, {section}, length {round(line.length_mm, 2):g} mm"


def _party(parent: Element, name: str) -> None:
    _basic(_aggregate(_aggregate(parent, "Party"), "PartyName"), "Name", name)


def _money(amount: Decimal) -> str:
    return f"{amount.quantize(CENT, ROUND_HALF_UP):f}"


def _aggregate(parent: Element, name: str) -> Element:
    return ElementTree.SubElement(parent, f"{{{AGGREGATE}}}{name}")


def _basic(parent: Element, name: str, text: str, **attributes: str) -> None:
    element = ElementTree.SubElement(parent, f"{{{BASIC}}}{name}", attributes)
    element.text = _NO_XML.sub(" ", text)

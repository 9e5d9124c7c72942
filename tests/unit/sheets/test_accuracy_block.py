"""What accuracy is worth, as it stands on the estimate."""

from decimal import Decimal

from longpoint.pricing.accuracy import Means, Recuts
from longpoint.pricing.currency import currency_of
from longpoint.pricing.money import PlainMoneyText, rounded
from longpoint.sheets.accuracy_block import accuracy_blocks
from longpoint.sheets.blocks import Table
from tests.unit.sheets.sample import HOUSE

GBP = currency_of("GBP")


def test_each_line_says_what_it_saves_against_things_as_they_are() -> None:
    found = tuple(
        Recuts(means=means, misfits=misfits, cost=rounded(Decimal(cost), GBP))
        for means, misfits, cost in (
            (Means.AS_IT_IS, 0.66, "7.61"),
            (Means.SAW_PROVED, 0.01, "0.09"),
            (Means.BETTER_TAPE, 0.67, "7.70"),
        )
    )
    (table,) = (b for b in accuracy_blocks(found, HOUSE, PlainMoneyText()) if isinstance(b, Table))

    assert [row[-1] for row in table.rows] == ["", "GBP 7.52", "GBP -0.09"]
    assert table.rows[0][1] == "0.66"


def test_nothing_asked_is_nothing_said() -> None:
    assert accuracy_blocks((), HOUSE, PlainMoneyText()) == ()

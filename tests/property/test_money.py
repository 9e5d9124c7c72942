"""What holds for every sum of money."""

from decimal import Decimal
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from longpoint.pricing.currency import MINOR_DIGITS, Currency, currency_of
from longpoint.pricing.estimate import WorkLine, imagined_hours, quantile
from longpoint.pricing.money import Money, rounded
from longpoint.pricing.quote import price_row
from longpoint.pricing.tax import Tax, TaxRounding, TaxShown, sums
from longpoint.pricing.work import START_RATES, WorkKind

currencies = st.sampled_from(sorted(MINOR_DIGITS)).map(currency_of)
percents = st.decimals(0, 100, places=3, allow_nan=False)
units = st.integers(-(10**9), 10**9)
quantities = st.decimals(0, 5000, places=2, allow_nan=False)
taxes = st.builds(
    Tax,
    name=st.just("T"),
    percent=percents,
    shown=st.sampled_from(TaxShown),
    rounding=st.sampled_from(TaxRounding),
)


@st.composite
def lists_of_sums(draw: st.DrawFn) -> list[Money]:
    currency = draw(currencies)
    counted = draw(st.lists(units, min_size=1, max_size=20))
    return [rounded(Fraction(each, 10**currency.minor_digits), currency) for each in counted]


@given(lists_of_sums(), st.none() | taxes)
def test_no_minor_unit_is_lost_between_rows_and_total(rows: list[Money], tax: Tax | None) -> None:
    below = sums(rows, tax, rows[0].currency)
    listed = sum((row.exact for row in rows), Fraction(0))

    assert below.net + below.tax == below.gross
    held = tax is not None and tax.shown is TaxShown.INCLUDED
    assert (below.gross if held else below.net).exact == listed


@given(lists_of_sums(), taxes)
def test_tax_is_within_half_a_minor_unit_of_each_rounding(rows: list[Money], tax: Tax) -> None:
    below = sums(rows, tax, rows[0].currency)
    rate = Fraction(tax.percent) / 100
    share = rate / (1 + rate) if tax.shown is TaxShown.INCLUDED else rate
    exact = share * sum((row.exact for row in rows), Fraction(0))
    roundings = len(rows) if tax.rounding is TaxRounding.LINE else 1

    step = Fraction(1, 10 ** rows[0].currency.minor_digits)
    assert abs(below.tax.exact - exact) <= roundings * step / 2


@given(units, percents)
def test_tax_put_on_and_taken_out_again_leaves_the_price(counted: int, percent: Decimal) -> None:
    gbp = currency_of("GBP")
    net = rounded(Fraction(counted, 100), gbp)
    put_on = sums([net], Tax(name="T", percent=percent), gbp)
    included = Tax(name="T", percent=percent, shown=TaxShown.INCLUDED)
    taken_out = sums([put_on.gross], included, gbp)

    assert taken_out.tax == put_on.tax
    assert taken_out.net == net


@given(units, percents)
def test_tax_taken_out_and_put_on_again_is_off_by_one_minor_unit_at_most(
    counted: int, percent: Decimal
) -> None:
    gbp = currency_of("GBP")
    gross = rounded(Fraction(counted, 100), gbp)
    included = Tax(name="T", percent=percent, shown=TaxShown.INCLUDED)
    net = sums([gross], included, gbp).net
    again = sums([net], Tax(name="T", percent=percent), gbp).gross

    assert abs(again.exact - gross.exact) <= Fraction(1, 100)


@given(quantities, quantities, st.integers(0, 10**7))
def test_more_is_never_cheaper(one: Decimal, more: Decimal, each: int) -> None:
    gbp = currency_of("GBP")
    price = rounded(Fraction(each, 100), gbp)
    few = price_row(one, price, work=WorkKind.PIECE)
    many = price_row(one + more, price, work=WorkKind.PIECE)

    assert few.amount <= many.amount


@settings(max_examples=10)
@given(
    st.dictionaries(st.sampled_from(sorted(START_RATES)), st.integers(1, 40), min_size=1),
    st.sampled_from(sorted(START_RATES)),
    st.floats(0.5, 0.95),
)
def test_one_piece_more_never_takes_fewer_hours(
    counts: dict[WorkKind, int], added: WorkKind, sure: float
) -> None:
    def hours(found: dict[WorkKind, int]) -> float:
        lines = [
            WorkLine(kind=kind, quantity=Decimal(count), rate=START_RATES[kind])
            for kind, count in found.items()
        ]
        return quantile(sorted(imagined_hours(lines, 200, 1)), sure)

    assert hours({**counts, added: counts.get(added, 0) + 1}) >= hours(counts)


@given(units, currencies)
def test_a_sum_is_written_and_read_back_whole(counted: int, currency: Currency) -> None:
    kept = rounded(Fraction(counted, 10**currency.minor_digits), currency)
    assert Money(amount=Decimal(str(kept.amount)), currency=kept.currency) == kept

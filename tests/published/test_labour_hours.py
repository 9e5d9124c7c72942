"""Hours to start from beside the tables they come from.

A US published cost book page, read in part: interior trim round a prepared window of up to 5 ft a
side, three sides 0.33 h, four sides 0.50 h an opening; 0.09 h more for each longer side, 0.25 h
more for each corner of an odd shape; a ready-made arch 0.33 to 1.0 h; crown 0.05 to 0.06 h per ft.
Building constants tables, read in part: handrail 0.45 h/m, shelf 0.17 h/m. All other hours are
common practice without a source, and are held to that word.
"""

from decimal import Decimal

import pytest

from longpoint.pricing.work import COMMON, COST_BOOK, LONG_SIDE_MM, START_RATES, WorkKind

LIKELY = {
    WorkKind.WINDOW_THREE_SIDES: "0.33",
    WorkKind.WINDOW_FOUR_SIDES: "0.50",
    WorkKind.LONG_SIDE: "0.09",
    WorkKind.ODD_CORNER: "0.25",
    WorkKind.HANDRAIL: "0.45",
    WorkKind.SHELF: "0.17",
}


@pytest.mark.parametrize(("kind", "hours"), LIKELY.items())
def test_the_likely_hours_are_those_of_the_table(kind: WorkKind, hours: str) -> None:
    rate = START_RATES[kind]

    assert rate.hours.likely == Decimal(hours)
    assert "read in part" in rate.source


def test_an_arch_takes_what_the_cost_book_says_from_least_to_most() -> None:
    arch = START_RATES[WorkKind.ARCH].hours

    assert (arch.least, arch.most) == (Decimal("0.33"), Decimal("1.0"))


def test_cornice_by_the_metre_is_crown_by_the_foot() -> None:
    cornice = START_RATES[WorkKind.CORNICE].hours

    for ours, per_foot in ((cornice.least, "0.05"), (cornice.most, "0.06")):
        assert ours * Decimal("0.3048") == pytest.approx(Decimal(per_foot), abs=Decimal("0.0015"))
    assert START_RATES[WorkKind.CORNICE].source.startswith(COST_BOOK)


def test_a_long_side_is_over_five_feet() -> None:
    assert LONG_SIDE_MM == 5 * 12 * 25.4


def test_what_has_no_source_says_so() -> None:
    sourced = {*LIKELY, WorkKind.ARCH, WorkKind.CORNICE}
    for kind, rate in START_RATES.items():
        assert rate.source.startswith(COMMON) == (kind not in sourced), kind

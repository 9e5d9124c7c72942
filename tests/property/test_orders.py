"""An order covers the plan exactly: every new stick, every spare, and nothing else."""

import json
from collections import Counter
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.house_plan import HousePlan, Spares
from longpoint.shape.fitted import Shapes
from longpoint.sheets.plan_file import bought_in
from longpoint.sheets.plan_json import plan_document
from longpoint.sticks.effort import QUICK
from longpoint.sticks.order_lines import by_supplier, order_lines
from longpoint.sticks.plan import StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.spare_sticks import spare_sticks
from tests.random_sticks import STOCK_LENGTHS_MM, house_of, house_pieces

pytestmark = pytest.mark.property


@given(
    seed=st.integers(0, 30),
    spare=st.integers(0, 5),
    suppliers=st.lists(
        st.sampled_from(("", "Harrow", "Pennyfield")),
        min_size=len(STOCK_LENGTHS_MM),
        max_size=len(STOCK_LENGTHS_MM),
    ),
)
def test_the_order_is_the_new_sticks_of_the_plan_and_its_spares(
    seed: int, spare: int, suppliers: list[str]
) -> None:
    house = house_of(prices=("8", "10.50", "12.25", "13", "15.10"), offcuts=((1500.0, 2),))
    stock = [replace(e, supplier=s) for e, s in zip(house.stock, suppliers, strict=True)]
    house = replace(house, stock=tuple(stock))
    pieces = house_pieces(seed, openings=4)
    plan = plan_sticks(pieces, house, effort=QUICK)
    spares = spare_sticks(plan, pieces, house, {"OG": spare})
    whole = HousePlan(
        house=house,
        shapes=Shapes(),
        pieces=pieces,
        cut_plan=plan,
        findings=(),
        held=frozenset(),
        readings_code="K7M2QX",
        spares=Spares(sticks=spares),
    )
    bought = bought_in(json.loads(json.dumps(plan_document(whole))))
    lines = order_lines(house, bought.needed, bought.spares)
    new = Counter(s.length_mm for s in plan.sticks if s.source is StickSource.STOCK)
    extra = Counter({length_mm: n for one in spares for length_mm, n in one.buy})
    assert Counter({line.length_mm: line.count - line.spares for line in lines}) == new
    assert Counter({line.length_mm: line.spares for line in lines if line.spares}) == extra
    (proof,) = plan.proofs
    for_plan = sum(((line.price or 0) * (line.count - line.spares) for line in lines), Decimal(0))
    assert for_plan == pytest.approx(Decimal(str(proof.cost)))
    sold = {line.length_mm: name for name, ours in by_supplier(lines).items() for line in ours}
    assert sold == {e.length_mm: e.supplier for e in house.stock if (new + extra)[e.length_mm]}

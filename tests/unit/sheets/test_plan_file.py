from dataclasses import replace
from typing import Any

import pytest

from longpoint.errors import SheetError
from longpoint.sheets.blocks import SheetState
from longpoint.sheets.plan_file import bought_in, sticks_in
from longpoint.sheets.plan_json import plan_document
from tests.unit.sheets.sample import PLAN


def test_what_a_plan_buys_is_read_back_with_its_spares() -> None:
    bought = bought_in(plan_document(PLAN))
    assert bought.readings_code == PLAN.readings_code
    assert bought.needed == {("OG57", 5400.0): 2, ("OG57", 2700.0): 1, ("SK95", 4200.0): 1}
    assert bought.spares == {("OG57", 5400.0): 1}


def test_a_plan_file_of_before_there_were_spares_is_still_read() -> None:
    document = plan_document(PLAN)
    del document["spares"]
    assert bought_in(document).spares == {}


@pytest.mark.parametrize(
    "changed",
    [
        {"format": "longpoint-house/1"},
        {"state": SheetState.STALE.value},
        {"sticks": [{"profile": "OG57"}]},
        {"sticks": [{"profile": "OG57", "source": "stock", "length_mm": "long"}]},
        {"sticks": [{"profile": "OG57", "source": "stock", "length_mm": -5}]},
        {"spares": [{"profile": "OG57", "buy": [{"length_mm": 5400, "count": 10**9}]}]},
        {"spares": [None]},
    ],
)
def test_what_is_no_plan_or_a_void_one_is_refused(changed: dict[str, Any]) -> None:
    with pytest.raises(SheetError):
        bought_in({**plan_document(PLAN), **changed})


def test_the_sticks_come_back_as_they_were_written() -> None:
    written = plan_document(PLAN)
    read = replace(PLAN, cut_plan=replace(PLAN.cut_plan, sticks=sticks_in(written)))
    assert plan_document(read)["sticks"] == written["sticks"]
    with pytest.raises(SheetError):
        sticks_in({**plan_document(PLAN), "sticks": [{"name": "OG57-1"}]})
    with pytest.raises(SheetError):
        sticks_in({**plan_document(PLAN), "state": SheetState.STALE.value})

"""The whole story: order, holds, and what is said once."""

from collections import Counter

import pytest

from longpoint.errors import Severity
from longpoint.pipeline import check_house, plan_house
from longpoint.survey.house_file import read_house
from tests.scenarios.houses import document, planned

pytestmark = pytest.mark.no_cover


def test_findings_stand_in_the_order_of_the_house() -> None:
    plan = planned("pipit")
    places = list(dict.fromkeys(f.place for f in plan.findings))
    marks = [o.mark for o in plan.house.openings]
    assert [p for p in places if p in marks] == [m for m in marks if m in places]


def test_nothing_is_said_twice() -> None:
    for house in ("pipit", "fallow-end", "series-k"):
        assert max(Counter(planned(house).findings).values()) == 1


def test_one_slip_is_one_stop() -> None:
    stops = Counter(f.place for f in planned("pipit").findings if f.severity is Severity.STOP)
    assert stops["W3"] == 1


def test_checking_makes_the_findings_that_planning_starts_from() -> None:
    survey = read_house(document("pipit"))
    _, checked = check_house(survey)
    assert set(checked) <= set(plan_house(survey).findings)


def test_an_opening_that_no_stick_can_give_is_held_and_the_rest_is_planned() -> None:
    found = document("pipit", mended=True)
    found["stock"] = [s for s in found["stock"] if s["profile"] != "AR57"]
    found["stock"].append({"profile": "AR57", "length": 900})
    found["offcuts"] = []
    plan = plan_house(read_house(found))
    held = {f.place for f in plan.findings if f.code == "longer-than-stock"}
    assert held == {"W1", "W2", "W3", "W5", "W6", "D1", "D2"}
    assert held <= plan.held
    assert {p.opening for p in plan.pieces if p.opening} == {"W4"}
    assert [p for p in plan.pieces if p.run]


def test_without_a_forecast_spares_are_counted_by_slips_alone() -> None:
    plan = planned("pipit")
    (count,) = (count for count in plan.spares.counts if count.profile == "AR57")
    assert plan.outlook is None
    assert (count.sets, count.misfits_p90) == (0, 0)
    assert count.p90 == (1 if count.pieces > 10 else 0)
    assert [s.profile for s in plan.spares.sticks] == [p.profile for p in plan.cut_plan.proofs]


def test_a_crew_that_slips_often_has_more_spares() -> None:
    found = document("pipit")
    found["crew"] = {**found.get("crew", {}), "slips": 20}
    plan = plan_house(read_house(found))
    often, seldom = (
        next(s for s in each.spares.sticks if s.profile == "AR57")
        for each in (plan, planned("pipit"))
    )
    assert len(often.covered) > len(seldom.covered)


def test_accepting_a_stop_gives_the_lengths_with_a_warning() -> None:
    found = document("pipit")
    (entry,) = (o for o in found["openings"] if o["mark"] == "W3")
    entry["accept"] = ["misclosure"]
    plan = plan_house(read_house(found))
    said = [f for f in plan.findings if f.place == "W3" and f.code == "misclosure"]
    assert [f.severity for f in said] == [Severity.WARNING]
    assert [p for p in plan.pieces if p.opening == "W3"]


def test_the_same_readings_give_the_same_plan_and_code() -> None:
    first, second = (plan_house(read_house(document("pipit"))) for _ in range(2))
    assert first == second
    changed = document("pipit")
    changed["openings"][0]["bottom"] = 1187
    assert plan_house(read_house(changed)).readings_code != first.readings_code

"""What a proved saw or a better tape is worth on a job."""

from dataclasses import replace
from decimal import Decimal

import pytest

from longpoint.forecast.chances import Imagined
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.records import ProfileMisfits
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.pricing.accuracy import Means, misfits_of, price_of_accuracy, recuts
from longpoint.pricing.rates import Rates
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window
from tests.priced_jobs import STOCK, rates

pytestmark = pytest.mark.no_cover

IMAGINED = Imagined(engine=PlainLines(), draws=200)


def planned(found: bool = True, tape_class: str = "II") -> HousePlan:
    saw = {"kerf": 2.4, "end_trim": 10, **({"found": {"left": 45, "right": 45}} if found else {})}
    document = house(
        openings=[window(), window(mark="W2")],
        stock=STOCK,
        saws={"S1": saw},
        tapes={"T1": {"class": tape_class}},
    )
    return plan_house(read_house(document), imagined=IMAGINED)


def worth(plan: HousePlan, crew: Rates) -> dict[Means, object]:
    assert plan.outlook is not None
    found = price_of_accuracy(
        plan.house, plan.shapes, plan.held, plan.pieces, plan.outlook, IMAGINED, crew
    )
    return {each.means: each for each in found}


def test_a_misfit_costs_a_refit_and_the_timber_of_one_piece() -> None:
    plan = planned()
    assert plan.outlook is not None
    known = replace(
        plan.outlook.forecast,
        by_profile=(ProfileMisfits(profile="OG57", chances=(0.5, 0.25, 0.25)),),
    )
    assert misfits_of(known) == {"OG57": 0.75}

    found = recuts(Means.AS_IT_IS, known, plan.pieces, plan.house, rates())
    mean_mm = sum(piece.long_mm for piece in plan.pieces) / len(plan.pieces)
    # A metre of OG57 is cheapest as a 5400 at 15.20; a refit of 12 minutes is a fifth of 38.
    by_hand = 0.75 * (38 / 5 + mean_mm * 15.20 / 5400)
    assert found.misfits == 0.75
    assert float(found.cost.amount) == pytest.approx(by_hand, abs=0.006)

    theirs = recuts(Means.AS_IT_IS, known, plan.pieces, plan.house, rates(timber="clients"))
    assert theirs.cost.amount == Decimal("5.70")


def test_the_misfits_are_those_of_the_imagined_houses() -> None:
    plan = planned(found=False)
    assert plan.outlook is not None

    mean = sum(misfits_of(plan.outlook.forecast).values())
    assert mean == pytest.approx(plan.outlook.forecast.misfits_mean)
    assert mean > 0


def test_a_saw_not_proved_is_worth_proving_and_one_that_is_has_no_line() -> None:
    plan = planned(found=False)
    found = worth(plan, rates())
    assert plan.outlook is not None
    assert plan.outlook.if_proved is not None

    assert set(found) == set(Means)
    assert sum(misfits_of(plan.outlook.if_proved).values()) < sum(
        misfits_of(plan.outlook.forecast).values()
    )
    assert Means.SAW_PROVED not in worth(planned(), rates())


def test_where_every_tape_is_of_class_one_there_is_no_better() -> None:
    assert Means.BETTER_TAPE not in worth(planned(tape_class="I"), rates())

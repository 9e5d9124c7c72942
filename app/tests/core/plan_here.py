"""A house file's text planned with a phone's ports, its cut plan held by the checker once more."""

import json

from longpoint.catalogue.all_trims import trim_tables
from longpoint.phone import Ports
from longpoint.pipeline import plan_house
from longpoint.sheets.plan_json import plan_document
from longpoint.sticks.check import check_plan
from longpoint.sticks.effort import ON_A_PHONE, Effort
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.parsed_text import parsed_house


def planned(text: str, ports: Ports, effort: Effort = ON_A_PHONE) -> str:
    """Return the plan document of a house, as JSON.

    Raises:
        LongpointError: The house can't be read, or the plan isn't one that can be cut.
    """
    survey = read_house(parsed_house(text), trim_tables())
    plan = plan_house(survey, ports.solver, ports.imagined, effort=effort)
    check_plan(plan.cut_plan, plan.pieces, plan.house)
    return json.dumps(plan_document(plan))

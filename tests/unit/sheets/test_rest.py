from dataclasses import replace

from longpoint.sheets.rest import rest_mm
from longpoint.survey.instruments import Saw
from tests.unit.sheets.sample import STICKS


def test_what_is_too_short_to_keep_is_no_rest() -> None:
    saw = Saw(name="S", keep_mm=300.0)
    assert rest_mm(replace(STICKS[0], left_mm=299.9), saw) == 0.0
    assert rest_mm(replace(STICKS[0], left_mm=300.0), saw) == 300.0

import re
from dataclasses import replace

import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Note
from longpoint.sheets.delivery_sheet import delivery_sheet
from longpoint.sticks.news.delivery import delivery_in_words
from longpoint.sticks.order_lines import OrderLine
from longpoint.survey.profiles import Profile
from tests.house_documents import the_house

CASING = Profile(name="CAS", width_mm=57.15, thickness_mm=17.4625, material="poplar")


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("length_mm", [2438.4, 5400.0, 2019.3])
def test_what_the_sheet_says_to_tell_is_understood(units: Units, length_mm: float) -> None:
    house = replace(the_house(), units=units, profiles=(CASING,))
    line = OrderLine(profile=CASING, length_mm=length_mm, count=4)
    (note,) = (b for b in delivery_sheet(house, [line], "XPGPPW").blocks if isinstance(b, Note))
    told = delivery_in_words(re.findall('"([^"]+)"', note.text), house)
    ((came_mm, count),) = told.came["CAS"].items()
    assert came_mm == pytest.approx(length_mm, abs=0.8)
    assert count == 3
    assert told.moisture_percent == {"CAS": 16.0}

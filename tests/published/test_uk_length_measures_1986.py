"""The trade limit of 1986 for measures of length.

Source: Measuring Equipment (Measures of Length) Regulations 1986 (UK SI 1986/1682), regulation
24(a): 0.6 mm and 0.4 mm for each metre, rounded up. Read in a copy. It is the class III of today,
without what a hook adds.
"""

import math
from pathlib import Path

import pytest

from longpoint.survey.instruments import Tape, TapeClass
from tests.published.reference import rows


@pytest.mark.parametrize("length_mm", [500.0, 1000.0, 2350.0, 3600.0, 5000.0, 7999.0])
def test_class_three_is_the_old_trade_limit(length_mm: float) -> None:
    published_mm = 0.6 + 0.4 * math.ceil(length_mm / 1000.0)
    ours_mm = Tape(name="T1", tape_class=TapeClass.III).max_permissible_error_mm(
        length_mm, from_hook=False
    )
    assert ours_mm == pytest.approx(published_mm, abs=1e-9)


def test_the_rule_here_is_that_of_the_reference_values(shared: Path) -> None:
    row = rows(shared)["INS-15"]
    assert row.value.startswith("0.6 + 0.4 per m")
    assert row.how_known == "read"

"""The moisture that timber settles at, by the Wood Handbook.

Source: Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), table 4-2, p. 4-4: 11
temperatures from 30 to 200 degF, 19 humidities from 5 to 95 %. Read in a copy, which drops the
minus sign of the lowest temperature; its Fahrenheit labels settle that. Our equation is the
Celsius form of its eq. 4-5, whose coefficients were read in a program that cites the laboratory.

The table prints tenths, so the equation may be off by 0.05 and a little for its own rounding.
"""

import re
from pathlib import Path

import pytest

from longpoint.forecast.season.emc import equilibrium_moisture_percent
from tests.published.reference import rows

CELL = re.compile(r"EMC-(\d+)F-(\d+)")
ROUNDING_PERCENT = 0.06


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32.0) / 1.8


@pytest.mark.parametrize(
    ("fahrenheit", "humidity_percent", "moisture_percent"),
    [
        (70.0, 50.0, 9.2),
        (70.0, 65.0, 12.0),
        (70.0, 30.0, 6.2),
        (50.0, 80.0, 16.4),
        (30.0, 95.0, 24.3),
        (120.0, 5.0, 1.1),
        (200.0, 50.0, 5.8),
    ],
)
def test_some_cells_of_the_table(
    fahrenheit: float, humidity_percent: float, moisture_percent: float
) -> None:
    found = equilibrium_moisture_percent(celsius(fahrenheit), humidity_percent)
    assert found == pytest.approx(moisture_percent, abs=ROUNDING_PERCENT)


def test_all_cells_of_the_table(shared: Path) -> None:
    cells = 0
    for name, row in rows(shared).items():
        if cell := CELL.fullmatch(name):
            assert row.how_known == "read"
            found = equilibrium_moisture_percent(celsius(float(cell[1])), float(cell[2]))
            assert found == pytest.approx(float(row.value), abs=ROUNDING_PERCENT), name
            cells += 1
    assert cells == 209

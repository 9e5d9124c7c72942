import math

import pytest

from longpoint.errors import QuantityError
from longpoint.forecast.season.emc import equilibrium_moisture_percent


@pytest.mark.parametrize(
    ("humidity_percent", "moisture_percent"),
    [(30.0, 6.19), (40.0, 7.72), (50.0, 9.27), (60.0, 11.00), (70.0, 13.13)],
)
def test_a_room_at_20_degrees(humidity_percent: float, moisture_percent: float) -> None:
    # Worked out beforehand by a separate program from the same published equation.
    found = equilibrium_moisture_percent(20.0, humidity_percent)
    assert found == pytest.approx(moisture_percent, abs=0.005)


def test_damper_air_makes_damper_timber() -> None:
    found = [equilibrium_moisture_percent(20.0, float(h)) for h in range(96)]
    assert found == sorted(set(found))


def test_warmer_air_of_the_same_humidity_makes_drier_timber() -> None:
    found = [equilibrium_moisture_percent(float(t), 50.0) for t in range(10, 90, 10)]
    assert found == sorted(set(found), reverse=True)


def test_air_without_water_dries_it_out() -> None:
    assert equilibrium_moisture_percent(20.0, 0.0) == 0.0


@pytest.mark.parametrize(
    ("temperature_c", "humidity_percent"),
    [(-2.0, 50.0), (94.0, 50.0), (20.0, -1.0), (20.0, 95.5), (math.nan, 50.0), (20.0, math.inf)],
)
def test_air_beyond_the_published_table_is_refused(
    temperature_c: float, humidity_percent: float
) -> None:
    with pytest.raises(QuantityError) as caught:
        equilibrium_moisture_percent(temperature_c, humidity_percent)
    assert all((caught.value.read, caught.value.wrong, caught.value.do))


def test_the_ends_of_the_table_are_accepted() -> None:
    assert equilibrium_moisture_percent(-1.1, 95.0) > equilibrium_moisture_percent(93.3, 95.0)

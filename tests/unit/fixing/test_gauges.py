from longpoint.fixing.gauges import (
    USUAL_LENGTHS_MM,
    diameters_mm,
    is_off_gauge,
    thickest_mm,
    thinnest_mm,
)
from longpoint.survey.fixing import Nail


def test_a_gauge_not_held_has_no_diameter() -> None:
    assert diameters_mm(19) is None


def test_a_gauge_not_held_counts_as_thick_and_as_thin_as_any() -> None:
    nail = Nail(gauge=19, length_mm=40.0)
    assert thickest_mm(nail) >= max(thickest_mm(Nail(gauge=g, length_mm=40)) for g in (15, 16, 18))
    assert thinnest_mm(nail) <= thinnest_mm(Nail(gauge=23, length_mm=40))
    assert not is_off_gauge(nail)


def test_the_box_is_believed_before_the_gauge() -> None:
    nail = Nail(gauge=16, length_mm=50.0, diameter_mm=1.4)
    assert thickest_mm(nail) == thinnest_mm(nail) == 1.4
    assert is_off_gauge(nail)


def test_every_usual_nail_has_a_known_diameter() -> None:
    assert all(diameters_mm(gauge) for gauge in USUAL_LENGTHS_MM)

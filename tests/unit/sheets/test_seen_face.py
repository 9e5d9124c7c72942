from dataclasses import replace

from longpoint.sheets.seen_face import seen_readings
from longpoint.survey.readings import Place
from tests.unit.sheets.sample import OPENINGS, readings

DOOR = OPENINGS[3]


def test_the_other_face_without_readings_is_the_mirror_of_the_first() -> None:
    seen = seen_readings(DOOR, "b")
    assert seen.mean_mm(Place.LEFT) == DOOR.readings.mean_mm(Place.RIGHT)
    assert seen.mean_mm(Place.RISING) == DOOR.readings.mean_mm(Place.FALLING)
    assert seen.mean_mm(Place.TOP) == DOOR.readings.mean_mm(Place.TOP)


def test_the_other_face_with_readings_of_its_own_keeps_them() -> None:
    own = readings(820, 820, 2030, 2030, 2190, 2190)
    assert seen_readings(replace(DOOR, readings_b=own), "b") is own


def test_the_first_face_is_seen_as_read() -> None:
    assert seen_readings(DOOR, "a") is DOOR.readings
    assert seen_readings(DOOR, "") is DOOR.readings

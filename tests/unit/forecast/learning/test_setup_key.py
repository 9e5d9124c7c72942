from longpoint.forecast.learning.setup_key import AngleKey, SetupKey, SizeKey

KEY = SetupKey(saw="S1", setting="left stop", blade="60 teeth", tape="T1", mode="hook pushed")


def test_an_angle_belongs_to_saw_setting_and_blade() -> None:
    assert KEY.angle == AngleKey(saw="S1", setting="left stop", blade="60 teeth")


def test_a_size_belongs_to_tape_and_way_of_reading() -> None:
    assert KEY.size == SizeKey(tape="T1", mode="hook pushed")

from longpoint.errors import Severity
from longpoint.survey.checks.rows_swapped import check_nominals, swapped_marks
from longpoint.survey.house import House
from longpoint.survey.openings import Nominal, Opening
from tests.drawn_openings import house_of, opening_of

LARGE = Nominal(width_mm=1194.0, height_mm=894.0)
SMALL = Nominal(width_mm=894.0, height_mm=594.0)


def window(mark: str, width_mm: float, height_mm: float, nominal: Nominal, room: str) -> Opening:
    return opening_of(mark, width=width_mm, height=height_mm, nominal=nominal, room=room)


def swapped_house() -> House:
    return house_of(
        window("6-W1", 1194, 894, LARGE, "Unit 6"),
        window("6-W3", 894, 594, SMALL, "Unit 6"),
        window("7-W1", 893, 594, LARGE, "Unit 7"),
        window("7-W3", 1195, 894, SMALL, "Unit 7"),
    )


def test_two_rows_swapped_are_both_held_and_name_each_other() -> None:
    found = {f.place: f for f in check_nominals(swapped_house())}
    assert set(found) == {"7-W1", "7-W3"}
    assert {f.code for f in found.values()} == {"rows-swapped"}
    assert {f.severity for f in found.values()} == {Severity.STOP}
    assert "7-W3" in found["7-W1"].wrong
    assert swapped_marks(swapped_house()) == {"7-W1", "7-W3"}


def test_without_drawings_a_batch_told_by_the_marks_gives_the_size() -> None:
    large = [opening_of(f"{u}-W1", width=1194, height=894) for u in range(1, 7)]
    small = [opening_of(f"{u}-W3", width=894, height=594) for u in range(1, 7)]
    swapped = [
        opening_of("7-W1", width=893, height=594),
        opening_of("7-W3", width=1195, height=894),
        opening_of("8-W1", width=1164, height=894),
    ]
    found = {f.place: f for f in check_nominals(house_of(*large, *small, *swapped))}
    assert set(found) == {"7-W1", "7-W3"}
    assert "made like it are about 1194 x 894" in found["7-W1"].read
    assert "drawing" not in str(found["7-W1"])


def test_openings_near_their_drawings_are_nothing() -> None:
    house = house_of(window("W1", 1199, 890, LARGE, ""), window("W3", 890, 598, SMALL, ""))
    assert check_nominals(house) == ()


def test_one_opening_far_off_its_drawing_is_a_warning() -> None:
    (found,) = check_nominals(house_of(window("W1", 1130, 894, LARGE, "")))
    assert (found.code, found.severity) == ("off-nominal", Severity.WARNING)


def test_width_and_height_the_wrong_way_round_are_told() -> None:
    (found,) = check_nominals(house_of(window("W1", 894, 1194, LARGE, "")))
    assert "width and height look swapped" in found.wrong


def test_a_slip_in_one_side_is_left_to_the_checks_of_sides() -> None:
    opening = opening_of("W1", top=1194, bottom=1914, left=894, right=894, nominal=LARGE)
    assert check_nominals(house_of(opening)) == ()

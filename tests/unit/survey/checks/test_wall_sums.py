import pytest

from longpoint.errors import Severity, held_places
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.survey.checks.wall_sums import check_wall_sums
from longpoint.survey.openings import OpeningKind
from longpoint.survey.rooms import Room, Run
from tests.room_builder import a_door, a_house, a_room, a_run, a_scenario, a_wall


def den(south_mm: float = 4603.0, *, from_left_mm: float | None = None, north: bool = True) -> Room:
    return a_room(
        a_wall("W", 2284),
        a_wall("N", 4606 if north else None),
        a_wall("E", 2281),
        a_wall("S", south_mm, doors=[("D1", from_left_mm)]),
    )


def south(left_mm: float, right_mm: float, left_end: str = "internal") -> list[Run]:
    return [
        a_run("S5", left_mm, left_end, "architrave", wall="S"),
        a_run("S6", right_mm, "architrave", "internal", wall="S"),
    ]


def test_the_slipped_hundred_of_the_cabin_is_named_at_its_run() -> None:
    findings = check_wall_sums(a_scenario("pipit"))
    assert {(f.code, f.severity) for f in findings} == {("wall-sum", Severity.STOP)}
    assert [f.place for f in findings] == ["S6", "S5"]
    assert "tape started at the 100 mark" in findings[0].wrong
    assert "2215 would fit" in findings[0].do
    assert "wall stands" in findings[0].do
    assert "S6" in findings[1].do


def test_the_long_east_wall_of_the_cottage_is_flagged_not_its_run() -> None:
    findings = check_wall_sums(a_scenario("fallow-end"))
    assert [f.place for f in findings if f.severity is Severity.STOP] == ["Bed 1 E"]
    fault = next(f for f in findings if f.severity is Severity.STOP)
    assert "200" in fault.wrong
    assert "R16" in fault.do


def test_a_wall_that_adds_up_is_silent() -> None:
    # 1446 + 5 + 57 + 819 + 57 + 5 + 2214 = 4603
    house = a_house(rooms=[den()], runs=south(1446, 2214), openings=[a_door()])
    assert check_wall_sums(house) == ()


@pytest.mark.parametrize(("over_mm", "says"), [(11.9, False), (12.1, True), (-11.9, False)])
def test_the_limit_is_twelve_and_said_to_be_ours(over_mm: float, says: bool) -> None:
    house = a_house(rooms=[den()], runs=south(1446, 2214 + over_mm), openings=[a_door()])
    findings = check_wall_sums(house)
    assert bool(findings) is says
    assert all("our limit is 12 mm" in f.wrong for f in findings)


def test_the_door_is_counted_with_the_mean_of_its_widths() -> None:
    door = a_door(top=809, bottom=829)
    house = a_house(rooms=[den()], runs=south(1446, 2214), openings=[door])
    assert check_wall_sums(house) == ()


@pytest.mark.parametrize(("left_mm", "right_mm", "place"), [(1546, 2214, "S5"), (1446, 2314, "S6")])
def test_the_door_s_place_tells_which_run_slipped(
    left_mm: float, right_mm: float, place: str
) -> None:
    house = a_house(
        rooms=[den(from_left_mm=1508)], runs=south(left_mm, right_mm), openings=[a_door()]
    )
    assert [f.place for f in check_wall_sums(house)] == [place]


def test_swapped_digits_are_named_before_the_longest_run() -> None:
    # 1446 for 1464: 18 short; only the shorter run's digits mend it.
    house = a_house(rooms=[den(4621)], runs=south(1446, 2214), openings=[a_door()])
    findings = check_wall_sums(house)
    assert [f.place for f in findings] == ["S5", "S6"]
    assert "1464 mm (digits swapped)" in findings[0].wrong


def test_a_burnt_inch_is_named() -> None:
    house = a_house(rooms=[den()], runs=south(1446, 2214 + MM_PER_INCH), openings=[a_door()])
    assert "1 inch mark" in check_wall_sums(house)[0].wrong


def test_inch_houses_are_answered_in_inches() -> None:
    room = a_room(a_wall("N", 120 * MM_PER_INCH))
    house = a_house(rooms=[room], runs=[a_run("S1", 121 * MM_PER_INCH, wall="N")], units=Units.INCH)
    (finding,) = check_wall_sums(house)
    assert "120 in" in finding.read
    assert "1 inch mark" in finding.wrong


def test_without_a_witness_the_wall_is_in_doubt_too() -> None:
    house = a_house(rooms=[den(north=False)], runs=south(1446, 2314), openings=[a_door()])
    findings = check_wall_sums(house)
    assert {f.place for f in findings} == {"S5", "S6"}
    assert "wall itself" in findings[0].do


def test_a_run_that_ends_square_covers_nothing() -> None:
    runs = [
        a_run("S5", 1446, "internal", "square", wall="S"),
        a_run("S6", 99, "square", "internal", wall="S"),
    ]
    assert check_wall_sums(a_house(rooms=[den()], runs=runs, openings=[a_door()])) == ()


def test_a_wall_not_read_has_no_sum() -> None:
    room = a_room(a_wall("N", None))
    assert check_wall_sums(a_house(rooms=[room], runs=[a_run("S1", 900, wall="N")])) == ()


def test_a_door_that_is_not_listed_leaves_the_sum_unchecked_and_said() -> None:
    room = a_room(a_wall("S", 4603))
    house = a_house(rooms=[room], runs=south(1446, 2314), openings=[a_door()])
    findings = check_wall_sums(house)
    assert [(f.code, f.severity) for f in findings] == [("wall-sum-unchecked", Severity.NOTE)]
    assert held_places(findings) == frozenset()


def test_windows_are_not_counted() -> None:
    room = a_room(a_wall("S", 4603, doors=[("W1", 500), ("D1", None)]))
    window = a_door("W1", kind=OpeningKind.WINDOW)
    house = a_house(rooms=[room], runs=south(1446, 2214), openings=[window, a_door()])
    assert check_wall_sums(house) == ()


def test_external_ends_reach_the_corner_too() -> None:
    house = a_house(rooms=[den()], runs=south(1446, 2314, left_end="external"), openings=[a_door()])
    assert len(check_wall_sums(house)) == 2

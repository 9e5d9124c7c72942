from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.pipeline import check_house
from longpoint.survey.house import SurveyResult
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import OpeningReadings
from tests.drawn_openings import house_of, opening_of, readings_of
from tests.house_documents import house, wall

LEG, DIAGONAL = 2041.0, 2179.0


def door(**other: float | tuple[float, ...]) -> OpeningReadings:
    """Return the readings of a sound door whose threshold wasn't read, others in place of some."""
    sound = {"top": 763.0, "left": LEG, "right": LEG, "rising": DIAGONAL, "falling": DIAGONAL}
    return readings_of(**(sound | other))


def said(readings: OpeningReadings, accept: tuple[str, ...] = ()) -> tuple[Finding, ...]:
    opening = replace(opening_of("D1", readings, kind=OpeningKind.DOOR), accept=accept)
    found = check_house(SurveyResult(house=house_of(opening), findings=()))[1]
    return tuple(f for f in found if f.place == "D1" and f.severity is not Severity.NOTE)


@pytest.mark.parametrize("slip_mm", [12.0, 56.0, 100.0])
def test_of_a_leg_read_twice_the_figure_that_the_others_go_with_is_named(slip_mm: float) -> None:
    for figures in ((LEG, LEG + slip_mm), (LEG + slip_mm, LEG)):
        (finding,) = said(door(left=figures))
        assert finding.code == "repeats-disagree"
        assert finding.wrong.endswith("The other readings go with 2041 mm alone.")


def test_no_figure_is_named_that_was_never_read() -> None:
    found = said(door(left=(LEG, 2097.0)))
    assert not any("2069" in finding.read for finding in found)
    accepted = said(door(left=(LEG, 2097.0)), accept=("repeats-disagree",))
    assert any("2069" in f.read for f in accepted), "accepted, their mean is what is cut by"


def test_what_is_wrong_whichever_figure_is_right_stays() -> None:
    found = said(door(left=(LEG, 2097.0), rising=2219.0))
    assert {f.code for f in found} == {"repeats-disagree", "side-unlikely"}
    (repeats,) = (f for f in found if f.code == "repeats-disagree")
    assert "alone" not in repeats.wrong


def test_where_the_others_go_with_either_figure_neither_is_named() -> None:
    (finding,) = said(readings_of(top=(763.0, 775.0), left=LEG, right=LEG))
    assert "alone" not in finding.wrong


def test_of_two_places_each_is_said_and_what_goes_with_which_is_not() -> None:
    found = said(door(left=(LEG, 2097.0), rising=(DIAGONAL, 2219.0)))
    assert [f.code for f in found] == ["repeats-disagree"] * 2
    assert not any("alone" in f.wrong for f in found)


def test_so_many_figures_that_not_all_ways_are_tried_are_said_as_they_are() -> None:
    found = said(
        door(
            left=(LEG, 2097.0),
            right=(LEG, 1985.0),
            rising=(DIAGONAL, 2219.0),
            falling=(DIAGONAL, 2139.0),
        )
    )
    assert [f.code for f in found].count("repeats-disagree") == 4
    assert any(f.code != "repeats-disagree" for f in found)


def said_of_room(
    lengths: tuple[float | list[float], ...], diagonals_mm: tuple[float, ...], **keys: list[str]
) -> dict[str, Finding]:
    """Return what is said of a room of 4200 x 3100 with square corners, by the place and code."""
    walls = [
        wall(mark, length=length, corner=90) for mark, length in zip("NESW", lengths, strict=True)
    ]
    ends = (("N", "S"), ("E", "W"))
    diagonals = [
        {"from": start, "to": end, "length": length}
        for (start, end), length in zip(ends, diagonals_mm, strict=False)
    ]
    room = {"name": "Den", "walls": walls, "diagonals": diagonals, **keys}
    found = check_house(read_house(house(rooms=[room])))[1]
    return {f"{f.place} {f.code}": f for f in found if f.severity is not Severity.NOTE}


LONG = (5219.0, 5220.0)


def test_of_a_wall_read_twice_the_figure_that_the_room_goes_with_is_named() -> None:
    found = said_of_room(([4200.0, 4300.0], 3100.0, 4201.0, 3099.0), LONG)
    assert list(found) == ["Den N repeats-disagree"], "its mean makes no room that doesn't close"
    wrong = found["Den N repeats-disagree"].wrong
    assert wrong.endswith("by a mark miscounted. The other readings go with 4200 mm alone.")


def test_a_room_that_closes_with_neither_figure_is_told_as_well() -> None:
    found = said_of_room(([4200.0, 4300.0], 3100.0, 4201.0, 3099.0), (5519.0, 5220.0))
    assert set(found) == {"Den N repeats-disagree", "Den room-misclosure"}
    assert "alone" not in found["Den N repeats-disagree"].wrong


def test_a_room_that_hardly_checks_its_walls_goes_with_either() -> None:
    found = said_of_room(([4200.0, 4220.0], 3100.0, 4201.0, 3099.0), ())
    assert list(found) == ["Den N repeats-disagree"]
    assert "alone" not in found["Den N repeats-disagree"].wrong


def test_of_an_accepted_contradiction_the_mean_is_what_the_room_is_held_to() -> None:
    lengths = ([4200.0, 4300.0], 3100.0, 4201.0, 3099.0)
    found = said_of_room(lengths, LONG, accept=["repeats-disagree"])
    assert "Den room-misclosure" in found

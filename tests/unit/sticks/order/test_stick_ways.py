import pytest

from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Filled, filled
from longpoint.sticks.lay.laying import Place, Workload, workload
from longpoint.sticks.order import stick_ways
from longpoint.sticks.order.stick_ways import Ends, ways_of
from tests.random_sticks import architrave_piece, house_of

SQUARE, LEFT, RIGHT = 0, 1, 2
LEG_LEFT: Ends = (SQUARE, LEFT)
LEG_RIGHT: Ends = (RIGHT, SQUARE)
ROOM = 300_000


def two_legs(*, longer_mm: float = 900.0) -> tuple[Workload, Filled]:
    pieces = [
        architrave_piece("W1-left-leg", longer_mm, 0, 45),
        architrave_piece("W1-right-leg", 900.0, 45, 0),
    ]
    work = workload(profile_demand(pieces, house_of().profiles[0], 2.5).demands)
    left, right = (
        next(n for n, demand in enumerate(work.demands) if demand.mark.endswith(side))
        for side in ("left-leg", "right-leg")
    )
    stick = filled(work, 0, [Place(left, turned=False), Place(right, turned=False)])
    return work, stick


def settings_of(work: Workload) -> list[tuple[Ends, Ends]]:
    return [(each, each) for each in (_leg(demand.mark) for demand in work.demands)]


def _leg(mark: str) -> Ends:
    return LEG_LEFT if mark.endswith("left-leg") else LEG_RIGHT


def test_two_legs_change_the_saw_between_them_or_lie_square_end_to_square_end() -> None:
    work, stick = two_legs()
    ways = ways_of(work, settings_of(work), stick, ROOM, 0)
    # By hand: left leg first, square | left, right | square: 3 changes, both ends square; right leg
    # first, right | square, square | left: 2.
    told = {(way.first, way.last): way.changes for way in ways.ways}
    assert told == {(SQUARE, SQUARE): 3, (RIGHT, LEFT): 2}
    assert (ways.least, ways.are_all) == (2, True)
    assert set(ways.ends) == {SQUARE, LEFT, RIGHT}


def test_a_piece_much_longer_waits_for_no_other() -> None:
    work, stick = two_legs(longer_mm=1200.0)
    ways = ways_of(work, settings_of(work), stick, ROOM, 0)
    assert [way.places for way in ways.ways] == [stick.places]


def test_what_is_left_is_not_made_shorter() -> None:
    work, stick = two_legs()
    nothing_less = ways_of(work, settings_of(work), stick, ROOM, ROOM)
    assert [way.places for way in nothing_less.ways] == [stick.places]


def test_of_too_many_orders_only_the_pieces_own_changes_are_certain(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    work, stick = two_legs()
    monkeypatch.setattr(stick_ways, "MOST_STATES", 1)
    ways = ways_of(work, settings_of(work), stick, ROOM, 0)
    assert (ways.least, ways.are_all) == (2, False)
    assert [way.places for way in ways.ways] == [stick.places]

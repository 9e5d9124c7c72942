from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.profile_plan import marks, plan_profile
from tests.random_sticks import architrave_piece, house_of


def test_a_profile_s_plan_lays_every_piece_and_says_how_good_it_is() -> None:
    house = house_of(lengths_mm=(2700.0,))
    pieces = [architrave_piece(f"W{n}-head", 800.0 + n, 45, 45) for n in range(4)]
    work = workload(profile_demand(pieces, house.profiles[0], 2.5).demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    plan = plan_profile("OG", work, bars, None, QUICK)
    assert sorted(one.piece for stick in plan.sticks for one in stick.laid) == sorted(
        piece.mark for piece in pieces
    )
    assert (plan.proof.cost, plan.proof.lower_bound, plan.proof.optimal) == (5.4, 5.4, True)
    assert plan.unplaced == ()


def test_long_pieces_go_first_on_the_sticks_that_there_are() -> None:
    house = house_of(lengths_mm=(2700.0,), counts=(1,))
    pieces = [architrave_piece(f"W{n}-head", 2000.0 - 300 * n, 0, 0) for n in range(3)]
    work = workload(profile_demand(pieces, house.profiles[0], 2.5).demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    plan = plan_profile("OG", work, bars, None, QUICK)
    assert len(plan.sticks) == 1
    assert len(plan.unplaced) == 2
    assert not plan.proof.optimal
    assert set(marks(work, plan.unplaced)) < {"W0-head", "W1-head", "W2-head"}


def test_a_piece_by_itself_takes_its_length_and_its_points() -> None:
    house = house_of()
    piece = architrave_piece("W1-head", 1000.0, 45, 45)
    work = workload(profile_demand([piece], house.profiles[0], 2.5).demands)
    assert work.alone[0] == 106600 + 2 * 3301

from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import Workload, used_length, workload
from longpoint.sticks.lay.ordering import best_order, improved, inserted
from longpoint.survey.profiles import Profile
from tests.random_sticks import architrave_piece

TURNABLE = Profile(name="OG", width_mm=66.0, thickness_mm=18.0, reversible=True)
MOULDED = Profile(name="OG", width_mm=66.0, thickness_mm=18.0)


def frame(profile: Profile) -> Workload:
    pieces = [
        architrave_piece("W1-left-leg", 1200.0, 0, 45),
        architrave_piece("W1-right-leg", 1200.0, 45, 0),
        architrave_piece("W1-head", 600.0, 45, 45),
        architrave_piece("W2-head", 900.0, 45, 45),
    ]
    return workload(profile_demand(pieces, profile, 2.5).demands)


def test_turning_saves_the_triangles_between_legs_and_heads() -> None:
    turnable, moulded = frame(TURNABLE), frame(MOULDED)
    best = used_length(turnable, best_order(turnable, range(4)))
    plain = used_length(moulded, best_order(moulded, range(4)))
    # Midlines 4098 mm; the feet of the legs share a square cut, the heads a mitre each with a
    # leg or each other; each side of square is crossed three times by pieces, so once by a point.
    assert best == 409800 + (250 + 355 + 355) + 2 * 3301
    assert plain - best > 9000


def test_among_equally_short_orders_long_pieces_come_first_and_pairs_together() -> None:
    work = frame(MOULDED)
    order = [work.demands[place.piece].mark for place in best_order(work, range(4))]
    assert set(order[:2]) == {"W1-left-leg", "W1-right-leg"}
    assert order[2:] == ["W2-head", "W1-head"]


def test_many_pieces_of_few_kinds_are_ordered_exactly() -> None:
    pieces = [architrave_piece(f"W{n}-head", 300.0, 45, 45) for n in range(12)]
    work = workload(profile_demand(pieces, TURNABLE, 2.5).demands)
    used = used_length(work, best_order(work, range(12)))
    assert used == 12 * 36600 + 11 * 355 + 2 * 3301


def test_beyond_the_exact_limit_the_order_is_still_good() -> None:
    work = frame(TURNABLE)
    exact = used_length(work, best_order(work, range(4)))
    quick = best_order(work, range(4), most_states=0)
    assert sorted(place.piece for place in quick) == [0, 1, 2, 3]
    assert exact <= used_length(work, quick) <= exact + 3400


def test_moves_never_make_an_order_longer() -> None:
    work = frame(TURNABLE)
    start = inserted(work, (), [3, 2, 1, 0])
    assert used_length(work, improved(work, start)) <= used_length(work, start)

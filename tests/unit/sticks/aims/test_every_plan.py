from longpoint.sticks.aims.every_plan import MOST_PIECES, every_plan, roomiest
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, filled
from longpoint.sticks.lay.laying import Place, Workload, workload
from tests.random_sticks import architrave_piece, house_of

HOUSE = house_of(lengths_mm=(1800.0, 3600.0), kerf_mm=0.0, end_trim_mm=0.0)


def square(*lengths_mm: float) -> tuple[Workload, Bars]:
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate(lengths_mm)]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    return work, bars_of("OG", HOUSE.stock, (), HOUSE.saw)


def each_alone(work: Workload, bar: int) -> Packing:
    return Packing(tuple(filled(work, bar, [Place(n, turned=False)]) for n in range(len(work.mid))))


def test_one_long_stick_for_the_price_of_two_short_ones_is_one_fewer() -> None:
    work, bars = square(1700.0, 1600.0)
    found = every_plan(work, bars.bars, each_alone(work, 0))
    assert found is not None
    assert (found.sticks, found.longest) == (1, 30000)
    assert [stick.bar for stick in found.packing.sticks] == [1]


def test_sticks_full_to_the_end_leave_nothing() -> None:
    work, bars = square(1800.0, 1800.0)
    found = every_plan(work, bars.bars, each_alone(work, 0))
    assert found is not None
    assert (found.sticks, found.longest) == (1, 0)
    assert len(found.packing.sticks) == 1


def test_a_cut_behind_the_last_piece_must_fit_before_anything_is_left() -> None:
    house = house_of(lengths_mm=(1800.0,), kerf_mm=2.5, end_trim_mm=10.0)
    piece = architrave_piece("W1-head", 1779.0, 0, 0)
    work = workload(profile_demand([piece], house.profiles[0], 2.5).demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    found = every_plan(work, bars.bars, each_alone(work, 0))
    assert found is not None
    assert (found.sticks, found.longest) == (1, 0)


def test_an_offcut_is_used_no_oftener_than_it_is_there() -> None:
    house = house_of(lengths_mm=(1800.0,), offcuts=((1000.0, 1),), kerf_mm=0.0, end_trim_mm=0.0)
    pieces = [architrave_piece(f"W{n}-head", 950.0, 0, 0) for n in range(2)]
    work = workload(profile_demand(pieces, house.profiles[0], 0.0).demands)
    bars = bars_of("OG", house.stock, house.offcuts, house.saw)
    found = every_plan(work, bars.bars, each_alone(work, 1))
    assert found is not None
    assert sorted(stick.bar for stick in found.packing.sticks) == [0, 1]
    assert (found.sticks, found.longest) == (1, 85000)


def test_of_many_pieces_or_too_few_sticks_not_every_plan_is_looked_at() -> None:
    work, bars = square(*([300.0] * (MOST_PIECES + 1)))
    assert every_plan(work, bars.bars, each_alone(work, 0)) is None
    work, bars = square(300.0)
    assert every_plan(work, bars.bars, Packing((), (0,))) is None


def test_a_stick_leaves_most_where_the_narrower_cut_is_its_last() -> None:
    """The square end costs 2.5 mm, the 45 degree end 3.54: the square one lies towards the rest."""
    house = house_of(kerf_mm=2.5, end_trim_mm=0.0, lengths_mm=(1800.0,), reversible=True)
    piece = architrave_piece("W1-head", 900.0, 0, 45)
    work = workload(profile_demand([piece], house.profiles[0], 2.5).demands)
    assert roomiest(work, [0], 180000) == (Place(0, turned=True),)
    assert roomiest(work, [0], 90000) is None

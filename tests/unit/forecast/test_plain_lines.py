import pytest

from longpoint.forecast.lines import Line, LineGroup, LineHouse, LineOpening, LineTally, Spread
from longpoint.forecast.plain_lines import PlainLines
from tests.line_houses import line_house

pytestmark = pytest.mark.no_cover


def house_of(*lines: Line, draws: int = 400) -> LineHouse:
    group = LineGroup(name="gaps", lines=lines)
    opening = LineOpening(mark="W1", groups=(group,), private=(Spread.NORMAL, Spread.RECTANGULAR))
    return LineHouse(openings=(opening,), shared=(Spread.NORMAL,), draws=draws, seed=11)


def tally(*lines: Line) -> LineTally:
    return PlainLines().tally(house_of(*lines))


def test_without_an_error_the_offset_decides_and_just_touching_fits() -> None:
    for offset, fits in ((1.0, 400), (1.0 + 1e-12, 0), (-3.0, 400)):
        line = Line(offset=offset, shared=(0.0,), private=(0.0, 0.0))
        assert tally(line).openings[0].together == fits


def test_a_line_that_no_draw_is_long_enough_for_takes_nothing_away() -> None:
    rules = Line(offset=0.2, shared=(0.3,), private=(0.4, 0.0))
    never = Line(offset=0.0, shared=(0.01,), private=(0.0, 0.02))
    assert tally(never).openings[0].together == 400
    assert tally(rules, never) == tally(rules)


def test_a_line_above_one_to_begin_with_mostly_fails() -> None:
    line = Line(offset=1.5, shared=(0.2,), private=(0.0, 0.0))
    assert tally(line).openings[0].together < 10


@pytest.mark.parametrize("factor", [1e-9, 1e9])
def test_a_line_through_one_fails_by_the_side_of_its_error_alone(factor: float) -> None:
    one = tally(Line(offset=1.0, shared=(0.1,), private=(0.2, -0.3)))
    other = tally(Line(offset=1.0, shared=(0.1 * factor,), private=(0.2 * factor, -0.3 * factor)))
    assert one == other
    assert 100 < one.openings[0].together < 300


def test_a_line_written_twice_counts_once() -> None:
    line = Line(offset=0.2, shared=(0.3,), private=(0.4, 0.1))
    assert tally(line, line) == tally(line)


def test_an_opening_fits_together_only_where_every_group_fits() -> None:
    groups = [
        LineGroup(name=name, lines=(Line(offset=0.0, shared=(sign * 0.9,), private=()),))
        for name, sign in (("heel", 1.0), ("toe", -1.0))
    ]
    opening = LineOpening(mark="W1", groups=tuple(groups), private=())
    house = LineHouse(openings=(opening,), shared=(Spread.NORMAL,), draws=500, seed=2)
    heel, toe = PlainLines().tally(house).openings[0].fits
    found = PlainLines().tally(house)
    # A draw can't be too far out both ways.
    assert found.openings[0].together == heel + toe - 500
    assert found.misfits == (found.openings[0].together, 500 - found.openings[0].together)


def test_a_shared_error_fails_like_openings_together() -> None:
    line = Line(offset=0.0, shared=(0.8,), private=())
    opening = LineOpening(mark="W", groups=(LineGroup(name="gaps", lines=(line,)),), private=())
    house = LineHouse(openings=(opening,) * 4, shared=(Spread.NORMAL,), draws=300, seed=2)
    misfits = PlainLines().tally(house).misfits
    assert misfits[1:4] == (0, 0, 0)
    assert misfits[4] > 0


def test_the_same_seed_gives_the_same_tally_and_another_seed_another() -> None:
    house = line_house(2, 300)
    again = line_house(2, 300)
    assert PlainLines().tally(house) == PlainLines().tally(again)
    other = LineHouse(
        openings=house.openings, shared=house.shared, draws=house.draws, seed=house.seed + 1
    )
    assert PlainLines().tally(other) != PlainLines().tally(house)

"""Every engine counts what a draw-by-draw reading of the port's definition counts."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from longpoint.forecast.lines import (
    PRIVATE_STREAM,
    SHARED_STREAM,
    Line,
    LineEngine,
    LineGroup,
    LineHouse,
    LineOpening,
    LineTally,
    OpeningTally,
    Spread,
)
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.stream import draw
from longpoint.solvers.numpy_lines import NumpyLines

ENGINES: tuple[LineEngine, ...] = (PlainLines(), NumpyLines())

spreads = st.sampled_from(Spread)
eighths = st.integers(min_value=-12, max_value=12).map(lambda n: n / 8.0)
# Mostly nought, as in a real line.
coefficients = st.one_of(st.just(0.0), eighths)


@st.composite
def groups(draw_from: st.DrawFn, shared: int, private: int) -> LineGroup:
    line = st.builds(
        Line,
        offset=eighths,
        shared=st.tuples(*[coefficients] * shared),
        private=st.tuples(*[coefficients] * private),
    )
    return LineGroup(name="gaps", lines=tuple(draw_from(st.lists(line, max_size=6))))


@st.composite
def houses(draw_from: st.DrawFn) -> LineHouse:
    shared = tuple(draw_from(st.lists(spreads, max_size=3)))
    openings = []
    for number in range(draw_from(st.integers(min_value=0, max_value=4))):
        private = tuple(draw_from(st.lists(spreads, max_size=6)))
        found = draw_from(st.lists(groups(len(shared), len(private)), max_size=3))
        openings.append(LineOpening(mark=f"W{number}", groups=tuple(found), private=private))
    return LineHouse(
        openings=tuple(openings),
        shared=shared,
        draws=draw_from(st.integers(min_value=1, max_value=40)),
        seed=draw_from(st.integers(min_value=0, max_value=2**64 - 1)),
    )


def by_definition(house: LineHouse) -> LineTally:
    fits = [[0] * len(opening.groups) for opening in house.openings]
    together = [0] * len(house.openings)
    misfits = [0] * (len(house.openings) + 1)
    for index in range(house.draws):
        count = 0
        for number, opening in enumerate(house.openings):
            row = (index + house.first_row(number)) % house.pool_rows
            good = [fits_in(house, opening, group, index, row) for group in opening.groups]
            fits[number] = [n + g for n, g in zip(fits[number], good, strict=True)]
            together[number] += all(good)
            count += not all(good)
        misfits[count] += 1
    return LineTally(
        openings=tuple(
            OpeningTally(mark=opening.mark, fits=tuple(fits[k]), together=together[k])
            for k, opening in enumerate(house.openings)
        ),
        misfits=tuple(misfits),
        draws=house.draws,
    )


def fits_in(house: LineHouse, opening: LineOpening, group: LineGroup, index: int, row: int) -> bool:
    s = [draw(house.seed, SHARED_STREAM, index, j, spread) for j, spread in enumerate(house.shared)]
    p = [
        draw(house.seed, PRIVATE_STREAM, row, j, spread) for j, spread in enumerate(opening.private)
    ]
    return all(
        line.offset
        + sum(c * e for c, e in zip(line.shared, s, strict=True))
        + sum(c * e for c, e in zip(line.private, p, strict=True))
        <= 1.0
        for line in group.lines
    )


def bare(*offsets: float) -> LineHouse:
    """A house without errors: the offsets alone decide."""
    lines = tuple(Line(offset=offset, shared=(), private=()) for offset in offsets)
    opening = LineOpening(mark="W", groups=(LineGroup(name="gaps", lines=lines),), private=())
    return LineHouse(openings=(opening,), shared=(), draws=3, seed=0)


@pytest.mark.parametrize("engine", ENGINES, ids=lambda engine: type(engine).__name__)
@given(house=houses())
@example(house=LineHouse(openings=(), shared=(), draws=5, seed=1))
@example(house=LineHouse(openings=(), shared=(Spread.NORMAL,), draws=5, seed=1))
@example(house=bare())
@example(house=bare(1.0))
@example(house=bare(0.5, 1.125))
def test_an_engine_counts_what_the_definition_counts(engine: LineEngine, house: LineHouse) -> None:
    assert engine.tally(house) == by_definition(house)


@given(house=houses())
def test_a_tally_is_one_of_the_draws_of_the_house(house: LineHouse) -> None:
    tally = PlainLines().tally(house)
    assert sum(tally.misfits) == tally.draws == house.draws
    assert sum(k * n for k, n in enumerate(tally.misfits)) == sum(
        house.draws - opening.together for opening in tally.openings
    )
    for opening in tally.openings:
        assert opening.together <= min(opening.fits, default=house.draws)
        assert opening.together >= house.draws - sum(house.draws - n for n in opening.fits)

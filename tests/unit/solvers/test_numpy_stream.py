import numpy as np
import pytest

from longpoint.forecast.stream import Spread, draw, uniforms
from longpoint.solvers import numpy_stream
from longpoint.solvers.numpy_stream import NumpyStream

MIXED = (Spread.NORMAL, Spread.RECTANGULAR, Spread.NORMAL, Spread.NORMAL, Spread.RECTANGULAR)


def test_draws_are_those_of_the_plain_stream() -> None:
    rows = np.array([0, 1, 2, 77, 99_999, 2**32 - 1])
    ours = NumpyStream().draws(2**63 + 12345, 1, rows, MIXED)
    assert ours.shape == (5, 6)
    for term, spread in enumerate(MIXED):
        plain = [draw(2**63 + 12345, 1, int(row), term, spread) for row in rows]
        assert ours[term] == pytest.approx(plain, rel=1e-15, abs=0.0)


def test_rectangular_draws_and_the_inner_normal_ones_are_the_same_to_the_last_bit() -> None:
    rows = np.arange(3000)
    ours = NumpyStream().draws(7, 0, rows, MIXED[:2])
    inner = 0
    for row in range(3000):
        chance = uniforms(7, 0, row, 2)[0]
        plain = [draw(7, 0, row, term, spread) for term, spread in enumerate(MIXED[:2])]
        assert ours[1, row] == plain[1]
        assert ours[0, row] == pytest.approx(plain[0], rel=4e-16, abs=0.0)
        if abs(chance - 0.5) <= 0.425:
            assert ours[0, row] == plain[0]
            inner += 1
    assert 2400 < inner < 2700


def test_normal_draws_far_out_are_those_of_the_plain_stream() -> None:
    rows = np.arange(40_000)
    ours = NumpyStream().draws(3, 5, rows, [Spread.NORMAL] * 4)
    far = np.argwhere(np.abs(ours) > 4.0)
    assert len(far) >= 3
    for term, row in far:
        assert ours[term, row] == pytest.approx(draw(3, 5, int(row), int(term)), rel=4e-16)


def test_what_is_drawn_at_once_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    rows = np.arange(100)
    whole = NumpyStream().draws(1, 0, rows, MIXED)
    monkeypatch.setattr(numpy_stream, "_AT_ONCE", 35)
    assert (NumpyStream().draws(1, 0, rows, MIXED) == whole).all()


@pytest.mark.parametrize(("rows", "terms"), [(0, 3), (3, 0), (0, 0)])
def test_nothing_asked_for_is_nothing_drawn(rows: int, terms: int) -> None:
    found = NumpyStream().draws(1, 0, np.arange(rows), [Spread.NORMAL] * terms)
    assert found.shape == (terms, rows)

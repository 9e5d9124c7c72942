"""The fewest settings of the stop, against every partition and a mixed-integer programme."""

from itertools import combinations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from longpoint.pieces.piece import SQUARE_CUT
from longpoint.pieces.stop_lengths import StopWish, saw_stops


def wish(number: int, least_mm: float, long_mm: float, most_mm: float) -> StopWish:
    return StopWish(
        marks=(f"W{number}-head",),
        place=f"W{number}",
        profile="A",
        cuts=(SQUARE_CUT, SQUARE_CUT),
        long_mm=long_mm,
        least_mm=least_mm,
        most_mm=most_mm,
        ends=2,
        quirk_mm=5.0,
    )


@st.composite
def wishes(draw: st.DrawFn) -> list[StopWish]:
    found = []
    for number in range(draw(st.integers(1, 8))):
        long_mm = draw(st.integers(0, 40)) / 2.0 + 1000.0
        found.append(
            wish(
                number,
                long_mm - draw(st.integers(0, 12)) / 2.0,
                long_mm,
                long_mm + draw(st.integers(0, 12)) / 2.0,
            )
        )
    return found


def fewest_by_trying(found: list[StopWish]) -> int:
    """Return the fewest points that meet all intervals; ends of intervals will do."""
    ends = sorted({w.most_mm for w in found})
    for count in range(1, len(ends) + 1):
        for points in combinations(ends, count):
            if all(any(w.least_mm <= p <= w.most_mm for p in points) for w in found):
                return count
    raise AssertionError("no interval is empty")


def fewest_by_programme(found: list[StopWish]) -> int:
    """Return the same by HiGHS: one binary for each end, one row for each interval."""
    ends = sorted({w.most_mm for w in found})
    rows = np.array([[float(w.least_mm <= p <= w.most_mm) for p in ends] for w in found])
    solved = milp(
        np.ones(len(ends)),
        constraints=LinearConstraint(rows, lb=1.0),
        integrality=np.ones(len(ends)),
        bounds=Bounds(0.0, 1.0),
    )
    return round(float(solved.fun))


@given(wishes())
def test_no_fewer_settings_would_do(found: list[StopWish]) -> None:
    stops = saw_stops(found)
    assert len(stops) == fewest_by_trying(found) == fewest_by_programme(found)


@given(wishes())
def test_every_piece_is_cut_once_within_what_it_allows(found: list[StopWish]) -> None:
    stops = saw_stops(found)
    assert sorted(w.marks for s in stops for w in s.wishes) == sorted(w.marks for w in found)
    for stop in stops:
        for each in stop.wishes:
            assert each.least_mm - 1e-9 <= stop.length_mm <= each.most_mm + 1e-9
            assert each.quirk_at_mm(stop.length_mm) - 5.0 == (stop.length_mm - each.long_mm) / 2

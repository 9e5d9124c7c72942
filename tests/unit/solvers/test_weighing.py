import numpy as np
import pytest

from longpoint.forecast.fitup.weighing import Weigher, weighed_lines
from longpoint.solvers.called_weighing import CalledWeigher
from longpoint.solvers.numpy_weighing import numpy_weighed_lines
from tests import called_engines
from tests.weighed_frames import frames_to_weigh

WEIGHERS = (numpy_weighed_lines, CalledWeigher(called_engines.weigh))


@pytest.mark.parametrize("weigh", WEIGHERS, ids=("numpy", "called"))
def test_sets_weigh_what_they_do_in_plain_python(weigh: Weigher) -> None:
    left_out = 0
    for rows, sets in frames_to_weigh():
        plain, found = weighed_lines(rows, sets), weigh(rows, sets)
        assert len(found) == len(plain) > 0
        # Rows are pivoted in another order where two are alike, which changes the last digits.
        assert np.array(found) == pytest.approx(np.array(plain), abs=1e-9)
        left_out += len(sets) - len(plain)
    # Four in each frame and respect that never weigh, and more where the frame leans.
    assert left_out > 4 * 12


@pytest.mark.parametrize("weigh", WEIGHERS, ids=("numpy", "called"))
def test_of_no_sets_there_are_no_lines(weigh: Weigher) -> None:
    rows, _ = next(frames_to_weigh())
    assert weigh(rows, ()) == []
    assert weigh((), ()) == []

import re

import pytest

from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.length import MM_PER_INCH, Units


def test_the_sum_adds_up_as_printed() -> None:
    text = run_sum("wall", [4606.04, -640.04, -819.04, -5.04])
    numbers = [float(n) for n in re.findall(r"[\d.]+", text)]
    assert numbers[0] - sum(numbers[1:-1]) == pytest.approx(numbers[-1], abs=1e-9)


def test_naughts_are_left_out() -> None:
    assert run_sum("face", [2284.0, -0.01, -19.0]) == "face 2284 - 19 = 2265"


def test_what_runs_past_is_added() -> None:
    assert run_sum("face", [640.0, 19.0]) == "face 640 + 19 = 659"


def test_inch_houses_get_inches() -> None:
    text = run_sum("wall", [100 * MM_PER_INCH, -25.5 * MM_PER_INCH], Units.INCH)
    assert text == "wall 100 - 25 1/2 = 74 1/2"

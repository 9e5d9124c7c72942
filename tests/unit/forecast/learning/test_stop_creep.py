import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.forecast.learning.stop_creep import stop_creep

OFFS = st.lists(st.floats(-3, 3), max_size=40)


def test_a_stop_that_jumps_is_told_with_its_piece_and_size() -> None:
    creep = stop_creep([0.0, 0.1, -0.1, 0.0, 0.0, *[-0.5] * 5], 0.2)

    assert creep is not None
    assert (creep.begins, creep.told) == (5, 7)
    assert creep.by_mm == pytest.approx(-0.5)


def test_one_piece_alone_is_told_as_one() -> None:
    creep = stop_creep([0.0, 0.1, -0.1, 2.0], 0.2)

    assert creep is not None
    assert creep.is_one_piece
    assert creep.by_mm == pytest.approx(2.0)


@given(offs=OFFS)
def test_the_size_is_the_mean_of_the_run_and_the_mirror_is_the_same(offs: list[float]) -> None:
    creep, mirrored = stop_creep(offs, 0.2), stop_creep([-off for off in offs], 0.2)

    assert (creep is None) == (mirrored is None)
    if creep is not None and mirrored is not None:
        run = offs[creep.begins : creep.told + 1]
        assert creep.by_mm == pytest.approx(sum(run) / len(run))
        assert (mirrored.begins, mirrored.told) == (creep.begins, creep.told)
        assert mirrored.by_mm == pytest.approx(-creep.by_mm)


def test_a_line_of_cabins_whose_stop_creeps_from_the_sixth_is_told_soon() -> None:
    """Twelve units of 18 pieces; from the 91st piece on the stop walks 0.02 mm a piece.

    Of lines that stand still for so long, 1 - exp(-90/465) = 18 % ring falsely. A check is the
    stop's repeat of 0.2 (uniform) and a reading to the half millimetre. [mm]
    """
    told, early = [], 0
    for seed in range(200):
        rng = random.Random(seed)
        true = (rng.uniform(-0.2, 0.2) + 0.02 * max(0, at - 90) for at in range(216))
        creep = stop_creep([round(2 * (1200.2 + off)) / 2 - 1200.2 for off in true], 0.25)
        assert creep is not None
        early += creep.told <= 90
        told.append(creep.told)

    assert sorted(told)[100] <= 90 + 30
    assert early <= 60


def test_a_spread_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="above 0"):
        stop_creep([0.0], 0.0)

import math

import pytest

from longpoint.forecast.recut_counts import (
    convolved,
    nine_in_ten,
    recut_counts,
    slip_chances,
)
from longpoint.pieces.piece import Piece
from longpoint.survey.crew import ASSUMED_SLIPS, Crew
from tests.random_sticks import architrave_piece


def pieces(count: int, profile: str = "OG") -> tuple[Piece, ...]:
    return tuple(
        architrave_piece(f"W{n}-head", 1000.0, 45, 45, profile=profile) for n in range(count)
    )


def test_ten_pieces_are_as_good_as_safe_from_slips_and_eleven_are_not() -> None:
    """0.99 ^ 10 = 0.9044, 0.99 ^ 11 = 0.8953: by hand."""
    counts = [recut_counts(pieces(n), Crew(), None)[0].p90 for n in (10, 11)]
    assert counts == [0, 1]
    assert Crew().slips_counted == ASSUMED_SLIPS


def test_a_crew_that_says_it_never_slips_needs_no_spares() -> None:
    (count,) = recut_counts(pieces(300), Crew(slips=0.0), None)
    assert (count.p90, count.sets, count.misfits_p90) == (0, 0, 0)


def test_slips_add_up_to_one_whatever_the_count() -> None:
    for count, chance in ((1, 0.01), (300, 0.01), (20_000, 0.01), (20_000, 0.5)):
        chances = slip_chances(count, chance)
        assert math.fsum(chances) == pytest.approx(1.0, abs=1e-5)
        mean = math.fsum(k * one for k, one in enumerate(chances))
        assert mean == pytest.approx(count * chance, rel=1e-3)


def test_slips_of_a_few_pieces_are_those_counted_one_by_one() -> None:
    assert slip_chances(3, 0.25) == pytest.approx((27 / 64, 27 / 64, 9 / 64, 1 / 64))
    assert slip_chances(3, 0.25) == pytest.approx(convolved(*[(0.75, 0.25)] * 3))


def test_nine_in_ten_is_never_beyond_the_last_count() -> None:
    assert nine_in_ten((0.0, 0.0, 1.0)) == 2
    assert nine_in_ten((0.5, 0.3)) == 1


def test_each_profile_is_counted_by_itself() -> None:
    counts = recut_counts((*pieces(11), *pieces(5, "SK")), Crew(), None)
    assert [(c.profile, c.pieces, c.p90) for c in counts] == [("OG", 11, 1), ("SK", 5, 0)]

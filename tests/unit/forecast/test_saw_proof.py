import math

import pytest

from longpoint.errors import SurveyError
from longpoint.forecast.saw_proof import saw_proof


def test_a_saw_that_cuts_steep_opens_the_heels() -> None:
    # By hand: 0.4 mm at every heel of 66 mm faces is 0.4 / (2 x 66 x sqrt 2) rad per cut.
    proof = saw_proof([(0.4, 0.0)] * 4, 66.0)
    assert proof.steep_deg == pytest.approx(math.degrees(0.4 / (2.0 * 66.0 * math.sqrt(2.0))))
    assert proof.is_worth_dialling
    assert "steep by 0.12" in proof.words()


def test_however_the_frame_is_pushed_the_sum_stays() -> None:
    even = saw_proof([(0.3, 0.0)] * 4, 70.0)
    pushed = saw_proof([(0.6, 0.0), (0.0, 0.0), (0.3, 0.0), (0.4, 0.1)], 70.0)
    assert pushed.steep_deg == pytest.approx(even.steep_deg)


def test_open_toes_mean_a_shallow_saw() -> None:
    proof = saw_proof([(0.0, 0.35)] * 4, 70.0)
    assert proof.steep_deg < 0.0
    assert "shallow" in proof.words()


def test_a_tight_frame_leaves_the_stop_where_it_is() -> None:
    proof = saw_proof([(0.0, 0.0), (0.05, 0.0), (0.0, 0.0), (0.0, 0.05)], 70.0)
    assert not proof.is_worth_dialling
    assert "leave the stop" in proof.words()


def test_coarser_feelers_and_narrower_faces_prove_less() -> None:
    gaps = [(0.2, 0.0)] * 4
    fine, coarse = saw_proof(gaps, 70.0), saw_proof(gaps, 70.0, feeler_mm=0.25)
    narrow = saw_proof(gaps, 20.0, feeler_mm=0.25)
    assert fine.u_deg < coarse.u_deg < narrow.u_deg


@pytest.mark.parametrize(
    ("gaps", "width_mm"),
    [([(0.1, 0.0)] * 3, 66.0), ([(0.1, 0.0)] * 5, 66.0), ([(0.1, 0.0)] * 4, 0.0)],
)
def test_half_a_frame_proves_nothing(gaps: list[tuple[float, float]], width_mm: float) -> None:
    with pytest.raises(SurveyError):
        saw_proof(gaps, width_mm)


def test_gaps_that_no_saw_could_leave_are_refused() -> None:
    with pytest.raises(SurveyError, match="Read the gaps again"):
        saw_proof([(50.0, 0.0)] * 4, 66.0)

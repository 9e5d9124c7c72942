"""What holds of learning for any frame and any row of values.

The pieces of a frame are laid as points in the plane, each end cut past its angle by its own error,
and moved and turned at will: what is laid knows nothing of sums over joints.
"""

import cmath
import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.forecast.learning.as_built import BuiltFrame, angle_sum_deg
from longpoint.forecast.learning.belief import Prior, Weighed, belief_of
from longpoint.forecast.learning.calibration import Outcome, brier, reliability
from longpoint.forecast.learning.crew_file import learned_document, read_learned
from longpoint.forecast.learning.drift import drift
from longpoint.forecast.learning.setup import learn
from longpoint.forecast.learning.setup_key import SetupKey
from longpoint.survey.as_built import JointRead

ROOT2 = math.sqrt(2.0)

sizes_mm = st.floats(300.0, 2400.0)
errors_deg = st.floats(-0.4, 0.4)
moves_mm = st.floats(-1.0, 1.0)
turns = st.floats(-0.003, 0.003)
off_deg = st.floats(-0.5, 0.5)
weighed = st.builds(Weighed, off_deg, st.floats(0.1, 1.0))
moves = st.tuples(errors_deg, errors_deg, moves_mm, moves_mm, turns)
outcomes = st.lists(
    st.builds(Outcome, house=st.sampled_from("ABCDE"), chance=st.floats(0, 1), closed=st.booleans())
)


def laid_piece(
    start: complex, end: complex, width_mm: float, move: tuple[float, float, float, float, float]
) -> tuple[complex, complex, complex, complex]:
    """Return inner start, outer start, inner end and outer end of a piece, moved and turned."""
    start_deg, end_deg, along_mm, out_mm, turn = move
    along = (end - start) / abs(end - start)
    out = -1j * along
    outer_start = start + width_mm * (out - math.tan(math.radians(45.0 + start_deg)) * along)
    outer_end = end + width_mm * (out + math.tan(math.radians(45.0 + end_deg)) * along)
    middle = (start + end) / 2.0
    shift = along_mm * along + out_mm * out

    def moved(point: complex) -> complex:
        return middle + (point - middle) * cmath.exp(1j * turn) + shift

    return moved(start), moved(outer_start), moved(end), moved(outer_end)


@given(sizes_mm, sizes_mm, st.floats(40.0, 120.0), st.tuples(moves, moves, moves, moves))
def test_heels_less_toes_round_a_frame_are_its_angle_errors_however_it_is_fitted(
    width_mm: float,
    height_mm: float,
    face_mm: float,
    made: tuple[tuple[float, float, float, float, float], ...],
) -> None:
    corners = [0j, complex(width_mm, 0), complex(width_mm, height_mm), complex(0, height_mm)]
    pieces = [laid_piece(corners[k], corners[(k + 1) % 4], face_mm, made[k]) for k in range(4)]
    gaps = []
    for k in range(4):
        (_, _, before_in, before_out), (after_in, after_out, _, _) = pieces[k - 1], pieces[k]
        before = corners[k] - corners[k - 1]
        after = corners[(k + 1) % 4] - corners[k]
        across = (before / abs(before) + after / abs(after)) / ROOT2
        gaps.append(
            JointRead(
                heel_mm=((after_in - before_in) * across.conjugate()).real,
                toe_mm=((after_out - before_out) * across.conjugate()).real,
            )
        )
    frame = BuiltFrame(
        mark="W1",
        key=SetupKey(saw="S1"),
        mitre_length_mm=(ROOT2 * face_mm,) * 4,
        gaps=tuple(gaps),
    )
    total_deg = math.fsum(move[0] + move[1] for move in made)
    # What is left are products of two small angles.
    assert angle_sum_deg(frame) == pytest.approx(total_deg, abs=0.02)


@given(st.lists(weighed, max_size=20), st.integers(0, 20))
def test_a_belief_is_the_same_at_once_one_by_one_and_in_any_order(
    values: list[Weighed], cut: int
) -> None:
    start = belief_of(Prior(mean_sd=0.1, spread=0.02))
    at_once = start.updated(values)
    parted = start.updated(values[:cut]).updated(values[cut:])
    one_by_one = start
    for value in sorted(values):
        one_by_one = one_by_one.updated([value])
    for other in (parted, one_by_one):
        assert (other.mean, other.k, other.a, other.b) == pytest.approx(
            (at_once.mean, at_once.k, at_once.a, at_once.b), rel=1e-9, abs=1e-12
        )


@given(st.lists(weighed, min_size=1, max_size=20))
def test_a_frame_more_leaves_the_mean_between_prior_and_frames(values: list[Weighed]) -> None:
    belief = belief_of(Prior(mean_sd=0.1, spread=0.02)).updated(values)
    seen = [0.0, *(x.value for x in values)]
    assert min(seen) - 1e-12 <= belief.mean <= max(seen) + 1e-12
    assert belief.mean_scale < belief.next_scale


joints = st.builds(
    JointRead,
    heel_mm=st.none() | st.floats(-1.0, 2.0),
    toe_mm=st.none() | st.floats(-1.0, 2.0),
)
quirks = st.tuples(*[st.none() | st.floats(0.0, 9.0)] * 3)
frames = st.builds(
    BuiltFrame,
    mark=st.sampled_from(["W1", "W2", "W3"]),
    key=st.builds(SetupKey, saw=st.sampled_from("AB"), blade=st.sampled_from("XY")),
    mitre_length_mm=st.just((93.0,) * 4),
    gaps=st.tuples(joints, joints, joints, joints),
    quirk_mm=st.just(()) | st.tuples(quirks, quirks, quirks, quirks),
)


@given(st.lists(frames, max_size=6))
def test_what_was_learned_comes_back_from_its_document(made: list[BuiltFrame]) -> None:
    learned, _ = learn(made)
    text = json.dumps(learned_document(learned))
    assert read_learned(json.loads(text)) == (learned, ())


@given(
    st.dictionaries(
        st.sampled_from(["terms", "saw", "format"]),
        st.recursive(
            st.none() | st.booleans() | st.floats() | st.text(max_size=3),
            lambda inner: (
                st.lists(inner, max_size=3)
                | st.dictionaries(
                    st.sampled_from(["saw", "tape", "prior", "frames", "mark", "off"]), inner
                )
            ),
            max_leaves=8,
        ),
    )
)
def test_any_document_of_the_format_is_read_and_its_troubles_said(
    document: dict[str, object],
) -> None:
    learned, findings = read_learned({**document, "format": "longpoint-crew/1"})
    assert learned.terms or findings or not document.get("terms")
    for finding in findings:
        assert all((finding.read, finding.wrong, finding.do))


@given(outcomes)
def test_rows_and_parts_hold_for_any_outcomes(made: list[Outcome]) -> None:
    rows = reliability(made)
    assert sum(row.count for row in rows) == len(made)
    for row in rows:
        assert row.clustered.lowest <= row.wilson.lowest <= row.closed + 1e-12
        assert row.closed - 1e-12 <= row.wilson.highest <= row.clustered.highest
    score = brier(made)
    if score is not None:
        parts = score.unreliable - score.told_apart + score.uncertain + score.within
        assert score.score == pytest.approx(parts, abs=1e-9)


@given(
    st.lists(st.floats(-5.0, 5.0), min_size=6, max_size=15),
    st.floats(-100.0, 100.0),
    st.floats(0.1, 1.0),
)
def test_a_drift_does_not_hang_on_the_level(
    values: list[float], level: float, least_spread: float
) -> None:
    here = drift(values, least_spread)
    there = drift([value + level for value in values], least_spread)
    mirrored = drift([-value for value in values], least_spread)
    assert (here is None) is (mirrored is None)
    if here is not None and there is not None:
        assert there.size == pytest.approx(here.size, abs=1e-6)

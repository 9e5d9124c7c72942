"""A sprung cornice on its back is a hip roof: the steel square's figures for its cuts.

Sources, both read: a public-domain handbook on the steel square from the early twentieth century
(figures 38, 41 and 55 to 58), and a public-domain carpentry school text of 1916 (chapters on hip
and valley rafters, sections 20, 23 and 35).

A moulding whose back lies at the spring s to the wall is the slope of a roof of pitch 90 - s: the
jack rafter's side cut on the roof's face is the mitre of the board lying flat, the hip's backing is
the tilt of the blade. Books speak of hips (external corners); an internal one has the same sizes.
"""

import math
from pathlib import Path

import pytest

from longpoint.trims.cornice import (
    SprungRun,
    corner_cuts,
    drop_mm,
    end_reach,
    projection_mm,
    spring_of,
)
from longpoint.trims.joint_plane import SawAngles
from tests.published.reference import rows

HIP_DEG = 270.0
"""A square external corner, measured in the room."""


def cut(rise_in: float, corner_deg: float = HIP_DEG, run_in: float = 12.0) -> SawAngles:
    """Return the cut of a moulding that springs as a roof of that rise."""
    run = SprungRun(spring_deg=spring_of(rise_in, run_in))
    cuts = corner_cuts(corner_deg, run, run)
    assert cuts is not None
    assert cuts.left_run == pytest.approx(cuts.right_run, abs=1e-9)
    return cuts.left_run


def hip(rise_in: float, run_in: float = 12.0) -> tuple[float, float]:
    """Return the run and the length of the hip: the joint seen in plan, and on the slope. [in]."""
    rafter_in = math.hypot(run_in, rise_in)
    past_in = end_reach(cut(rise_in, run_in=run_in), rafter_in, 0.0).top_back_mm
    across_in = projection_mm(rafter_in, spring_of(rise_in, run_in))
    return math.hypot(across_in, past_in), math.hypot(rafter_in, past_in)


@pytest.mark.parametrize("rise_in", [6.0, 8.0, 9.0, 10.0])
def test_the_run_of_a_hip_for_a_foot_of_common_run_is_16_97_in(rise_in: float) -> None:
    assert hip(rise_in)[0] == pytest.approx(16.97, abs=0.005)


@pytest.mark.parametrize(
    ("rise_in", "published_deg", "allowed_deg"),
    [(9.0, 38.66, 0.01), (10.0, 37.52, 0.02), (8.0, 39.8, 0.2)],
)
def test_the_side_cut_of_a_jack_rafter_is_the_mitre(
    rise_in: float, published_deg: float, allowed_deg: float
) -> None:
    assert cut(rise_in).mitre_deg == pytest.approx(published_deg, abs=allowed_deg)


def test_the_backing_of_a_hip_is_the_tilt_of_the_blade() -> None:
    """Figure 41: length and rise of the hip on the square, marked on the rise."""
    _, length_in = hip(9.0)
    by_the_rule_deg = math.degrees(math.atan2(9.0, length_in))
    assert by_the_rule_deg == pytest.approx(25.10, abs=0.01)
    assert -cut(9.0).bevel_deg == pytest.approx(25.10, abs=0.01)


def test_the_side_cut_of_a_hip_is_the_mitre_of_a_board_at_the_hips_pitch() -> None:
    """Figure 57: 17 on 19 1/4, mark on 19 1/4."""
    run_in, length_in = hip(9.0)
    assert length_in == pytest.approx(19.25, abs=0.05)
    assert cut(9.0, run_in=run_in).mitre_deg == pytest.approx(41.45, abs=0.05)


def test_the_jack_rafter_of_an_octagon_is_cut_to_an_eighth_of_a_degree_by_the_rule() -> None:
    ours_deg = cut(9.0, corner_deg=225.0).mitre_deg
    assert ours_deg == pytest.approx(18.43, abs=0.15)
    assert ours_deg == pytest.approx(18.33, abs=0.005)


def test_an_octagon_in_plan_is_5_on_12() -> None:
    """A moulding flat on the ceiling, spring 90, is mitred as in plan."""
    flat = SprungRun(spring_deg=90.0)
    cuts = corner_cuts(225.0, flat, flat)
    assert cuts is not None
    assert cuts.left_run.mitre_deg == pytest.approx(22.62, abs=0.15)
    assert cuts.left_run.bevel_deg == pytest.approx(0.0, abs=1e-9)


def test_seven_twelfths_of_a_step_steps_the_hip_9_and_11_twelfths_and_3_and_a_half() -> None:
    """Section 23: a quarter pitch roof, 7 in of run left over; the text takes 17 for 16.97."""
    run_in, _ = hip(3.5, run_in=7.0)
    assert run_in * 17.0 / 16.97 == pytest.approx(9.0 + 11.0 / 12.0, abs=0.005)
    rafter_in = 7.0 / math.sin(math.radians(spring_of(6.0, 12.0)))
    assert drop_mm(rafter_in, spring_of(6.0, 12.0)) == pytest.approx(3.5, abs=1e-9)


def test_the_remembered_table_gives_18_76_in_of_hip_for_a_rise_of_8() -> None:
    """From memory: the rafter table stamped on a framing square; not read."""
    assert hip(8.0)[1] == pytest.approx(18.76, abs=0.005)


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for row, words in (
        ("CMP-01", "16.97"),
        ("CMP-02", "square 12 and 15, mark on 15 -> 38.66"),
        ("CMP-03", "12 and 15 5/8 -> 37.52"),
        ("CMP-04", "12 and nearly 14 1/2 -> 39.8"),
        ("CMP-05", "17 and 19 1/4 -> 41.45"),
        ("CMP-07", "length and rise of hip, mark on rise"),
        ("CMP-08", "5 in 12 (22.62"),
        ("CMP-09", "5 and 15 -> 18.43"),
        ("CMP-10", "9 11/12; 3 1/2"),
    ):
        assert known[row].value.startswith(words)
        assert known[row].how_known == "read"
    assert known["CMP-11"].numbers() == [18.76]
    assert known["CMP-11"].how_known == "memory"

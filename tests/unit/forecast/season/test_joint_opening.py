import math

import pytest

from longpoint.forecast.season.joint_opening import (
    HELD_SHARES,
    JointEnd,
    Restraint,
    mitre_opening,
    scribe_opening,
    skirting_opening,
)


@pytest.mark.parametrize(("shrink", "saw_deg"), [(0.01, 45.29), (0.02, 45.58)])
def test_a_45_gets_steeper_as_its_board_shrinks(shrink: float, saw_deg: float) -> None:
    # tan(new) = 1 / (1 - s), worked by hand; the wedge is made of two such boards.
    opening = mitre_opening(90.0, (66.0, 66.0), (shrink, shrink))
    assert opening.opened_deg / 2.0 + 45.0 == pytest.approx(saw_deg, abs=0.005)


def test_sugar_maple_90_wide_that_loses_4_percent_opens_1_8_mm() -> None:
    shrink = 0.00353 * 4.0
    assert mitre_opening(90.0, (90.0, 90.0), (shrink, shrink)).gap_mm == pytest.approx(
        1.8, abs=0.05
    )


@pytest.mark.parametrize("corner_deg", [60.0, 88.0, 90.0, 120.0, 150.0])
def test_shrinking_opens_the_heel_and_swelling_the_toe(corner_deg: float) -> None:
    assert mitre_opening(corner_deg, (57.0, 57.0), (0.01, 0.01)).end is JointEnd.HEEL
    assert mitre_opening(corner_deg, (57.0, 57.0), (-0.01, -0.01)).end is JointEnd.TOE


def test_a_sharper_corner_opens_further() -> None:
    gaps = [mitre_opening(c, (57.0, 57.0), (0.01, 0.01)).gap_mm for c in (60.0, 90.0, 120.0)]
    assert gaps == sorted(gaps, reverse=True)


def test_boards_that_do_not_move_leave_it_shut() -> None:
    opening = mitre_opening(91.0, (57.0, 66.0), (0.0, 0.0))
    assert opening.end is JointEnd.NEITHER
    assert opening.gap_mm == pytest.approx(0.0, abs=1e-9)
    assert opening.slip_mm == pytest.approx(0.0, abs=1e-9)


def test_one_board_that_moves_alone_opens_it_and_slips() -> None:
    # At 90 the far corner of the one board goes w s square to itself, 45 degrees to the joint.
    opening = mitre_opening(90.0, (60.0, 60.0), (0.01, 0.0))
    moved_mm = 60.0 * 0.01
    assert math.hypot(opening.gap_mm, opening.slip_mm) == pytest.approx(moved_mm)
    assert opening.gap_mm == pytest.approx(opening.slip_mm, rel=0.01)


def test_boards_that_move_against_each_other_only_slip() -> None:
    opening = mitre_opening(90.0, (60.0, 60.0), (0.01, -0.01))
    assert opening.gap_mm < 0.01
    assert opening.slip_mm == pytest.approx(60.0 * 0.01 * math.sqrt(2.0), rel=1e-3)


def test_a_wide_board_beside_a_narrow_one_may_open_the_other_way_at_a_flat_corner() -> None:
    # The wide board's cut leans backwards there: the settings are -52.5 and 82.5.
    assert mitre_opening(150.0, (140.0, 30.0), (0.01, 0.01)).end is JointEnd.TOE
    assert mitre_opening(150.0, (60.0, 57.0), (0.01, 0.01)).end is JointEnd.HEEL


def test_skirting_18_thick_opens_a_quarter_millimetre_a_percent() -> None:
    inside = skirting_opening(90.0, (18.0, 18.0), (0.01, 0.01))
    assert (inside.end, round(inside.gap_mm, 2)) == (JointEnd.FACE, 0.25)


def test_skirting_round_an_outside_corner_opens_behind_when_dry_and_in_front_when_damp() -> None:
    dry = skirting_opening(270.0, (18.0, 18.0), (0.01, 0.01))
    damp = skirting_opening(270.0, (18.0, 18.0), (-0.01, -0.01))
    assert (dry.end, damp.end) == (JointEnd.BACK, JointEnd.FACE)
    assert [dry.end.is_seen, damp.end.is_seen] == [False, True]


def test_a_scribe_never_opens_in_damp_air() -> None:
    assert scribe_opening(18.0, -0.01).end is JointEnd.NEITHER
    assert scribe_opening(18.0, -0.01).gap_mm == 0.0


def test_shares_held_are_shares_and_more_fixing_holds_more() -> None:
    free, weak, strong = (HELD_SHARES[kind] for kind in Restraint)
    assert free == (0.0, 0.0)
    assert all(0.0 <= least <= most < 1.0 for least, most in (weak, strong))
    assert free[1] <= weak[0]
    assert weak[1] <= strong[0]

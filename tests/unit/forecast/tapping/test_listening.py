import math
from random import Random

import pytest

from longpoint.forecast.fitup.frame import SLOTS, Slot
from longpoint.forecast.tapping.listening import SHARED_TURN_RAD, listen
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from tests.unit.forecast.tapping.planted import without
from tests.unit.forecast.tapping.wall import Cut, hung, window

pytestmark = pytest.mark.no_cover

FRAME = window()
CUT_RAD = math.radians(0.5)
ALL_TURNS = tuple(
    1.0 if slot % SLOTS in (Slot.TURN_START, Slot.TURN_END) else 0.0 for slot in range(4 * SLOTS)
)


def test_all_turns_together_are_the_sum_of_heel_less_toe_over_joint_length() -> None:
    joints = (
        SeenJoint(heel_mm=1.0, toe_mm=0.1),
        SeenJoint(heel_mm=0.2, toe_mm=0.4),
        SeenJoint(heel_mm=0.3, toe_mm=0.0),
        SeenJoint(heel_mm=0.0, toe_mm=0.2),
    )
    (heard,) = listen(FRAME, SeenFrame(joints=joints), (ALL_TURNS,), cut_u_rad=CUT_RAD)
    by_hand = (0.9 - 0.2 + 0.3 - 0.2) / (70.0 * math.sqrt(2.0))
    assert heard.value == pytest.approx(by_hand, rel=0.01)
    # Eight gaps, each out by the feeler's step over root 12 and by 0.02 for the linear rows.
    each_mm = math.hypot(0.05 / math.sqrt(12.0), 0.02)
    assert heard.u == pytest.approx(math.sqrt(8.0) * each_mm / (70.0 * math.sqrt(2.0)), rel=0.05)


def test_what_is_not_read_makes_the_sum_doubtful() -> None:
    seen = hung(FRAME, (Cut(),) * 4, Random(1)).read()
    whole, part = (
        listen(FRAME, s, (ALL_TURNS,), cut_u_rad=CUT_RAD)[0].u for s in (seen, without(seen, [3]))
    )
    assert part > 3.0 * whole


def test_with_a_single_reading_the_doubt_is_what_was_supposed() -> None:
    seen = SeenFrame(joints=(SeenJoint(heel_mm=0.1), *(SeenJoint(),) * 3))
    (heard,) = listen(FRAME, seen, (ALL_TURNS,), cut_u_rad=CUT_RAD)
    assert heard.u == pytest.approx(math.hypot(8 * SHARED_TURN_RAD, 8**0.5 * CUT_RAD), rel=0.01)


def test_the_doubt_it_states_is_the_doubt_it_has() -> None:
    rng, off = Random(5), []
    for _ in range(60):
        each = tuple(
            Cut(start_deg=rng.gauss(0.0, 0.2), end_deg=rng.gauss(0.0, 0.2)) for _ in range(4)
        )
        true = math.radians(math.fsum(c.start_deg + c.end_deg for c in each))
        seen = hung(FRAME, each, rng).read(rng)
        (heard,) = listen(FRAME, seen, (ALL_TURNS,), cut_u_rad=CUT_RAD)
        off.append((heard.value - true) / heard.u)
    spread = math.sqrt(math.fsum(x * x for x in off) / len(off))
    assert 0.4 < spread < 1.3

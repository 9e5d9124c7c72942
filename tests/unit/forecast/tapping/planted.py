"""Walls with one fault planted in them."""

from dataclasses import replace
from random import Random

from longpoint.forecast.fitup.frame import Frame
from longpoint.forecast.tapping.diagnosis import Observable
from longpoint.forecast.tapping.seen import SeenFrame
from tests.unit.forecast.tapping.wall import Cut, Wall, hung, private, window

FRAMES = (window(), window(600, 900, 57), window(1800, 600, 95))


def planted(frame: Frame, fault: Observable, rng: Random) -> Wall:
    """Return a set with small private errors, one fault, and a nailing that overlaps nowhere."""
    cuts = [private(rng) for _ in frame.sides]
    sign, index = rng.choice((-1.0, 1.0)), rng.randrange(len(cuts))
    match fault:
        case Observable.ANGLE_SUM if rng.random() < 0.5:
            over_deg = sign * rng.uniform(0.6, 1.5)
            one = replace(cuts[index], end_deg=cuts[index].end_deg + over_deg)
            cuts[index] = one
        case Observable.ANGLE_SUM:
            each_deg = sign * rng.uniform(0.08, 0.3)
            cuts = [_turned(cut, each_deg) for cut in cuts]
        case Observable.LENGTHS:
            cuts[index] = _longer(cuts[index], sign * rng.uniform(3.0, 6.0))
        case Observable.WHOLE_SIZE:
            over_mm = sign * rng.uniform(3.0, 6.0)
            cuts = [_longer(cut, over_mm) for cut in cuts]
        case _:
            pass
    return hung(frame, tuple(cuts), rng)


def without(seen: SeenFrame, ends: list[int]) -> SeenFrame:
    """Return the readings without some joint ends: heel of the first joint 0, its toe 1, ..."""
    joints = list(seen.joints)
    for end in ends:
        joint = joints[end // 2]
        joints[end // 2] = replace(joint, toe_mm=None) if end % 2 else replace(joint, heel_mm=None)
    return replace(seen, joints=tuple(joints))


def _turned(cut: Cut, over_deg: float) -> Cut:
    return replace(cut, start_deg=cut.start_deg + over_deg, end_deg=cut.end_deg + over_deg)


def _longer(cut: Cut, over_mm: float) -> Cut:
    return replace(cut, end_mm=cut.end_mm + over_mm)

"""Cutting a sprung moulding nested: upside down, at its spring, between fence and table.

The same plane goes through the moulding as flat on the table; only the saw sees it otherwise. A
level corner needs no tilt at all, which is why it is held so.
"""

import math
from typing import NamedTuple

from longpoint.trims.joint_plane import SawAngles, Vector, plus, times


class NestedSetting(NamedTuple):
    """The saw for a moulding held upside down at its spring between fence and table. [deg]

    Attributes:
        table_deg: Swing of the handle, + to your right.
        lean_deg: Lean of the top of the blade, + to your left.
    """

    table_deg: float
    lean_deg: float


def nested_setting(spring_deg: float, cut: SawAngles, *, at_left: bool) -> NestedSetting:
    """Return the saw setting for an end cut with the moulding nested against the fence.

    The moulding stands upside down: the bottom edge of its back up against the fence, the ceiling
    edge of its back on the table, at its spring to the fence. So its left and right change places:
    its left-hand end lies to your right, and what is left of the blade is kept.

    Args:
        spring_deg: Between its back and the fence. [deg]
        cut: The same cut for the piece on its back.
        at_left: True for its left-hand end, facing the wall.

    Returns:
        Swing and lean.

    Example:
        Both ends of a level run between square internal corners, spring 38:

        >>> from longpoint.trims.cornice import SprungRun, corner_cuts
        >>> cut = corner_cuts(90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0))
        >>> [round(a, 6) + 0.0 for a in nested_setting(38.0, cut.right_run, at_left=True)]
        [-45.0, 0.0]
        >>> [round(a, 6) + 0.0 for a in nested_setting(38.0, cut.left_run, at_left=False)]
        [45.0, 0.0]

    References:
        The plane's normal in the saw's directions (x right, y up, z from the fence to you); a
        handle swung right by t and a blade leaning left by b cut along the plane whose normal is
        (cos t cos b, sin b, -sin t cos b).
    """
    x, y, z = _normal_on_saw(spring_deg, cut, -1.0 if at_left else 1.0)
    return NestedSetting(
        table_deg=math.degrees(math.atan2(-z, x)),
        lean_deg=math.degrees(math.asin(max(-1.0, min(1.0, y)))),
    )


def _normal_on_saw(spring_deg: float, cut: SawAngles, way: float) -> Vector:
    """Return the plane's normal on the saw, its x positive; way is + for a right-hand end.

    References:
        Along the board to the right is -x; across, from bottom to ceiling edge, leads from the
        fence down to the table; out of the face leads up and to you.
    """
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    spring = math.radians(spring_deg)
    along = (math.cos(mitre) * math.cos(bevel), 0.0, 0.0)
    across = (0.0, -math.cos(spring), math.sin(spring))
    face = (0.0, math.sin(spring), math.cos(spring))
    rest = plus(times(across, -math.sin(mitre) * math.cos(bevel)), times(face, math.sin(bevel)))
    return plus(along, times(rest, -way))

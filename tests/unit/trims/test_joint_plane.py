import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from longpoint.trims.joint_plane import (
    BoardFrame,
    Vector,
    cross,
    dot,
    plus,
    saw_angles,
    times,
    unit,
)

FLAT = BoardFrame(outward=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), face=(0.0, 0.0, 1.0))

angles = st.floats(-80.0, 80.0)


def cut_plane(mitre_deg: float, bevel_deg: float) -> Vector:
    """Return the blade's normal, turned as a saw is: the table by the mitre, then the tilt."""
    mitre, bevel = math.radians(mitre_deg), math.radians(bevel_deg)
    # Swung about the upright, the blade's normal stays level; tilted, it leaves the level.
    swung = (math.cos(mitre), -math.sin(mitre), 0.0)
    return plus(times(swung, math.cos(bevel)), times((0.0, 0.0, 1.0), math.sin(bevel)))


@given(angles, angles)
def test_a_blade_turned_and_tilted_is_told_by_its_two_angles(mitre: float, bevel: float) -> None:
    found = saw_angles(FLAT, cut_plane(mitre, bevel))

    assert found.mitre_deg == pytest.approx(mitre, abs=1e-9)
    assert found.bevel_deg == pytest.approx(bevel, abs=1e-9)


@given(angles, angles)
def test_a_plane_has_no_front(mitre: float, bevel: float) -> None:
    normal = cut_plane(mitre, bevel)

    assert saw_angles(FLAT, times(normal, -3.0)) == pytest.approx(saw_angles(FLAT, normal))


@given(angles, angles, st.floats(1.0, 200.0), st.floats(1.0, 60.0))
def test_the_edges_of_the_cut_run_out_as_the_angles_say(
    mitre: float, bevel: float, width_mm: float, thickness_mm: float
) -> None:
    m = cut_plane(mitre, bevel)
    assume(abs(m[0]) > 1e-3)

    def along_mm(across_mm: float, out_mm: float) -> float:
        return -(across_mm * m[1] + out_mm * m[2]) / m[0]

    outer_less_inner = along_mm(width_mm, 0.0) - along_mm(0.0, 0.0)
    face_less_back = along_mm(0.0, 0.0) - along_mm(0.0, -thickness_mm)

    assert (outer_less_inner > 0) == (mitre > 0) or abs(outer_less_inner) < 1e-6
    assert outer_less_inner == pytest.approx(width_mm * math.tan(math.radians(mitre)), rel=1e-6)
    assert (face_less_back < 0) == (bevel > 0) or abs(face_less_back) < 1e-6


def test_the_board_may_lie_anyhow_in_the_room() -> None:
    along, across = unit((1.0, 2.0, 2.0)), unit((2.0, 1.0, -2.0))
    face = cross(along, across)
    turned = BoardFrame(outward=along, across=across, face=face)
    flat_normal = cut_plane(31.62, 33.86)
    normal = plus(
        plus(times(along, flat_normal[0]), times(across, flat_normal[1])),
        times(face, flat_normal[2]),
    )

    assert dot(along, across) == pytest.approx(0.0)
    assert saw_angles(turned, normal) == pytest.approx((31.62, 33.86))

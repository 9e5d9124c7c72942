"""How the ends of a cornice's runs are cut."""

import math

import pytest

from longpoint.pieces.piece import CutKind, EndCut, Role
from longpoint.trims.cornice import drop_mm, projection_mm
from tests.house_documents import wall
from tests.unit.catalogue.cornice_houses import pieces, planned, stops

DROP_MM = drop_mm(90.0, 38.0)
OUT_MM = projection_mm(90.0, 38.0)
FACE_OUT_MM = 18.0 * math.cos(math.radians(38.0))
"""How far the bottom edge of the face stands off the wall."""
NOOK = (
    wall("N", length=2000, corner=90),
    wall("E", length=1500, corner=270),
    wall("S", length=900, corner=90),
)


def angles(cut: EndCut) -> tuple[float, float]:
    return (cut.mitre_deg, cut.bevel_deg)


def test_a_square_room_gets_the_longer_runs_through_and_the_shorter_scribed_over_them() -> None:
    found = pieces(planned())
    assert list(found) == ["N", "E", "S", "W"]
    assert {piece.role for piece in found.values()} == {Role.CORNICE}
    for mark in ("N", "S"):
        assert (found[mark].left.kind, found[mark].right.kind) == (CutKind.SQUARE, CutKind.SQUARE)
        assert found[mark].inner_mm == pytest.approx(4000.0)
    for mark in ("E", "W"):
        for cut in (found[mark].left, found[mark].right):
            assert cut.kind is CutKind.SCRIBE
            assert cut.mitre_deg == pytest.approx(-31.62, abs=0.01)
            assert cut.bevel_deg == pytest.approx(33.86, abs=0.01)


def test_a_scribed_run_is_as_long_on_the_wall_as_its_wall_and_shorter_on_its_face() -> None:
    """In plan each edge stops as far short of the corner as it stands off the wall."""
    run = pieces(planned())["E"]
    assert run.back_mm == pytest.approx(3000.0)
    assert run.inner_mm == pytest.approx(3000.0 - 2.0 * FACE_OUT_MM)
    assert run.outer_mm == pytest.approx(3000.0 - 2.0 * (OUT_MM + FACE_OUT_MM))


def test_mitred_corners_leave_every_run_the_length_of_its_wall() -> None:
    found = pieces(planned(corners="mitre"))
    assert [piece.back_mm for piece in found.values()] == pytest.approx([4000, 3000, 4000, 3000])
    assert {piece.left.kind for piece in found.values()} == {CutKind.COMPOUND}


def test_an_external_corner_has_both_signs_changed_and_the_ceiling_edge_the_longer() -> None:
    found = pieces(planned(NOOK, closed=False))
    cut = found["E"].right
    assert cut.kind is CutKind.COMPOUND
    assert cut.mitre_deg == pytest.approx(31.62, abs=0.01)
    assert cut.bevel_deg == pytest.approx(-33.86, abs=0.01)
    assert angles(cut) == pytest.approx(angles(found["S"].left))
    run = found["S"]
    assert run.outer_mm - run.inner_mm == pytest.approx(OUT_MM)


def test_a_scotia_at_45_is_no_other_thing() -> None:
    run = pieces(planned(spring=45))["E"]
    assert run.left.mitre_deg == pytest.approx(-35.26, abs=0.01)
    assert run.left.bevel_deg == pytest.approx(30.0, abs=0.01)


def test_a_ceiling_that_breaks_on_a_wall_gets_a_joint_that_needs_a_lean_only_when_nested() -> None:
    walls = (wall("N", length=3000),)
    found = pieces(
        planned(walls, closed=False, climb=[{"wall": "N", "from_left": 1000, "slope": 20}])
    )
    level, slope = found["N-1"], found["N-2"]
    assert level.back_mm == pytest.approx(1000.0 + DROP_MM * math.tan(math.radians(10.0)))
    past_mm = 2000.0 - DROP_MM * math.tan(math.radians(10.0))
    plumb_mm = DROP_MM * math.tan(math.radians(20.0))
    on_slope_mm = past_mm / math.cos(math.radians(20.0))
    assert slope.hand_sum.startswith("wall N 3000 - 1000 - 12.5 = 1987.5; over cos 20.0 = ")
    # The bottom edge of the back, or the ceiling edge: cut plumb at the right, halved at the left.
    ceiling_mm = on_slope_mm - DROP_MM * math.tan(math.radians(10.0)) + plumb_mm
    assert slope.back_mm == pytest.approx(max(on_slope_mm, ceiling_mm))
    assert "nested: table square, blade leaning 10.0 to the left" in level.notes[-1]
    assert angles(level.right) == pytest.approx(angles(slope.left))


def test_runs_that_climb_alike_to_a_corner_are_planned() -> None:
    walls = (wall("N", length=2000, corner=90), wall("E", length=1500))
    climb = [{"wall": "N", "slope": 15}, {"wall": "E", "slope": -15}]
    found = pieces(planned(walls, closed=False, corners="mitre", climb=climb))
    assert angles(found["N"].right) == pytest.approx(angles(found["E"].left))


def test_slopes_that_differ_by_less_than_is_seen_are_joined() -> None:
    walls = (wall("N", length=2000, corner=90), wall("E", length=1500))
    climb = [{"wall": "N", "slope": 15}, {"wall": "E", "slope": -15.05}]
    assert stops(planned(walls, closed=False, climb=climb)) == []
    climb = [{"wall": "N", "slope": 15}, {"wall": "E", "slope": -16}]
    assert len(stops(planned(walls, closed=False, climb=climb))) == 1


def test_a_run_through_into_a_sharp_corner_is_cut_to_the_wall() -> None:
    walls = (wall("N", length=2000, corner=75), wall("E", length=1500))
    run = pieces(planned(walls, closed=False))["N"]
    assert run.right.kind is CutKind.COMPOUND
    assert run.back_mm == pytest.approx(2000.0)
    short_mm = (OUT_MM + FACE_OUT_MM) / math.tan(math.radians(75.0))
    assert run.outer_mm == pytest.approx(2000.0 - short_mm)


def test_a_run_through_into_a_corner_a_little_under_square_is_cut_square_and_stops_short() -> None:
    walls = (wall("N", length=2000, corner=89), wall("E", length=1500))
    run = pieces(planned(walls, closed=False))["N"]
    assert run.right.kind is CutKind.SQUARE
    short_mm = (OUT_MM + FACE_OUT_MM) / math.tan(math.radians(89.0))
    assert run.back_mm == pytest.approx(2000.0 - short_mm)


def test_open_ends_are_square_unless_a_return_is_asked_for() -> None:
    walls = (wall("N", length=2000),)
    assert list(pieces(planned(walls, closed=False))) == ["N"]
    plan = planned(walls, closed=False, ends="return")
    found = pieces(plan)
    assert list(found) == ["N", "N-return-left", "N-return-right"]
    reach_mm = OUT_MM + FACE_OUT_MM
    run, end = found["N"], found["N-return-left"]
    assert run.outer_mm == pytest.approx(2000.0)
    assert run.back_mm == pytest.approx(2000.0 - 2.0 * FACE_OUT_MM)
    assert end.outer_mm == pytest.approx(reach_mm)
    assert end.inner_mm == pytest.approx(FACE_OUT_MM)
    assert angles(end.right) == pytest.approx(angles(run.left))
    assert end.left.kind is CutKind.SQUARE
    codes = [finding.code for finding in plan.findings]
    assert codes.count("return-small") == 2

from dataclasses import replace

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.plane import check_plane, is_shy_all_round
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import Plane
from tests.drawn_openings import house_of, opening_of, readings_of

SIDES = readings_of(top=886, bottom=886, left=1012, right=1010)


def said(
    tl: float = 0,
    tr: float = 0,
    br: float = 0,
    bl: float = 0,
    *,
    kind: str = "window",
    edge: float | None = None,
) -> dict[str, Finding]:
    plane = Plane(tl_mm=tl, tr_mm=tr, br_mm=br, bl_mm=bl)
    opening = opening_of("X", replace(SIDES, plane=plane), kind=OpeningKind(kind))
    opening = replace(opening, lining_edge_mm=edge)
    return {f.code: f for f in check_plane(house_of(opening))}


def test_shy_all_round_needs_extension_pieces_and_says_what_orders_them() -> None:
    found = said(-6, -6, -6, -6)
    assert set(found) == {"shy-all-round"}
    assert found["shy-all-round"].severity is Severity.WARNING
    assert "extension pieces 6 deep, as thick as the reveal's edge" in found["shy-all-round"].do
    assert "extension-lining" in found["shy-all-round"].do


def test_a_reading_of_the_edge_gives_their_thickness() -> None:
    assert "6 to 8 deep, 18 thick" in said(-6, -7, -8, -6, edge=18.0)["shy-all-round"].do


def test_one_corner_nearer_is_not_shy_all_round() -> None:
    assert not is_shy_all_round(Plane(tl_mm=-6.0, tr_mm=-6.0, br_mm=-6.0, bl_mm=-4.0))
    assert is_shy_all_round(Plane(tl_mm=-6.0, tr_mm=-6.0, br_mm=-6.0, bl_mm=-5.0))


def test_a_frame_proud_on_one_jamb_and_shy_on_the_other_is_twisted() -> None:
    found = said(tl=-3, tr=2, br=4, bl=-2, kind="door")["twisted"]
    assert found.severity is Severity.WARNING
    assert "about 5 at the head" in found.wrong
    assert "door" in found.do


def test_a_millimetre_here_and_there_is_no_twist() -> None:
    assert "twisted" not in said(tl=-1, tr=1, br=-1, bl=1)
    assert "twisted" not in said(tl=0, tr=4)


def test_single_corners_are_told_where_their_joints_are_worked_out() -> None:
    assert said(tl=3, tr=-3, br=3) == {"twisted": said(tl=3, tr=-3, br=3)["twisted"]}
    assert said(tl=3) == {}


def test_a_reveal_in_plane_is_not_spoken_of() -> None:
    assert said() == {}
    assert check_plane(house_of(opening_of("X", SIDES))) == ()

import math
from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.plane import check_plane, open_at_face_mm, opened_between
from longpoint.survey.openings import Layout, OpeningKind
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import Plane
from tests.drawn_openings import house_of, opening_of, readings_of

SIDES = readings_of(top=886, bottom=886, left=1012, right=1010)


def said(
    tl: float = 0, tr: float = 0, br: float = 0, bl: float = 0, *, kind: str = "window"
) -> dict[str, Finding]:
    plane = Plane(tl_mm=tl, tr_mm=tr, br_mm=br, bl_mm=bl)
    opening = opening_of("X", replace(SIDES, plane=plane), kind=OpeningKind(kind))
    return {f.code: f for f in check_plane(house_of(opening))}


@pytest.mark.parametrize(("from_toe_mm", "open_mm"), [(0.0, 0.71), (57.0, 0.76)])
def test_a_piece_proud_3_opens_as_worked_out_in_three_dimensions(
    from_toe_mm: float, open_mm: float
) -> None:
    # Worked value for T 19, bearing 57, proud 3: 0.71 at the toe, 0.76 at the heel.
    found = open_at_face_mm(3.0, 19.0, 57.0, from_toe_mm=from_toe_mm)
    assert found == pytest.approx(open_mm, abs=0.005)


def test_the_rough_figure_is_the_toe_of_two_pieces_that_bear_on_their_whole_width() -> None:
    # root 2 x T x p / w, as for a head 5 proud under 90 x 20: 1.57.
    assert 2 * open_at_face_mm(5.0, 20.0, 90.0) == pytest.approx(math.sqrt(2) * 20 * 5 / 90)


def test_proud_2_is_a_warning_with_what_the_mitre_will_show() -> None:
    found = said(tl=2, tr=1, bl=1)["proud"]
    assert found.severity is Severity.WARNING
    assert "0.5 to 0.7 if one piece tilts" in found.wrong
    assert "0.9 to 1.3 if both do" in found.wrong
    assert "top left" in found.wrong
    assert "assumed 19" in found.wrong


def test_proud_1_is_a_note() -> None:
    assert said(tl=1)["proud"].severity is Severity.NOTE


def test_a_reading_of_the_reveals_edge_replaces_the_assumed_one() -> None:
    plane = Plane(tl_mm=2.0)
    opening = replace(opening_of("X", replace(SIDES, plane=plane)), lining_edge_mm=5.0)
    house = house_of(opening)
    least, most = opened_between(house, opening, 3, 2.0)
    assert least.one_mm <= most.one_mm == pytest.approx(0.5, abs=0.03)
    (found,) = check_plane(house)
    assert "assumed" not in found.wrong


def test_the_thicker_of_two_pieces_opens_more_and_both_add_up() -> None:
    opening = opening_of("X", replace(SIDES, plane=Plane(tl_mm=2.0)))
    house = replace(
        house_of(opening),
        profiles=(
            Profile(name="AR57", width_mm=57.0, thickness_mm=19.0),
            Profile(name="AR57T", width_mm=57.0, thickness_mm=38.0),
        ),
    )
    thick = replace(opening, profiles=replace(opening.profiles, head="AR57T"))
    least, _ = opened_between(house, thick, 3, 2.0)
    assert least.both_mm == pytest.approx(3 * least.one_mm)


def test_the_foot_of_a_door_has_no_mitre_to_open() -> None:
    found = said(bl=3, kind="door")["proud"]
    assert found.severity is Severity.NOTE
    assert "no mitre" in found.wrong


def test_shy_closes_at_the_face_and_is_a_note() -> None:
    found = said(tr=-3)["shy"]
    assert found.severity is Severity.NOTE
    assert "closes at the face" in found.wrong


def test_shy_all_round_needs_extension_pieces() -> None:
    found = said(-6, -6, -6, -6)
    assert set(found) == {"shy-all-round"}
    assert found["shy-all-round"].severity is Severity.WARNING
    assert "extension pieces 6" in found["shy-all-round"].do


def test_a_frame_proud_on_one_jamb_and_shy_on_the_other_is_twisted() -> None:
    found = said(tl=-3, tr=2, br=4, bl=-2, kind="door")["twisted"]
    assert found.severity is Severity.WARNING
    assert "about 5 at the head" in found.wrong
    assert "door" in found.do


def test_a_millimetre_here_and_there_is_no_twist() -> None:
    assert "twisted" not in said(tl=-1, tr=1, br=-1, bl=1)
    assert "twisted" not in said(tl=0, tr=4)


def test_a_reveal_in_plane_is_not_spoken_of() -> None:
    assert said() == {}
    assert check_plane(house_of(opening_of("X", SIDES))) == ()


def test_a_board_leaves_only_the_head_mitred() -> None:
    opening = opening_of("X", replace(SIDES, plane=Plane(bl_mm=4.0)))
    (found,) = check_plane(house_of(replace(opening, layout=Layout.BOARD_AND_APRON)))
    assert found.severity is Severity.NOTE

import math
from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.forecast.face_lines import FACE_STEP_MM
from longpoint.pieces.proud_findings import LEVEL_MM, check_proud, proud_findings
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.openings import Flush, Joint, Layout, Method, OpeningKind
from longpoint.survey.profiles import Profile
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
    profile: tuple[float, float] = (57.0, 19.0),
    units: Units = Units.MM,
    **settings: object,
) -> dict[str, Finding]:
    plane = Plane(tl_mm=tl, tr_mm=tr, br_mm=br, bl_mm=bl)
    opening = opening_of("X", replace(SIDES, plane=plane), kind=OpeningKind(kind))
    opening = replace(opening, **settings)  # type: ignore[arg-type]
    section = Profile(name="AR57", width_mm=profile[0], thickness_mm=profile[1])
    house = replace(house_of(opening, units=units), profiles=(section,))
    return {f.code: f for f in proud_findings(house, opening)}


def test_proud_2_is_a_warning_with_what_the_mitre_will_show() -> None:
    found = said(tl=2, tr=1, bl=1)["proud"]
    assert found.severity is Severity.WARNING
    # Bearing 57 + 5 - 19: sin 45 x 19 x 2 / 43 = 0.62 at the toe, twice that with both.
    assert "top left 0.6 to 0.7 if one piece tilts, 1.2 to 1.3 if both do" in found.wrong
    assert "assumed 19" in found.wrong


def test_under_90_by_20_proud_5_opens_more_than_the_rough_rule_says() -> None:
    # root 2 x 20 x 5 / 90 = 1.57 supposes that it bears on its whole width.
    found = said(tl=5, tr=4, br=1, bl=2, profile=(90.0, 20.0))["proud"]
    toe_mm = 2.0 * math.sin(math.pi / 4) * 20.0 * 5.0 / 76.0
    assert f"{toe_mm:.1f} to 2.1 if both do" in found.wrong
    assert "Advised (common practice, no source): plane or re-set the reveal" in found.do
    assert "back by 2 at the bottom left, 1 at the bottom right" in found.do


def test_every_way_is_listed_with_its_figures_and_one_is_advised() -> None:
    found = said(tl=3)["proud"]
    advised, others = found.do.split("One of these only")
    assert "flush pack: top left 3 under the head, the same cuts" in advised
    assert "flush back-bevel" in others
    assert "44.9 and -2.8" in others
    assert "flush re-set: back by 3" in others
    assert "flush leave" in others


def test_a_head_proud_at_both_ends_is_advised_no_packer() -> None:
    found = said(tl=3, tr=3)["proud"]
    assert "top left nothing under the head, the same cuts" in found.do
    assert "3 under the head" not in found.do


def test_proud_1_is_a_note() -> None:
    assert said(tl=1)["proud"].severity is Severity.NOTE


def test_what_stays_within_the_crews_limit_is_to_be_left() -> None:
    assert said(tl=1, max_gap_mm=0.8)["proud"].do.startswith("Leave it")


def test_a_step_beyond_what_the_forecast_calls_level_is_said() -> None:
    assert LEVEL_MM == FACE_STEP_MM
    found = said(tl=2)["proud"]
    assert "up to 2.6 above the other's at the heel" in found.wrong
    assert "forecast of level faces leaves this out" in found.wrong


def test_a_reading_of_the_reveals_edge_replaces_the_assumed_one() -> None:
    found = said(tl=2, lining_edge_mm=7.0)["proud"]
    assert "0.5 if one piece tilts" in found.wrong
    assert "assumed" not in found.wrong


def test_a_house_of_inches_reads_its_gaps_off_the_tape() -> None:
    assert "top left 1/32 if one piece tilts" in said(tl=2, units=Units.INCH)["proud"].wrong


def test_the_foot_of_a_door_has_no_mitre_to_open() -> None:
    found = said(bl=3, kind="door")["proud"]
    assert found.severity is Severity.NOTE
    assert "no mitre" in found.wrong


def test_a_board_leaves_only_the_head_mitred() -> None:
    assert said(bl=4, layout=Layout.BOARD_AND_APRON)["proud"].severity is Severity.NOTE


def test_a_butt_under_a_tilted_head_has_its_own_figure() -> None:
    found = said(tl=2, joint=Joint.BUTT)["proud"]
    # 19 x 2 / 43.
    assert "stands open 0.9 at the face" in found.wrong
    assert "no mitre" in said(tl=2, joint=Joint.BLOCKS)["proud"].wrong


def test_a_bench_frame_keeps_its_joints() -> None:
    found = said(tl=3, method=Method.BENCH)["proud"]
    assert "keeps its joints" in found.wrong
    assert "outer edges" in found.do


def test_too_proud_for_any_trim_is_to_be_re_set() -> None:
    found = said(tl=14)["proud"]
    assert found.severity is Severity.WARNING
    assert "15 degrees" in found.wrong
    assert found.do.startswith("Re-set the reveal")


def test_a_way_that_is_chosen_is_not_advised_again() -> None:
    found = said(tl=3, flush=Flush.BACK_BEVEL)["proud"]
    assert found.severity is Severity.NOTE
    assert "You chose flush back-bevel" in found.do


def test_shy_closes_at_the_face_gaps_behind_and_is_a_note() -> None:
    found = said(tr=-2)["shy"]
    assert found.severity is Severity.NOTE
    assert "closes at the face" in found.wrong
    assert "Pack behind the inner edge" in found.do
    # Nailed down over 14: sin 45 x 19 x 2 / 14 and the turned width, twice with both.
    assert "2.3 with one piece down" in found.wrong


def test_too_shy_to_nail_down_on_is_bridged() -> None:
    assert "nailed down" not in said(tr=-5)["shy"].wrong


def test_shy_all_round_is_the_frames_and_said_elsewhere() -> None:
    assert said(-6, -6, -6, -6) == {}


def test_a_reveal_in_plane_is_not_spoken_of() -> None:
    assert said() == {}
    assert proud_findings(house_of(opening_of("X", SIDES)), opening_of("X", SIDES)) == ()


def test_fitted_corners_and_both_faces_are_used() -> None:
    plane, plane_b = Plane(tl_mm=3.0), Plane(tr_mm=2.0)
    lengths = readings_of(top=900, bottom=860, left=1000, right=1000, rising=1300, falling=1346)
    opening = replace(
        opening_of("X", replace(lengths, plane=plane)),
        faces=2,
        readings_b=replace(lengths, plane=plane_b),
    )
    house = house_of(opening)
    shapes = Shapes(openings=fit_openings(house)[0])
    first, second = check_proud(house, shapes)
    assert first.wrong != proud_findings(house, opening)[0].wrong
    assert second.read.startswith("On the second face the reveal stands proud 2")
    assert len(check_proud(house, Shapes())) == 2


@pytest.mark.parametrize("flush", list(Flush))
def test_no_text_promises_two_remedies_at_once(flush: Flush) -> None:
    found = said(tl=3, flush=flush)["proud"]
    assert ("One of these only" in found.do) == (flush is Flush.LEAVE)

"""What is planned of a set meets what was read of it at the right corner and side."""

from typing import Any

import pytest

from longpoint.errors import SurveyError
from longpoint.forecast.on_the_wall import TapAdvice, seen_frame, tap_advice, tap_rules
from longpoint.forecast.planned_face import PlannedFace, planned_faces
from longpoint.forecast.tapping.diagnosis import Observable
from longpoint.forecast.tapping.lie import TapPlace, lie_of
from longpoint.forecast.tapping.programme import TAP_ROOM_MM
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint, SeenQuirks
from longpoint.linear.simplex import SimplexSolver
from longpoint.pipeline import check_house
from longpoint.survey.as_built import AsBuilt
from longpoint.survey.house_file import read_house
from tests.house_documents import door, house, window

CORNERS = ("bl", "br", "tr", "tl")
SHUT = {corner: [0, 0] for corner in CORNERS}


def face_of(opening: dict[str, Any], face: str = "") -> PlannedFace:
    survey = read_house(house(openings=[opening]))
    shapes, _ = check_house(survey)
    return next(
        each
        for each in planned_faces(survey.house, shapes, frozenset())
        if each.fitted.face == face
    )


def built(face: PlannedFace) -> AsBuilt:
    found = face.opening.as_built_b if face.fitted.face == "b" else face.opening.as_built
    assert found is not None
    return found


def advice(opening: dict[str, Any], face: str = "", **changes: Any) -> TapAdvice:  # noqa: ANN401
    survey = read_house(house(openings=[opening], **changes))
    shapes, _ = check_house(survey)
    return tap_advice(survey.house, shapes, opening["mark"], face, solver=SimplexSolver())


@pytest.mark.parametrize(("opening", "joints"), [(window(), 4), (door(), 2)])
def test_each_gap_is_seen_at_the_joint_of_its_corner(opening: dict[str, Any], joints: int) -> None:
    gaps = {corner: [0.1 * (i + 1), 0.01 * (i + 1)] for i, corner in enumerate(CORNERS)}
    face = face_of({**opening, "as_built": {"gaps": gaps}})
    seen = seen_frame(face, built(face), 0.05)
    assert len(seen.joints) == joints
    for joint, read in zip(face.frame.joints, seen.joints, strict=True):
        nearest = min(range(4), key=lambda i: face.fitted.corners[i].distance_mm(joint.heel))
        assert [read.heel_mm, read.toe_mm] == pytest.approx(gaps[CORNERS[nearest]])


def test_what_was_not_read_stays_so() -> None:
    face = face_of(window(as_built={"gaps": {"bl": [0.2, "?"]}}))
    seen = seen_frame(face, built(face), 0.05)
    assert sorted(joint == SeenJoint() for joint in seen.joints) == [False, True, True, True]
    assert [j.toe_mm for j in seen.joints] == [None] * 4
    assert seen.quirks == ()


def test_a_quirk_counts_by_what_it_is_over_the_plan_from_its_own_end() -> None:
    face = face_of(window(as_built={"quirks": {"left": [7, 5, 4.5]}}))
    seen = seen_frame(face, built(face), 0.05)
    left = face.side_index.index(3)
    assert seen.quirks_of(left) == SeenQuirks(start_mm=2.0, middle_mm=0.0, end_mm=-0.5)
    top_left = face.fitted.corners[3]
    assert face.frame.sides[left].start.distance_mm(top_left) < 10.0


def test_faces_standing_apart_off_the_wall_are_no_step_between_inner_edges() -> None:
    face = face_of(window(as_built={"gaps": SHUT, "steps": {"bl": 0.9}}))
    assert {joint.step_mm for joint in seen_frame(face, built(face), 0.05).joints} == {None}


def test_in_a_batch_legs_are_tapped_a_little_and_head_and_sill_are_free() -> None:
    face = face_of(window(tap_room=0.7))
    rules = tap_rules(face)
    rooms = {face.side_index[piece]: rules.room_mm(piece) for piece in range(4)}
    assert rooms == {0: 5.0, 1: 0.7, 2: 5.0, 3: 0.7}
    assert tap_rules(face_of(window())).tap_room_mm == TAP_ROOM_MM


def test_legs_without_any_room_stay_and_marked_in_place_nothing_is_free() -> None:
    face = face_of(window(tap_room=0))
    legs = [piece for piece, side in enumerate(face.side_index) if side in (1, 3)]
    assert {tap_rules(face).room_mm(leg) for leg in legs} == {0.0}
    assert tap_rules(face_of(window(method="in-place"))).free == frozenset()


def test_a_leg_nailed_out_at_one_end_is_found_and_tapped_back() -> None:
    """A leg put out by 0.6 on a set that is right: gaps and quirks by the rows of the frame."""
    face = face_of(window())
    count = len(face.frame.joints)
    lie = lie_of(face.frame, SeenFrame(joints=(SeenJoint(),) * count), face.limits)
    right = face.side_index.index(1)
    column = 3 * right + list(TapPlace).index(TapPlace.END)
    moved = [0.6 * row.taps[column] for row in lie]
    gaps = {
        CORNERS[(face.side_index[joint.before] + 1) % 4]: [moved[4 * i], moved[4 * i + 1]]
        for i, joint in enumerate(face.frame.joints)
    }
    quirks = {
        name: [5.0 + q for q in moved[4 * count + 3 * i : 4 * count + 3 * i + 3]]
        for i, name in enumerate(("sill", "right", "head", "left"))
    }
    said = advice(window(as_built={"gaps": gaps, "quirks": quirks}))
    assert said.diagnosis.observable is Observable.POSE
    (tap,) = said.taps.taps
    assert (tap.piece, tap.place) == (right, TapPlace.END)
    assert tap.move_mm == pytest.approx(-0.6, abs=0.11)
    assert said.words.taps[0].startswith("Right leg, top: tap in 0.")
    assert said.taps.after_worst_mm is not None
    assert said.taps.after_worst_mm < 0.1


def test_heels_open_all_round_are_cuts_past_their_angle() -> None:
    said = advice(window(as_built={"gaps": {corner: [0.8, 0] for corner in CORNERS}}))
    assert said.diagnosis.observable is Observable.ANGLE_SUM
    (angle,) = said.diagnosis.angles
    assert angle.over_deg > 0.0


def test_the_second_face_is_advised_by_its_own_readings() -> None:
    both = door(
        faces=2,
        as_built={"gaps": {"tr": [0, 0], "tl": [0, 0]}},
        b={"as_built": {"gaps": {"tr": [0.3, 0], "tl": [0.1, 0]}}},
    )
    assert advice(both).seen.worst_gap_mm == 0.0
    said = advice(both, "b")
    assert said.face == "b"
    assert [joint.heel_mm for joint in said.seen.joints] == [0.3, 0.1]


def test_filler_is_named_where_the_moulding_is_primed() -> None:
    wide = window(as_built={"gaps": {corner: [0.9, 0] for corner in CORNERS}}, max_gap=0.5)
    primed = {"OG57": {"face": 57, "thickness": 18, "material": "primed pine"}}
    assert advice(wide, profiles=primed).remedy.filler_will_do
    assert not advice(wide).remedy.filler_will_do


def test_without_readings_it_says_what_to_write() -> None:
    with pytest.raises(SurveyError) as raised:
        advice(door())
    assert "as_built = { gaps = { tr = [0, 0], tl = [0, 0] } }" in raised.value.do


def test_an_unknown_mark_or_face_is_refused_with_those_there_are() -> None:
    survey = read_house(house(openings=[window()]))
    shapes, _ = check_house(survey)
    with pytest.raises(SurveyError, match="W1"):
        tap_advice(survey.house, shapes, "W9", solver=SimplexSolver())
    with pytest.raises(SurveyError, match="1 face"):
        tap_advice(survey.house, shapes, "W1", "b", solver=SimplexSolver())

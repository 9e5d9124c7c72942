import math
from dataclasses import replace

import pytest

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import Cause, ErrorName
from longpoint.forecast.fitup.frame import SLOTS, Slot
from longpoint.forecast.planned_face import PlannedFace, planned_faces
from longpoint.forecast.terms import FrameErrors, frame_errors
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.crew import WallAge
from longpoint.survey.house import House, SurveyResult
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Method, Mitres
from tests import house_documents

WIDTH_MM, HEIGHT_MM, FACE_MM, QUIRK_MM = 1200.0, 1050.0, 70.0, 4.5

FOUR_SIDES = {
    "width": None,
    "height": None,
    "top": 1200,
    "bottom": 1200,
    "left": 1050,
    "right": 1050,
}


def read(**window: object) -> SurveyResult:
    keys: dict[str, object] = {key: None for key in house_documents.SIZE}
    keys |= {"width": WIDTH_MM, "height": HEIGHT_MM, **window}
    document = house_documents.house(
        openings=[house_documents.window(**keys)],
        saws={"S1": {"kerf": 2.4, "end_trim": 10}},
        profiles={
            "OG57": {"face": FACE_MM, "thickness": 18},
            "SK95": {"face": 95, "thickness": 16},
        },
    )
    document["defaults"] |= {"quirk": QUIRK_MM, "quirk_band": [2.7, 6.3]}
    return read_house(document)


def planned(house: House) -> PlannedFace:
    openings, _ = fit_openings(house)
    (face,) = planned_faces(house, Shapes(openings=openings), frozenset())
    return face


def errors(house: House) -> tuple[PlannedFace, FrameErrors]:
    face = planned(house)
    return face, frame_errors(face, house_budget(house), house)


def u_of(found: FrameErrors, weights: dict[int, float], *causes: Cause) -> float:
    """Return the standard uncertainty of a weighted sum of slots, from some causes or all."""
    return math.hypot(
        *(
            sum(weight * term.effect[slot] for slot, weight in weights.items())
            for term in found.terms
            if not causes or term.cause in causes
        )
    )


def angle_sum_weights(face: PlannedFace) -> dict[int, float]:
    return {SLOTS * end.side + end.turn_slot: math.degrees(1.0) for end in face.ends}


def width_weights(face: PlannedFace) -> dict[int, float]:
    """How much wider the frame is than the opening: its two pieces' mean, less the reveal."""
    bottom, right, head, left = range(4)
    weights: dict[int, float] = {}
    for side in (bottom, head):
        for slot in (Slot.LENGTH_START, Slot.LENGTH_END):
            weights[SLOTS * side + slot] = 0.5
    for side in (right, left):
        weights[SLOTS * side + Slot.REVEAL_MIDDLE] = -1.0
    return weights


def test_the_angle_sum_of_a_window_is_mostly_the_saw() -> None:
    # Added up by hand from the defaults: scale 8 x 0.1; cuts 0.05 sqrt 8; bow 8 x 0.15 L mrad.
    face, found = errors(read().house)
    weights = angle_sum_weights(face)
    lengths_m = [side.start.distance_mm(side.end) / 1000.0 for side in face.frame.sides]
    bow_deg = math.degrees(math.hypot(*(8.0 * 0.15e-3 * length for length in lengths_m)))
    assert u_of(found, weights, Cause.SAW) == pytest.approx(0.8, abs=1e-9)
    assert u_of(found, weights, Cause.CUTS) == pytest.approx(0.05 * math.sqrt(8.0), abs=1e-9)
    assert u_of(found, weights, Cause.TIMBER) == pytest.approx(bow_deg, abs=1e-9)
    assert u_of(found, weights) == pytest.approx(math.hypot(0.8, 0.1414, bow_deg), abs=1e-4)


def test_the_width_of_a_window_rests_on_the_reveal_the_reading_and_the_saw() -> None:
    # By hand: bow 0.4 of two sides, one reading 0.55, saw scale and fence each 2 w x 0.1 deg, mark
    # and cut 0.35 of two pieces, offsets 0.2 and 0.2, width 0.15 of two pieces.
    face, found = errors(read().house)
    weights = width_weights(face)
    turned_mm = 2.0 * FACE_MM * math.radians(0.1)
    hand_set_mm = 2.0 * FACE_MM * math.radians(0.05) / math.sqrt(2.0)
    assert u_of(found, weights, Cause.REVEAL) == pytest.approx(0.4 * math.sqrt(2.0), abs=1e-9)
    assert u_of(found, weights, Cause.READINGS) == pytest.approx(0.5515, abs=1e-3)
    assert u_of(found, weights, Cause.SAW) == pytest.approx(turned_mm * math.sqrt(2.0), abs=1e-6)
    assert u_of(found, weights, Cause.CUTS) == pytest.approx(hand_set_mm, abs=1e-6)
    assert u_of(found, weights, Cause.WIDTH) == pytest.approx(0.15 / math.sqrt(2.0), abs=1e-9)
    assert u_of(found, weights, Cause.TAPE) == pytest.approx(0.2, abs=1e-9)
    marks_mm = math.hypot(0.2, 0.35 / math.sqrt(2.0))
    assert u_of(found, weights, Cause.MARKS) == pytest.approx(marks_mm, abs=1e-9)


def test_saw_and_tape_are_the_same_error_in_every_opening() -> None:
    survey = read()
    first = survey.house.openings[0]
    house = replace(survey.house, openings=(first, replace(first, mark="W2")))
    openings, _ = fit_openings(house)
    faces = planned_faces(house, Shapes(openings=openings), frozenset())
    budget = house_budget(house)
    one, other = (frame_errors(face, budget, house) for face in faces)
    shared = [t for t in one.terms if t.is_shared]
    assert [t.name for t in shared] == ["saw scale", "saw fence", "inside reading, T1", "mark"]
    assert shared == [t for t in other.terms if t.is_shared]


def test_two_tapes_add_an_error_that_grows_with_length() -> None:
    house = read().house
    other = replace(house.tape("T1"), name="T2")
    house = replace(house, tapes=(*house.tapes, other), saw_tape="T2")
    face, found = errors(house)
    (scale,) = (t for t in found.terms if t.name == "tape scale, T1")
    # Class II: slope 0.2 mm per m for each of the two, as rectangular limits.
    wider = -sum(weight * scale.effect[slot] for slot, weight in width_weights(face).items())
    u_mm_per_m = math.sqrt(2.0) * 0.2 / math.sqrt(3.0)
    assert abs(wider) == pytest.approx(1.2 * u_mm_per_m, rel=1e-3)
    assert scale.is_shared


def test_old_walls_lean_more_where_nothing_was_read() -> None:
    new, old = read().house, read().house
    old = replace(old, crew=replace(old.crew, walls=WallAge.OLD))
    lean_mm = {}
    for name, house in (("new", new), ("old", old)):
        _, found = errors(house)
        (square,) = (t for t in found.terms if t.name.startswith("square"))
        lean_mm[name] = max(square.effect) - min(square.effect)
    assert lean_mm["old"] == pytest.approx(lean_mm["new"] * 4.0 / 1.5)


def test_six_readings_leave_nothing_taken_for_granted() -> None:
    sides = {
        "width": None,
        "height": None,
        "top": 1200,
        "bottom": 1200,
        "left": 1050,
        "right": 1050,
    }
    _, found = errors(read(**sides, rising=1594.5, falling=1594.5).house)
    assert not [t for t in found.terms if t.cause is Cause.SHAPE]
    assert len([t for t in found.terms if t.cause is Cause.READINGS]) == 6


def test_left_at_the_stop_a_leaning_opening_shows_in_the_quirk_alone() -> None:
    house = read(**FOUR_SIDES, rising=1596, falling=1593).house
    as_read = planned(house)
    opening = replace(house.openings[0], mitres=Mitres.AT_STOP)
    at_stop = planned(replace(house, openings=(opening,)))
    assert not any(as_read.known_off())
    assert any(not end.is_at_stop for end in as_read.ends)
    assert all(end.is_at_stop for end in at_stop.ends)
    known = at_stop.known_off()
    assert any(known)
    assert {i % SLOTS for i, x in enumerate(known) if abs(x) > 1e-9} <= {
        Slot.REVEAL_START,
        Slot.REVEAL_MIDDLE,
        Slot.REVEAL_END,
    }


def test_a_piece_marked_in_place_takes_no_length_from_the_tape() -> None:
    house = read().house
    opening = replace(house.openings[0], method=Method.IN_PLACE)
    face, found = errors(replace(house, openings=(opening,)))
    weights = width_weights(face)
    assert u_of(found, weights, Cause.READINGS, Cause.TAPE) == pytest.approx(0.0, abs=1e-12)
    assert u_of(found, weights, Cause.REVEAL) > 0.0


def test_a_known_bias_moves_the_frame_and_adds_no_doubt() -> None:
    house = read().house
    face = planned(house)
    budget = house_budget(house).changed(ErrorName.SAW_SCALE, bias=0.2, u=0.0)
    found = frame_errors(face, budget, house)
    turned_deg = sum(w * found.known[slot] for slot, w in angle_sum_weights(face).items())
    assert turned_deg == pytest.approx(8 * 0.2)
    assert u_of(found, angle_sum_weights(face), Cause.SAW) == pytest.approx(0.0, abs=1e-12)


def test_only_the_mitred_end_of_a_leg_turns() -> None:
    document = house_documents.house(openings=[house_documents.door()])
    house = read_house(document).house
    face, found = errors(house)
    assert len(face.ends) == 4
    turned = {
        slot % SLOTS + SLOTS * (slot // SLOTS)
        for term in found.terms
        for slot, x in enumerate(term.effect)
        if x and slot % SLOTS in (Slot.TURN_START, Slot.TURN_END)
    }
    assert turned == {SLOTS * end.side + end.turn_slot for end in face.ends}

import json
from dataclasses import replace

from longpoint.sheets.blocks import SheetState
from longpoint.sheets.plan_json import plan_document
from tests.unit.sheets.sample import OPENINGS, PIECES, PLAN, fitted

DOCUMENT = plan_document(PLAN)


def test_the_document_is_plain_json() -> None:
    assert json.loads(json.dumps(DOCUMENT, allow_nan=False)) == DOCUMENT


def test_the_fixed_keys_are_there() -> None:
    assert {"format", "house", "pieces", "sticks", "proof", "openings", "findings"} <= set(DOCUMENT)
    assert DOCUMENT["format"] == "longpoint-plan/1"
    assert {
        "mark", "opening", "run", "role", "profile", "inner_mm", "outer_mm", "short_mm", "long_mm",
        "hook_mm", "hook_from", "left", "right",
    } <= set(DOCUMENT["pieces"][0])  # fmt: skip
    assert set(DOCUMENT["pieces"][0]["left"]) == {"cut", "mitre_deg", "bevel_deg"}
    assert {"profile", "length_mm", "source", "pieces", "used_mm", "left_mm"} <= set(
        DOCUMENT["sticks"][0]
    )
    assert {"profile", "cost", "lower_bound", "optimal", "solver"} <= set(DOCUMENT["proof"][0])
    assert set(DOCUMENT["findings"][0]) == {"code", "severity", "place", "read", "wrong", "do"}


def test_lengths_and_angles_are_in_hundredths() -> None:
    for piece, entry in zip(PIECES, DOCUMENT["pieces"], strict=True):
        assert entry["inner_mm"] == round(piece.inner_mm, 2)
        assert entry["left"]["mitre_deg"] == round(piece.left.mitre_deg, 2)
        if piece.hook_mm is None:
            assert entry["hook_mm"] is None
            assert entry["hook_from"] is None


def test_openings_stand_in_house_order_with_the_held_ones() -> None:
    entries = DOCUMENT["openings"]
    assert [entry["mark"] for entry in entries] == ["W1", "W2", "W3", "D1", "W4"]
    assert [entry["verdict"] for entry in entries] == [None, None, "hold", None, "hold"]
    assert all(entry["p_close"] is None for entry in entries)
    assert entries[0]["corners_deg"] == [round(a, 2) for a in fitted("W1").corner_deg]
    assert entries[2]["corners_deg"] is None


def test_an_opening_with_two_faces_stands_once() -> None:
    a, b = (replace(fitted("D1"), face=face) for face in "ab")
    b = replace(b, corner_deg=a.corner_deg._replace(first=1.0))
    plan = replace(
        PLAN,
        house=replace(PLAN.house, openings=(replace(OPENINGS[3], faces=2),), held=()),
        shapes=replace(PLAN.shapes, openings=(a, b)),
    )
    (entry,) = plan_document(plan)["openings"]
    assert entry["corners_deg"] == [round(angle, 2) for angle in a.corner_deg]


def test_no_held_opening_has_a_piece() -> None:
    assert not {entry["opening"] for entry in DOCUMENT["pieces"]} & PLAN.held


def test_the_state_is_told() -> None:
    assert DOCUMENT["state"] == "current"
    assert plan_document(PLAN, SheetState.STALE)["state"] == "stale"

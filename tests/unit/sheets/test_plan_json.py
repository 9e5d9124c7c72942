import json
from dataclasses import replace

from longpoint.sheets.blocks import SheetState
from longpoint.sheets.plan_json import plan_document
from tests.unit.sheets.outlook_sample import ADVICE
from tests.unit.sheets.sample import FORECAST, OPENINGS, OUTLOOK, PIECES, PLAN, fitted, unproved

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


def test_spares_are_told_with_what_they_cover() -> None:
    og57, sk95 = DOCUMENT["spares"]
    assert og57["buy"] == [{"length_mm": 5400.0, "count": 1}]
    assert (og57["cut_again_p90"], og57["sets_forecast"]) == (1, 3)
    assert og57["covered"] == ["D1-left-leg"]
    assert (sk95["buy"], sk95["covered"], sk95["missing"]) == ([], [], 0)


def test_openings_stand_in_house_order_with_the_held_ones() -> None:
    entries = DOCUMENT["openings"]
    assert [entry["mark"] for entry in entries] == ["W1", "W2", "W3", "D1", "W4"]
    verdicts = [entry["verdict"] for entry in entries]
    assert verdicts == ["read-first", "batch", "hold", "cut-long", "hold"]
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


def test_chances_are_in_hundredths_and_none_is_over_99() -> None:
    closing = {entry["mark"]: entry["p_close"] for entry in DOCUMENT["openings"]}
    assert closing == {"W1": 0.87, "W2": 0.99, "W3": None, "D1": 0.71, "W4": None}
    by_mark = {entry["mark"]: entry for entry in DOCUMENT["openings"]}
    assert by_mark["W1"]["chances"] == {
        "gaps": 0.89, "quirk": 0.88, "fits": 0.87, "faces": 0.98, "all": 0.86, "first_order": 0.87,
    }  # fmt: skip
    assert max(by_mark["W2"]["chances"].values()) == 0.99
    assert by_mark["D1"]["main_cause"] == "face width"
    assert by_mark["D1"]["why"] == ADVICE[3].why


def test_a_held_opening_has_no_chances() -> None:
    for entry in DOCUMENT["openings"]:
        if entry["verdict"] == "hold":
            assert [entry[k] for k in ("p_close", "chances", "why", "main_cause")] == [None] * 4


def test_the_forecast_of_the_house_is_told_as_a_model() -> None:
    assert DOCUMENT["forecast"] == {
        "all_fit": 0.62, "misfits_mean": 0.41, "misfits_p90": 1, "draws": 400, "seed": 7,
        "if_proved": None, "model": True,
    }  # fmt: skip
    proved = plan_document(unproved())["forecast"]["if_proved"]
    assert (proved["all_fit"], proved["misfits_mean"], proved["misfits_p90"]) == (0.99, 0.02, 0)


def test_the_worse_of_two_faces_stands_for_an_opening() -> None:
    b = replace(FORECAST.faces[2], face="b")
    a = replace(b, face="a", chances=replace(b.chances, fits=0.92))
    two = replace(OUTLOOK, forecast=replace(FORECAST, faces=(a, b)))
    entries = plan_document(replace(PLAN, outlook=two))["openings"]
    assert next(e for e in entries if e["mark"] == "D1")["chances"]["fits"] == 0.71


def test_without_a_forecast_only_a_hold_is_a_verdict() -> None:
    document = plan_document(replace(PLAN, outlook=None))
    assert document["forecast"] is None
    assert [e["verdict"] for e in document["openings"]] == [None, None, "hold", None, "hold"]
    assert all(e["p_close"] is None and e["chances"] is None for e in document["openings"])


def test_the_state_is_told() -> None:
    assert DOCUMENT["state"] == "current"
    assert plan_document(PLAN, SheetState.STALE)["state"] == "stale"

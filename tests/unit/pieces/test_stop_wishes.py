"""What bench-made frames ask of the stop: within the quirk's band, pairs together."""

from typing import Any

from longpoint.house_plan import HousePlan
from longpoint.pieces.stop_lengths import StopWish, saw_stops, stop_wishes
from longpoint.pipeline import plan_house
from longpoint.survey.house_file import read_house


def opening(mark: str, top: float, lean: float = 0.0, **more: Any) -> dict[str, Any]:  # noqa: ANN401
    rising = ((top + lean) ** 2 + 1200**2) ** 0.5
    falling = ((top - lean) ** 2 + 1200**2) ** 0.5
    sides = {"left": 1200, "right": 1200, "top": top, "bottom": top}
    diagonals = {"rising": round(rising, 1), "falling": round(falling, 1)}
    return {"mark": mark, "kind": "window", "trim": "all-round"} | sides | diagonals | more


def planned(*openings: dict[str, Any], method: str = "bench") -> HousePlan:
    document = {
        "format": "longpoint-house/1",
        "name": "Siskin Row",
        "units": "mm",
        "profiles": {"A": {"face": 57, "thickness": 18}},
        "defaults": {"architrave": "A", "quirk": 5, "quirk_band": [3, 7], "method": method},
        "openings": list(openings),
    }
    return plan_house(read_house(document))


def wishes_of(plan: HousePlan) -> tuple[StopWish, ...]:
    return stop_wishes(plan.house, plan.shapes.openings, plan.pieces)


def test_a_true_frame_may_be_larger_and_smaller_by_the_band_on_both_sides() -> None:
    across, up = wishes_of(planned(opening("W1", 1187)))
    assert across.marks == ("W1-head", "W1-sill")
    assert round(across.long_mm, 1) == 1187 + 2 * 5 + 2 * 57
    assert round(across.most_mm - across.long_mm, 1) == 2 * (7 - 5)
    assert round(across.long_mm - across.least_mm, 1) == 2 * (5 - 3)
    assert len(up.marks) == 2


def test_what_an_opening_is_out_of_true_is_taken_off_the_band() -> None:
    across, _ = wishes_of(planned(opening("W1", 1187, lean=3.0)))
    true, _ = wishes_of(planned(opening("W1", 1187)))
    assert across.most_mm - across.least_mm < true.most_mm - true.least_mm - 1.0
    assert across.least_mm <= across.long_mm <= across.most_mm


def test_an_opening_beyond_its_band_keeps_its_own_length() -> None:
    across, up = wishes_of(planned(opening("W1", 1187, lean=20.0)))
    for wish in (across, up):
        assert wish.least_mm == wish.long_mm == wish.most_mm


def test_openings_nearly_alike_share_a_setting_and_each_is_told_its_quirk() -> None:
    plan = planned(opening("W1", 1187), opening("W2", 1190), opening("W3", 1300))
    stops = saw_stops(wishes_of(plan))
    shared = [stop for stop in stops if len(stop.wishes) == 2]
    assert {wish.place for stop in shared for wish in stop.wishes} == {"W1", "W2"}
    assert len(stops) == 3
    for stop in stops:
        for wish in stop.wishes:
            assert 3.0 <= wish.quirk_at_mm(stop.length_mm) <= 7.0


def test_on_a_floor_only_the_head_moves() -> None:
    door = {"mark": "D1", "kind": "door", "width": 762, "height": 1981}
    across, up = wishes_of(planned(door))
    assert (across.ends, up.ends) == (2, 1)
    assert round(up.most_mm - up.long_mm, 1) == 2.0


def test_mitres_at_their_own_corners_ask_for_no_stop() -> None:
    assert wishes_of(planned(opening("W1", 1187), method="batch")) == ()

"""`longpoint learn` says what finished work tells, keeps it, and counts nothing twice."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.house_documents import door, window
from tests.unit.cli.house_files import heels, longpoint, written

UNPROVED = {"S1": {"kerf": 2.4, "end_trim": 10}}


def steep(folder: Path, count: int = 3, **changes: Any) -> Path:  # noqa: ANN401
    """Write a house of windows with heels open by 0.4 on a 57 mm face: 0.14 past 45."""
    openings = [window(mark=f"W{n}", as_built=heels(0.4)) for n in range(1, count + 1)]
    return written(folder, *openings, **{"saws": UNPROVED, **changes})


def terms(path: Path) -> dict[str, list[dict[str, Any]]]:
    document = json.loads(path.read_text(encoding="utf-8"))
    return {t.get("saw") or t["tape"]: t["frames"] for t in document["terms"]}


def test_a_steep_saw_is_told_and_readings_are_not_blamed(tmp_path: Path) -> None:
    """By hand: 0.4 / (2 x 57 x 1.414) rad is 0.142 degrees."""
    done = longpoint("learn", steep(tmp_path), "--crew", tmp_path / "crew.json")
    assert done.exit_code == 0, done.output
    said = " ".join(done.output.split())
    assert "3 sets new, 0 sets known before." in said
    assert "Saw S1: Your 45 cuts steep by about 0.14 degrees" in said
    assert "from 3 frames" in said
    assert "The readings are not to blame" in said
    assert "Tape" not in said
    assert len(terms(tmp_path / "crew.json")["S1"]) == 3


def test_a_house_learned_twice_is_counted_once(tmp_path: Path) -> None:
    house, crew = steep(tmp_path), tmp_path / "crew.json"
    longpoint("learn", house, "--crew", crew)
    first = crew.read_text(encoding="utf-8")
    again = longpoint("learn", house, house, "--crew", crew)
    assert "0 sets new, 3 sets known before." in again.output
    assert crew.read_text(encoding="utf-8") == first


def test_gaps_read_once_more_take_the_place_of_the_first(tmp_path: Path) -> None:
    crew = tmp_path / "crew.json"
    longpoint("learn", steep(tmp_path, 1), "--crew", crew)
    mended = written(tmp_path, window(as_built=heels(0.0)), saws=UNPROVED)
    longpoint("learn", mended, "--crew", crew)
    (frame,) = terms(crew)["S1"]
    assert frame["off"] == 0.0


def test_another_house_is_added_to_what_is_known(tmp_path: Path) -> None:
    crew = tmp_path / "crew.json"
    longpoint("learn", steep(tmp_path), "--crew", crew)
    other = steep(tmp_path, 2, name="Plover House")
    assert "2 sets new, 3 sets known before." in longpoint("learn", other, "--crew", crew).output
    assert len(terms(crew)["S1"]) == 5


def test_a_true_saw_is_left_alone(tmp_path: Path) -> None:
    house = written(tmp_path, window(as_built=heels(0.0)), saws=UNPROVED)
    done = longpoint("learn", house, "--crew", tmp_path / "crew.json")
    assert "leave the stop where it is" in " ".join(done.output.split())


def test_too_large_frames_are_told_by_their_quirks(tmp_path: Path) -> None:
    wide = {"quirks": {side: [6, 6] for side in ("left", "right", "head", "sill")}}
    openings = [window(mark=f"W{n}", as_built=wide) for n in range(1, 7)]
    done = longpoint("learn", written(tmp_path, *openings), "--crew", tmp_path / "crew.json")
    said = " ".join(done.output.split())
    assert "Tape T1: Your frames come out about 1." in said
    assert "mm too large" in said


def test_a_door_whose_legs_may_splay_is_noted_and_teaches_nothing(tmp_path: Path) -> None:
    gaps = {"gaps": {"tr": [0.4, 0], "tl": [0.4, 0]}}
    doors = [door(mark=f"D{n}", as_built=gaps) for n in range(1, 10)]
    crew = tmp_path / "crew.json"
    done = longpoint("learn", written(tmp_path, *doors, saws=UNPROVED), "--crew", crew)
    assert done.exit_code == 0
    assert terms(crew) == {}
    said = " ".join(done.output.split())
    assert said.count("Legs that splay open them") == 6
    assert "The same of: Wren House, D7" in said


def test_a_found_error_with_nothing_dialled_is_asked_about(tmp_path: Path) -> None:
    found = {"S1": {"kerf": 2.4, "found": {"left": 45.2, "right": 45.1}}}
    house = steep(tmp_path, saws=found)
    said = " ".join(longpoint("learn", house, "--crew", tmp_path / "a.json").output.split())
    assert "dialled = { left = -0.20, right = -0.10 }" in said
    found["S1"]["dialled"] = {"left": -0.2, "right": -0.1}
    done = longpoint("learn", steep(tmp_path, saws=found), "--crew", tmp_path / "b.json")
    assert "dialled =" not in done.output
    assert "steep by about 0.29" in " ".join(done.output.split())


def test_a_mark_with_other_readings_of_its_opening_is_asked_about(tmp_path: Path) -> None:
    crew = tmp_path / "crew.json"
    longpoint("learn", steep(tmp_path, 1), "--crew", crew)
    other = written(tmp_path, window(top=1188, as_built=heels(0.4)), saws=UNPROVED)
    done = longpoint("learn", other, "--crew", crew)
    assert "was learned before" in " ".join(done.output.split())
    assert len(terms(crew)["S1"]) == 2


def test_forecasts_are_too_few_to_judge_at_first(tmp_path: Path) -> None:
    done = longpoint("learn", steep(tmp_path), "--crew", tmp_path / "crew.json")
    assert "Too few to judge: 3 sets of 1 house, 3 fitted." in " ".join(done.output.split())


def test_a_house_without_gaps_ends_with_status_2_and_makes_no_file(tmp_path: Path) -> None:
    crew = tmp_path / "crew.json"
    done = longpoint("learn", written(tmp_path, window()), "--crew", crew)
    assert done.exit_code == 2
    assert "as_built" in done.output
    assert not crew.exists()


@pytest.mark.parametrize("text", ["not a crew file", '{"format": "longpoint-crew/9"}'])
def test_a_file_that_is_no_crew_file_is_left_as_it_is(tmp_path: Path, text: str) -> None:
    crew = tmp_path / "crew.json"
    crew.write_text(text, encoding="utf-8")
    assert longpoint("learn", steep(tmp_path, 1), "--crew", crew).exit_code == 2
    assert crew.read_text(encoding="utf-8") == text


def test_what_cannot_be_read_is_kept_in_a_copy_that_is_named(tmp_path: Path) -> None:
    house, crew = steep(tmp_path, 1), tmp_path / "crew.json"
    longpoint("learn", house, "--crew", crew)
    document = json.loads(crew.read_text(encoding="utf-8"))
    document["terms"][0]["frames"].append({"mark": "odd"})
    crew.write_text(json.dumps(document), encoding="utf-8")
    done = longpoint("learn", house, "--crew", crew)
    assert done.exit_code == 0
    assert "crew.json.before-1" in done.output
    assert json.loads((tmp_path / "crew.json.before-1").read_text("utf-8")) == document


def test_a_plan_without_a_usable_crew_file_says_so_and_goes_on(tmp_path: Path) -> None:
    house = written(tmp_path, window())
    plain = longpoint("plan", house, "--out", tmp_path / "a", "--draws", "200")
    done = longpoint(
        "plan", house, "--out", tmp_path / "b", "--draws", "200", "--crew", tmp_path / "no.json"
    )
    assert done.exit_code == plain.exit_code == 0
    assert "no.json" in done.output
    a, b = (json.loads((tmp_path / x / "plan.json").read_text("utf-8")) for x in "ab")
    assert a["openings"] == b["openings"]
    assert "crew-file-unreadable" in {f["code"] for f in b["findings"]}

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from longpoint.survey.instruments import SkirtingCut, TapeClass
from tests.house_documents import (
    codes,
    defaults,
    door,
    found,
    house,
    skirting_run,
    the_house,
    window,
)


def test_a_profile_keeps_what_was_said_of_it() -> None:
    written = {"face": '2 1/4"', "thickness": 18, "reversible": True, "material": "pine"}

    profile = the_house(profiles={"OG57": written, "SK95": written}).profile("OG57")

    assert (profile.width_mm, profile.thickness_mm) == (57.15, 18.0)
    assert (profile.reversible, profile.material) == (True, "pine")


@pytest.mark.parametrize("face", [0, -57, "wide", None, 5000, True])
def test_a_bad_profile_holds_what_uses_it_and_nothing_else(face: object) -> None:
    profiles = {"OG57": {"face": 57, "thickness": 18}, "SK95": {"face": face, "thickness": 16}}

    result = read_house(house(profiles=profiles, openings=[window()], runs=[skirting_run()]))

    assert found(result, "profile-unreadable")[0].place == "Wren House"
    assert [o.mark for o in result.house.openings] == ["W1"]
    assert [entry.mark for entry in result.house.held] == ["S1"]
    assert [p.name for p in result.house.profiles] == ["OG57"]


def test_a_profile_described_twice_under_names_that_print_alike_is_not_used() -> None:
    profiles = {"OG57": {"face": 57, "thickness": 18}, "OG57 ": {"face": 66, "thickness": 18}}

    result = read_house(house(profiles=profiles, openings=[window()]))

    assert result.house.profiles == ()
    assert [entry.mark for entry in result.house.held] == ["W1"]


def test_a_tape_is_of_a_class_or_has_a_stated_limit() -> None:
    tapes = {"T1": {"class": "I", "resolution": 0.5}, "T2": {"max_error": 1.0}}

    by_class, by_limit = the_house(tapes=tapes).tapes

    assert (by_class.tape_class, by_class.resolution_mm) == (TapeClass.I, 0.5)
    assert (by_limit.tape_class, by_limit.max_error_mm) == (None, 1.0)


def test_a_tape_without_a_class_is_taken_as_class_two_and_said() -> None:
    result = read_house(house(tapes={"T1": {}}))

    assert result.house.tapes[0].tape_class is TapeClass.II
    assert codes(result) == ["tape-class-assumed"]


@pytest.mark.parametrize(
    "tape", [{"class": "II", "max_error": 1}, {"check": {"stick": 1000}}, {"class": "IV"}, 7]
)
def test_a_tape_that_contradicts_itself_holds_what_it_read(tape: object) -> None:
    tapes = {"T1": {"class": "II"}, "T2": tape}
    openings = [window(), door(tape="T2")]

    result = read_house(house(tapes=tapes, openings=openings))

    assert found(result, "tape-unreadable")[0].place == "Wren House"
    assert [o.mark for o in result.house.openings] == ["W1"]
    assert [entry.mark for entry in result.house.held] == ["D1"]


def test_in_inches_a_tape_is_read_to_the_sixteenth() -> None:
    result = read_house({"format": "longpoint-house/1", "name": "Wren House", "units": "in"})

    assert result.house.tapes[0].resolution_mm == 25.4 / 16
    assert result.house.tapes[0].assumed


def test_the_default_tape_comes_first() -> None:
    tapes = {"T1": {"class": "I"}, "T2": {"class": "II"}}

    assert [t.name for t in the_house(tapes=tapes, defaults=defaults(tape="T2")).tapes] == [
        "T2",
        "T1",
    ]


def test_a_saw_keeps_what_was_said_of_it() -> None:
    saws = {
        "S1": {
            "kerf": 3.2,
            "end_trim": 0,
            "keep": 600,
            "skirting": "standing",
            "found": {"left": 45.1, "right": 44.9},
        }
    }

    saw = the_house(saws=saws).saw

    assert (saw.kerf_mm, saw.end_trim_mm, saw.keep_mm) == (3.2, 0.0, 600.0)
    assert saw.skirting is SkirtingCut.STANDING
    assert (saw.found_left_deg, saw.found_right_deg) == (45.1, 44.9)


def test_a_saw_keeps_the_names_of_its_blade_and_its_setting() -> None:
    own = {**house()["saws"]["S1"], "blade": "60 tooth", "setting": "May"}

    saw = the_house(saws={"S1": {**own, "dialled": {"left": -0.1}}}).saw

    assert (saw.blade, saw.setting) == ("60 tooth", "May")
    assert (saw.dialled_left_deg, saw.dialled_right_deg) == (-0.1, 0.0)
    plain = the_house().saw
    assert (plain.blade, plain.setting, plain.dialled_left_deg) == ("", "", 0.0)


def test_what_a_saw_leaves_out_is_assumed_and_said() -> None:
    result = read_house(house(saws={"S1": {}}))

    assert (result.house.saw.kerf_mm, result.house.saw.end_trim_mm) == (3.0, 10.0)
    assert codes(result) == ["kerf-assumed", "end-trim-assumed", "saw-not-proved"]
    assert {f.severity for f in result.findings} == {Severity.NOTE}


@pytest.mark.parametrize(
    ("left", "is_kept"), [(43, True), (47, True), (42.9, False), (47.1, False)]
)
def test_a_found_angle_far_from_45_is_refused_by_a_limit_of_ours(
    left: float, is_kept: bool
) -> None:
    saws = {"S1": {"kerf": 3, "end_trim": 10, "found": {"left": left, "right": 45}}}

    result = read_house(house(saws=saws))

    assert (result.house.saw.found_left_deg == left) is is_kept
    refused = found(result, "saw-unreadable")
    assert [("between 43.0 and 47.0" in f.wrong, "ours" in f.wrong) for f in refused] == (
        [] if is_kept else [(True, True)]
    )


def test_a_bad_figure_of_a_saw_is_said_and_its_good_ones_are_kept() -> None:
    saws = {"S1": {"kerf": 0, "end_trim": 25, "found": {"left": 0.1, "right": 44.9}}}

    result = read_house(house(saws=saws, openings=[window()]))

    assert (result.house.saw.kerf_mm, result.house.saw.end_trim_mm) == (3.0, 25.0)
    assert not result.house.saw.is_proved
    assert [f.severity for f in found(result, "saw-unreadable")] == [Severity.STOP] * 2
    assert [o.mark for o in result.house.openings] == ["W1"]

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Method
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


def test_a_house_that_says_everything_is_read_without_a_word() -> None:
    assert codes(read_house(house(openings=[window(), door()], runs=[skirting_run()]))) == []


def test_what_the_defaults_leave_out_is_assumed_and_said_once() -> None:
    openings = [window(), window(mark="W2"), door(), door(mark="D2")]
    bare = {"architrave": "OG57", "skirting": "SK95"}

    result = read_house(house(defaults=bare, openings=openings, runs=[skirting_run()]))

    assert sorted(codes(result)) == [
        "floor-cover-assumed",
        "floor-gap-assumed",
        "max-gap-assumed",
        "method-assumed",
        "quirk-assumed",
        "quirk-band-assumed",
    ]
    assert {(f.severity, f.place) for f in result.findings} == {(Severity.NOTE, "Wren House")}
    opening = result.house.openings[0]
    assert opening.quirk_mm.anticlockwise() == (5.0, 5.0, 5.0, 5.0)
    assert (opening.quirk_band_mm, opening.max_gap_mm) == ((3.0, 7.0), 0.5)
    assert opening.method is Method.BATCH


def test_nothing_is_said_of_an_assumption_that_nothing_uses() -> None:
    assert codes(read_house(house(defaults={}))) == []


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("quirk", "wide"),
        ("quirk", {"haed": 5}),
        ("quirk_band", [7, 3]),
        ("quirk_band", [6, 7]),
        ("architrave", "OG75"),
        ("architrave", 57),
        ("method", "glue"),
        ("max_gap", 0),
        ("tape", "T9"),
        ("tape", 1),
    ],
)
def test_a_default_that_cannot_be_used_holds_what_takes_it_from_there(
    key: str, value: object
) -> None:
    own = window(
        mark="W2",
        quirk=5,
        quirk_band=[3, 7],
        architrave="OG57",
        method="batch",
        max_gap=0.5,
        tape="T1",
    )

    result = read_house(house(defaults=defaults(**{key: value}), openings=[window(), own]))

    stop = next(f for f in result.findings if f.place == "Wren House")
    assert stop.severity is Severity.STOP
    assert [o.mark for o in result.house.openings] == ["W2"]
    assert [entry.mark for entry in result.house.held] == ["W1"]


def test_a_misspelt_default_spoils_the_key_it_stands_for() -> None:
    written = {**defaults(quirk=None), "qurik": 8}

    result = read_house(house(defaults=written, openings=[window(), window(mark="W2", quirk=5)]))

    assert 'Did you mean "quirk"?' in found(result, "default-unreadable")[0].do
    assert [o.mark for o in result.house.openings] == ["W2"]


def test_a_default_skirting_that_is_not_described_holds_the_runs_that_use_it() -> None:
    runs = [skirting_run(), skirting_run(mark="S2", profile="SK95")]

    result = read_house(house(defaults=defaults(skirting="SK59"), runs=runs))

    assert [run.mark for run in result.house.runs] == ["S2"]
    assert result.house.skirting_profile == ""


def test_a_floor_gap_or_longest_run_that_cannot_be_read_holds_nothing() -> None:
    changed = defaults(floor_gap="wide", max_run=-1)

    result = read_house(house(defaults=changed, openings=[window()]))

    assert codes(result) == ["default-unreadable"] * 2
    assert (result.house.floor_gap_mm, result.house.longest_run_mm) == (0.0, None)
    assert [o.mark for o in result.house.openings] == ["W1"]


def test_without_a_tape_or_saw_one_is_assumed_and_said() -> None:
    changed = house(defaults=defaults(tape=None, saw=None), tapes={}, saws={}, openings=[window()])

    result = read_house(changed)

    assert codes(result) == ["tape-assumed", "saw-assumed"]
    assert result.house.tapes[0].assumed
    assert result.house.openings[0].readings.tape == result.house.tapes[0].name
    assert (result.house.saw.kerf_mm, result.house.saw.end_trim_mm) == (3.0, 10.0)
    assert not result.house.saw.is_proved


def test_of_several_tapes_or_saws_without_a_default_the_first_is_taken_and_said() -> None:
    tapes = {"T1": {"class": "II"}, "T2": {"class": "I"}}
    saws = {name: {**house()["saws"]["S1"], "keep": 100} for name in ("S1", "S2")}

    result = read_house(house(defaults=defaults(tape=None, saw=None), tapes=tapes, saws=saws))

    assert codes(result) == ["tape-assumed", "saw-assumed"]
    assert (result.house.tapes[0].name, result.house.saw.name) == ("T1", "S1")


def test_a_saw_that_is_not_described_is_a_stop_at_the_house_and_holds_no_opening() -> None:
    result = read_house(house(defaults=defaults(saw="S9"), openings=[window()]))

    (finding,) = found(result, "saw-unknown")
    assert (finding.severity, finding.place) == (Severity.STOP, "Wren House")
    assert result.house.saw.assumed
    assert result.house.held == ()


def test_what_the_house_shares_is_kept() -> None:
    home = the_house(defaults=defaults(floor_gap=2, max_run=4800))

    assert (home.floor_gap_mm, home.longest_run_mm) == (2.0, 4800.0)
    assert home.skirting_profile == "SK95"


def test_the_tape_that_reads_marks_as_well_unless_another_is_named() -> None:
    tapes = {"T1": {"class": "II"}, "T2": {"class": "I"}}

    assert the_house(tapes=tapes).saw_tape == "T1"
    assert the_house(tapes=tapes, defaults=defaults(saw_tape="T2")).saw_tape == "T2"
    assert the_house(tapes={}, defaults=defaults(tape=None)).saw_tape == "assumed tape"


@pytest.mark.parametrize(
    ("name", "code"), [("T9", "tape-unknown"), (9, "default-unreadable"), ("T3", "tape-unreadable")]
)
def test_a_saw_tape_that_cannot_be_used_is_a_stop_at_the_house_and_holds_no_opening(
    name: object, code: str
) -> None:
    tapes = {"T1": {"class": "II"}, "T3": {"class": "IV"}}
    changed = house(tapes=tapes, defaults=defaults(saw_tape=name), openings=[window()])

    result = read_house(changed)

    stop = found(result, code)[-1]
    assert (stop.severity, stop.place) == (Severity.STOP, "Wren House")
    assert "taken to mark at the saw" in stop.wrong
    assert result.house.saw_tape == "T1"
    assert result.house.held == ()


def test_a_misspelt_tape_is_not_told_as_another_key() -> None:
    result = read_house(house(defaults={**defaults(tape=None), "tpae": "T1"}, openings=[window()]))

    assert "is held" in found(result, "default-unreadable")[0].wrong
    assert result.house.openings == ()

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Arch, Layout, Method, Mitres, Nominal
from longpoint.survey.readings import Place
from tests.house_documents import (
    codes,
    defaults,
    door,
    found,
    house,
    the_house,
    the_opening,
    window,
)


def test_an_opening_keeps_what_was_said_of_it() -> None:
    opening = the_opening(
        window(
            room="Kitchen",
            method="bench",
            max_gap=0.3,
            raked=True,
            nominal={"width": 1186, "height": 462},
            batch="pair",
            accept=["rows-swapped"],
            arch={"rise": 150, "crown": 600},
            lining_edge=[19, 20],
            by="second reader",
        )
    )

    assert (opening.room, opening.method, opening.max_gap_mm) == ("Kitchen", Method.BENCH, 0.3)
    assert (opening.raked, opening.batch, opening.accept) == (True, "pair", ("rows-swapped",))
    assert opening.nominal == Nominal(width_mm=1186.0, height_mm=462.0)
    assert opening.arch == Arch(rise_mm=150.0, crown_mm=600.0)
    assert opening.lining_edge_mm == 19.5
    assert opening.readings.by == "second reader"


def test_an_opening_takes_from_the_defaults_only_what_it_does_not_say() -> None:
    opening = the_opening(
        window(quirk={"head": 6, "sill": 4}), defaults=defaults(quirk={"left": 5, "right": 5.5})
    )

    assert opening.quirk_mm.head == 6.0
    assert opening.quirk_mm.left == 5.0
    assert opening.quirk_mm.right == 5.5
    assert opening.quirk_mm.bottom == 4.0


@pytest.mark.parametrize(
    ("opening", "layout"),
    [
        (window(trim=None), Layout.ALL_ROUND),
        (door(trim=None), Layout.LEGS_AND_HEAD),
        (door(trim=None, kind="cased"), Layout.LEGS_AND_HEAD),
    ],
)
def test_the_trim_left_out_is_assumed_by_the_kind_and_said(
    opening: dict[str, object], layout: Layout
) -> None:
    result = read_house(house(openings=[opening]))

    assert result.house.openings[0].layout is layout
    assert codes(result) == ["trim-assumed"]


def test_a_window_that_names_a_board_stands_on_it() -> None:
    result = read_house(house(openings=[window(trim=None, board="SK95", horn=20)]))

    opening = result.house.openings[0]
    assert (opening.layout, opening.board) == (Layout.BOARD_AND_APRON, "SK95")
    assert opening.horn_mm == 20.0
    assert found(result, "trim-assumed")[0].place == "W1"


def test_a_board_that_nobody_names_is_taken_as_there_and_said() -> None:
    result = read_house(house(openings=[window(trim="board-and-apron")]))

    assert result.house.openings[0].board == ""
    assert codes(result) == ["board-not-cut"]


def test_horns_left_out_end_flush_and_are_said() -> None:
    result = read_house(house(openings=[window(trim="board-and-apron", board="SK95")]))

    assert result.house.openings[0].horn_mm == 0.0
    assert codes(result) == ["horn-assumed"]


@pytest.mark.parametrize(
    ("opening", "code"),
    [
        (door(trim="all-round"), "keys-clash"),
        (door(trim="board-and-apron", kind="cased"), "keys-clash"),
        (door(board="OG57"), "keys-clash"),
        (window(horn=20), "keys-clash"),
        (window(quirk_band=[6, 7]), "keys-clash"),
        (window(faces=1, b={"width": 1187, "height": 462}), "keys-clash"),
        (window(architrave="OG75"), "profile-unknown"),
        (window(tape="T9"), "tape-unknown"),
        (window(corners=[[0, 0], [1, 0], [1, 1]]), "keys-clash"),
        ({"mark": "W1", "kind": "window", "angles": [90, 90]}, "readings-missing"),
        (window(kind=None), "missing-key"),
        (window(quirk=101), "unreadable-value"),
        (window(plane={"tl": 101}), "unreadable-value"),
    ],
)
def test_an_opening_that_contradicts_itself_is_held_with_a_reason(
    opening: dict[str, object], code: str
) -> None:
    result = read_house(house(openings=[opening, window(mark="W2")]))

    held = str(opening["mark"])
    assert [(f.code, f.place, f.severity) for f in result.findings] == [(code, held, Severity.STOP)]
    assert [entry.mark for entry in result.house.held] == [held]
    assert [o.mark for o in result.house.openings] == ["W2"]


def test_without_an_architrave_no_length_can_be_worked_out() -> None:
    result = read_house(
        house(
            defaults=defaults(architrave={"head": "OG57", "left": "OG57", "right": "OG57"}),
            openings=[window(), door()],
        )
    )

    assert found(result, "no-architrave")[0].read == "No architrave is named for the sill."
    assert [o.mark for o in result.house.openings] == ["D1"]


def test_a_quirk_outside_the_band_of_the_house_brings_its_own_band() -> None:
    result = read_house(house(openings=[window(quirk=10)]))

    assert result.house.openings[0].quirk_band_mm == (8.0, 12.0)
    assert found(result, "quirk-outside-band")[0].severity is Severity.WARNING


def test_the_assumed_band_never_runs_below_nothing() -> None:
    opening = the_opening(window(quirk=1), defaults=defaults(quirk_band=None))

    assert opening.quirk_band_mm == (0.0, 3.0)
    flush = the_opening(window(quirk=0), defaults=defaults(quirk_band=None))
    assert flush.quirk_band_mm == (0.0, 2.0)


def test_a_quirk_is_not_asked_of_a_side_that_has_no_piece() -> None:
    opening = the_opening(
        door(quirk={"head": 10, "left": 10, "right": 10}, quirk_band=[9, 11]),
        defaults=defaults(quirk=None),
    )

    assert opening.quirk_band_mm == (9.0, 11.0)


def test_a_second_face_may_have_readings_of_its_own() -> None:
    second = {"top": 763, "left": 2031, "right": 2030, "tape": "T2", "by": "Ann"}
    tapes = {"T1": {"class": "II"}, "T2": {"class": "I"}}

    opening = the_opening(door(faces=2, b=second), tapes=tapes)

    assert opening.faces == 2
    assert opening.readings_b is not None
    assert opening.readings_b.mean_mm(Place.LEFT) == 2031.0
    assert (opening.readings_b.tape, opening.readings_b.by) == ("T2", "Ann")
    assert opening.readings.tape == "T1"


def test_faces_may_be_written_in_quotes() -> None:
    written = door(faces="2")

    assert the_opening(written).faces == 2
    clash = read_house(house(openings=[written, window(mark="D1b")]))
    assert codes(clash) == ["mark-twice"] * 2


def test_readings_of_a_second_face_make_two_faces_and_that_is_said() -> None:
    result = read_house(house(openings=[door(b={"width": 764, "height": 2030})]))

    assert result.house.openings[0].faces == 2
    assert codes(result) == ["faces-assumed"]


def test_a_second_face_left_out_is_the_mirror_of_the_first() -> None:
    opening = the_opening(door(faces=2))

    assert (opening.faces, opening.readings_b) == (2, None)


def test_a_floor_cover_at_a_window_changes_nothing_and_is_said() -> None:
    result = read_house(house(openings=[window(floor_cover=8), door(floor_cover=8)]))

    covers = [o.floor_cover_mm for o in result.house.openings]
    assert covers == [0.0, 8.0]
    assert codes(result) == ["key-unused"]


def test_mitres_and_room_to_tap_come_from_the_defaults_or_the_opening() -> None:
    own = window(mark="W2", mitres="as-read", tap_room=2)
    house_wide = defaults(mitres="at-stop", tap_room=0.5)

    first, second = the_house(defaults=house_wide, openings=[window(), own]).openings

    assert (first.mitres, first.tap_room_mm) == (Mitres.AT_STOP, 0.5)
    assert (second.mitres, second.tap_room_mm) == (Mitres.AS_READ, 2.0)
    plain = the_opening(window())
    assert (plain.mitres, plain.tap_room_mm) == (Mitres.AS_READ, None)


@pytest.mark.parametrize("bad", [{"mitres": "as read"}, {"tap_room": -1}, {"tap_room": "wide"}])
def test_mitres_or_room_to_tap_that_cannot_be_read_hold_that_opening_only(
    bad: dict[str, object],
) -> None:
    result = read_house(house(openings=[window(**bad), window(mark="W2")]))

    assert codes(result) == ["unreadable-value"]
    assert [o.mark for o in result.house.openings] == ["W2"]

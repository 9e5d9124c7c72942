"""`longpoint tap` says what to tap, what stays, and what to write where nothing was read."""

from pathlib import Path

import pytest

from tests.house_documents import door, window
from tests.unit.cli.house_files import CORNERS, heels, longpoint, written

ALL = "bl 0.8 0, br 0.8 0, tr 0.8 0, tl 0.8 0"


def test_gaps_of_the_file_are_advised_in_the_order_to_read(tmp_path: Path) -> None:
    done = longpoint("tap", written(tmp_path, window(as_built=heels(0.8))), "W1")
    assert done.exit_code == 0, done.output
    headings = ["What is seen", "What stays", "Then", "What can't be told", "Caution"]
    places = [done.output.index(f"\n{heading}\n") for heading in headings]
    assert places == sorted(places)
    assert "All cuts together are" in done.output
    assert "Guard on" in done.output or "guard on" in done.output


def test_gaps_on_the_command_line_stand_instead_of_those_of_the_file(tmp_path: Path) -> None:
    house = written(tmp_path, window(as_built=heels(0.0)))
    assert "No joint stands open" in longpoint("tap", house, "W1").output
    given = longpoint("tap", house, "W1", "--gaps", ALL)
    assert given.exit_code == 0
    assert (
        given.output
        == longpoint("tap", written(tmp_path, window(as_built=heels(0.8))), "W1").output
    )


def test_a_leg_that_is_out_gets_its_tap(tmp_path: Path) -> None:
    """The right leg stands 0.8 out all along: its quirk is wide, its two joints open."""
    house = written(tmp_path, window())
    done = longpoint(
        "tap", house, "W1",
        "--gaps", "bl 0 0, br 0.57 0.57, tr 0.57 0.57, tl 0 0",
        "--quirks", "left 5 5 5, right 5.8 5.8 5.8, head 5 5 5, sill 5 5 5",
        "--steps", "bl 0, br -0.57, tr 0.57, tl 0",
    )  # fmt: skip
    assert done.exit_code == 0, done.output
    assert "Tap in this order" in done.output
    assert "Right leg, bottom: tap in 0." in done.output
    assert "Right leg, top: tap in 0." in done.output
    assert "Worked out, not measured" in done.output


def test_in_inches_each_tap_is_given_in_inches_too(tmp_path: Path) -> None:
    inches = {
        "top": 46.75, "bottom": 46.75, "left": 18.1875, "right": 18.1875,
        "rising": "50 5/32", "falling": "50 5/32",
    }  # fmt: skip
    house = written(
        tmp_path,
        window(**inches),
        units="in",
        defaults={"quirk": "3/16", "quirk_band": ["1/8", "1/4"], "architrave": "OG", "saw": "S1"},
        profiles={"OG": {"face": "2 1/4", "thickness": "11/16"}},
        saws={"S1": {"kerf": "3/32"}},
    )
    done = longpoint(
        "tap", house, "W1",
        "--gaps", "bl 0 0, br 1/64 0.022, tr 0.022 0.022, tl 0 0",
        "--quirks", "left 0.1875 0.1875, right 0.2188 0.2188, head 0.1875 0.1875",
    )  # fmt: skip
    assert done.exit_code == 0, done.output
    assert "Figures in mm and degrees, taps in inches too" in done.output
    assert " mm (0.0" in done.output


@pytest.mark.parametrize(
    ("option", "text"),
    [
        ("--gaps", "bl"),
        ("--gaps", "xx 0 0"),
        ("--gaps", "bl 0 0, bl 0 0"),
        ("--gaps", "bl 0 zero"),
        ("--gaps", "bl 0 99"),
        ("--quirks", "left 5 1/4"),
        ("--steps", "left 0.1"),
        ("--steps", "bl 0.1 0.2"),
        ("--steps", "bl much"),
    ],
)
def test_a_figure_that_cannot_be_read_is_refused_in_three_sentences(
    tmp_path: Path, option: str, text: str
) -> None:
    house = written(tmp_path, window(as_built=heels(0.1)))
    done = longpoint("tap", house, "W1", option, text)
    assert done.exit_code == 2
    assert len([line for line in done.output.splitlines() if line.strip()]) == 3


def test_where_nothing_was_read_it_says_what_to_write(tmp_path: Path) -> None:
    done = longpoint("tap", written(tmp_path, door()), "D1")
    assert done.exit_code == 2
    assert "as_built = { gaps = { tr = [0, 0], tl = [0, 0] } }" in done.output


def test_a_bad_part_of_the_file_is_said_and_the_rest_is_used(tmp_path: Path) -> None:
    broken = {"gaps": {**heels(0.8)["gaps"], "bl": ["much", 0]}}
    done = longpoint("tap", written(tmp_path, window(as_built=broken)), "W1")
    assert done.exit_code == 0
    assert "much" in done.output[done.output.index("\nMind\n") :]


def test_readings_in_doubt_are_named_beside_the_advice(tmp_path: Path) -> None:
    house = written(tmp_path, window(top=1150, as_built=heels(0.8)))
    assert "The readings of W1 are in doubt" in longpoint("tap", house, "W1").output


def test_the_second_face_has_gaps_of_its_own(tmp_path: Path) -> None:
    house = written(tmp_path, door(faces=2))
    done = longpoint("tap", house, "D1", "--face", "b", "--gaps", "tr 0 0, tl 0 0")
    assert done.exit_code == 0, done.output
    assert done.output.startswith("D1, face b, Wren House")
    assert longpoint("tap", house, "D1").exit_code == 2


def test_every_corner_can_be_left_unread(tmp_path: Path) -> None:
    text = ", ".join(f"{corner} ? ?" for corner in CORNERS)
    done = longpoint("tap", written(tmp_path, window()), "W1", "--gaps", text)
    assert done.exit_code == 2
    assert "No gaps of W1 are written down." in done.output

from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import house_document, read_house
from longpoint.survey.openings import ApronEnds, BoardFit, Flush, Joint
from tests.house_documents import defaults, door, found, house, the_opening, window

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "PB70": {"face": 70, "thickness": 22},
    "BD140": {"face": 140, "thickness": 18},
}


def test_a_set_is_mitred_flat_on_the_floor_unless_something_else_is_written() -> None:
    opening = the_opening(door())

    assert (opening.joint, opening.flush) == (Joint.MITRE, Flush.LEAVE)
    assert (opening.plinth, opening.corner_block, opening.back_band, opening.wedge) == ("",) * 4


def test_what_the_defaults_say_of_a_set_holds_at_every_door() -> None:
    opening = the_opening(
        door(),
        profiles=PROFILES,
        defaults=defaults(plinth="PB70", plinth_height=150, joint="butt", head_horn=12),
    )

    assert (opening.plinth, opening.plinth_height_mm) == ("PB70", 150.0)
    assert (opening.joint, opening.head_horn_mm) == (Joint.BUTT, 12.0)


def test_a_default_for_plinths_means_nothing_at_a_window() -> None:
    opening = the_opening(
        window(), profiles=PROFILES, defaults=defaults(plinth="PB70", plinth_height=150)
    )

    assert (opening.plinth, opening.plinth_height_mm) == ("", 0.0)


def test_a_board_tells_how_it_fits_between_the_linings() -> None:
    fit = {"inside": 1105, "depth_left": 140, "depth_right": 142, "nosing": 45}
    opening = the_opening(
        window(trim="board-and-apron", board="BD140", board_fit=fit, apron_ends="return"),
        profiles=PROFILES,
    )

    assert opening.board_fit == BoardFit(
        inside_mm=1105.0, depth_left_mm=140.0, depth_right_mm=142.0, nosing_mm=45.0
    )
    assert opening.apron_ends is ApronEnds.RETURN


def test_an_arch_keeps_what_it_is_cut_from_and_where_its_edge_was_read() -> None:
    arch = {"rise": 150, "segments": 4, "blank": "BD140", "offsets": [[0, 0], [450, 150]]}
    opening = the_opening(window(arch=arch), profiles=PROFILES)

    assert opening.arch is not None
    assert (opening.arch.segments, opening.arch.blank) == (4, "BD140")
    assert opening.arch.offsets == ((0.0, 0.0), (450.0, 150.0))


def test_a_set_comes_back_as_it_was_read() -> None:
    fit = {"inside": "1105.5", "depth_left": 140, "depth_right": 142}
    document = house(
        profiles=PROFILES,
        tapes={"T1": {"class": "II", "take_off": 1.5}},
        openings=[
            door(joint="blocks", corner_block="PB70", plinth="PB70", plinth_height=150),
            door(mark="D2", joint="butt", head_horn=9, flush="back-bevel", wedge="OG57"),
            window(trim="board-and-apron", board="BD140", board_fit=fit, apron_ends="return"),
            window(mark="W2", back_band="PB70", arch={"rise": 90, "blank": "BD140"}),
        ],
    )
    read = read_house(document).house

    assert len(read.openings) == 4
    assert read_house(house_document(read)).house.openings == read.openings


@pytest.mark.parametrize(
    ("opening", "code"),
    [
        (door(head_horn=12), "keys-clash"),
        (door(corner_block="PB70"), "keys-clash"),
        (door(joint="blocks"), "missing-key"),
        (door(plinth="PB70"), "missing-key"),
        (window(plinth="PB70"), "keys-clash"),
        (window(plinth_height=150), "keys-clash"),
        (window(apron_ends="return"), "keys-clash"),
        (window(board_fit={"depth_left": 1, "depth_right": 1}), "keys-clash"),
        (window(back_band="NONE"), "profile-unknown"),
        (window(arch={"rise": 90, "blank": "NONE"}), "profile-unknown"),
        (window(flush="sand"), "unreadable-value"),
    ],
)
def test_what_can_not_come_true_at_an_opening_holds_it(opening: dict[str, Any], code: str) -> None:
    result = read_house(house(profiles=PROFILES, openings=[opening]))

    assert [f.severity for f in found(result, code)] == [Severity.STOP]
    assert [entry.mark for entry in result.house.held] == [opening["mark"]]

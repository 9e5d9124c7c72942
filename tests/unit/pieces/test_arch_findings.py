import pytest

from longpoint.errors import Severity
from longpoint.pieces.arch_findings import steep_cuts
from longpoint.pieces.piece import Role
from tests.shaped_houses import HALL, made


def with_arch(**arch: object) -> dict[str, object]:
    return {**HALL, "arch": {"rise": 286, **arch}}


def test_an_arch_with_a_board_wide_enough_is_not_held() -> None:
    pieces, findings = made(HALL)
    assert all(finding.severity is not Severity.STOP for finding in findings.values())
    assert any(piece.role is Role.SEGMENT for piece in pieces.values())


def test_without_a_board_it_is_held_and_the_boards_wanted_are_told() -> None:
    pieces, findings = made(with_arch())
    stop = findings["arch-blank"]
    assert stop.severity is Severity.STOP
    assert "3 segments 125.5 mm" in stop.do
    assert "6 segments 99 mm" in stop.do
    assert not any(piece.role is Role.SEGMENT for piece in pieces.values())


def test_a_board_too_narrow_for_the_number_asked_says_for_how_many_it_would_do() -> None:
    _, findings = made(with_arch(blank="BD100", segments=3))
    stop = findings["arch-blank"]
    assert stop.severity is Severity.STOP
    assert "100 mm wide, and 3 segments need 125.5 mm" in stop.wrong
    assert "arch.segments = 6" in stop.do


def test_a_board_narrower_than_the_trim_does_for_no_number() -> None:
    _, findings = made(with_arch(blank="OG66"))
    assert "any number of segments" in findings["arch-blank"].wrong
    _, findings = made(with_arch(blank="OG66", segments=5))
    assert findings["arch-blank"].do == "Name a wider board."


def test_a_table_of_segments_is_told_with_the_one_that_was_taken() -> None:
    _, findings = made(HALL)
    note = findings["arch-segments"]
    assert note.severity is Severity.NOTE
    assert "4 segments: cut 16.0 off square, board 110 wide, 333 over the points" in note.wrong
    assert note.do.startswith("The sheet has 3.")
    _, findings = made(with_arch(blank="BD140", segments=8))
    assert "8 segments" in findings["arch-segments"].wrong


def test_a_board_of_another_thickness_than_the_legs_is_told() -> None:
    assert "thick" not in made(HALL)[1]["arch-segments"].do
    _, findings = made({**HALL, "architrave": "OG57"})
    assert "The board is 20 mm thick, the legs 18 mm" in findings["arch-segments"].do


def test_the_springing_is_said_with_the_bow_of_its_true_line() -> None:
    _, findings = made(HALL)
    note = findings["arch-springing"]
    assert note.severity is Severity.NOTE
    assert "0.20 mm" in note.wrong
    assert "12.3 and 12.4 degrees off square" in note.read
    assert "would be 12.9 and 13.0" in note.wrong


def test_a_bow_wider_than_the_gap_accepted_is_a_warning() -> None:
    _, findings = made(HALL, max_gap=0.1)
    assert findings["arch-springing"].severity is Severity.WARNING


def test_a_semicircle_is_said_to_spring_square() -> None:
    half = {"top": 900, "bottom": 900, "left": 1000, "right": 1000}
    _, findings = made({**half, "arch": {"rise": 450, "blank": "BD140"}})
    assert "springs square" in findings["arch-springing"].wrong


@pytest.mark.parametrize(("right", "said"), [(1013, False), (1020, True)])
def test_springings_that_are_not_level_turn_the_arch_and_that_is_said(
    right: float, said: bool
) -> None:
    _, findings = made({**with_arch(blank="BD140"), "right": right})
    assert ("arch-turned" in findings) is said
    if said:
        assert "up at the right" in findings["arch-turned"].wrong


@pytest.mark.parametrize(
    ("flush", "corner_mm", "said"),
    [("pack", 4, True), ("back-bevel", -3, True), ("re-set", 4, False), ("pack", 0.5, False)],
)
def test_a_way_for_a_proud_lining_that_is_not_worked_out_for_arches_is_said(
    flush: str, corner_mm: float, said: bool
) -> None:
    plane = {"tl": 0, "tr": corner_mm, "br": 0, "bl": 0}
    _, findings = made(HALL, plane=plane, flush=flush)
    assert ("arch-cut-flat" in findings) is said


def test_an_arch_gets_no_verdict_and_that_is_said() -> None:
    _, findings = made(HALL)
    assert findings["not-forecast"].severity is Severity.NOTE
    assert "no verdict" in findings["not-forecast"].wrong


def test_a_cut_steeper_than_a_saw_swings_is_a_warning() -> None:
    pieces, findings = made({"corners": [[0, 0], [900, 0], [450, 1400]]})
    assert findings["steep-cut"].severity is Severity.WARNING
    (warning,) = steep_cuts("W1", pieces.values())
    assert "72.2 degrees" in warning.read
    assert "17.8 degrees" in warning.do
    assert steep_cuts("W1", made(HALL)[0].values()) == ()

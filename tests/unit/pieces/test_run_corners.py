from dataclasses import replace

from longpoint.errors import Severity
from longpoint.pieces.boards import Board, Corner, Stop
from longpoint.pieces.run_corners import Side, corner_findings, meetings
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import RunEnd
from tests.room_builder import SKIRTING, a_house


def board(
    mark: str,
    length_mm: float,
    left: int | None,
    right: int | None,
    *,
    kind: RunEnd = RunEnd.INTERNAL,
    profile: Profile = SKIRTING,
    is_held: bool = False,
) -> Board:
    def stop(at: int | None) -> Stop:
        return Stop(kind=kind, at=None if at is None else Corner("Den", at))

    return Board(
        mark=mark,
        room="Den",
        profile=profile,
        length_mm=length_mm,
        u_mm=1.6,
        left=stop(left),
        right=stop(right),
        sum_text="",
        is_held=is_held,
    )


def four_walls() -> list[Board]:
    return [
        board("N", 4000, 3, 0),
        board("E", 3000, 0, 1),
        board("S", 3900, 1, 2),
        board("W", 3100, 2, 3),
    ]


def test_the_longest_board_is_square_at_both_ends_and_the_shortest_scribed_at_both() -> None:
    met = meetings(four_walls())
    through = {mark: [met[mark, side].runs_through for side in Side] for mark in "NESW"}
    assert through == {
        "N": [True, True],
        "E": [False, False],
        "S": [True, True],
        "W": [False, False],
    }
    assert met["E", Side.LEFT].other == "N"


def test_at_every_corner_one_runs_through_and_one_is_scribed() -> None:
    boards = four_walls()
    met = meetings(boards)
    for corner in range(4):
        kinds = [
            met[b.mark, side].runs_through
            for b in boards
            for side, stop in ((Side.LEFT, b.left), (Side.RIGHT, b.right))
            if stop.at == Corner("Den", corner)
        ]
        assert sorted(kinds) == [False, True]


def test_of_two_equal_boards_the_first_written_runs_through() -> None:
    met = meetings([board("A", 3000, None, 0), board("B", 3000, 0, None)])
    assert met["A", Side.RIGHT].runs_through
    assert not met["B", Side.LEFT].runs_through


def test_a_held_board_still_counts_but_nothing_is_said_of_it() -> None:
    boards = [board("A", 3000, None, 0, is_held=True), board("B", 2000, 0, 1)]
    met = meetings(boards)
    assert met["B", Side.LEFT].other == "A"
    (note,) = corner_findings(a_house(), boards, met)
    assert "B right" in note.read
    assert "A" not in note.read


def test_without_a_neighbour_the_left_end_runs_through_and_the_right_is_scribed_and_said() -> None:
    boards = [board("A", 3000, None, None), board("B", 2000, None, None)]
    met = meetings(boards)
    assert met["A", Side.LEFT].runs_through
    assert not met["A", Side.RIGHT].runs_through
    (note,) = corner_findings(a_house(), boards, met)
    assert (note.code, note.severity, note.place) == ("neighbour-assumed", Severity.NOTE, "Den")
    assert "A left, A right, B left, B right" in note.read


def test_boards_of_no_room_are_said_of_the_house() -> None:
    lone = replace(board("A", 3000, None, None), room="")
    (note,) = corner_findings(a_house(), [lone], meetings([lone]))
    assert note.place == a_house().name


def test_two_sections_that_meet_are_a_warning() -> None:
    thin = Profile(name="TO120", width_mm=120.0, thickness_mm=18.0)
    boards = [board("A", 3000, None, 0), board("B", 2000, 0, None, profile=thin)]
    codes = [f.code for f in corner_findings(a_house(), boards, meetings(boards))]
    assert "corner-profiles" in codes


def test_a_corner_that_was_not_read_is_said() -> None:
    lone = board("A", 3000, None, None, kind=RunEnd.EXTERNAL)
    left = Stop(kind=RunEnd.EXTERNAL, corner_deg=270.0, is_assumed=True)
    guessed = replace(lone, left=left)
    (note,) = corner_findings(a_house(), [guessed], meetings([guessed]))
    assert note.code == "run-corner-assumed"

from longpoint.errors import Severity
from longpoint.pieces.boards import Board, Stop
from longpoint.pieces.run_findings import scarf_note, too_short
from longpoint.pieces.scarfs import Reach, split_reach
from longpoint.survey.rooms import RunEnd
from tests.room_builder import SKIRTING, a_house

BOARD = Board(
    mark="S1",
    room="Den",
    profile=SKIRTING,
    length_mm=6000.0,
    u_mm=1.0,
    left=Stop(kind=RunEnd.SQUARE),
    right=Stop(kind=RunEnd.SQUARE),
    sum_text="",
)


def test_a_run_whose_cuts_cross_is_stopped_at_its_mark() -> None:
    stop = too_short(a_house(), BOARD)
    assert (stop.code, stop.severity, stop.place) == ("run-too-short", Severity.STOP, "S1")


def test_the_note_of_a_scarf_tells_where_its_joints_stand() -> None:
    whole = Reach(back_start_mm=0.0, face_start_mm=0.0, back_end_mm=6000.0, face_end_mm=6000.0)
    note = scarf_note(a_house(), BOARD, split_reach(whole, 19.0, 4000.0))
    assert (note.code, note.severity) == ("scarf-joint", Severity.NOTE)
    # As long as goes: 4000 less the lap of one thickness.
    assert "cut in 2 parts" in note.wrong
    assert "3981 mm from the left end" in note.wrong

from longpoint.forecast.fitup.frame import FitLimits, RowKind, frame_rows
from longpoint.forecast.fitup.respect import Respect, rows_of
from tests.fit_up_draws import Set

ROWS = frame_rows(Set().frame(), FitLimits(gap_mm=0.5))


def test_gaps_leave_the_quirk_free() -> None:
    chosen = rows_of(ROWS, Respect.GAPS)
    assert len(chosen) == 32
    assert all(row.kind is not RowKind.QUIRK for row in chosen)


def test_the_quirk_alone_still_lets_no_pieces_overlap() -> None:
    chosen = rows_of(ROWS, Respect.QUIRK)
    assert sum(row.kind is RowKind.QUIRK for row in chosen) == 24
    others = [row for row in chosen if row.kind is not RowKind.QUIRK]
    assert [row.limit_mm for row in others] == [0.0] * 8
    assert {row.kind for row in others} == {RowKind.HEEL_GAP, RowKind.TOE_GAP}


def test_a_quirk_without_any_room_is_still_a_quirk() -> None:
    rows = frame_rows(Set(room_in_mm=0.0, room_out_mm=0.0).frame(), FitLimits(gap_mm=0.5))
    assert len(rows_of(rows, Respect.QUIRK)) == 32
    assert len(rows_of(rows, Respect.GAPS)) == 32


def test_in_plane_is_every_row() -> None:
    assert rows_of(ROWS, Respect.IN_PLANE) == ROWS

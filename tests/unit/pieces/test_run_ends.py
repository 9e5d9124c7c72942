import math

import pytest

from longpoint.pieces.boards import Stop
from longpoint.pieces.piece import SQUARE_CUT, CutKind
from longpoint.pieces.run_ends import corner_bevel_deg, cut_end
from longpoint.survey.rooms import RunEnd
from longpoint.trims.skirting_joints import Seat


def board(thickness_mm: float, **how: float) -> Seat:
    return Seat(width_mm=120.0, thickness_mm=thickness_mm, **how)


def internal(corner_deg: float) -> Stop:
    return Stop(kind=RunEnd.INTERNAL, corner_deg=corner_deg)


def external(corner_deg: float) -> Stop:
    return Stop(kind=RunEnd.EXTERNAL, corner_deg=corner_deg)


@pytest.mark.parametrize(
    ("corner_deg", "bevel_deg"),
    [(269.5, -44.75), (271.0, -45.5), (225.0, -22.5), (90.0, 45.0), (92.0, 44.0)],
    ids=["chimney 90.5 on the solid", "chimney 89.0", "splay 135", "square", "blunt"],
)
def test_the_bevel_halves_the_corner(corner_deg: float, bevel_deg: float) -> None:
    assert corner_bevel_deg(corner_deg) == pytest.approx(bevel_deg)


def test_a_scribed_end_leaves_the_back_on_the_wall_and_the_face_a_thickness_short() -> None:
    end = cut_end(internal(90.0), board(19.0), runs_through=False)
    assert end.cut.kind is CutKind.SCRIBE
    assert end.back_mm == 0.0
    assert end.face_mm == pytest.approx(19.0)


def test_an_external_end_runs_past_on_the_face() -> None:
    end = cut_end(external(269.5), board(20.0), runs_through=False)
    assert end.cut.kind is CutKind.BEVEL
    assert end.back_mm == 0.0
    # t cot(theta / 2), theta / 2 = 134.75
    assert end.face_mm == pytest.approx(20.0 / math.tan(math.radians(134.75)))


def test_a_board_that_runs_through_is_square_to_the_wall() -> None:
    assert cut_end(internal(90.0), board(19.0), runs_through=True).face_mm == pytest.approx(0.0)
    assert cut_end(internal(100.0), board(19.0), runs_through=True).cut == SQUARE_CUT
    assert cut_end(internal(100.0), board(19.0), runs_through=True).face_mm == 0.0


def test_a_board_that_runs_through_into_a_sharp_corner_stops_short_of_jamming() -> None:
    end = cut_end(internal(60.0), board(18.0), runs_through=True)
    assert end.face_mm == end.back_mm == pytest.approx(18.0 / math.sqrt(3.0))


def test_a_return_takes_a_thickness_off_the_back() -> None:
    end = cut_end(Stop(kind=RunEnd.RETURN), board(19.0), runs_through=False)
    assert (end.cut.kind, end.cut.bevel_deg) == (CutKind.BEVEL, -45.0)
    assert (end.back_mm, end.face_mm) == (19.0, 0.0)


@pytest.mark.parametrize("kind", [RunEnd.SQUARE, RunEnd.ARCHITRAVE])
def test_a_square_end_stops_where_it_was_read(kind: RunEnd) -> None:
    end = cut_end(Stop(kind=kind), board(19.0), runs_through=False)
    assert (end.cut, end.back_mm, end.face_mm) == (SQUARE_CUT, 0.0, 0.0)


def test_a_corner_of_two_walls_that_lean_is_a_compound_cut() -> None:
    stop = Stop(kind=RunEnd.EXTERNAL, corner_deg=270.0, lean_deg=2.0)
    end = cut_end(stop, board(18.0, lean_deg=2.0), runs_through=False)
    assert end.cut.kind is CutKind.COMPOUND
    # Both lean back: round an external corner the upper edges draw in.
    assert end.cut.mitre_deg == pytest.approx(-2.0, abs=0.01)
    assert end.top_mm == pytest.approx(120.0 * math.tan(math.radians(end.cut.mitre_deg)))
    assert end.back_mm == pytest.approx(0.0)


def test_a_scribe_on_walls_that_lean_stays_a_scribe() -> None:
    stop = Stop(kind=RunEnd.INTERNAL, corner_deg=90.0, lean_deg=-3.0)
    end = cut_end(stop, board(18.0, lean_deg=-3.0), runs_through=False)
    assert end.cut.kind is CutKind.SCRIBE
    assert end.cut.mitre_deg == pytest.approx(-3.0, abs=0.01)


def test_a_board_stops_short_of_a_wall_that_leans_into_the_room() -> None:
    stop = Stop(kind=RunEnd.INTERNAL, corner_deg=90.0, lean_deg=-1.5)
    end = cut_end(stop, board(18.0), runs_through=True)
    assert end.cut == SQUARE_CUT
    assert end.back_mm == pytest.approx(120.0 * math.tan(math.radians(1.5)))


def test_a_board_takes_a_wall_s_slope_where_a_square_end_would_show() -> None:
    stop = Stop(kind=RunEnd.INTERNAL, corner_deg=90.0, lean_deg=12.0)
    end = cut_end(stop, board(18.0), runs_through=True)
    assert (end.cut.kind, end.cut.bevel_deg) == (CutKind.MITRE, 0.0)
    assert end.cut.mitre_deg == pytest.approx(12.0)


@pytest.mark.parametrize(("rake_deg", "mitre_deg"), [(38.0, -19.0), (-38.0, 19.0)])
def test_a_rake_is_cut_at_half_the_pitch(rake_deg: float, mitre_deg: float) -> None:
    end = cut_end(Stop(kind=RunEnd.RAKE, rake_deg=rake_deg), board(18.0), runs_through=False)
    assert (end.cut.kind, end.cut.mitre_deg, end.cut.bevel_deg) == (CutKind.MITRE, mitre_deg, 0.0)
    assert end.top_mm == pytest.approx(120.0 * math.tan(math.radians(mitre_deg)))
    assert (end.back_mm, end.face_mm) == (0.0, 0.0)


def test_a_board_that_follows_a_falling_floor_stands_plumb_at_its_architrave() -> None:
    end = cut_end(Stop(kind=RunEnd.ARCHITRAVE), board(18.0, climb_deg=-0.5), runs_through=False)
    assert end.cut.mitre_deg == pytest.approx(-0.5)


def test_a_board_that_hardly_falls_is_cut_as_if_it_were_level() -> None:
    end = cut_end(Stop(kind=RunEnd.ARCHITRAVE), board(18.0, climb_deg=-0.2), runs_through=False)
    assert end.cut == SQUARE_CUT

import math

import pytest

from longpoint.pieces.boards import Stop
from longpoint.pieces.piece import SQUARE_CUT, CutKind
from longpoint.pieces.run_ends import corner_bevel_deg, cut_end
from longpoint.survey.rooms import RunEnd


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
    end = cut_end(internal(90.0), 19.0, runs_through=False)
    assert end.cut.kind is CutKind.SCRIBE
    assert end.back_mm == 0.0
    assert end.face_mm == pytest.approx(19.0)


def test_an_external_end_runs_past_on_the_face() -> None:
    end = cut_end(external(269.5), 20.0, runs_through=False)
    assert end.cut.kind is CutKind.BEVEL
    assert end.back_mm == 0.0
    # t cot(theta / 2), theta / 2 = 134.75
    assert end.face_mm == pytest.approx(20.0 / math.tan(math.radians(134.75)))


def test_a_board_that_runs_through_is_square_to_the_wall() -> None:
    assert cut_end(internal(90.0), 19.0, runs_through=True).face_mm == pytest.approx(0.0)
    assert cut_end(internal(100.0), 19.0, runs_through=True).cut == SQUARE_CUT
    assert cut_end(internal(100.0), 19.0, runs_through=True).face_mm == 0.0


def test_a_board_that_runs_through_into_a_sharp_corner_stops_short_of_jamming() -> None:
    end = cut_end(internal(60.0), 18.0, runs_through=True)
    assert end.face_mm == end.back_mm == pytest.approx(18.0 / math.sqrt(3.0))


def test_a_return_takes_a_thickness_off_the_back() -> None:
    end = cut_end(Stop(kind=RunEnd.RETURN), 19.0, runs_through=False)
    assert (end.cut.kind, end.cut.bevel_deg) == (CutKind.BEVEL, -45.0)
    assert (end.back_mm, end.face_mm) == (19.0, 0.0)


@pytest.mark.parametrize("kind", [RunEnd.SQUARE, RunEnd.ARCHITRAVE])
def test_a_square_end_stops_where_it_was_read(kind: RunEnd) -> None:
    end = cut_end(Stop(kind=kind), 19.0, runs_through=False)
    assert (end.cut, end.back_mm, end.face_mm) == (SQUARE_CUT, 0.0, 0.0)

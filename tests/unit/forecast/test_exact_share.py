from dataclasses import replace

import pytest

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.exact_share import misses
from longpoint.forecast.face_lines import FaceLines, face_lines
from longpoint.forecast.fitup.frame import SLOTS, Slot
from longpoint.forecast.planned_face import planned_faces
from longpoint.forecast.terms import FrameErrors, frame_errors
from longpoint.linear.simplex import SimplexSolver
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.solvers.highs import HighsSolver
from longpoint.survey.house_file import read_house
from tests import house_documents

pytestmark = pytest.mark.no_cover


def face(band: tuple[float, float] = (3.0, 7.0)) -> tuple[FaceLines, FrameErrors]:
    document = house_documents.house(openings=[house_documents.window()])
    document["defaults"]["quirk_band"] = list(band)
    house = read_house(document).house
    openings, _ = fit_openings(house)
    (planned,) = planned_faces(house, Shapes(openings=openings), frozenset())
    return face_lines(planned), frame_errors(planned, house_budget(house), house)


def with_lines_left_out(found: FaceLines) -> FaceLines:
    """Return a list that knows only three lines of what can rule, as a bad list would."""
    return replace(found, lines=(*found.lines[:2], found.lines[2][-3:]))


def test_a_roomy_quirk_is_left_to_the_lists() -> None:
    found, errors = face()
    assert misses(with_lines_left_out(found), errors, HighsSolver(), seed=1, draws=50) == 0.0


def test_fits_that_only_a_short_list_calls_are_taken_back() -> None:
    found, errors = face((4.7, 5.3))
    bad = misses(with_lines_left_out(found), errors, HighsSolver(), seed=1, draws=100)
    good = misses(found, errors, HighsSolver(), seed=1, draws=100)
    assert bad > good + 0.1


def test_the_built_in_solver_finds_the_same() -> None:
    found, errors = face((4.7, 5.3))
    short = with_lines_left_out(found)
    one, other = (
        misses(short, errors, solver, seed=2, draws=40)
        for solver in (HighsSolver(), SimplexSolver())
    )
    assert one == pytest.approx(other, abs=1e-12)


def test_a_known_lean_uses_up_the_room() -> None:
    found, errors = face()
    known = list(errors.known)
    known[SLOTS * 1 + Slot.REVEAL_START] = 5.0
    leaning = replace(errors, known=tuple(known))
    assert misses(with_lines_left_out(found), leaning, HighsSolver(), seed=1, draws=60) > 0.0


def test_where_nothing_fits_there_is_nothing_to_take_back() -> None:
    found, errors = face((4.9, 5.1))
    known = list(errors.known)
    known[SLOTS * 1 + Slot.REVEAL_START] = 30.0
    off = replace(errors, known=tuple(known))
    assert misses(found, off, HighsSolver(), seed=1, draws=10) == 0.0

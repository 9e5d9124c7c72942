import math
from typing import Any

import pytest

from longpoint.catalogue.sketch import Stroke
from longpoint.errors import Severity
from longpoint.pieces.piece import Role
from tests.panel_walls import planned, refused


def test_a_socket_on_the_moulding_is_found_with_what_frees_it() -> None:
    # The second frame's left stile runs from 993.2 to 1021.2.
    socket = {"name": "socket", "x": 960, "y": 300, "width": 55, "height": 86}
    result = planned(panels=5, margin=90, obstacles=[socket])
    (finding,) = result.findings
    assert (finding.code, finding.severity) == ("panel-obstacle", Severity.WARNING)
    assert "socket" in finding.read
    # Margins must grow until the second frame starts at 1015: 2 m + (4606 - 6 m) / 5 >= 1015.
    needed_mm = (1015 - 4606 / 5) / 0.8
    assert f"margins of {math.ceil(needed_mm)} " in finding.do
    assert "the whole row 22 to the right" in finding.do
    (sketch,) = result.trims[0].plan.sketches
    assert sum(line.stroke is Stroke.WASTE for line in sketch.lines) == 1


def test_a_pipe_as_high_as_the_wall_is_freed_by_nothing_but_a_margin() -> None:
    pipe = {"name": "pipe", "x": 1100, "y": 0, "width": 40, "height": 1000}
    (finding,) = planned(panels=5, margin=90, obstacles=[pipe]).findings
    assert "No margin" in finding.do


def test_leaning_ends_leave_a_wedge_and_true_frames() -> None:
    result = planned(length_top=4612, panels=5, margin=90)
    (finding,) = result.findings
    assert (finding.code, finding.severity) == ("panel-wedge", Severity.NOTE)
    assert "6 mm longer at the top" in finding.read
    assert "3 at each end" in finding.wrong
    # Solved on the mean: (4609 - 540) / 5.
    rail = next(p for p in result.trims[0].plan.pieces if p.role is Role.RAIL)
    assert rail.outer_mm == pytest.approx(813.8)
    (larger,) = planned(length_top=4590, panels=5, margin=90).findings
    assert larger.severity is Severity.WARNING
    assert "wider at the bottom" in larger.wrong


def test_too_many_frames_are_refused() -> None:
    assert "40 frames" in refused(panels=40, margin=90).read


def test_a_moulding_as_high_as_the_field_is_refused() -> None:
    stop = refused(panels=5, margin=90, height=230)
    assert "high" in stop.read


def test_frames_longer_than_the_wall_are_refused() -> None:
    assert "less than nothing" in refused(panels=5, panel_width=950).wrong


@pytest.mark.parametrize("keys", [{}, {"panels": 5}, {"margin": 90}, {"panel_width": 700}])
def test_two_of_number_width_and_margin_are_needed(keys: dict[str, Any]) -> None:
    assert "two of them" in refused(**keys).wrong


def test_an_obstacle_past_the_wall_s_end_is_refused() -> None:
    far = {"x": 4580, "y": 300, "width": 146, "height": 86}
    assert "4726" in refused(panels=5, margin=90, obstacles=[far]).read

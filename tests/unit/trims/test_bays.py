import math
from itertools import pairwise

import pytest

from longpoint.trims.bays import BayEnd, bay_ends, frame_line, mouth_mm, mouth_u_mm


@pytest.mark.parametrize(("corner_deg", "saw_deg"), [(90, 45), (120, 30), (135, 22.5), (180, 0)])
def test_a_corner_is_sawn_at_90_less_half_of_it(corner_deg: float, saw_deg: float) -> None:
    assert BayEnd(angle_deg=corner_deg, is_corner=True).saw_deg == saw_deg


def test_an_end_is_cut_along_what_it_stops_on() -> None:
    end = BayEnd(angle_deg=80.0, is_corner=False)
    assert end.saw_deg == pytest.approx(10.0)
    # Along a wall at 80 a line 100 into the room is shorter by 100 / tan 80.
    assert end.short_mm(100.0) == pytest.approx(100.0 / math.tan(math.radians(80.0)))


def test_every_light_shares_its_corners_with_its_neighbours() -> None:
    ends = bay_ends((130.0, 140.0), (90.0, 85.0))
    assert [pair[0].angle_deg for pair in ends] == [90.0, 130.0, 140.0]
    assert [pair[1].is_corner for pair in ends] == [True, True, False]


def test_half_an_octagon_stands_out_by_what_its_sides_give() -> None:
    line = frame_line((500.0, 500.0, 500.0), (135.0, 135.0))
    assert line[0] == pytest.approx((0.0, 0.0))
    assert line[3] == pytest.approx((500.0 * (1.0 + math.sqrt(2.0)), 0.0))
    assert line[1].y_mm == pytest.approx(500.0 / math.sqrt(2.0))


def test_a_lopsided_bay_keeps_its_lengths_and_corners() -> None:
    lights, corners = (480.0, 1100.0, 450.0), (133.0, 138.5)
    line = frame_line(lights, corners)
    assert [a.distance_mm(b) for a, b in pairwise(line)] == pytest.approx(lights)
    for index, corner in enumerate(corners, start=1):
        before, here, after = line[index - 1 : index + 2]
        back = math.atan2(before.y_mm - here.y_mm, before.x_mm - here.x_mm)
        onward = math.atan2(after.y_mm - here.y_mm, after.x_mm - here.x_mm)
        assert math.degrees(onward - back) % 360.0 == pytest.approx(corner)
    assert line[-1].y_mm == pytest.approx(0.0, abs=1e-9)
    assert mouth_mm(lights, corners) == pytest.approx(line[-1].x_mm)


def test_the_mouth_of_a_square_bay_is_uncertain_by_its_tapes_and_its_corners() -> None:
    # At two square corners the middle light and the mouth count whole, and a corner off by a
    # degree moves the mouth by the depth of the bay: 600 x pi / 180 = 10.47 a degree.
    found = mouth_u_mm((600.0, 1000.0, 600.0), (90.0, 90.0), 0.0, 0.1)
    assert found == pytest.approx(math.sqrt(2.0) * 1.047, abs=0.002)
    assert mouth_u_mm((600.0, 1000.0), (135.0,), 0.5, 0.0) == pytest.approx(0.5 * math.sqrt(3.0))

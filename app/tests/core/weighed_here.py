"""Sets of rows weighed by a page's engine and in plain Python: a true frame, and a leaning one."""

import json

from longpoint.forecast.fitup.frame import FitLimits, frame_of, frame_rows
from longpoint.forecast.fitup.known_sets import known_sets
from longpoint.forecast.fitup.respect import Respect
from longpoint.forecast.fitup.weighing import weighed_lines
from longpoint.phone import Ports
from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline

LEANS_MM = (0.0, 60.0)


def both_ways(ports: Ports) -> str:
    """Return the lines of each frame, the page's and then those in Python, as JSON."""
    found = []
    for lean_mm in LEANS_MM:
        corners = ((0.0, 0.0), (900.0, 0.0), (900.0 + lean_mm, 1200.0), (lean_mm, 1200.0))
        sides = (TrimSide(inner_mm=4.5, width_mm=70.0),) * 4
        outline = trim_outline([Point(*corner) for corner in corners], sides)
        frame = frame_of(outline, (70.0,) * 4, ((1.8, 1.8),) * 4)
        rows = frame_rows(frame, FitLimits(gap_mm=0.5))
        sets = (*known_sets(frame, rows, Respect.IN_PLANE), (0, 1), tuple(range(len(rows))))
        assert ports.imagined is not None
        found.append((ports.imagined.weigh(rows, sets), weighed_lines(rows, sets)))
    return json.dumps(found)

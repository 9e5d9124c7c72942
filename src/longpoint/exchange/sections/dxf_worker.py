"""Read the lines of a DXF drawing; run in a process of its own, see `limited_work`."""

from collections.abc import Callable
from itertools import islice
from typing import Any, Final

CHORD: Final = 0.02
"""How far a line may lie off its curve, in the drawing's unit."""
MOST_ENTITIES: Final = 5_000
MOST_POINTS: Final = 200_000
"""Of all its lines together. Ours; a section of a moulding has a few hundred."""
FARTHEST: Final = 1e6
"""Steps of the drawing from its origin: a kilometre, were they the smallest, millimetres. Ours."""
KINDS: Final = frozenset({"LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "POLYLINE", "SPLINE"})


def load() -> Callable[[str], dict[str, Any]]:
    """Return the work, once its library is there.

    Raises:
        ImportError: The library isn't installed.
    """
    from ezdxf import path
    from ezdxf.filemanagement import readfile

    def lines_of(name: str) -> dict[str, Any]:
        drawing = readfile(name)
        space = drawing.modelspace()
        entities = [each for each in space if each.dxftype() in KINDS]
        others = sorted({each.dxftype() for each in space if each.dxftype() not in KINDS})
        if len(entities) > MOST_ENTITIES:
            raise MemoryError
        paths = [path.make_path(each) for each in entities]
        # A curve is cut into the more lines the larger it is, one of 1e92 without end: so what
        # spans it is looked at first. Written so that what is no number is far as well.
        handles = (point for each in paths for point in each.control_vertices())
        if not all(abs(v) <= FARTHEST for point in handles for v in (point.x, point.y)):
            return {"is_far": True}
        lines, left = list[list[tuple[float, float]]](), MOST_POINTS
        for each in paths:
            points = islice(each.flattening(CHORD), left + 1)
            lines.append([(point.x, point.y) for point in points])
            left -= len(lines[-1])
            if left < 0:
                raise MemoryError
        return {"unit": int(drawing.units), "lines": lines, "others": others}

    return lines_of

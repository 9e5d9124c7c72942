"""Read the lines of a DXF drawing; run in a process of its own, see `limited_work`."""

from collections.abc import Callable
from typing import Any, Final

CHORD: Final = 0.02
"""How far a line may lie off its curve, in the drawing's unit."""
MOST_ENTITIES: Final = 5_000
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
        lines = [
            [(point.x, point.y) for point in path.make_path(each).flattening(CHORD)]
            for each in entities
        ]
        return {"unit": int(drawing.units), "lines": lines, "others": others}

    return lines_of

"""Draw openings, their trim and the profiles' sections as a DXF file, in millimetres."""

import io
from collections.abc import Mapping, Sequence
from typing import Final

from longpoint.exchange.limited_work import missing_library
from longpoint.sheets.opening_outlines import OpeningOutline, Ring
from longpoint.speech.said import say

MILLIMETRES: Final = 4
"""The code of $INSUNITS."""
BESIDE_MM: Final = 600.0
"""From one opening to the next; where each really stands in the house isn't known here."""
LETTER_MM: Final = 40.0
LAYERS: Final = {"opening": 7, "trim": 3, "section": 5, "name": 8}
"""Our own names, and the colours of the common colour index that they are shown in."""


def house_dxf(outlines: Sequence[OpeningOutline], sections: Mapping[str, Ring]) -> bytes:
    """Return a drawing: openings side by side with their trim, sections below them.

    Each outline is one closed polyline on its layer: `opening`, `trim` or `section`; marks stand
    on `name`. The bottom left corner of the first opening is the drawing's origin.

    Args:
        outlines: The openings.
        sections: Outlines of the profiles' sections, by name.

    Raises:
        ExchangeError: The library that writes DXF files isn't installed.
    """
    try:
        from ezdxf._options import options
        from ezdxf.filemanagement import new
    except ImportError:
        raise missing_library(say("The house was to be drawn as DXF."), "dxf") from None
    # The same house makes the same file.
    options.write_fixed_meta_data_for_testing = True
    drawing = new("R2010", units=MILLIMETRES)
    for layer_name, colour in LAYERS.items():
        drawing.layers.add(layer_name, color=colour)
    space = drawing.modelspace()

    def draw(ring: Ring, layer: str, across_mm: float, up_mm: float) -> None:
        points = [(x + across_mm, y + up_mm) for x, y in ring]
        space.add_lwpolyline(points, close=True, dxfattribs={"layer": layer})

    def write(text: str, across_mm: float, up_mm: float, high_mm: float) -> None:
        space.add_text(text, height=high_mm, dxfattribs={"layer": "name"}).set_placement(
            (across_mm, up_mm)
        )

    across_mm = 0.0
    for outline in outlines:
        rings = (outline.hole, *outline.trim)
        if across_mm:
            across_mm -= min(x for ring in rings for x, _ in ring)
        for ring in outline.trim:
            draw(ring, "trim", across_mm, 0.0)
        draw(outline.hole, "opening", across_mm, 0.0)
        low_mm = min(y for ring in rings for _, y in ring)
        write(outline.mark, across_mm, low_mm - 1.5 * LETTER_MM, LETTER_MM)
        across_mm += max(x for ring in rings for x, _ in ring) + BESIDE_MM
    across_mm = 0.0
    for profile, ring in sections.items():
        draw(ring, "section", across_mm, -BESIDE_MM)
        write(profile, across_mm, -BESIDE_MM - LETTER_MM / 2, LETTER_MM / 4)
        across_mm += max(x for x, _ in ring) + BESIDE_MM / 4
    out = io.StringIO()
    drawing.write(out)
    return out.getvalue().encode(drawing.output_encoding, errors="dxfreplace")

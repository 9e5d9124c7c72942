"""The drawing that is given out, audited and read back by the library's own reader."""

from dataclasses import replace
from pathlib import Path

import pytest
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.filemanagement import readfile

from longpoint.exchange.house_files import load_house
from longpoint.exchange.sections.write_dxf import BESIDE_MM, LAYERS, house_dxf
from longpoint.pipeline import plan_house
from longpoint.sheets.opening_outlines import opening_outlines

EXAMPLE = Path(__file__).parents[4] / "examples" / "wren-house.toml"
SECTION = ((0.0, 0.0), (57.0, 0.0), (57.0, 12.0), (50.0, 18.0), (0.0, 18.0))


def test_a_house_is_drawn_clean_and_reads_back_to_a_millionth(tmp_path: Path) -> None:
    found = opening_outlines(plan_house(load_house(EXAMPLE)))
    path = tmp_path / "house.dxf"
    path.write_bytes(house_dxf(found.outlines, {"OG57": SECTION}))
    drawing = readfile(path)
    audit = drawing.audit()
    assert not audit.has_errors
    assert not audit.has_fixes
    assert drawing.header["$INSUNITS"] == 4
    assert set(LAYERS) <= {layer.dxf.name for layer in drawing.layers}
    rings = {
        layer: [
            [(x, y) for x, y in line.get_points("xy")]
            for line in drawing.modelspace().query(f'LWPOLYLINE[layer=="{layer}"]')
            if isinstance(line, LWPolyline)
        ]
        for layer in ("opening", "trim", "section")
    }
    assert len(rings["opening"]) == len(found.outlines) > 3
    assert len(rings["trim"]) == sum(len(outline.trim) for outline in found.outlines)
    for ring, outline in zip(rings["opening"], found.outlines, strict=True):
        off = ring[0][0] - outline.hole[0][0]
        for (x, y), (true_x, true_y) in zip(ring, outline.hole, strict=True):
            assert x - off == pytest.approx(true_x, abs=1e-6)
            assert y == pytest.approx(true_y, abs=1e-6)
    (section,) = rings["section"]
    for (x, y), (true_x, true_y) in zip(section, SECTION, strict=True):
        assert (x, y + BESIDE_MM) == pytest.approx((true_x, true_y), abs=1e-6)


def test_an_opening_is_drawn_as_wide_as_it_was_read() -> None:
    found = opening_outlines(plan_house(load_house(EXAMPLE)))
    w1 = next(outline for outline in found.outlines if outline.mark == "W1")
    # Read: top 1185, bottom 1184; the fit moves neither by a millimetre.
    (bl, br, tr, tl) = w1.hole
    assert br[0] - bl[0] == pytest.approx(1184, abs=1)
    assert tr[0] - tl[0] == pytest.approx(1185, abs=1)
    assert len(w1.trim) == 4


def test_what_is_held_is_named_and_not_drawn() -> None:
    found = opening_outlines(plan_house(load_house(EXAMPLE)))
    assert "W3" in found.left_out
    assert "W3" not in {outline.mark for outline in found.outlines}


def test_the_same_house_makes_the_same_drawing() -> None:
    outlines = opening_outlines(plan_house(load_house(EXAMPLE))).outlines
    assert house_dxf(outlines, {}) == house_dxf(outlines, {})


def test_openings_do_not_lie_over_each_other() -> None:
    outlines = opening_outlines(plan_house(load_house(EXAMPLE))).outlines
    twice = [outlines[0], replace(outlines[0], mark="again")]
    assert house_dxf(twice, {}).count(b"LWPOLYLINE") == 2 * (1 + len(outlines[0].trim))

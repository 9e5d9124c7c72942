"""Sections from drawings made here, against exact areas, and drawings that are traps."""

import itertools
import math
import random
from pathlib import Path
from unittest.mock import patch

import pytest
from ezdxf.filemanagement import new
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from longpoint.errors import ExchangeError
from longpoint.exchange.sections import dxf_worker
from longpoint.exchange.sections.outlines import area_mm2, is_same_from_both_edges, joined
from longpoint.exchange.sections.read_section import read_section
from longpoint.exchange.sections.svg_paths import CHORD_MM, path_lines

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50">'


def svg(folder: Path, body: str, head: str = HEAD) -> Path:
    path = folder / "a.svg"
    path.write_text(f"{head}{body}</svg>", encoding="utf-8")
    return path


def test_a_rectangle_is_itself_and_may_be_turned(tmp_path: Path) -> None:
    section = read_section(svg(tmp_path, '<rect x="3" y="4" width="57" height="18"/>'))
    assert (section.width_mm, section.thickness_mm) == pytest.approx((57, 18))
    assert section.area_mm2 == pytest.approx(57 * 18)
    assert section.reversible


def test_a_drawing_that_stands_or_lies_on_its_face_is_laid_down(tmp_path: Path) -> None:
    standing = read_section(svg(tmp_path, '<path d="M10 0 V40 H18 V5 A5 5 0 0 0 13 0 Z"/>'))
    assert (standing.width_mm, standing.thickness_mm) == pytest.approx((40, 8))
    back = [x for x, y in standing.outline if y < 0.01]
    assert max(back) - min(back) == pytest.approx(40, abs=0.01)
    assert not standing.reversible


def test_a_quarter_round_has_the_area_of_its_circle_within_the_chords(tmp_path: Path) -> None:
    section = read_section(svg(tmp_path, '<path d="M0 20 H20 A20 20 0 0 0 0 0 Z"/>'))
    exact = math.pi * 20**2 / 4
    length = math.pi * 20 / 2
    assert exact - CHORD_MM * length <= section.area_mm2 <= exact


def test_a_half_round_may_be_turned_and_a_bevel_may_not(tmp_path: Path) -> None:
    half = read_section(svg(tmp_path, '<path d="M0 20 H40 A20 20 0 0 0 0 20 Z"/>'))
    assert half.reversible
    bevel = read_section(svg(tmp_path, '<path d="M0 20 H40 V4 L39 2 H0 Z"/>'))
    assert not bevel.reversible


def test_a_parabola_and_a_cubic_have_the_areas_that_a_sum_gives() -> None:
    # Under a parabola of base 30 and control height 20: two thirds of base times half of that.
    (parabola,) = path_lines("M0 0 Q15 20 30 0 Z", 0.001)
    assert abs(area_mm2(parabola[:-1])) == pytest.approx(2 / 3 * 30 * 10, abs=0.03)
    # By Green's sum for a cubic from (0,0) to (30,0), both handles 20 high above its ends.
    (cubic,) = path_lines("M0 0 C0 20 30 20 30 0 Z", 0.001)
    assert abs(area_mm2(cubic[:-1])) == pytest.approx(360, abs=0.04)


@given(
    radius_x=st.floats(1, 40), radius_y=st.floats(1, 40), turn=st.floats(-90, 90),
    chord=st.sampled_from([0.001, 0.02, 0.2]),
)  # fmt: skip
def test_no_line_lies_further_off_an_arc_than_is_stated(
    radius_x: float, radius_y: float, turn: float, chord: float
) -> None:
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    x, y = radius_x * cos, radius_x * sin
    arc = f"{radius_x} {radius_y} {turn} 1 1"
    (line,) = path_lines(f"M{x} {y} A{arc} {-x} {-y} A{arc} {x} {y} Z", chord)
    area = Polygon(line).area
    exact = math.pi * radius_x * radius_y
    around = 2 * math.pi * max(radius_x, radius_y)
    assert exact - chord * around <= area <= exact * (1 + 1e-9)
    for a, b in itertools.pairwise(line):
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        u, v = cos * middle[0] + sin * middle[1], -sin * middle[0] + cos * middle[1]
        short = 1 - math.hypot(u / radius_x, v / radius_y)
        assert short * min(radius_x, radius_y) <= chord * 1.001


@pytest.mark.parametrize(
    "data",
    ["M0 0H10V5H0z", "m0,0h10v5h-10z", "M0 0 10 0 10 5 0 5Z", "M0,0L10,0,10,5L0,5Z",
     "M0 0L1e1 0V.5e1H0Z", "M0 0h5h5v5h-10z"],
)  # fmt: skip
def test_the_ways_of_writing_a_path_mean_the_same(data: str) -> None:
    (line,) = path_lines(data)
    assert abs(area_mm2(line[:-1])) == pytest.approx(50)


def test_the_flags_of_an_arc_may_touch_what_follows() -> None:
    assert path_lines("M0 0a5 5 0 11.5 3z") == path_lines("M0 0 a 5 5 0 1 1 .5 3 z")


@pytest.mark.parametrize("data", ["L1 1", "M0", "M0 0 L", "M0 0 A1 1 0 2 0 1 1", "M0 0 X", "1 2",
                                  "M0 0 L1e99 1", "M0 0 Z 1"])  # fmt: skip
def test_a_broken_path_is_refused(data: str) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        path_lines(data)


@given(seed=st.integers(0, 10**6))
@settings(max_examples=20)
def test_pieces_in_any_order_and_direction_make_one_outline(seed: int) -> None:
    chance = random.Random(seed)
    corners = [(0.0, 0.0), (57.0, 0.0), (57.0, 12.0), (50.0, 18.0), (0.0, 18.0)]
    pieces = list(zip(corners, [*corners[1:], corners[0]], strict=True))
    chance.shuffle(pieces)
    mixed = [piece if chance.random() < 0.5 else piece[::-1] for piece in pieces]
    (outline,) = joined(mixed, "read")
    assert abs(area_mm2(outline)) == pytest.approx(Polygon(corners).area)


def test_a_nearly_even_section_is_told_apart_at_a_tenth() -> None:
    for off, same in ((0.05, True), (0.2, False)):
        assert is_same_from_both_edges([(0, 0), (57, 0), (57, 18), (0, 18 + off)]) is same


def test_transforms_and_view_boxes_are_followed(tmp_path: Path) -> None:
    head = '<svg xmlns="http://www.w3.org/2000/svg" width="5cm" height="5cm" viewBox="0 0 100 100">'
    body = '<g transform="translate(7,3) rotate(90)"><g transform="scale(2)">'
    body += '<rect width="40" height="10" transform="matrix(1 0 0 1 5 5)"/></g></g>'
    section = read_section(svg(tmp_path, body, head))
    assert (section.width_mm, section.thickness_mm) == pytest.approx((40, 10))


NESTED = "<g>" * 5_000 + "</g>" * 5_000
ENTITY = '<!DOCTYPE svg [<!ENTITY a "x"><!ENTITY b "&a;&a;">]>'


@pytest.mark.parametrize(
    ("body", "head"),
    [
        ("<rect width='57' height='18'/>", ENTITY + HEAD),
        ("<rect width='57' height='18'/>", HEAD.replace("mm", "")),
        ("<rect width='57' height='18'/>", "<html>"),
        (NESTED, HEAD),
        ("<text>section</text>", HEAD),
        ("<path d='M0 0 H57 V18'/>", HEAD),
        ("<rect width='57' height='18'/><rect x='60' width='20' height='9'/>", HEAD),
        ("<rect width='57000' height='18'/>", HEAD),
        ("<rect width='.5' height='.2'/>", HEAD),
        ("<rect width='57' height='18' transform='matrix(1 2 3)'/>", HEAD),
        ("<rect width='57' height='18' transform='url(x)'/>", HEAD),
        ("<path d='M0 0 H1e999'/>", HEAD),
        ("<rect width='0' height='18'/>", HEAD),
        ("<path d='" + "M0 0 h1 v1 z" * 200_000 + "'/>", HEAD),
        ("<rect width='1' height='1'/>" * 3_000, HEAD),
        ("\0", HEAD),
        ("<path d='M0 0" + "t9999 9" * 200_000 + "'/>", HEAD),
        ("<path d='" + "M0 0 1 1" * 200_000 + "'/>", HEAD),
    ],
    ids=[
        *("entities", "no unit", "no svg", "nested", "no shape", "open", "two", "huge", "tiny"),
        *("matrix", "transform", "endless", "flat", "megabytes", "many", "nul"),
        *("long curves", "loose lines"),
    ],
)
def test_a_hostile_svg_is_refused_in_three_sentences(tmp_path: Path, body: str, head: str) -> None:
    with pytest.raises(ExchangeError) as caught:
        read_section(svg(tmp_path, body, head))
    assert caught.value.read.endswith(".")
    assert caught.value.do.endswith(".")


def drawing(folder: Path, units: int = 4) -> Path:
    made = new("R2010", units=units)
    space = made.modelspace()
    space.add_line((0, 0), (57, 0))
    space.add_line((57, 12), (57, 0))
    space.add_arc((51, 12), 6, 0, 90)
    space.add_lwpolyline([(51, 18), (0, 18), (0, 0)])
    space.add_text("OG57")
    path = folder / "a.dxf"
    made.saveas(path)
    return path


def test_a_dxf_of_loose_lines_and_arcs_is_joined(tmp_path: Path) -> None:
    section = read_section(drawing(tmp_path))
    assert (section.width_mm, section.thickness_mm) == pytest.approx((57, 18))
    exact = 57 * 18 - (36 - math.pi * 36 / 4)
    assert exact - CHORD_MM * math.pi * 3 <= section.area_mm2 <= exact + 1e-3
    assert section.notes == ("Not looked at: text.",)


def test_a_dxf_without_a_unit_asks_for_it(tmp_path: Path) -> None:
    path = drawing(tmp_path, units=0)
    with pytest.raises(ExchangeError, match="--units"):
        read_section(path)
    assert read_section(path, "mm").width_mm == pytest.approx(57)


def drawn_so(folder: Path, kind: str, **sizes: object) -> Path:
    path = folder / "far.dxf"
    made = new("R2010", units=4)
    made.modelspace().new_entity(kind, sizes)
    made.saveas(path)
    return path


@pytest.mark.parametrize(
    ("kind", "sizes"),
    [
        ("CIRCLE", {"radius": 1e92}),
        ("ARC", {"radius": 1e12, "start_angle": 0, "end_angle": 90}),
        ("ELLIPSE", {"major_axis": (1e92, 0), "ratio": 0.5}),
        ("LINE", {"start": (0, 0), "end": (1e92, 0)}),
    ],
    ids=["circle", "arc", "axis", "line"],
)
def test_what_is_far_away_in_a_dxf_is_refused_before_a_curve_is_cut_up(
    tmp_path: Path, kind: str, sizes: dict[str, object]
) -> None:
    with (
        patch("ezdxf.path.Path.flattening", side_effect=AssertionError("cut up")),
        patch("longpoint.exchange.sections.read_section.limited", in_this_process),
        pytest.raises(ExchangeError, match="kilometre"),
    ):
        read_section(drawn_so(tmp_path, kind, **sizes))


def in_this_process(_module: str, path: Path, *_: object) -> object:
    return dxf_worker.load()(str(path))


def test_many_large_circles_in_a_dxf_are_too_much(tmp_path: Path) -> None:
    made = new("R2010", units=4)
    for _ in range(40):
        made.modelspace().add_circle((0, 0), 900_000)
    path = tmp_path / "many.dxf"
    made.saveas(path)
    with pytest.raises(MemoryError):
        dxf_worker.load()(str(path))


@pytest.mark.parametrize(
    "data",
    [
        b"hello",
        b"  0\nSECTION\n  2\nENTITIES\n  0\nLINE\n",
        b"\0" * 999,
        b"AutoCAD Binary DXF\r\n\x1a",
    ],
    ids=["text", "cut short", "noughts", "binary"],
)
def test_a_broken_dxf_is_refused(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "a.dxf"
    path.write_bytes(data)
    with pytest.raises(ExchangeError):
        read_section(path)

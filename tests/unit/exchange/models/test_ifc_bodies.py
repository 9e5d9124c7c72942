"""Bodies of a model measured by the library that reads it, not by what wrote them.

`ifcopenshell.geom` makes triangles of each body, on its own; lengths, volumes and where the cut
faces meet are taken from those. The volume of a bar between two flat mitres is its section's area
times the length along the line through the section's middle (prism cut by planes: textbook).
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise
from pathlib import Path
from typing import Any, Final

import ifcopenshell
import ifcopenshell.geom
import ifcopenshell.util.element
import pytest
from shapely import Polygon

from longpoint.exchange.house_files import load_house
from longpoint.exchange.models.write_ifc import GivenModel, house_ifc
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.pipeline import plan_house
from tests.unit.exchange.models.test_ifc import validated

EXAMPLES: Final = Path(__file__).parents[4] / "examples"
DAY: Final = date(2026, 3, 1)
CLOSE_MM: Final = 0.05

# An ogee's rough outline: thin at the inner edge, so that no half turn takes it to itself.
OGEE: Final = ((0.0, 0.0), (57.0, 0.0), (57.0, 18.0), (38.0, 18.0), (30.0, 12.0), (0.0, 8.0))

Point = tuple[float, ...]
Triangles = list[tuple[Point, Point, Point]]


def planned(name: str, section: Sequence[tuple[float, float]] = ()) -> HousePlan:
    plan = plan_house(load_house(EXAMPLES / f"{name}.toml"))
    profiles = tuple(
        replace(profile, section=tuple(section)) if profile.name == "OG57" else profile
        for profile in plan.house.profiles
    )
    return replace(plan, house=replace(plan.house, profiles=profiles))


class Measured:
    """A model as its bodies are read: each in its own frame, and where it stands in the house."""

    def __init__(self, plan: HousePlan) -> None:
        self.plan = plan
        self.given: GivenModel = house_ifc(plan, DAY)
        self.model: Any = ifcopenshell.file.from_string(self.given.text)
        self.own = self._triangles(in_house=False)
        self.placed = self._triangles(in_house=True)
        self.pieces: Mapping[str, Piece] = {piece.mark: piece for piece in plan.pieces}

    def _triangles(self, *, in_house: bool) -> dict[str, Triangles]:
        geometry: Any = ifcopenshell.geom
        settings = geometry.settings()
        settings.set("use-world-coords", in_house)
        settings.set("convert-back-units", True)
        found = {}
        for covering in self.model.by_type("IfcCovering"):
            shape = geometry.create_shape(settings, covering)
            flat, faces = shape.geometry.verts, shape.geometry.faces
            points = [tuple(flat[i : i + 3]) for i in range(0, len(flat), 3)]
            corners = [points[n] for n in faces]
            found[covering.Name] = [
                (corners[i], corners[i + 1], corners[i + 2]) for i in range(0, len(corners), 3)
            ]
        return found


@pytest.fixture(scope="module")
def wren() -> Measured:
    return Measured(planned("wren-house"))


@pytest.fixture(scope="module")
def moulded() -> Measured:
    return Measured(planned("wren-house", OGEE))


@pytest.fixture(scope="module")
def otter() -> Measured:
    return Measured(planned("otter-mill"))


def corners(triangles: Triangles) -> list[Point]:
    return [point for triangle in triangles for point in triangle]


def volume_mm3(triangles: Triangles) -> float:
    """Return what the triangles enclose, by the divergence theorem."""
    total = 0.0
    for (ax, ay, az), (bx, by, bz), (cx, cy, cz) in triangles:
        total += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
    return total / 6.0


def edge_mm(triangles: Triangles, across_mm: float, up_mm: float) -> float:
    """Return how long the body's edge on a line along it is."""
    along = [x for x, y, z in corners(triangles) if math.dist((y, z), (across_mm, up_mm)) < 0.01]
    return max(along) - min(along)


def nearest_mm(point: Point, others: Sequence[Point]) -> float:
    return min(math.dist(point, other) for other in others)


def meet_mm(model: Measured, one: str, other: str, *, corners_in_joint: int = 4) -> float:
    """Return how far two neighbours' cut faces are apart: the nearest corners, pair by pair."""
    a, b = (list(dict.fromkeys(corners(model.placed[mark]))) for mark in (one, other))
    return sorted(nearest_mm(point, b) for point in a)[corners_in_joint - 1]


def is_closed(triangles: Triangles) -> bool:
    """Tell whether every edge is used once each way, so that nothing is open or inside out."""
    edges: dict[tuple[Point, Point], int] = {}
    for triangle in triangles:
        for start, end in zip(triangle, (*triangle[1:], triangle[0]), strict=True):
            edges[start, end] = edges.get((start, end), 0) + 1
    return all(edges.get((end, start), 0) == count for (start, end), count in edges.items())


@pytest.mark.parametrize("model", ["wren", "otter"])
def test_every_covering_has_a_closed_body_as_large_as_its_piece(
    model: str, request: pytest.FixtureRequest
) -> None:
    measured: Measured = request.getfixturevalue(model)
    assert measured.given.without_body == ()
    assert set(measured.own) == set(measured.pieces) - set(measured.given.left_out)
    for mark, triangles in measured.own.items():
        piece = measured.pieces[mark]
        assert is_closed(triangles), mark
        ys, zs = ([point[axis] for point in corners(triangles)] for axis in (1, 2))
        assert (min(ys), max(ys)) == pytest.approx((0.0, piece.width_mm), abs=CLOSE_MM)
        assert (min(zs), max(zs)) == pytest.approx((0.0, piece.thickness_mm), abs=CLOSE_MM)
        face_mm = piece.thickness_mm
        assert edge_mm(triangles, 0.0, face_mm) == pytest.approx(piece.inner_mm, abs=CLOSE_MM)
        outer_mm = edge_mm(triangles, piece.width_mm, face_mm)
        assert outer_mm == pytest.approx(piece.outer_mm, abs=CLOSE_MM)
        if piece.left.bevel_deg == piece.right.bevel_deg == 0.0:
            xs = [point[0] for point in corners(triangles)]
            middle_mm = (piece.inner_mm + piece.outer_mm) / 2.0
            bar_mm3 = piece.width_mm * piece.thickness_mm * middle_mm
            # A foot that is as good as square is cut square, so an edge may be out by a hair.
            slack_mm3 = piece.width_mm * piece.thickness_mm * CLOSE_MM
            assert volume_mm3(triangles) == pytest.approx(bar_mm3, abs=slack_mm3)
            if piece.left.mitre_deg >= 0.0 and piece.right.mitre_deg >= 0.0:
                assert max(xs) - min(xs) == pytest.approx(piece.long_mm, abs=CLOSE_MM)


def test_a_moulded_section_s_volume_is_its_area_times_its_middle_line(moulded: Measured) -> None:
    section = Polygon(OGEE)
    share = section.centroid.x / 57.0
    mitred = [p for p in moulded.plan.pieces if p.opening and p.profile == "OG57"]
    assert len(mitred) > 20
    for piece in mitred:
        middle_mm = piece.inner_mm + share * (piece.outer_mm - piece.inner_mm)
        volume = volume_mm3(moulded.own[piece.mark])
        assert volume == pytest.approx(section.area * middle_mm, abs=section.area * CLOSE_MM)
    # A flat board in the place of the moulding would be a third heavier.
    assert section.area < 0.8 * 57.0 * 18.0
    names = {each.ProfileName for each in moulded.model.by_type("IfcArbitraryClosedProfileDef")}
    assert names == {"OG57"}


RINGS: Final = (
    ("wren", ("W1-left-leg", "W1-head", "W1-right-leg", "W1-sill", "W1-left-leg")),
    ("wren", ("W2-left-leg", "W2-head", "W2-right-leg", "W2-sill", "W2-left-leg")),
    ("wren", ("D2a-left-leg", "D2a-head", "D2a-right-leg")),
    ("moulded", ("W1-left-leg", "W1-head", "W1-right-leg", "W1-sill", "W1-left-leg")),
    ("otter", ("W5-left-leg", "W5-head", "W5-right-leg", "W5-sill", "W5-left-leg")),
    ("otter", tuple(f"W6-side-{side}" for side in (1, 6, 5, 4, 3, 2, 1))),
    ("otter", ("D1-band-left-leg", "D1-band-head", "D1-band-right-leg")),
)


@pytest.mark.parametrize(("model", "marks"), RINGS)
def test_neighbours_meet_on_all_of_their_mitre(
    model: str, marks: Sequence[str], request: pytest.FixtureRequest
) -> None:
    measured: Measured = request.getfixturevalue(model)
    count = len(OGEE) if model == "moulded" else 4
    for one, other in pairwise(marks):
        assert meet_mm(measured, one, other, corners_in_joint=count) < CLOSE_MM, (one, other)
    # The far ends don't meet: the measure can tell.
    assert meet_mm(measured, marks[0], marks[1], corners_in_joint=count + 1) > 100.0


@pytest.mark.parametrize(
    ("model", "board", "small", "shared"),
    [
        ("wren", "S3", "S3-return-right", 4),
        ("otter", "W1-apron", "W1-apron-return-left", 4),
        ("otter", "W1-apron", "W1-apron-return-right", 4),
        ("wren", "S1-1", "S1-2", 4),
    ],
)
def test_returns_and_scarfed_parts_close(
    model: str, board: str, small: str, shared: int, request: pytest.FixtureRequest
) -> None:
    measured: Measured = request.getfixturevalue(model)
    assert meet_mm(measured, board, small, corners_in_joint=shared) < CLOSE_MM
    backs = [min(z for *_, z in corners(measured.placed[mark])) for mark in (board, small)]
    assert backs[0] == pytest.approx(backs[1], abs=CLOSE_MM)


def test_architraves_stand_a_quirk_off_the_reveal_on_every_side(wren: Measured) -> None:
    # W5 was read by width and height alone, so its hole is 594 x 593; the quirk is 5.
    points = {side: corners(wren.placed[f"W5-{side}"]) for side in ("left-leg", "right-leg",
                                                                    "head", "sill")}  # fmt: skip
    inside_mm = min(x for x, *_ in points["right-leg"]) - max(x for x, *_ in points["left-leg"])
    assert inside_mm == pytest.approx(594 + 2 * 5, abs=CLOSE_MM)
    inside_mm = min(z for *_, z in points["head"]) - max(z for *_, z in points["sill"])
    assert inside_mm == pytest.approx(593 + 2 * 5, abs=CLOSE_MM)
    # Its back is on the wall, its face in front of it.
    depth = [y for side in points.values() for _, y, _ in side]
    assert (min(depth), max(depth)) == pytest.approx((-18.0, 0.0), abs=CLOSE_MM)


def test_skirting_runs_along_its_walls_and_leaves_the_door_free(otter: Measured) -> None:
    # Parlour: walls of 4200 and 3600 as read; D1 stands in its south wall.
    boards = {side: corners(otter.placed[f"Parlour-{side}"]) for side in ("N", "E", "W")}
    everything = [point for each in boards.values() for point in each]
    spans = [max(p[axis] for p in everything) - min(p[axis] for p in everything) for axis in (0, 1)]
    # The corners are off square by up to 20 mm over a wall.
    assert spans[0] == pytest.approx(4200.0, abs=25.0)
    assert spans[1] == pytest.approx(3600.0, abs=25.0)
    assert min(y for _, y, _ in boards["N"]) > max(y for _, y, _ in boards["W"]) - 40.0
    door = corners(otter.placed["D1-left-plinth"]) + corners(otter.placed["D1-right-plinth"])
    for part in ("Parlour-S-1", "Parlour-S-2"):
        assert abs(nearest_face_mm(door, corners(otter.placed[part]))) < 1.0
    # Parlour and door look the same way: the plinth's face is further into the room.
    assert max(y for _, y, _ in door) > max(y for _, y, _ in corners(otter.placed["Parlour-S-2"]))


def nearest_face_mm(some: Sequence[Point], others: Sequence[Point]) -> float:
    """Return how far two things are apart along x; negative where they overlap."""
    a, b = ((min(p[0] for p in each), max(p[0] for p in each)) for each in (some, others))
    # The door's two legs: the board is left or right of both.
    return max(b[0] - a[1], a[0] - b[1])


def test_what_is_known_of_a_place_stands_in_the_model(otter: Measured) -> None:
    told = {
        assembly.Name: ifcopenshell.util.element.get_psets(assembly)["longpoint_Place"]
        for assembly in reversed(otter.model.by_type("IfcElementAssembly"))
    }
    assert told["W1"]["IsPlaceKnown"] is True
    assert "left-hand corner" in told["W1"]["Place"]
    assert told["W4"]["IsPlaceKnown"] is False
    assert "stand in a row" in told["W4"]["Place"]
    assert "as at the saw" in told["CN1"]["Place"]
    assert set(otter.given.in_a_row) == {mark for mark in told if not told[mark]["IsPlaceKnown"]}


def test_things_in_the_row_stand_clear_of_each_other(otter: Measured) -> None:
    spans = []
    for assembly in otter.model.by_type("IfcElementAssembly"):
        if ifcopenshell.util.element.get_psets(assembly)["longpoint_Place"]["IsPlaceKnown"]:
            continue
        parts = [part.Name for part in ifcopenshell.util.element.get_parts(assembly)]
        xs = [p[0] for mark in parts for p in corners(otter.placed[mark])]
        spans.append((min(xs), max(xs)))
    spans.sort()
    assert len(spans) > 10
    assert all(b[0] - a[1] > 500.0 for a, b in pairwise(spans))


@pytest.mark.long
@pytest.mark.parametrize("model", ["otter", "moulded"])
def test_every_kind_of_trim_and_a_drawn_section_are_valid(
    model: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    measured: Measured = request.getfixturevalue(model)
    path = tmp_path / "house.ifc"
    path.write_text(measured.given.text, encoding="utf-8")
    sound = validated(path)
    assert sound.returncode == 0, sound.stdout + sound.stderr

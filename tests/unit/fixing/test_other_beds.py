"""What the nails of cornices and linings pass: against points and lines put together by shapely."""

import math
from dataclasses import replace
from typing import Any

import pytest
from shapely import LineString, Polygon, affinity

from longpoint.fixing.nail_lines import Into
from longpoint.fixing.nailing import Treatment, nail_house, treatment_of
from longpoint.fixing.other_beds import (
    CORNICE_EDGE_MM,
    PACKED_APART_MM,
    USUAL_SPRING_DEG,
    packed_bed,
    spring_deg,
    sprung_beds,
)
from longpoint.fixing.wall_behind import wall_behind
from longpoint.pieces.piece import Role
from longpoint.survey.trims import TrimEntry
from tests.house_documents import the_house
from tests.unit.fixing.nailed import piece, skirting

WALL = wall_behind(the_house(fixing={"board": 10, "packing": 8, "stud_face": 45, "stud_depth": 90}))


def entry(kind: str = "cornice", **values: Any) -> TrimEntry:  # noqa: ANN401
    return TrimEntry(mark="CN1", kind=kind, tape="T", values=values, written={})


@pytest.mark.parametrize("from_wall_deg", [30.0, 38.0, 45.0, 52.0])
def test_a_nail_passes_what_a_leaning_board_leaves_between_its_face_and_the_stud(
    from_wall_deg: float,
) -> None:
    thick_mm, width_mm = 11.0, 95.0
    board = Polygon([(0, 0), (width_mm, 0), (width_mm, -thick_mm), (0, -thick_mm)])
    # Its back from the wall, up along the slope: the room lies where x grows and y falls.
    leaning = affinity.rotate(board, 90.0 - from_wall_deg, origin=(0, 0))
    along = math.radians(90.0 - from_wall_deg)
    low, top = sprung_beds(thick_mm, from_wall_deg, WALL)
    at_mm = CORNICE_EDGE_MM
    level = LineString([(-1.0, at_mm * math.sin(along)), (300.0, at_mm * math.sin(along))])
    upright_at = (width_mm - at_mm) * math.cos(along)
    upright = LineString([(upright_at, -300.0), (upright_at, width_mm * math.sin(along) + 1.0)])
    face_x = leaning.intersection(level).bounds[2]
    face_y = leaning.intersection(upright).bounds[1]
    assert low.through_mm == pytest.approx(face_x + 10.0)
    assert top.through_mm == pytest.approx(width_mm * math.sin(along) - face_y + 10.0)
    assert (low.into, top.into) == (Into.STUD, Into.JOIST)


@pytest.mark.parametrize(
    ("values", "wanted_deg"),
    [
        ({"spring": 38.0, "spring_from": "wall"}, 38.0),
        ({"spring": 38.0, "spring_from": "ceiling"}, 52.0),
        ({"spring": 38.0}, 38.0),
        ({"drop": 80.0, "projection": 60.0}, 36.87),
        ({}, USUAL_SPRING_DEG),
    ],
)
def test_the_spring_is_what_the_cornice_tells(values: dict[str, Any], wanted_deg: float) -> None:
    assert spring_deg(entry(**values)) == pytest.approx(wanted_deg, abs=0.01)


def test_a_lining_is_nailed_in_pairs_through_its_packers() -> None:
    bed = packed_bed(25.0, WALL)
    assert (bed.through_mm, bed.cover_mm) == (33.0, 40.0)
    house = replace(the_house(), trims=(entry("jamb-lining"),))
    leg = skirting("CN1-left", 2000.0, role=Role.LINING, run=None, trim="CN1", width_mm=129.0)
    made = nail_house(house, [leg])
    (section,) = made.sections
    (nailed,) = made.pieces
    # 1900 between the first and the last: five stretches of 380, so six nails, and two of each.
    assert nailed.counts == (12,)
    assert nailed.apart_mm[0] <= PACKED_APART_MM
    assert (section.treatment, section.in_a_row) == (Treatment.LINED, 2)


def test_every_role_has_its_way_of_being_fixed() -> None:
    ways = {role: treatment_of(piece(role)) for role in Role}
    assert ways[Role.CORNICE] is Treatment.CEILING
    assert ways[Role.BOARD] is Treatment.BEDDED
    assert ways[Role.SHELF] is Treatment.BATTENS
    assert ways[Role.HANDRAIL] is Treatment.BRACKETS
    lining = piece(Role.LINING)
    assert treatment_of(lining, "splayed-lining") is Treatment.BACKED
    assert treatment_of(lining, "extension-lining") is Treatment.PINNED
    assert treatment_of(lining, "jamb-lining") is Treatment.LINED

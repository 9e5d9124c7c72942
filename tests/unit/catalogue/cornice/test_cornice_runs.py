"""The spring of a cornice, and what its runs meet."""

from typing import Any

import pytest

from longpoint.pieces.piece import CutKind
from longpoint.trims.cornice import drop_mm, projection_mm
from tests.house_documents import wall
from tests.unit.catalogue.cornice_houses import pieces, planned, stops

DROP_MM = drop_mm(90.0, 38.0)
OUT_MM = projection_mm(90.0, 38.0)


def test_a_spring_from_the_ceiling_is_the_rest_of_a_right_angle() -> None:
    from_ceiling = pieces(planned(spring=52, spring_from="ceiling"))["E"]
    assert from_ceiling.left.mitre_deg == pytest.approx(-31.62, abs=0.01)
    other = pieces(planned(spring=52, spring_from="wall"))["E"]
    assert other.left.mitre_deg == pytest.approx(-38.24, abs=0.01)


def test_drop_and_projection_stand_for_the_spring() -> None:
    run = pieces(planned(spring=None, drop=DROP_MM, projection=OUT_MM))["E"]
    assert run.left.mitre_deg == pytest.approx(-31.62, abs=0.01)


@pytest.mark.parametrize(
    ("entry", "wrong"),
    [
        ({"spring": None}, "without it"),
        ({"spring": 45, "drop": DROP_MM, "projection": OUT_MM}, "Only one of them"),
        ({"walls": ["N", "X"]}, "no such wall"),
        ({"climb": [{"wall": "X", "slope": 5}]}, "no such wall"),
        ({"springs": [{"wall": "X", "spring": 45}]}, "no such wall"),
        ({"walls": ["N"], "climb": [{"wall": "E", "slope": 5}]}, "That wall gets none"),
        ({"climb": [{"wall": "E", "from_left": 3100, "slope": 5}]}, "inside the 3000 mm"),
        ({"climb": [{"wall": "E"}]}, "written once"),
        ({"climb": [{"wall": "E", "slope": 5, "rise": 100}]}, "written once"),
        ({"climb": [{"wall": "E", "from_left": 200, "slope": 15}]}, "come back to its own height"),
    ],
)
def test_what_cannot_be_worked_out_is_refused(entry: dict[str, Any], wrong: str) -> None:
    plan = planned(**entry)
    assert plan.trims == ()
    assert [stop.code for stop in stops(plan)] == ["trim-not-planned"]
    assert wrong in stops(plan)[0].wrong


def test_a_corner_that_is_none_is_refused() -> None:
    walls = (wall("N", length=2000, corner=178.5), wall("E", length=1500))
    assert "slip" in stops(planned(walls, closed=False))[0].wrong


def test_a_wall_left_out_stops_its_neighbour_square() -> None:
    found = pieces(planned(walls=["N", "E"]))
    assert list(found) == ["N", "E"]
    assert found["E"].right.kind is CutKind.SQUARE
    assert "dies against the wall" in found["E"].hand_sum

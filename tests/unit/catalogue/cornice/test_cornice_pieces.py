"""Pieces of a cornice: notes for the saw, scarfs, what is too short."""

import pytest

from longpoint.pieces.piece import CutKind
from tests.house_documents import wall
from tests.unit.catalogue.cornice_houses import pieces, planned, stops


def test_the_notes_give_both_ways_to_hold_it() -> None:
    left, right = pieces(planned())["E"].notes
    assert "flat: mitre 31.6 (bottom edge the longer), bevel 33.9 (back the longer)" in left
    assert "nested: table 45.0 to the left, blade upright" in left
    assert "keep what is left of the blade" in left
    assert "table 45.0 to the right, blade upright" in right
    assert "keep what is right of the blade" in right
    assert pieces(planned())["N"].notes == ()


def test_a_run_longer_than_a_stick_is_scarfed_flat() -> None:
    stock = [{"profile": "CR90", "length": 2400}]
    found = pieces(planned(changes={"stock": stock}, walls=["N"]))
    first, second = found["N-part-1"], found["N-part-2"]
    assert first.right.kind is CutKind.SCARF
    assert (first.right.bevel_deg, second.left.bevel_deg) == (45.0, -45.0)
    assert first.inner_mm + second.inner_mm == pytest.approx(4000.0)
    assert first.outer_mm + second.outer_mm == pytest.approx(4000.0)
    assert second.back_mm == pytest.approx(second.inner_mm - 18.0)
    assert first.notes == ()


def test_a_scarfed_run_keeps_its_compound_ends() -> None:
    stock = [{"profile": "CR90", "length": 2400}]
    found = pieces(planned(changes={"stock": stock}, corners="mitre"))
    whole = pieces(planned(corners="mitre"))["N"]
    parts = [found["N-part-1"], found["N-part-2"]]
    assert sum(part.inner_mm for part in parts) == pytest.approx(whole.inner_mm)
    assert sum(part.outer_mm for part in parts) == pytest.approx(whole.outer_mm)
    assert (parts[0].left, parts[-1].right) == (whole.left, whole.right)
    assert [len(part.notes) for part in parts] == [1, 1]


def test_a_run_too_short_for_its_cuts_is_refused() -> None:
    walls = (
        wall("N", length=2000, corner=90),
        wall("E", length=100, corner=90),
        wall("S", length=2000),
    )
    assert "meet before" in stops(planned(walls, closed=False))[0].wrong

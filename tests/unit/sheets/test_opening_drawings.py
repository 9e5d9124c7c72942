from dataclasses import replace

from longpoint.sheets.blocks import SheetState, Word
from longpoint.sheets.opening_drawings import opening_drawings
from tests.unit.sheets.sample import OPENINGS, PLAN, fitted


def test_an_opening_with_two_faces_and_one_fit_is_drawn_twice() -> None:
    two = replace(OPENINGS[3], faces=2)
    shape = replace(fitted("D1"), face="a")
    plan = replace(
        PLAN,
        house=replace(PLAN.house, openings=(two,)),
        shapes=replace(PLAN.shapes, openings=(shape,)),
    )
    assert [name for name, _ in opening_drawings(plan)] == ["D1a", "D1b", "W4"]


def test_the_drawings_have_names_that_a_file_system_takes() -> None:
    odd = replace(
        PLAN,
        house=replace(
            PLAN.house,
            openings=tuple(
                replace(OPENINGS[0], mark=mark) for mark in ("../up", "..\\up", "W" * 90, "")
            ),
        ),
        held=frozenset({"../up", "..\\up", "W" * 90, "", "W4"}),
    )
    names = [name for name, _ in opening_drawings(odd)]
    assert len({name.lower() for name in names}) == len(names) == 5
    assert all(name and set(name) <= set("upW-opening24") for name in names)
    assert max(map(len, names)) <= 62


def test_a_stale_drawing_is_struck_through() -> None:
    for _, drawing in opening_drawings(PLAN, SheetState.STALE):
        assert "VOID" in [m.text for m in drawing.marks if isinstance(m, Word)]
        assert drawing.described.startswith("VOID")

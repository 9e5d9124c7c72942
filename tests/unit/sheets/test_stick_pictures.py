import math
from dataclasses import replace
from itertools import pairwise

import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Drawing, Ink, Outline, Word
from longpoint.sheets.stick_pictures import PAPER_MM, Label, scale_of, stick_picture
from longpoint.sticks.plan import CutStick
from tests.unit.sheets.sample import PIECES, STICKS, by_mark, stick

BY_MARK = {piece.mark: piece for piece in PIECES}
LABELS = {
    piece.mark: Label(number=str(number), words=piece.mark)
    for number, piece in enumerate(PIECES, 1)
}


def drawn(one: CutStick, rest_mm: float = 0.0) -> Drawing:
    scale = scale_of([one])
    return stick_picture(one, BY_MARK, LABELS, rest_mm=rest_mm, scale=scale, units=Units.MM)


def outlines(drawing: Drawing, ink: Ink) -> list[Outline]:
    return [m for m in drawing.marks if isinstance(m, Outline) and m.ink is ink]


@pytest.mark.parametrize("one", STICKS, ids=lambda s: s.name)
def test_pieces_lie_inside_their_stick_and_never_over_each_other(one: CutStick) -> None:
    bodies = outlines(drawn(one), Ink.PIECE)
    ends = [(min(x for x, _ in b.points), max(x for x, _ in b.points)) for b in bodies]
    assert ends[0][0] >= 0
    assert ends[-1][1] <= PAPER_MM
    assert all(left[1] <= right[0] for left, right in pairwise(ends))


def test_a_mitre_is_drawn_at_its_own_angle() -> None:
    (head,) = by_mark("W1-head")
    (body,) = outlines(drawn(stick("T", 2700.0, (head,))), Ink.PIECE)
    (far_left, top), (far_right, _), (near_right, bottom), (near_left, _) = body.points
    left, right = (math.tan(math.radians(c.mitre_deg)) for c in (head.left, head.right))
    assert (near_left - far_left) / (bottom - top) == pytest.approx(left)
    assert (far_right - near_right) / (bottom - top) == pytest.approx(right)


def test_turning_a_piece_puts_its_long_edge_towards_you() -> None:
    one = stick("T", 2700.0, by_mark("W2-head"))
    turned = replace(one, laid=tuple(replace(laid, turned=True) for laid in one.laid))
    (body,) = outlines(drawn(turned), Ink.PIECE)
    (far_left, _), (far_right, _), (near_right, _), (near_left, _) = body.points
    assert near_right - near_left > far_right - far_left
    (hook,) = outlines(drawn(turned), Ink.HOOK)
    assert hook.points[0] == pytest.approx(body.points[2])


def test_the_rest_is_drawn_and_written_only_when_it_is_kept() -> None:
    one = stick("T", 5400.0, by_mark("W2-head"))
    kept = drawn(one, rest_mm=one.left_mm)
    (box,) = outlines(kept, Ink.LEFT)
    scale = scale_of([one])
    assert box.points[1][0] - box.points[0][0] == pytest.approx(one.left_mm * scale)
    assert any(isinstance(m, Word) and m.text.startswith("rest ") for m in kept.marks)
    assert not outlines(drawn(one), Ink.LEFT)


def test_labels_in_one_line_do_not_run_into_each_other() -> None:
    small = tuple(replace(PIECES[0], mark=f"N{n}", inner_mm=40.0, outer_mm=154.0) for n in range(9))
    one = stick("T", 5400.0, small)
    labels = {p.mark: Label(number=p.mark[1:], words=f"{p.mark} left leg") for p in small}
    pieces = {p.mark: p for p in small}
    scale = scale_of([one])
    picture = stick_picture(one, pieces, labels, rest_mm=0.0, scale=scale, units=Units.MM)
    words = [m for m in picture.marks if isinstance(m, Word) and m.text.endswith("leg")]
    for first in words:
        for other in words:
            if first is not other and first.y_mm == other.y_mm:
                assert abs(first.x_mm - other.x_mm) > 8.0
    assert max(word.y_mm for word in words) < picture.height_mm


def test_no_stick_at_all_has_a_scale_too() -> None:
    assert scale_of([]) > 0

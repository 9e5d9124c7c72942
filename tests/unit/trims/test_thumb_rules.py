"""What rules of thumb give and where they break, beside sums done in another way.

The rules are common practice, no source; the expected figures are right triangles and sines worked
out by hand or by coordinates here.
"""

import math
import random
from collections.abc import Callable
from dataclasses import replace

import pytest

from longpoint.trims.thumb_figures import Compared, Rule, ThumbFigures
from longpoint.trims.thumb_rules import (
    add_on,
    diagonals,
    exact_size_mm,
    gap_beside_flat_mm,
    half_corner,
    pack,
    plain_45s,
    scribe_45,
    tape_along,
    thumb_rules,
)

pytestmark = pytest.mark.no_cover

PLAIN = ThumbFigures()


def drawn(draw: random.Random) -> ThumbFigures:
    face_mm = draw.uniform(30.0, 150.0)
    return ThumbFigures(
        face_mm=face_mm,
        quirk_mm=draw.uniform(2.0, 12.0),
        size_mm=draw.uniform(400.0, 2400.0),
        height_mm=draw.uniform(400.0, 2100.0),
        corner_deg=draw.uniform(80.0, 100.0),
        neighbour_mm=draw.uniform(30.0, 150.0),
        depth_mm=draw.uniform(4.0, 20.0),
        thickness_mm=draw.uniform(12.0, 25.0),
        lining_mm=draw.uniform(10.0, 25.0),
        proud_mm=draw.uniform(0.0, 3.0),
        limit_mm=draw.uniform(0.2, 0.9),
    )


def test_every_rule_is_compared_once() -> None:
    assert [compared.rule for compared in thumb_rules(PLAIN)] == list(Rule)


@pytest.mark.parametrize(
    ("size_mm", "off_mm"), [(1180.0, 0.73), (620.0, 2.12), (300.0, 4.75), (2400.0, -0.12)]
)
def test_the_add_on_rule_is_short_on_short_pieces_and_long_on_long_ones(
    size_mm: float, off_mm: float
) -> None:
    """By hand: hypot(size + 76, 66) less (size + 77)."""
    found = add_on(replace(PLAIN, size_mm=size_mm))
    assert found.off_mm == pytest.approx(off_mm, abs=0.005)


def test_the_add_on_rule_is_right_to_the_hair_at_one_size() -> None:
    size_mm = exact_size_mm(PLAIN)
    assert size_mm is not None
    assert math.hypot(size_mm + 76.0, 66.0) == pytest.approx(size_mm + 77.0)


def test_a_rule_that_adds_less_than_passes_has_no_longest_piece() -> None:
    assert add_on(replace(PLAIN, add_mm=0.3, limit_mm=0.5)).good is not None
    good = add_on(replace(PLAIN, add_mm=0.3, limit_mm=0.5)).good
    assert good is not None
    assert good.most is None
    assert exact_size_mm(replace(PLAIN, add_mm=0.0)) is None


@pytest.mark.parametrize(
    ("face_mm", "size_mm", "slant_mm"),
    [(66.0, 1180.0, 1.73), (66.0, 620.0, 3.12), (90.0, 450.0, 7.3)],
)
def test_the_tape_on_the_slant_shows_more_than_the_length_along(
    face_mm: float, size_mm: float, slant_mm: float
) -> None:
    found = tape_along(replace(PLAIN, face_mm=face_mm, size_mm=size_mm))
    assert found.off_mm == pytest.approx(slant_mm, abs=0.05)
    assert found.true[0] - found.by_rule[0] == pytest.approx(found.off_mm)


def test_half_of_91_is_45_5_and_the_saw_goes_to_44_5() -> None:
    found = half_corner(PLAIN)
    assert found.by_rule == (45.5,)
    assert found.true == (44.5,)


def test_the_gap_of_half_the_corner_is_that_between_two_lines_drawn_from_the_toe() -> None:
    """Both cuts are drawn as lines from their common toe, 90 less the saw angle off the edges."""
    for corner_deg in (84.0, 91.0, 97.0):
        found = half_corner(replace(PLAIN, corner_deg=corner_deg))
        cut_mm = 66.0 / math.cos(math.radians(corner_deg / 2.0))
        off_edge = math.radians(90.0 - corner_deg / 2.0)
        corner = math.radians(corner_deg)
        one = (cut_mm * math.cos(off_edge), cut_mm * math.sin(off_edge))
        other = (cut_mm * math.cos(corner - off_edge), cut_mm * math.sin(corner - off_edge))
        assert found.off_mm == pytest.approx(math.dist(one, other))


def test_57_beside_66_is_49_and_41() -> None:
    found = plain_45s(replace(PLAIN, face_mm=57.0, neighbour_mm=66.0))
    assert found.true == pytest.approx((49.18, 40.82), abs=0.005)
    assert found.off_mm == pytest.approx(math.dist((57.0, 57.0), (66.0, 66.0)))


def test_a_scribe_exposed_at_45_in_a_corner_of_92_misses_by_0_41_over_12() -> None:
    found = scribe_45(replace(PLAIN, corner_deg=92.0, depth_mm=12.0))
    assert found.off_mm == pytest.approx(0.41, abs=0.005)
    assert found.true == (44.0,)


def test_3_between_the_diagonals_of_1180_by_620_is_a_sixth_of_a_degree() -> None:
    found = diagonals(PLAIN)
    assert found.true[0] == pytest.approx(90.157, abs=0.0005)
    out = math.radians(found.true[0] - 90.0)
    # The same parallelogram by coordinates.
    across_mm, up_mm = 620.0 * math.sin(out), 620.0 * math.cos(out)
    long_mm = math.hypot(1180.0 + across_mm, up_mm)
    assert long_mm - math.hypot(1180.0 - across_mm, up_mm) == pytest.approx(3.0)


def test_a_piece_3_proud_gapes_by_three_quarters_and_twice_that_beside_a_packed_one() -> None:
    """19 thick, 57 from the lining's back arris to the outer edge: heel 0.76, packed 1.53."""
    figures = replace(PLAIN, face_mm=57.0, quirk_mm=5.0, lining_mm=5.0)
    assert gap_beside_flat_mm(figures, 3.0) == pytest.approx(0.76, abs=0.005)
    assert pack(figures).off_mm == pytest.approx(1.53, abs=0.005)


def test_the_cut_that_closes_a_packed_pair_is_a_little_under_45_with_the_back_relieved() -> None:
    figures = replace(PLAIN, face_mm=57.0, quirk_mm=5.0, lining_mm=5.0)
    mitre_deg, bevel_deg = pack(figures).true
    assert mitre_deg == pytest.approx(44.96, abs=0.005)
    assert bevel_deg == pytest.approx(-40.5 * 3.0 / 57.0, abs=0.01)


def test_the_longest_residual_is_right_about_as_often_as_a_guess_among_six() -> None:
    found = thumb_rules(PLAIN)[-1]
    assert found.good is None
    # Of a thousand guesses 167 are right, 12 more or less; the limits are four of that.
    assert 0.12 < found.true[0] < 0.22


def _at(figures: ThumbFigures, name: str, value: float) -> ThumbFigures:
    return replace(figures, **{name: value})


BREAKS: tuple[tuple[Callable[[ThumbFigures], Compared], str], ...] = (
    (add_on, "size_mm"),
    (tape_along, "size_mm"),
    (half_corner, "corner_deg"),
    (plain_45s, "neighbour_mm"),
    (scribe_45, "corner_deg"),
    (diagonals, "apart_mm"),
    (pack, "proud_mm"),
)


@pytest.mark.parametrize(("rule", "name"), BREAKS, ids=lambda each: getattr(each, "__name__", each))
def test_a_rule_is_off_by_what_passes_at_the_ends_of_its_span_and_by_less_between(
    rule: Callable[[ThumbFigures], Compared], name: str
) -> None:
    draw = random.Random(f"breaks {name}")
    tried = 0
    for _ in range(40):
        figures = drawn(draw)
        good = rule(figures).good
        assert good is not None
        for end in good:
            if end is None or end == 0.0 or (name == "size_mm" and not 150.0 < end < 1e6):
                continue
            at_end = abs(rule(_at(figures, name, end)).off_mm)
            assert at_end == pytest.approx(figures.limit_mm, rel=1e-6)
            tried += 1
        least = max(good.least or 0.0, 101.0 if name == "size_mm" else 0.0)
        most = good.most if good.most is not None else least + 1000.0
        if most > least:
            inside = abs(rule(_at(figures, name, draw.uniform(least, most))).off_mm)
            assert inside <= figures.limit_mm + 1e-9
    assert tried >= 20

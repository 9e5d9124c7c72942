import random
from fractions import Fraction

import pytest

from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.quantities.length import Units

WORDS = ("slant", "floor cover", "corners off square", "rounding", "legs", "horns", "plinth")


def number(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def both_sides(written: str) -> tuple[Fraction, Fraction]:
    """Return the left side added up as a carpenter would, and the right side as printed."""
    left, _, right = written.partition(" = ")
    for word in WORDS:
        left = left.replace(f" {word}", "")
    total = Fraction(0)
    for signed in left.replace(" - ", " + -").split(" + "):
        sign = -1 if signed.startswith("-") else 1
        times, _, value = signed.removeprefix("-").rpartition(" x ")
        total += sign * number(times or "1") * number(value)
    return total, number(right)


def test_the_sum_starts_with_the_reading_and_ends_with_the_hook() -> None:
    assert hand_sum(1180.0, (5.0, 5.0), 1190.0, 66.0, 45.0) == (
        "1180 + 2 x 5 + 66 + 1.7 slant = 1257.7"
    )


def test_a_leg_on_the_floor_has_one_quirk_and_takes_the_cover_off() -> None:
    assert hand_sum(2040.0, (5.0,), 2030.0, 66.0, 45.0, cover_mm=15.0) == (
        "2040 + 5 - 15 floor cover + 66 + 1 slant = 2097"
    )


def test_unequal_quirks_stand_one_by_one() -> None:
    assert "1180 + 5 + 8 + 66 " in hand_sum(1180.0, (5.0, 8.0), 1193.0, 66.0, 45.0)


def test_a_piece_without_a_long_point_ends_at_its_inner_edge() -> None:
    assert hand_sum(620.0, (5.0, 5.0), 630.0, 66.0, None) == "620 + 2 x 5 = 630"


def test_what_the_corners_take_is_said() -> None:
    assert "+ 0.4 corners off square" in hand_sum(1180.0, (5.0, 5.0), 1190.4, 66.0, 45.0)
    assert "- 0.4 corners off square" in hand_sum(1180.0, (5.0, 5.0), 1189.6, 66.0, 45.0)


def test_a_true_frame_says_that_it_shares_the_openings_error() -> None:
    told = hand_sum(595.0, (4.0, 6.0), 605.5, 66.0, 45.0, is_shared=True)
    assert told == "595 + 4 + 6 + 0.5 frame shared + 66 + 3.2 slant = 674.7"


def test_rounding_is_not_laid_on_the_corners() -> None:
    quirk_mm = 3 / 16 * 25.4
    written = hand_sum(1178.0, (quirk_mm, quirk_mm), 1178.0 + 2 * quirk_mm, 57.0, 45.0)
    assert written == "1178 + 2 x 4.8 - 0.1 rounding + 57 + 1.3 slant = 1245.8"


def test_a_slant_too_small_to_print_is_left_out() -> None:
    written = hand_sum(4000.0, (5.0, 5.0), 4010.0, 12.0, 45.0)
    assert written == "4000 + 2 x 5 + 12 = 4022"


def test_a_house_read_in_inches_gets_its_sum_in_thirty_seconds() -> None:
    written = hand_sum(
        46.75 * 25.4, (4.7625,) * 2, 47.125 * 25.4, 2.25 * 25.4, 45.0, units=Units.INCH
    )
    assert written == "46 3/4 + 2 x 3/16 + 2 1/4 + 1/16 slant = 49 7/16"


@pytest.mark.parametrize("units", Units)
def test_every_printed_sum_adds_up_and_lands_on_the_hook(units: Units) -> None:
    draw = random.Random(41)
    step_mm = 0.1 if units is Units.MM else 25.4 / 32
    for _ in range(2000):
        quirks_mm = (draw.uniform(2.0, 12.0),) * 2
        if draw.random() < 0.5:
            quirks_mm = (quirks_mm[0], draw.uniform(2.0, 12.0))
        cover_mm = draw.choice((0.0, draw.uniform(1.0, 20.0)))
        side_mm = draw.uniform(300.0, 3000.0)
        inner_mm = side_mm + sum(quirks_mm) - cover_mm + draw.choice((0.0, draw.gauss(0.0, 1.0)))
        width_mm = draw.uniform(15.0, 150.0)
        mitre_deg = draw.choice((None, 45.0, draw.uniform(20.0, 60.0)))
        written = hand_sum(
            side_mm, quirks_mm, inner_mm, width_mm, mitre_deg, cover_mm=cover_mm, units=units
        )
        assert "+ -" not in written
        assert "- -" not in written
        left, right = both_sides(written)
        assert left == right, written
        exact_mm = inner_mm
        if mitre_deg is not None:
            exact_mm = _hook_mm(inner_mm, width_mm, mitre_deg)
        printed_mm = float(right) * (1.0 if units is Units.MM else 25.4)
        assert abs(printed_mm - exact_mm) <= step_mm / 2 + 1e-6, written


def _hook_mm(inner_mm: float, width_mm: float, mitre_deg: float) -> float:
    """Return the slanted length by complex numbers: along, and across on the other axis."""
    turn = complex(0, 1) ** (mitre_deg / 90.0)
    long_point = turn * width_mm / turn.real
    return abs(complex(inner_mm, 0) + complex(long_point.imag, long_point.real))


def test_what_a_joint_adds_or_takes_is_named_and_counted() -> None:
    terms = (Term(66.0, "legs", 2), Term(20.0, "horns", 2))
    assert hand_sum(820.0, (5.0, 5.0), 1002.0, 66.0, None, terms=terms) == (
        "820 + 2 x 5 + 2 x 66 legs + 2 x 20 horns = 1002"
    )
    assert hand_sum(2017.0, (5.0,), 1822.0, 90.0, None, terms=(Term(-200.0, "plinth"),)) == (
        "2017 + 5 - 200 plinth = 1822"
    )


def test_a_term_of_nothing_is_left_out() -> None:
    terms = (Term(0.0, "horns", 2), Term(-3.0, "blocks", 2))
    assert hand_sum(900.0, (5.0, 5.0), 904.0, 70.0, None, terms=terms) == (
        "900 + 2 x 5 - 2 x 3 blocks = 904"
    )


def test_terms_that_dont_make_up_the_edge_leave_the_rest_to_the_corners() -> None:
    written = hand_sum(820.0, (5.0, 5.0), 963.4, 66.0, None, terms=(Term(66.0, "legs", 2),))
    assert written == "820 + 2 x 5 + 2 x 66 legs + 1.4 corners off square = 963.4"


@pytest.mark.parametrize("units", Units)
def test_a_sum_with_joints_in_it_adds_up_as_printed(units: Units) -> None:
    draw = random.Random(43)
    for _ in range(500):
        side_mm, quirk_mm = draw.uniform(300, 2400), draw.uniform(2, 10)
        leg_mm, horn_mm, plinth_mm = (draw.uniform(10, 90) for _ in range(3))
        terms = (Term(leg_mm, "legs", 2), Term(horn_mm, "horns", 2), Term(-plinth_mm, "plinth"))
        inner_mm = side_mm + 2 * (quirk_mm + leg_mm + horn_mm) - plinth_mm + draw.gauss(0.0, 0.3)
        quirks_mm = (quirk_mm, quirk_mm)
        written = hand_sum(side_mm, quirks_mm, inner_mm, 66.0, None, terms=terms, units=units)
        total, said = both_sides(written)
        assert total == said, written
        in_mm = float(said) * (1.0 if units is Units.MM else 25.4)
        assert in_mm == pytest.approx(inner_mm, abs=(0.05 if units is Units.MM else 0.4) + 1e-6)

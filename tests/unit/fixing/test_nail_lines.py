from dataclasses import replace

import pytest

from longpoint.fixing.nail_lines import Bed, Into, Nails, Standing, Trouble, nail_line
from longpoint.quantities.length import Units
from longpoint.survey.fixing import Nail

LINING = Bed(
    into=Into.LINING,
    through_mm=18.0,
    thin_mm=18.0,
    least_hold_mm=8.0,
    cover_mm=15.0,
    is_sideways=True,
    trim_mm=18.0,
)
STUD = Bed(
    into=Into.STUD,
    through_mm=30.5,
    thin_mm=30.5,
    least_hold_mm=25.0,
    cover_mm=58.0,
    is_sideways=False,
    trim_mm=18.0,
    board_mm=12.5,
)


def test_a_nail_longer_than_the_cover_beside_it_may_come_out_of_the_reveal() -> None:
    """18 thick less 2 punched, 15 of cover less half of 1.245: 30.4 at most."""
    assert LINING.most_mm(1.245) == pytest.approx(30.3775)
    assert LINING.trouble_of(Nail(gauge=18, length_mm=30.0)) is None
    assert LINING.trouble_of(Nail(gauge=18, length_mm=32.0)) is Trouble.TOO_LONG
    assert LINING.trouble_of(Nail(gauge=18, length_mm=25.0)) is Trouble.TOO_SHORT


def test_a_nail_that_falls_short_of_the_stud_is_refused() -> None:
    assert STUD.least_mm == 55.5
    assert STUD.trouble_of(Nail(gauge=16, length_mm=50.0)) is Trouble.TOO_SHORT
    assert STUD.hold_mm(Nail(gauge=16, length_mm=50.0)) == 19.5


def test_the_tip_is_reckoned_with_the_head_punched_through_the_thinnest_trim() -> None:
    assert STUD.tip_mm(Nail(gauge=16, length_mm=57.0)) == pytest.approx(41.0)
    thin = replace(LINING, thin_mm=9.0)
    assert thin.tip_mm(Nail(gauge=18, length_mm=20.0)) == pytest.approx(13.0)


def test_the_shortest_nail_at_hand_that_does_is_taken() -> None:
    have = [Nail(gauge=16, length_mm=mm) for mm in (64.0, 57.0, 50.0)]
    line = nail_line(STUD, 30.0, Nails(held=tuple(have)))
    assert (line.nail, line.standing) == (have[1], Standing.HELD)


def test_of_equal_length_an_edge_takes_the_thinner_and_a_stud_the_thicker() -> None:
    both = [Nail(gauge=16, length_mm=57.0), Nail(gauge=15, length_mm=57.0)]
    stud = nail_line(STUD, 30.0, Nails(held=tuple(both)))
    assert stud.nail is not None
    assert stud.nail.gauge == 15
    edge = nail_line(
        LINING, 10.0, Nails(held=tuple(Nail(gauge=g, length_mm=28.0) for g in (16, 18)))
    )
    assert edge.nail is not None
    assert edge.nail.gauge == 18


def test_where_none_at_hand_does_another_is_named() -> None:
    line = nail_line(STUD, 30.0, Nails(held=(Nail(gauge=16, length_mm=50.0),)))
    assert line.standing is Standing.OTHER
    assert line.nail is not None
    assert STUD.trouble_of(line.nail) is None
    assert line.wrong == ((Nail(gauge=16, length_mm=50.0), Trouble.TOO_SHORT),)


def test_pins_count_as_no_nails() -> None:
    line = nail_line(LINING, 10.0, Nails(held=(Nail(gauge=23, length_mm=30.0),)))
    assert line.standing is Standing.USUAL


def test_where_what_holds_would_come_out_no_nail_is_named_and_why_is_said() -> None:
    shallow = replace(LINING, cover_mm=5.0)
    line = nail_line(shallow, 2.0, Nails(held=(Nail(gauge=18, length_mm=30.0),)))
    assert (line.nail, line.standing) == (None, Standing.NONE)
    assert "may come out" in line.why_none


def test_between_too_short_and_too_long_there_may_be_no_length_that_is_sold() -> None:
    line = nail_line(replace(LINING, through_mm=14.5, thin_mm=14.5, cover_mm=11.0), 5.0, Nails())
    assert line.nail is None
    assert "usual lengths" in line.why_none


def test_another_length_for_the_nailer_at_hand_comes_before_another_gauge() -> None:
    for gauge in (15, 16):
        line = nail_line(STUD, 30.0, Nails(held=(Nail(gauge=gauge, length_mm=50.0),)))
        assert line.nail == Nail(gauge=gauge, length_mm=57.0)


def test_a_house_in_inches_is_told_of_nails_sold_in_inches() -> None:
    wide = replace(LINING, cover_mm=16.5)
    line = nail_line(wide, 11.5, Nails(units=Units.INCH))
    assert line.nail == Nail(gauge=18, length_mm=31.75)

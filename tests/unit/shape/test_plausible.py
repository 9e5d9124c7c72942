from dataclasses import replace

from longpoint.shape.plausible import Plausible
from longpoint.survey.checks.siblings import Siblings
from longpoint.survey.digits import Slip, SlipKind
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import OpeningReadings, Place
from tests.drawn_openings import opening_of, readings_of

SQUARE = readings_of(top=900, bottom=900, left=600, right=600, rising=1082, falling=1082)
WINDOW = opening_of("W1", SQUARE)
DOOR = opening_of("D1", SQUARE, kind=OpeningKind.DOOR)


def slip(value_mm: float, kind: SlipKind = SlipKind.DIGITS_SWAPPED) -> Slip:
    return Slip(value_mm=value_mm, kind=kind, words="")


def window(**lengths_mm: float) -> OpeningReadings:
    base = {r.place.value.replace(" ", "_"): r.value_mm for r in SQUARE.lengths}
    return readings_of(**{**base, **lengths_mm})


def test_a_window_keeps_its_opposite_sides_together() -> None:
    judge = Plausible(opening=WINDOW, looks_raked=False)
    assert judge.allows(window(top=904), Place.TOP)
    assert not judge.allows(window(top=909), Place.TOP)


def test_a_door_may_stand_on_a_floor_that_falls() -> None:
    judge = Plausible(opening=DOOR, looks_raked=False)
    assert judge.allows(window(left=615), Place.LEFT)
    assert not judge.allows(window(left=625), Place.LEFT)


def test_a_proposal_may_not_make_an_opening_raked() -> None:
    changed = window(left=700)
    assert not Plausible(opening=WINDOW, looks_raked=False).allows(changed, Place.LEFT)
    assert Plausible(opening=WINDOW, looks_raked=True).allows(changed, Place.LEFT)


def test_a_raked_opening_is_not_judged_by_its_opposite_sides() -> None:
    judge = Plausible(opening=replace(WINDOW, raked=True), looks_raked=True)
    assert judge.allows(window(left=700), Place.LEFT)
    assert judge.penalty(window(left=700), Place.LEFT, slip(700)) == 0.0


def test_a_diagonal_may_not_make_it_lean_beyond_belief() -> None:
    judge = Plausible(opening=WINDOW, looks_raked=False)
    assert judge.allows(window(rising=1090), Place.RISING)
    assert not judge.allows(window(rising=1180), Place.RISING)


def test_the_commoner_slip_and_the_squarer_opening_cost_less() -> None:
    judge = Plausible(opening=WINDOW, looks_raked=False)
    swap = judge.penalty(SQUARE, Place.TOP, slip(900))
    mark = judge.penalty(SQUARE, Place.TOP, slip(900, SlipKind.MARK_MISCOUNTED))
    leaning = judge.penalty(window(rising=1090), Place.TOP, slip(900))
    assert swap < mark < leaning


def test_siblings_and_a_middle_reading_speak_for_a_figure() -> None:
    siblings = Siblings(openings=(WINDOW, opening_of("W2", window(top=900))), is_told=True)
    judge = Plausible(opening=WINDOW, looks_raked=False, siblings=siblings)
    near, far = slip(900), slip(909)
    assert judge.penalty(SQUARE, Place.TOP, near) < judge.penalty(SQUARE, Place.TOP, far)
    alone = Plausible(opening=WINDOW, looks_raked=False)
    with_middle = window(middle_width=906)
    assert alone.penalty(with_middle, Place.TOP, near) > alone.penalty(SQUARE, Place.TOP, near)


def test_a_floor_that_falls_explains_diagonals_that_differ() -> None:
    # Right leg 8 shorter: the floor rises 8 to the right and the rising diagonal grows with it.
    readings = readings_of(top=819, bottom=819, left=2034, right=2026, rising=2192, falling=2186)
    door = Plausible(opening=opening_of("D1", readings, kind=OpeningKind.DOOR), looks_raked=False)
    as_window = Plausible(opening=opening_of("W1", readings), looks_raked=False)
    kept = slip(2034)
    assert door.penalty(readings, Place.LEFT, kept) < as_window.penalty(readings, Place.LEFT, kept)

import math
from dataclasses import replace
from statistics import NormalDist

import pytest

from longpoint.forecast.budget.house_budget import house_budget, proved_saw
from longpoint.forecast.budget.records import Cause, ErrorName
from longpoint.forecast.face_lines import (
    FaceLines,
    TermLine,
    WeighedFace,
    cause_shares,
    face_lines,
    first_look,
    line_opening,
    step_opening,
    weighed_face,
)
from longpoint.forecast.fitup.lines import ratio_by
from longpoint.forecast.lines import LineHouse, Spread
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.planned_face import planned_faces
from longpoint.forecast.terms import FrameTerm, frame_errors
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house import House
from tests.unit.forecast.fit_houses import chances, door, house_of, in_plane, window

pytestmark = pytest.mark.no_cover

SHARED = ("saw scale", "saw fence", "inside reading, T1", "mark")


def a_house(**settings: float) -> House:
    return house_of([window(1200.0, 1050.0)], **settings)


def a_window(**settings: float) -> tuple[House, FaceLines]:
    house = a_house(**settings)
    (found,) = in_plane(house)
    return house, found


def weighed(house: House, found: FaceLines) -> WeighedFace:
    return weighed_face(found, frame_errors(found.face, house_budget(house), house))


def term(name: str, cause: Cause, *, is_shared: bool = False) -> FrameTerm:
    return FrameTerm(
        name=name, cause=cause, is_shared=is_shared, spread=Spread.NORMAL, effect=(0.0,)
    )


def face_of(terms: tuple[FrameTerm, ...], *lines: TermLine) -> WeighedFace:
    return WeighedFace(name="W1", terms=terms, lines=((), (), lines))


def line_over(*over: float, offset: float = 0.0) -> TermLine:
    return TermLine(offset=offset, over=over, u=math.hypot(*over))


SAW = term("saw scale", Cause.SAW, is_shared=True)
READING = term("width", Cause.READINGS)


def test_a_face_has_lines_for_its_gaps_its_quirk_and_both() -> None:
    openings, _ = fit_openings(house := a_house())
    (face,) = planned_faces(house, Shapes(openings=openings), frozenset())
    found = face_lines(face)
    assert found.name == "W1"
    gaps, quirk, both = found.lines
    assert gaps
    assert quirk
    # A bow of the reveal opens no joint; a saw scale hardly asks for a quirk.
    errors = {t.name: t.effect for t in frame_errors(face, house_budget(house), house).terms}
    bow, scale = errors["reveal bow, side 0"], errors["saw scale"]
    assert ratio_by(gaps, bow) == 0.0
    assert ratio_by(quirk, bow) > 0.1
    assert ratio_by(gaps, scale) == pytest.approx(0.6911, abs=1e-3)
    assert ratio_by(both, scale) == pytest.approx(0.6911, abs=1e-3)
    assert ratio_by(quirk, scale) < 0.3


def test_lines_come_nearest_first_and_none_that_is_never_passed() -> None:
    found = weighed(*a_window())
    reserves = [line.reserve for line in found.lines[-1]]
    assert reserves == sorted(reserves)
    assert 0.0 < reserves[0] < reserves[-1] < 6.0


def test_a_line_over_terms_says_what_the_line_over_slots_says() -> None:
    house, found = a_window()
    errors = frame_errors(found.face, house_budget(house), house)
    face = weighed_face(found, errors)
    draw = [(-1.0) ** k * 1.5 for k in range(len(errors.terms))]
    slots = list(errors.known)
    for size, each in zip(draw, errors.terms, strict=True):
        slots = [s + size * e for s, e in zip(slots, each.effect, strict=True)]
    by_terms = max(
        line.offset + math.fsum(a * z for a, z in zip(line.over, draw, strict=True))
        for line in face.lines[-1]
    )
    assert by_terms == pytest.approx(ratio_by(found.lines[-1], slots))


def test_a_known_lean_moves_lines_and_leaves_their_doubt() -> None:
    house, found = a_window()
    plain = frame_errors(found.face, house_budget(house), house)
    leaning = replace(
        plain, known=found.face.reveal_off(((0.0, 0.0), (0.0, 0.0), (3.0, 0.0), (3.0, 0.0)))
    )
    before, after = (weighed_face(found, errors).lines[-1] for errors in (plain, leaning))
    assert {line.offset for line in before} == {0.0}
    assert max(line.offset for line in after) > 0.1
    doubts = {line.over for line in before}
    assert sum(line.over in doubts for line in after) > 0.8 * len(before)


def test_shared_errors_stand_in_the_order_of_the_house_and_the_rest_are_private() -> None:
    face = weighed(*a_window())
    opening = line_opening(face, ("another tape", *SHARED))
    line = opening.groups[-1].lines[0]
    assert [group.name for group in opening.groups] == ["gaps", "quirk", "in-plane"]
    assert line.shared[0] == 0.0
    at = {each.name: part for each, part in zip(face.terms, face.lines[-1][0].over, strict=True)}
    assert line.shared[1:] == tuple(at[name] for name in SHARED)
    assert len(line.private) == len(face.terms) - len(SHARED)
    assert opening.private == tuple(t.spread for t in face.terms if not t.is_shared)


def test_shares_of_one_line_are_its_variance_by_cause() -> None:
    # 0.3 and 0.4: of 0.25 in all, 0.09 and 0.16.
    (first, second) = cause_shares(face_of((SAW, READING), line_over(0.3, 0.4)))
    assert [first.cause, second.cause] == [Cause.READINGS, Cause.SAW]
    assert [first.share, second.share] == pytest.approx([0.64, 0.36])


def test_a_line_near_its_limit_counts_for_more_than_one_far_below() -> None:
    near, far = line_over(0.5, 0.0), line_over(0.0, 0.25)
    shares = cause_shares(face_of((SAW, READING), near, far))
    # Reserves 2 and 4: weights exp(-2) and exp(-8).
    assert shares[0].cause is Cause.SAW
    assert shares[0].share == pytest.approx(1.0 / (1.0 + math.exp(-6.0)))


def test_terms_of_one_cause_are_added_up() -> None:
    terms = (SAW, term("saw fence", Cause.SAW), READING)
    shares = cause_shares(face_of(terms, line_over(0.3, 0.3, 0.3)))
    assert {s.cause: s.share for s in shares} == pytest.approx(
        {Cause.SAW: 2.0 / 3.0, Cause.READINGS: 1.0 / 3.0}
    )


def test_a_face_out_of_reach_of_any_limit_has_no_causes() -> None:
    assert cause_shares(face_of((SAW, READING))) == ()


def test_most_of_the_doubt_of_a_window_is_the_saw_until_it_is_proved() -> None:
    house, found = a_window()
    shares = cause_shares(weighed(house, found))
    assert shares[0].cause is Cause.SAW
    assert shares[0].share > 0.5
    assert math.fsum(s.share for s in shares) == pytest.approx(1.0)
    errors = frame_errors(found.face, proved_saw(house_budget(house)), house)
    proved = {s.cause: s.share for s in cause_shares(weighed_face(found, errors))}
    assert proved[Cause.SAW] < 0.5


def test_a_first_look_at_one_line_is_its_chance() -> None:
    assert first_look(face_of((SAW, READING), line_over(0.3, 0.4))) == pytest.approx(
        NormalDist().cdf(2.0)
    )


def test_lines_that_go_together_are_looked_at_once() -> None:
    terms = (SAW, READING)
    alike = face_of(terms, line_over(0.5, 0.0), line_over(0.49, 0.1))
    apart = face_of(terms, line_over(0.5, 0.0), line_over(0.0, 0.5))
    opposite = face_of(terms, line_over(0.5, 0.0), line_over(-0.5, 0.0))
    one = NormalDist().cdf(2.0)
    assert first_look(alike) == pytest.approx(one)
    assert first_look(apart) == pytest.approx(one * one)
    assert first_look(opposite) == pytest.approx(one * one)


def test_a_face_out_of_reach_of_any_limit_fits_at_a_look() -> None:
    assert first_look(face_of((SAW, READING))) == 1.0


def test_a_first_look_is_a_little_hopeful() -> None:
    house, found = a_window()
    face = weighed(house, found)
    (drawn,) = chances([face], 6000)
    assert drawn < first_look(face) < drawn + 0.08


def test_a_step_between_faces_counts_thickness_of_two_pieces_and_the_lie_of_their_joint() -> None:
    house, found = a_window()
    opening = step_opening(found, house_budget(house).changed(ErrorName.LIE, u=0.25))
    (group,) = opening.groups
    # Two ways at each of four corners; four pieces and four joints, 0.1 and 0.25 against 0.5.
    assert len(group.lines) == 8
    assert group.lines[0].private == pytest.approx((0.2, -0.2, 0, 0, 0.5, 0, 0, 0))
    assert group.lines[1].private == pytest.approx((-0.2, 0.2, 0, 0, -0.5, 0, 0, 0))
    assert all(line.shared == () and line.offset == 0.0 for line in group.lines)


def test_a_door_can_step_at_two_corners() -> None:
    house = house_of([door(900.0, 2050.0)])
    (found,) = in_plane(house)
    opening = step_opening(found, house_budget(house))
    assert len(opening.groups[0].lines) == 4
    assert len(opening.private) == 3 + 2


def test_thicknesses_that_are_all_the_same_leave_the_lining() -> None:
    house, found = a_window()
    budget = house_budget(house).changed(ErrorName.THICKNESS, u=0.0)
    budget = budget.changed(ErrorName.LIE, u=0.5)
    lines = LineHouse(openings=(step_opening(found, budget),), shared=(), draws=4000, seed=2)
    level = PlainLines().tally(lines).openings[0].fits[0] / 4000
    # Four corners by themselves, each within one standard deviation.
    one = 2.0 * NormalDist().cdf(1.0) - 1.0
    assert level == pytest.approx(one**4, abs=0.02)

from collections import Counter

from longpoint.sticks.effort import QUICK
from longpoint.sticks.order.saw_order import saw_steps, setting_changes
from longpoint.sticks.order.saw_setting import end_settings
from longpoint.sticks.order.stick_cuts import cuts_by_stick
from longpoint.sticks.plan_sticks import plan_sticks
from tests.random_sticks import architrave_piece, house_of, house_pieces

PIECES = house_pieces(11, openings=12)
HOUSE = house_of(reversible=True)
PLAN = plan_sticks(PIECES, HOUSE, effort=QUICK)
STEPS = saw_steps(PLAN, PIECES, HOUSE.saw)
CUTS = cuts_by_stick(STEPS)


def test_every_end_of_every_piece_is_made_by_one_cut() -> None:
    every = [cut for cuts in CUTS.values() for cut in cuts]
    marks = sorted(piece.mark for piece in PIECES)
    assert sorted(cut.left for cut in every if cut.left) == marks
    assert sorted(cut.right for cut in every if cut.right) == marks
    assert any(cut.is_shared for cut in every)


def test_the_saw_is_set_anew_as_often_as_the_plan_says() -> None:
    counted = sum(cut.is_set_anew for cuts in CUTS.values() for cut in cuts)
    assert counted == setting_changes(STEPS)


def test_each_cut_has_the_setting_that_its_pieces_ask_for() -> None:
    by_mark = {piece.mark: piece for piece in PIECES}
    turned = {laid.piece: laid.turned for stick in PLAN.sticks for laid in stick.laid}
    for cuts in CUTS.values():
        for cut in cuts:
            for mark, end in ((cut.left, 1), (cut.right, 0)):
                if mark is not None:
                    asked = end_settings(by_mark[mark], HOUSE.saw, turned=turned[mark])[end]
                    assert asked == cut.setting


def test_a_cut_serves_two_pieces_only_where_they_lie_a_saw_cut_apart() -> None:
    """The ends lean alike to a tenth of a degree: 0.05 deg either way on a face of 66."""
    leans_mm = 66.0 * 0.004
    for stick in PLAN.sticks:
        places = {laid.piece: laid for laid in stick.laid}
        for cut in CUTS[stick.name]:
            if cut.left is None or cut.right is None:
                continue
            run_mm = 66.0 if cut.setting.swing_deg > 40 else 0.0
            gap_mm = places[cut.right].start_mm + run_mm - places[cut.left].end_mm
            kerf_mm = HOUSE.saw.kerf_mm * (1 + (run_mm > 0)) ** 0.5
            assert abs(gap_mm - kerf_mm) < leans_mm + 0.6


def test_cuts_of_a_stick_are_numbered_from_its_left_end() -> None:
    for cuts in CUTS.values():
        assert [cut.number for cut in cuts] == list(range(1, len(cuts) + 1))
        assert (cuts[0].left, cuts[-1].right) == (None, None)


def test_square_pieces_end_to_end_share_all_cuts_but_the_outer_ones() -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 900.0, 0, 0) for n in range(3))
    house = house_of(lengths_mm=(2900.0,))
    plan = plan_sticks(pieces, house, effort=QUICK)
    (cuts,) = cuts_by_stick(saw_steps(plan, pieces, house.saw)).values()
    assert [cut.is_shared for cut in cuts] == [False, True, True, False]
    assert Counter(cut.is_set_anew for cut in cuts) == {False: 4}

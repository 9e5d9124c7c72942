import pytest

from longpoint.fixing.order_of_work import room_order
from longpoint.pieces.piece import CutKind, EndCut, Role
from longpoint.survey.openings import Method
from tests.unit.fixing.nailed import piece, skirting

SET = tuple(
    piece(role, f"W1-{role.value}")
    for role in (Role.HEAD, Role.RIGHT_LEG, Role.SILL, Role.LEFT_LEG)
)
SCRIBE = EndCut(kind=CutKind.SCRIBE)


def place_of(word: str, method: Method) -> int:
    steps = [step.what for step in room_order((*SET, skirting()), method)]
    return next(index for index, what in enumerate(steps) if word in what)


@pytest.mark.parametrize("method", Method)
def test_every_piece_stands_in_a_step(method: Method) -> None:
    every = [piece(role, f"P-{role.value}", opening=None) for role in Role]
    named = {mark for step in room_order((*SET, *every), method) for mark in step.marks}
    assert named >= {each.mark for each in (*SET, *every)}


@pytest.mark.parametrize("method", Method)
def test_sets_go_up_before_the_skirting_that_dies_on_them(method: Method) -> None:
    assert place_of("Nail along", method) < place_of("Skirting", method)


def test_cut_in_one_batch_the_legs_go_first_and_can_still_be_tapped() -> None:
    assert place_of("Legs up", Method.BATCH) < place_of("Heads, sill", Method.BATCH)


def test_marked_in_place_the_head_goes_first() -> None:
    assert place_of("Heads level", Method.IN_PLACE) < place_of("Legs held", Method.IN_PLACE)


def test_on_the_bench_the_frame_is_joined_before_it_is_hung() -> None:
    assert place_of("on the bench", Method.BENCH) < place_of("over its opening", Method.BENCH)


def test_the_longest_square_skirting_goes_first_and_scribed_ends_after() -> None:
    runs = (
        skirting("S1", 900.0),
        skirting("S2", 3000.0, left=SCRIBE),
        skirting("S3", 2000.0),
        skirting("S4", 1000.0, left=SCRIBE, right=SCRIBE),
    )
    steps = [step.marks for step in room_order(runs, Method.BATCH) if step.marks]
    assert steps == [("S3", "S1"), ("S2", "S4")]


def test_a_room_without_sets_has_no_step_for_them() -> None:
    steps = room_order((skirting(),), Method.BATCH)
    assert not any("mitres, close" in step.what for step in steps)

import pytest

from longpoint.forecast.fitup.frame import FitLimits, Frame, frame_of, frame_rows
from longpoint.forecast.fitup.known_sets import known_sets, letters_of
from longpoint.forecast.fitup.mirrored_sets import images
from longpoint.forecast.fitup.respect import Respect, rows_of
from longpoint.forecast.fitup.set_letters import LEARNED, Learned
from longpoint.forecast.fitup.weighing import columns_of, row_weights
from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline
from tests.fit_up_draws import Set


def sets_of(frame: Frame, gap_mm: float, respect: Respect) -> tuple[tuple[int, ...], ...]:
    rows = rows_of(frame_rows(frame, FitLimits(gap_mm=gap_mm)), respect)
    return known_sets(frame, rows, respect)


@pytest.mark.parametrize("respect", Respect)
@pytest.mark.parametrize("is_door", [False, True])
def test_windows_and_doors_are_known_in_every_respect(respect: Respect, is_door: bool) -> None:
    assert sets_of(Set(is_door=is_door).frame(), 0.5, respect)


def test_a_tight_quirk_has_another_list_than_a_roomy_one() -> None:
    tight, roomy = Set(room_in_mm=0.6), Set(room_in_mm=3.0, room_out_mm=3.0)
    found = [sets_of(chosen.frame(), 0.5, Respect.IN_PLANE) for chosen in (tight, roomy)]
    assert found[0] != found[1]


def test_a_triangle_is_not_known() -> None:
    corners = (Point(0.0, 0.0), Point(800.0, 0.0), Point(400.0, 600.0))
    outline = trim_outline(corners, (TrimSide(inner_mm=4.0, width_mm=70.0),) * 3)
    frame = frame_of(outline, (70.0,) * 3, ((2.0, 2.0),) * 3)
    assert sets_of(frame, 0.5, Respect.GAPS) == ()


@pytest.mark.parametrize("learned", LEARNED)
def test_no_set_is_kept_twice_nor_with_its_mirror_image(learned: Learned) -> None:
    words, respect = learned.letters.split(), Respect(learned.respect)
    frame = Set(is_door=not learned.is_closed).frame()
    known = sets_of(frame, 1.8 / (learned.least + 0.1), respect)
    spelt = {letters_of(chosen): chosen for chosen in known}
    classes = {
        frozenset(images(spelt[word], is_closed=learned.is_closed, respect=respect))
        for word in words
    }
    assert len(classes) == len(words)


def test_most_sets_of_a_list_can_be_weighed_in_a_frame_of_its_kind() -> None:
    frame = Set().frame()
    rows = frame_rows(frame, FitLimits(gap_mm=0.5))
    found = known_sets(frame, rows, Respect.IN_PLANE)
    weighed = [chosen for chosen in found if row_weights(columns_of(rows), chosen)]
    assert len(weighed) > 0.5 * len(found)

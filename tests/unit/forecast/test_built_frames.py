"""Sets as they went up are made ready to learn from, each once."""

import math
from typing import Any

import pytest

from longpoint.forecast.built_frames import built_frames
from longpoint.forecast.learning.as_built import BuiltFrame, built_angle, built_sizes
from longpoint.pipeline import check_house
from longpoint.survey.as_built import JointRead
from longpoint.survey.house_file import read_house
from tests.house_documents import door, house, window

CORNERS = ("bl", "br", "tr", "tl")
GAPS = {corner: [0.4, 0.1 * i] for i, corner in enumerate(CORNERS)}


def frames(*openings: dict[str, Any], **changes: Any) -> tuple[BuiltFrame, ...]:  # noqa: ANN401
    survey = read_house(house(openings=list(openings), **changes))
    shapes, _ = check_house(survey)
    return built_frames(survey.house, shapes)


def saw(**more: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"S1": {"kerf": 2.4, "end_trim": 10, **more}}


def test_only_what_was_written_down_makes_a_frame() -> None:
    (frame,) = frames(window(), window(mark="W2", as_built={"gaps": GAPS}))
    assert frame.mark.startswith("Wren House, W2, ")
    assert [joint.toe_mm if joint else None for joint in frame.gaps] == [0, 0.1, 0.2, 0.3]
    assert (frame.key.saw, frame.key.tape) == ("S1", "T1")


def test_mitres_are_as_long_as_the_face_is_wide_over_the_cosine() -> None:
    (frame,) = frames(window(as_built={"gaps": GAPS}))
    assert frame.mitre_length_mm == pytest.approx([57.0 * math.sqrt(2.0)] * 4, rel=0.01)


def test_a_set_read_again_is_the_same_and_one_of_another_opening_is_not() -> None:
    (first,) = frames(window(as_built={"gaps": GAPS}))
    (again,) = frames(window(as_built={"gaps": {"bl": [0.2, 0]}}), saws=saw())
    (other,) = frames(window(as_built={"gaps": GAPS}, top=1188))
    assert again.mark == first.mark
    assert other.mark != first.mark


def test_both_faces_are_two_frames() -> None:
    gaps = {"gaps": {"tr": [0.3, 0], "tl": [0.1, 0]}}
    one, two = frames(door(faces=2, as_built=gaps, b={"as_built": gaps}))
    assert one.mark != two.mark
    assert (
        one.gaps
        == two.gaps
        == (
            JointRead(heel_mm=0.3, toe_mm=0.0),
            JointRead(heel_mm=0.1, toe_mm=0.0),
        )
    )


def test_a_saw_set_short_of_45_had_its_error_taken_off() -> None:
    """Heels open by 0.4 on a saw set to 44.9: it cuts what the gaps show and 0.1 besides."""
    set_back = saw(dialled={"left": -0.1, "right": -0.1})
    (bare,) = frames(window(as_built={"gaps": GAPS}), saws=saw())
    (dialled,) = frames(window(as_built={"gaps": GAPS}), saws=set_back)
    (plain, _), (taken, _) = built_angle(bare), built_angle(dialled)
    assert plain is not None
    assert taken is not None
    assert taken.over_cut_deg == pytest.approx(plain.over_cut_deg + 0.1)


def test_what_the_saw_was_found_to_give_since_is_not_taken_as_dialled() -> None:
    found = saw(found={"left": 45.2, "right": 45.2})
    (frame,) = frames(window(as_built={"gaps": GAPS}), saws=found)
    assert frame.dialled_deg == 0.0


def test_quirks_half_a_millimetre_over_on_both_legs_are_a_millimetre_too_large() -> None:
    """The sides' own quirks differ, and each counts from its own."""
    quirks = {"left": [6.5, 6.5], "right": [4.5, 4.5]}
    (frame,) = frames(
        window(quirk={"left": 6, "right": 4, "head": 5, "sill": 5}, as_built={"quirks": quirks})
    )
    (size,) = built_sizes(frame)
    assert size.axis.value == "width"
    assert size.too_large_mm == pytest.approx(1.0)


def test_what_the_tape_is_known_to_read_too_much_was_allowed_for() -> None:
    quirks = {"left": [5, 5], "right": [5, 5]}
    (frame,) = frames(
        window(as_built={"quirks": quirks}), tapes={"T1": {"class": "II", "take_off": 1.5}}
    )
    (size,) = built_sizes(frame)
    assert size.too_large_mm == pytest.approx(1.5)


def test_a_true_frame_in_a_tapered_opening_is_not_blamed_for_its_quirks() -> None:
    """Top 4 wider than bottom: a true frame laid evenly shows 4 at the top and 6 at the bottom."""
    quirks = {"left": [4, 5, 6], "right": [6, 5, 4]}
    tapered = {"top": 1190, "bottom": 1186, "left": 462, "right": 462}
    diagonals = {"rising": 1275.13, "falling": 1275.13}
    (frame,) = frames(window(method="bench", as_built={"quirks": quirks}, **tapered, **diagonals))
    for spots in (frame.quirk_mm[1], frame.quirk_mm[3]):
        assert spots == pytest.approx((0.0, 0.0, 0.0), abs=0.15)


@pytest.mark.parametrize(
    ("quirks", "method", "is_held"),
    [
        ({"left": [5, 5.5], "right": [5, 4.5]}, "batch", True),
        ({"left": [5, 6], "right": [5, 5]}, "batch", False),
        ({"left": [5, 5]}, "batch", False),
        ({"left": [5, 5], "right": [5, 5]}, "in-place", False),
    ],
)
def test_legs_were_held_where_both_quirks_are_even(
    quirks: dict[str, Any], method: str, is_held: bool
) -> None:
    gaps = {"tr": [0.3, 0], "tl": [0.1, 0]}
    (frame,) = frames(door(method=method, as_built={"gaps": gaps, "quirks": quirks}))
    if is_held:
        assert frame.legs_held_mm == pytest.approx(2035.5, abs=1.0)
    else:
        assert frame.legs_held_mm is None


def test_a_window_needs_no_held_legs() -> None:
    (frame,) = frames(window(as_built={"quirks": {"left": [5, 5], "right": [5, 5]}}))
    assert frame.legs_held_mm is None

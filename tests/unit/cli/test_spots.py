"""Readings typed on one line keep their corners, sides and doubts."""

from typing import Any

import pytest

from longpoint.cli.spots import at_corners, spots, whole_figures, with_spots
from longpoint.errors import QuantityError
from longpoint.quantities.length import Units


def test_groups_are_parted_by_commas_and_keep_what_was_not_read() -> None:
    assert spots("bl 0.35 0,br  ? 0 ") == {"bl": ["0.35", "0"], "br": ["?", "0"]}


@pytest.mark.parametrize("text", ["", "bl", "bl 0 0,", "bl 0 0, bl 1 1"])
def test_a_group_without_figures_or_given_twice_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        spots(text)


def test_a_whole_number_before_a_fraction_may_be_one_figure_or_two() -> None:
    with pytest.raises(QuantityError, match="5-1/4"):
        whole_figures({"left": ["5", "1/4"]})
    given = {"left": ["5-1/4", "3/16", "1/4"]}
    assert whole_figures(given) is given


def test_steps_may_be_less_than_nothing_and_in_inches() -> None:
    assert at_corners("tl -1/64, bl ?", Units.INCH) == (None, None, None, -25.4 / 64)


def test_readings_given_leave_the_document_and_the_rest_of_the_set_alone() -> None:
    set_ = {"gaps": {"bl": [9, 9]}, "quirks": {"left": 5}}
    document: dict[str, Any] = {"openings": [{"mark": "W1", "as_built": set_}, {"mark": "W2"}]}
    changed = with_spots(document, "W1", "", "gaps", {"tr": ["0", "0"]})
    assert changed["openings"][0]["as_built"] == {
        "gaps": {"tr": ["0", "0"]},
        "quirks": {"left": 5},
    }
    assert document["openings"][0]["as_built"] == set_
    assert changed["openings"][1] == {"mark": "W2"}


def test_the_second_face_is_made_where_it_had_no_readings() -> None:
    changed = with_spots({"openings": [{"mark": "D1"}]}, "D1", "b", "gaps", {"tr": ["0", "0"]})
    assert changed["openings"][0]["b"] == {"as_built": {"gaps": {"tr": ["0", "0"]}}}


@pytest.mark.parametrize("openings", [None, 3, ["W1"], [{"mark": "W1", "b": 3}]])
def test_a_document_of_another_shape_is_left_for_the_reader_to_refuse(openings: object) -> None:
    document = {"openings": openings}
    assert with_spots(document, "W1", "b", "gaps", {"tr": ["0", "0"]}) == document

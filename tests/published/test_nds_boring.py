"""The largest hole that is bored before a nail.

Source: provisions of the NDS as summarised on a civil-engineering handbook page. Read: 90 % of the
nail's diameter where the density is over 0.6, else 75 %.
"""

from pathlib import Path

from longpoint.fixing.withdrawal import FRAME_WOODS_G, pre_bore_share
from tests.published.reference import rows


def test_dense_timber_is_bored_to_nine_tenths_and_the_rest_to_three_quarters() -> None:
    assert pre_bore_share(FRAME_WOODS_G["red oak"]) == 0.90
    assert pre_bore_share(FRAME_WOODS_G["southern pine"]) == 0.75
    assert pre_bore_share(0.6) == 0.75


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    row = rows(shared)["NAIL-PB"]
    assert (row.numbers(), row.how_known) == ([90.0, 75.0], "read")

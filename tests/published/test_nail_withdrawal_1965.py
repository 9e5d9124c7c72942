"""What a nail holds in side grain, to compare one with another.

Source: USDA Forest Products Laboratory FPL-093 (1965) and Technical Note 236 (1958). Read:
6900 G^2.5 D pounds for each inch of penetration, D in inches, bright common nails.
Densities: NDS 2018 table 12.3.3A as transcribed in an open-source structural library. Read.

Remembered: the design value of NDS is 1380 G^2.5 D, a fifth of it.
"""

import re
from pathlib import Path

import pytest

from longpoint.fixing.withdrawal import (
    FORMULA_LBF_PER_INCH,
    FRAME_WOODS_G,
    REFERENCE_DIAMETER_MM,
    reference_nails,
    withdrawal_lbf_per_inch,
)
from tests.published.reference import rows


def test_a_nail_of_16_gauge_in_douglas_fir_gives_the_published_figure() -> None:
    """Case 42 of the published checks: G 0.50, D 0.0625 in: 76.2 lbf/in."""
    assert withdrawal_lbf_per_inch(0.50, 0.0625) == pytest.approx(76.2, abs=0.1)


def test_the_ratios_printed_are_those_of_the_formula() -> None:
    for wood, density in FRAME_WOODS_G.items():
        ratio = withdrawal_lbf_per_inch(density, 0.072) / withdrawal_lbf_per_inch(0.42, 0.0625)
        assert reference_nails(0.072 * 25.4, 25.0, wood) == pytest.approx(ratio, rel=1e-9)
    assert reference_nails(REFERENCE_DIAMETER_MM, 25.0) == 1.0


def test_the_remembered_design_value_is_a_fifth_of_it() -> None:
    assert FORMULA_LBF_PER_INCH == 5 * 1380.0


def test_the_formula_is_that_of_the_reference_values(shared: Path) -> None:
    row = rows(shared)["NAIL-W1"]
    assert (row.value, row.how_known) == ("6900*G^2.5*D", "read")
    assert rows(shared)["NAIL-W2"].how_known == rows(shared)["NAIL-W3"].how_known == "memory"


@pytest.mark.parametrize("wood", FRAME_WOODS_G)
def test_the_densities_are_those_of_the_reference_values(wood: str, shared: Path) -> None:
    row = rows(shared)["SG-" + wood.replace(" ", "-")]
    assert (row.numbers(), row.how_known) == ([FRAME_WOODS_G[wood]], "read")


def test_every_density_of_the_reference_values_is_held(shared: Path) -> None:
    listed = {name for name in rows(shared) if re.match("SG-", name)}
    assert len(listed) == len(FRAME_WOODS_G)

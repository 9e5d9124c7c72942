"""Figures of the Wood Handbook from memory: NOT published ones as far as this file goes.

None was read in its source. They are kept apart so that nobody takes them for more, and so that a
slip in our own arithmetic shows. All are said to be of FPL-GTR-190 (2010), tables 4-3, 4-4 and
13-5, and of eq. 13-3.

The link between a timber's shrinkage and its coefficient is our own derivation. Its right side is
read for sugar maple and black cherry, from memory for the rest; the shrinkages are all from memory.
"""

from pathlib import Path

import pytest

from longpoint.forecast.season.coefficients import Standing, coefficient_from_shrinkage
from longpoint.forecast.season.movement import MovementForm, shrink_share
from longpoint.forecast.season.timbers import TIMBERS
from tests.published.reference import rows

BY_NAME = {species.name: species for species in TIMBERS}

BOTH_FROM_MEMORY = {
    "western redcedar": "CTm-western-redcedar",
    "eastern white pine": "CTm-pine-eastern-white",
    "ponderosa pine": "CTm-pine-ponderosa",
    "loblolly pine": "CTm-pine-loblolly",
    "western hemlock": "CTm-hemlock-western",
    "Sitka spruce": "CTm-spruce-Sitka",
    "Californian redwood": "CTm-redwood-old-growth",
    "yellow-poplar": "CTm-yellow-poplar",
    "meranti": "CTm-meranti",
}


@pytest.mark.parametrize(("name", "row"), BOTH_FROM_MEMORY.items())
def test_a_timber_from_memory_says_so(name: str, row: str, shared: Path) -> None:
    known, species = rows(shared)[row], BY_NAME[name]
    standings = {species.radial.standing.value, species.tangential.standing.value}
    assert (known.how_known, standings) == ("memory", {"from memory"})
    assert [species.radial.per_percent, species.tangential.per_percent] == known.numbers()


@pytest.mark.parametrize(
    ("name", "row", "index"),
    [
        ("Douglas fir", "CTm-Douglas-fir-coast", 0),
        ("teak", "CTm-teak", 0),
        ("white fir", "CTm-white-fir", 1),
    ],
)
def test_half_of_a_timber_is_from_memory(name: str, row: str, index: int, shared: Path) -> None:
    species = BY_NAME[name]
    figure = (species.radial, species.tangential)[index]
    assert figure.standing is Standing.MEMORY
    assert figure.per_percent == rows(shared)[row].numbers()[index]


@pytest.mark.parametrize(
    ("shrinkage_percent", "per_percent"),
    [(9.9, 0.00353), (7.1, 0.00248), (7.0, 0.00245), (7.6, 0.00267), (4.8, 0.00165)],
    ids=["sugar maple", "black cherry", "white fir", "Douglas fir", "sugar maple, radial"],
)
def test_shrinkage_from_memory_gives_the_coefficient(
    shrinkage_percent: float, per_percent: float
) -> None:
    found = coefficient_from_shrinkage(shrinkage_percent)
    assert found == pytest.approx(per_percent, abs=0.00001)


def test_western_redcedar_does_not_follow_the_link() -> None:
    # Its shrinkage seems to start at 22 % rather than 30: the coefficient is larger than linked.
    assert coefficient_from_shrinkage(5.0) < 0.00234 - 0.0005


def test_radiata_is_worked_out_from_a_shrinkage_from_memory(shared: Path) -> None:
    known = rows(shared)
    species = BY_NAME["radiata pine"]
    assert known["SHm-pine-radiata"].how_known == "memory"
    assert species.radial.standing is species.tangential.standing is Standing.DERIVED
    figures = [species.radial.per_percent, species.tangential.per_percent]
    assert figures == known["CT-radiata-derived"].numbers()


def test_the_form_from_green_is_the_remembered_one(shared: Path) -> None:
    # dD = D (MF - MI) / (30 x 100 / S - 30 + MI), written out from the shrinkage itself.
    assert rows(shared)["DIM-EQ2"].how_known == "memory"
    assert MovementForm.GREEN.standing is Standing.MEMORY
    for shrinkage, start, end in ((9.9, 20.0, 8.0), (3.4, 12.0, 4.0), (7.0, 5.0, 16.0)):
        lost = (start - end) / (30.0 * 100.0 / shrinkage - 30.0 + start)
        found = shrink_share(start, end, coefficient_from_shrinkage(shrinkage))
        assert found == pytest.approx(lost)

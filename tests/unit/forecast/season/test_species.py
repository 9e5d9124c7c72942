import pytest

from longpoint.forecast.season.species import MDF, TIMBERS, species_of


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("radiata pine", "radiata pine"),
        ("primed pine", "radiata pine"),
        ("pine, primed", "radiata pine"),
        ("Pine (finger-jointed, pre-primed)", "radiata pine"),
        ("MDF", "MDF"),
        ("18 mm MR MDF, primed", "MDF"),
        ("Oak veneered MDF", "MDF"),
        ("redwood", "European redwood"),
        ("Scots Pine", "European redwood"),
        ("Californian redwood", "Californian redwood"),
        ("oak", "white oak"),
        ("RED OAK - select", "red oak"),
        ("Douglas-fir", "Douglas fir"),
        ("poplar", "yellow-poplar"),
        ("yellow poplar, 5/8 in", "yellow-poplar"),
        ("Western Red Cedar", "western redcedar"),
        ("white pine, primed", "eastern white pine"),
        ("solid beech 18x57", "American beech"),
    ],
)
def test_it_is_found_as_carpenters_write_it(written: str, name: str) -> None:
    found = species_of(written)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize(
    "written",
    [
        "",
        "  ",
        "primed",
        "Tasmanian oak",
        "oak veneered plywood",
        "mahogany",
        "merbau",
        "poplar ply",
        "spruce pine fir",
        "PVC",
        "hoop pine",
        "oak and beech",
        "slash pine",
        "18 mm",
    ],
)
def test_what_is_not_known_for_sure_is_not_guessed(written: str) -> None:
    assert species_of(written) is None


def test_every_name_and_alias_leads_to_its_timber() -> None:
    for species in TIMBERS:
        for name in (species.name, *species.aliases):
            assert species_of(name.upper() + ", primed") is species, name


def test_mdf_moves_least() -> None:
    assert min(TIMBERS, key=lambda s: s.tangential.per_percent) is MDF

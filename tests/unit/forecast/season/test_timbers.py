from longpoint.forecast.season.timbers import TIMBERS


def test_names_and_aliases_are_used_once() -> None:
    names = [name.casefold() for species in TIMBERS for name in (species.name, *species.aliases)]
    assert len(names) == len(set(names))


def test_aliases_are_in_lower_case() -> None:
    assert all(alias == alias.casefold() for s in TIMBERS for alias in s.aliases)


def test_every_timber_moves_less_across_the_rings_than_along_them() -> None:
    for species in TIMBERS:
        assert 0.0 < species.radial.per_percent <= species.tangential.per_percent < 0.005


def test_every_figure_says_where_it_comes_from() -> None:
    assert all(c.source for s in TIMBERS for c in (s.radial, s.tangential))


def test_timbers_on_which_sources_disagree_are_left_out() -> None:
    words = " ".join(name for s in TIMBERS for name in (s.name, *s.aliases)).casefold()
    assert "mahogany" not in words
    assert "merbau" not in words

from longpoint.survey.checks.siblings import all_siblings, told_siblings
from longpoint.survey.openings import Nominal, OpeningKind
from longpoint.survey.readings import Place
from tests.drawn_openings import house_of, opening_of

NOMINAL = Nominal(width_mm=900.0, height_mm=600.0)


def test_a_batch_or_a_drawing_makes_siblings() -> None:
    house = house_of(
        opening_of("A", width=900, height=600, batch="W"),
        opening_of("B", width=1200, height=600, batch="W"),
        opening_of("C", width=900, height=600, nominal=NOMINAL),
        opening_of("D", width=905, height=600, nominal=NOMINAL),
        opening_of("E", width=900, height=600),
    )
    groups = [{o.mark for o in g.openings} for g in told_siblings(house)]
    assert groups == [{"A", "B"}, {"C", "D"}]
    assert all(g.is_told for g in told_siblings(house))


def test_openings_of_one_kind_and_size_are_found_to_be_alike_one_by_one() -> None:
    house = house_of(
        opening_of("A", width=900, height=600),
        opening_of("B", width=909, height=600),
        opening_of("C", width=918, height=600),
        opening_of("D", width=960, height=600),
        opening_of("E", width=900, height=600, kind=OpeningKind.DOOR),
    )
    found = all_siblings(house)
    assert {o.mark for o in found["C"].openings} == {"A", "B", "C"}
    assert not found["C"].is_told
    assert "D" not in found
    assert "E" not in found


def test_a_slip_in_one_of_two_sides_leaves_the_opening_among_its_siblings() -> None:
    house = house_of(
        opening_of("A", top=900, bottom=900, left=600, right=600),
        opening_of("B", top=900, bottom=909, left=1600, right=600),
    )
    assert set(all_siblings(house)) == {"A", "B"}


def test_the_others_are_the_others() -> None:
    house = house_of(*(opening_of(m, width=w, height=600) for m, w in (("A", 900), ("B", 902))))
    group = all_siblings(house)["A"]
    assert group.others_mm("A", Place.TOP) == (902.0,)
    assert group.median_mm(Place.TOP) == 901.0
    assert group.median_mm(Place.TOP, without=frozenset("AB")) is None

from dataclasses import replace

from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.stock_left import rack_left, stock_left
from longpoint.sticks.plan import StickSource
from longpoint.survey.profiles import Offcut, Stock


def at_saw(*sticks: StickAtSaw) -> AtTheSaw:
    return AtTheSaw(sticks=sticks)


def stick(name: str, length_mm: float, source: StickSource, label: str = "") -> StickAtSaw:
    return StickAtSaw(name=name, profile="OG", length_mm=length_mm, source=source, label=label)


def test_counted_sticks_at_the_saw_are_taken_from_the_list() -> None:
    stock = [
        Stock(profile="OG", length_mm=5400.0, count=3),
        Stock(profile="OG", length_mm=4200.0),
        Stock(profile="SK", length_mm=5400.0, count=2),
    ]
    one = stick("OG-1", 5400.0, StickSource.STOCK)
    short = replace(one, name="OG-2", length_mm=5100.0, listed_mm=5400.0)

    assert [each.count for each in stock_left(at_saw(one, short), stock)] == [1, None, 2]


def test_offcuts_at_the_saw_are_not_on_the_rack() -> None:
    offcuts = [
        Offcut(profile="OG", length_mm=900.0, label="EMKR"),
        Offcut(profile="OG", length_mm=900.0, label="QC7R"),
        Offcut(profile="OG", length_mm=900.0, count=2),
    ]
    state = at_saw(
        stick("OG-1", 900.0, StickSource.OFFCUT, label="QC7R"),
        stick("OG-2", 900.0, StickSource.OFFCUT),
    )

    assert rack_left(state, offcuts) == (offcuts[0], replace(offcuts[2], count=1))


def test_the_rest_of_a_spoiled_piece_is_none_of_the_rack() -> None:
    offcuts = [Offcut(profile="OG", length_mm=900.0)]

    assert rack_left(at_saw(stick("W1-rest-1", 900.0, StickSource.REST)), offcuts) == (offcuts[0],)

from dataclasses import replace
from datetime import date

from longpoint.sticks.news.kept_offcuts import AfterCutting, KeptOffcut
from longpoint.sticks.news.settle_rack import Settled, settled
from longpoint.survey.rack import Gone, Out, Rack, RackPiece
from tests.random_sticks import house_of

HOUSE = house_of()
DAY = date(2026, 3, 1)


def offcut(origin: str, length_mm: float) -> KeptOffcut:
    return KeptOffcut(origin=origin, profile="OG", length_mm=length_mm, left="mitre -45.0")


def rack() -> Rack:
    found, key = Rack().with_section(HOUSE.profile("OG"))
    for length_mm in (900.0, 700.0):
        found, _ = found.with_piece(
            RackPiece(label="", section=key, length_mm=length_mm, put_up=DAY)
        )
    return found


def settle(before: Rack, *kept: KeptOffcut, used: str = "", missing: str = "") -> Settled:
    after = AfterCutting(
        kept=kept,
        used=tuple(used.split()),
        missing=tuple(missing.split()),
    )
    return settled(before, after, HOUSE, "7XKQ4M", date(2026, 4, 1))


def test_what_is_long_enough_is_put_up_with_where_it_comes_from() -> None:
    # The saw keeps 300 and more.
    done = settle(rack(), offcut("OG-1", 300.0), offcut("OG-2", 299.0))

    (put_up,) = done.put_up
    assert put_up == RackPiece(
        label="6WPK",
        section="OG",
        length_mm=300.0,
        left="mitre -45.0",
        house="Test House",
        origin="7XKQ4M OG-1",
        put_up=date(2026, 4, 1),
    )
    assert done.too_short == 1
    assert done.rack.pieces[-1] == put_up


def test_a_section_may_say_what_is_worth_keeping() -> None:
    before = rack()
    key, section = before.sections[0]
    before = replace(before, sections=((key, replace(section, least_mm=250.0)),))

    assert len(settle(before, offcut("OG-1", 299.0), offcut("OG-2", 249.0)).put_up) == 1


def test_settling_twice_changes_nothing() -> None:
    once = settle(rack(), offcut("OG-1", 500.0), used="EMKR")
    twice = settle(once.rack, offcut("OG-1", 500.0), used="EMKR")

    assert twice.rack == once.rack
    assert (twice.put_up, twice.taken, twice.elsewhere) == ((), (), ())
    assert twice.known == (once.put_up[0].label,)


def test_what_was_used_or_missing_is_gone_and_stays_in_the_file() -> None:
    done = settle(rack(), used="EMKR", missing="QC7R")

    assert done.taken == ("EMKR", "QC7R")
    assert done.rack.there == ()
    assert [each.gone.why for each in done.rack.pieces if each.gone] == [Out.USED, Out.MISSING]


def test_what_was_gone_for_another_house_or_is_of_another_rack_is_said() -> None:
    elsewhere = rack().without("EMKR", Gone(why=Out.USED, on=DAY, house="Plover House"))
    done = settle(elsewhere, used="EMKR HJCK")

    assert (done.elsewhere, done.strange, done.taken) == (("EMKR",), ("HJCK",), ())
    assert done.rack == elsewhere

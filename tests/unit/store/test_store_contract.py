"""What holds of every store, whatever it is kept in."""

from collections.abc import Iterator
from datetime import date
from itertools import count
from pathlib import Path

import pytest

from longpoint.errors import StoreError, SurveyError
from longpoint.journal import Entry, Key, as_written
from longpoint.store import HouseStore, Milestone, MilestoneKind
from longpoint.survey.rack import (
    RACK_KEY,
    Gone,
    Out,
    Rack,
    RackPiece,
    Section,
    rack_changes,
    rack_now,
)
from tests.store_adapters import Adapter, postgres_adapter, sqlite_adapter

AT = "2026-03-02T07:15:00Z"
DATABASES = count(1)


@pytest.fixture(params=["sqlite", "postgres"])
def adapter(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Adapter]:
    if request.param == "sqlite":
        with sqlite_adapter(tmp_path) as found:
            yield found
        return
    server = request.getfixturevalue("server")
    with postgres_adapter(server, f"houses_{next(DATABASES)}") as found:
        yield found


@pytest.fixture
def store(adapter: Adapter) -> Iterator[HouseStore]:
    found = adapter.open()
    yield found
    found.close()


def named(name: str) -> dict[str, object]:
    return {"what": "house-named", "name": name}


def entry(device: str, counter: int, house: str = "h", **said: object) -> Entry:
    head = {"device": device, "counter": counter, "at": AT, "house": house}
    return {**head, "what": "reading", **said}


def plan(house: str = "h", code: str = "K") -> Milestone:
    said = {"folder": "sheets"}
    return Milestone(house=house, kind=MilestoneKind.PLAN, at=AT, after=1, code=code, said=said)


def test_what_was_written_is_there_when_it_is_opened_again(adapter: Adapter) -> None:
    store = adapter.open()
    written = store.write("h", AT, [named("Wren"), named("Lark")])
    store.close()
    store = adapter.open("another name")
    assert tuple(each.entry for each in store.entries("h")) == written
    assert [each.number for each in store.entries("h")] == [1, 2]
    assert store.device == ("another name" if adapter.is_shared else "laptop")
    store.close()


def test_what_two_laptops_write_is_told_apart_and_no_key_is_given_twice(adapter: Adapter) -> None:
    laptop, van = adapter.open("laptop"), adapter.open("van")
    written = []
    for turn in range(3):
        for store in (laptop, van):
            (entry_now,) = store.write("h", AT, [named(f"Wren {turn}")])
            assert entry_now["device"] == store.device
            written.append(entry_now)
    assert {each["device"] for each in written} == (
        {"laptop", "van"} if adapter.is_shared else {"laptop"}
    )
    assert [each["counter"] for each in written] == [1, 2, 3, 4, 5, 6]
    laptop.close()
    again = adapter.open("laptop")
    (more,) = again.write("h", AT, [named("Lark")])
    assert (more["device"], more["counter"]) == ("laptop", 7)
    assert [each.entry for each in van.entries("h")] == [*written, more]
    assert again.verify() == ()
    again.close()
    van.close()


def test_a_device_counts_on_from_the_highest_count_that_it_has_seen(store: HouseStore) -> None:
    store.write("h", AT, [named("Wren")])
    assert store.highest() == 1
    store.take([entry("phone", 9, house="g")])
    assert store.highest() == 9
    store.write("g", AT, [named("Lark"), named("Pipit")])
    assert store.houses() == ("h", "g")
    assert [each.key for each in store.entries("g")] == [
        Key("phone", 9),
        Key("laptop", 10),
        Key("laptop", 11),
    ]


def test_a_body_says_nothing_of_device_count_time_and_house(store: HouseStore) -> None:
    (written,) = store.write("h", AT, [{**named("Wren"), "counter": 77, "device": "x"}])
    assert (written["counter"], written["device"], written["house"]) == (1, "laptop", "h")


def test_entries_that_come_twice_are_kept_once(store: HouseStore) -> None:
    came = [entry("phone", 1), entry("phone", 2)]
    assert len(store.take(came).added) == 2
    again = store.take([*came, entry("phone", 3), entry("phone", 3)])
    assert (len(again.added), again.known, again.clashes) == (1, 3, ())
    assert len(store.entries("h")) == 3


def test_another_entry_under_a_key_is_refused_and_told(store: HouseStore) -> None:
    store.take([entry("phone", 1, line="top")])
    taken = store.take([entry("phone", 1, line="left"), entry("phone", 2)])
    assert [clash.key for clash in taken.clashes] == [Key("phone", 1)]
    assert taken.clashes[0].here["line"] == "top"
    assert [e["counter"] for e in taken.added] == [2]
    (kept,) = store.texts([Key("phone", 1)])
    assert kept == as_written(entry("phone", 1, line="top"))


def test_what_was_overtaken_is_refused(store: HouseStore) -> None:
    store.write("h", AT, [named("Wren")], 0)
    store.write("g", AT, [named("Lark")], 0)
    with pytest.raises(StoreError, match="in the meantime"):
        store.write("h", AT, [named("Pipit")], 0)
    store.write("h", AT, [named("Pipit")], 1)
    assert len(store.entries("h")) == 2


def test_a_rack_is_kept_beside_the_houses(store: HouseStore) -> None:
    section = Section(name="OG57", width_mm=57.0, thickness_mm=18.0)
    rack = Rack(sections=(("OG57", section),))
    piece = RackPiece(label="", section="OG57", length_mm=1310.5, put_up=date(2026, 3, 1))
    rack, piece = rack.with_piece(piece)
    store.write(RACK_KEY, AT, rack_changes(Rack(), rack), 0)
    used = rack.without(piece.label, Gone(why=Out.USED, on=date(2026, 3, 2)))
    store.write(RACK_KEY, AT, rack_changes(rack, used), 2)
    entries = store.entries(RACK_KEY)
    assert rack_now(each.entry for each in entries).rack == used
    of = {"device": entries[-1].key.device, "counter": entries[-1].key.counter}
    store.write(RACK_KEY, AT, [{"what": "undo", "of": of}], 3)
    assert rack_now(each.entry for each in store.entries(RACK_KEY)).rack == rack
    assert store.verify() == ()


def test_one_that_is_no_entry_keeps_the_whole_bag_out(store: HouseStore) -> None:
    with pytest.raises(SurveyError):
        store.take([entry("phone", 1), {"device": "phone"}])
    assert store.houses() == ()
    with pytest.raises(SurveyError):
        store.write("h", AT, [named("Wren"), {"what": "setting", "value": float("inf")}])
    assert store.houses() == ()


def test_two_stores_that_pass_on_what_the_other_lacks_are_alike(
    store: HouseStore, tmp_path: Path
) -> None:
    (tmp_path / "other").mkdir()
    with sqlite_adapter(tmp_path / "other") as other_adapter:
        other = other_adapter.open("phone")
        store.write("h", AT, [named("Wren")])
        other.write("h", AT, [named("Lark"), named("Pipit")])
        store.take(other.lacking(store.seen()))
        other.take(store.lacking(other.seen()))
        assert store.seen() == other.seen()
        assert {device: each.counter for device, each in store.seen().items()} == {
            "laptop": 1,
            "phone": 2,
        }
        assert store.lacking({}) == other.lacking({})
        assert store.lacking(other.seen()) == ()
        other.close()


def test_what_is_missing_before_the_highest_is_sent(store: HouseStore, tmp_path: Path) -> None:
    came = [entry("phone", counter) for counter in range(1, 120, 2)]
    store.take(came)
    (tmp_path / "other").mkdir()
    with sqlite_adapter(tmp_path / "other") as other_adapter:
        other = other_adapter.open("tablet")
        other.take([came[0], *came[5:]])
        sent = store.lacking(other.seen())
        assert all(each in sent for each in came[1:5])
        assert len(other.take(sent).added) == 4
        assert store.lacking(other.seen()) == ()
        other.take([came[-1], entry("phone", 121)])
        assert store.lacking(other.seen()) == ()
        assert other.lacking(store.seen()) == (entry("phone", 121),)
        other.close()


def test_a_house_or_key_that_is_not_there_is_empty(store: HouseStore) -> None:
    assert store.entries("x") == ()
    assert store.milestones("x") == ()
    assert store.texts([Key("x", 1)]) == (None,)
    assert store.seen() == {}


def test_signs_of_every_kind_come_back(store: HouseStore) -> None:
    name = "Möwe ′ × 3/4″ \0 \ud800 'x' \"y\" ; --"
    store.write("h", AT, [named(name)])
    assert store.entries("h")[0].entry["name"] == name
    assert store.verify() == ()


def test_plans_and_revisions_are_remembered_in_their_order(store: HouseStore) -> None:
    store.write("h", AT, [named("Wren")])
    first, second = store.keep(plan(code="K1")), store.keep(plan(code="K2"))
    assert (first.number, second.number) == (1, 2)
    assert store.milestones("h") == (first, second)
    assert store.milestones("h")[0].said == {"folder": "sheets"}


def test_a_milestone_of_no_house_is_refused(store: HouseStore) -> None:
    with pytest.raises(StoreError):
        store.keep(plan("nowhere"))
    store.write("h", AT, [named("Wren")])
    assert store.keep(plan()).number == 1


def test_a_sound_store_has_nothing_to_say(store: HouseStore) -> None:
    assert store.verify() == ()
    store.write("h", AT, [named("Wren")])
    store.keep(plan())
    assert store.verify() == ()


@pytest.mark.parametrize(
    ("old", "new"),
    [("Wren House", "Wren Mouse"), ('"after":1', '"after":2'), ('"counter":1', '"counter":7')],
)
def test_a_sign_that_changed_behind_its_back_is_found(adapter: Adapter, old: str, new: str) -> None:
    store = adapter.open()
    store.write("h", AT, [named("Wren House")])
    store.keep(plan())
    store.close()
    adapter.spoil(old, new)
    store = adapter.open()
    assert {found.code for found in store.verify()} == {"store-damaged"}
    with pytest.raises(StoreError):
        (store.entries("h"), store.milestones("h"))
    store.close()


def test_two_that_write_at_once_give_no_count_twice(adapter: Adapter) -> None:
    one, two = adapter.open(), adapter.open()
    for _ in range(3):
        one.write("h", AT, [named("Wren")])
        two.write("h", AT, [named("Lark")])
    assert [each.key.counter for each in one.entries("h")] == [1, 2, 3, 4, 5, 6]
    assert two.verify() == ()
    two.close()
    one.close()


def test_keys_that_came_since_the_last_look_are_told_with_their_numbers(store: HouseStore) -> None:
    store.take([entry("p", 4), entry("p", 9, house="other"), entry("q", 2)])
    assert store.keys("h") == ((1, Key("p", 4)), (3, Key("q", 2)))
    store.take([entry("p", 1)])
    assert store.keys("h", 3) == ((4, Key("p", 1)),)
    assert store.keys("h", 4) == ()

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from typing import Any

import pytest

from longpoint.journal import Entry, key_of, lacking, merged, seen
from longpoint.phone import Ports, answer
from longpoint.phone.fold import fold
from longpoint.phone.passing import came, passing
from tests.phone_journals import Journal


def keys(entries: Sequence[Entry]) -> list[dict[str, Any]]:
    return [{"device": entry["device"], "counter": entry["counter"]} for entry in entries]


def told(entries: Sequence[Entry]) -> dict[str, dict[str, Any]]:
    """What a laptop with these entries says that it has."""
    return {
        d: {"counter": up.counter, "sum": up.sum} for d, up in seen(map(key_of, entries)).items()
    }


def shared(phone: list[Entry], laptop: list[Entry]) -> int:
    """Share until neither has anything to give; returns how many calls it took."""
    for call in range(10):
        found = passing(keys(phone), told(laptop))
        if not found.lacking and not found.is_behind:
            return call
        wanted = {(key.device, key.counter) for key in found.lacking}
        laptop[:] = merged(laptop, [e for e in phone if tuple(key_of(e)) in wanted]).entries
        own = seen(map(key_of, phone))
        missing = set(lacking(map(key_of, laptop), own))
        phone[:] = merged(phone, [e for e in laptop if key_of(e) in missing]).entries
    raise AssertionError("it never ends")


def two_phones() -> tuple[Journal, Journal]:
    first = Journal("kim")
    first.begin()
    first.write("opening-added", opening="W1", room="Main", kind="window", trim="all-round")
    second = Journal("sam", seen=2)
    first.read("top", "1187", "W1", over=[])
    second.read("top", "1197", "W1", over=[])
    return first, second


def test_two_phones_and_a_laptop_come_to_one_house() -> None:
    first, second = two_phones()
    kim: list[Entry] = list(first.entries)
    sam: list[Entry] = [*first.entries[:2], *second.entries]
    laptop: list[Entry] = []
    for phone in (kim, sam, kim):
        shared(phone, laptop)
    assert kim == sam == laptop
    assert [said.code for said in fold(kim).held] == ["readings-differ"]


def test_a_phone_that_lost_its_middle_gets_it_back() -> None:
    whole: list[Entry] = list(two_phones()[0].entries)
    phone: list[Entry] = [whole[0], whole[-1]]
    shared(phone, list(whole))
    assert phone == whole


def test_sharing_again_asks_for_nothing() -> None:
    entries: list[Entry] = list(two_phones()[0].entries)
    laptop: list[Entry] = []
    assert shared(entries, laptop) > 0
    assert shared(entries, laptop) == 0


def test_the_page_is_answered_with_plain_values() -> None:
    entries = two_phones()[0].entries
    request = {"ask": "passing", "keys": keys(entries), "there": told(entries[:2])}
    said = json.loads(answer(json.dumps(request), Ports()))
    assert said["kind"] == "passing"
    assert said["lacking"] == [{"device": "kim", "counter": 3}]
    assert said["seen"] == told(entries)


def test_what_came_is_told_by_phone_and_the_latest_of_much() -> None:
    first, second = two_phones()
    for number in range(6):
        second.read("left", str(460 + number), f"W{number}", over=[])
    by = {each.device: each for each in came([*first.entries, *second.entries]).by}
    assert by["kim"].words[-1] == "1 reading of W1 top"
    assert by["sam"].words[-1] == "1 reading of W5 left"
    assert len(by["sam"].words) + by["sam"].more == len(second.entries)


@pytest.mark.parametrize(
    "entry", [{"what": "reading"}, {"what": "place-read", "place": 3}, {"what": "?"}]
)
def test_an_entry_of_another_version_is_told_all_the_same(entry: Mapping[str, Any]) -> None:
    (found,) = came([{"device": "kim", "counter": 1, **entry}]).by
    assert asdict(found)["words"]

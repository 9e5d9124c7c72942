"""Phones share houses through the laptop: everything arrives, once, whatever the order."""

import pytest

from longpoint.journal import seen
from longpoint.journal.entry import Key
from tests.crew_server import Laptop, Phone, entry


def of(*entries: dict[str, object]) -> dict[str, object]:
    found = seen(Key(str(e["device"]), int(str(e["counter"]))) for e in entries)
    return {device: {"counter": up.counter, "sum": up.sum} for device, up in found.items()}


def test_what_one_phone_gives_the_other_gets(laptop: Laptop, phone: Phone) -> None:
    mine = [entry("p", 1), entry("p", 2)]
    assert phone.share("h", mine, of(*mine)).json()["entries"] == []
    other = Phone(laptop, "q")
    other.come_in("Lee's phone")
    theirs = entry("q", 3)
    got = other.share("h", [theirs], of(theirs)).json()
    assert got["entries"] == mine
    assert not got["more"]
    assert phone.share("h", [], of(*mine)).json()["entries"] == [theirs]


def test_sharing_the_same_again_changes_nothing(laptop: Laptop, phone: Phone) -> None:
    mine = [entry("p", 1), entry("p", 2)]
    first = phone.share("h", mine, of(*mine)).json()
    assert phone.share("h", [*reversed(mine), *mine], of(*mine)).json() == first
    (house,) = phone.get("/crew/houses").json()
    assert house == {"house": "h", "seen": of(*mine)}


def test_another_entry_under_the_same_key_is_refused_and_the_rest_is_taken(phone: Phone) -> None:
    phone.share("h", [entry("p", 1)])
    answer = phone.share("h", [entry("p", 1, name="Lark"), entry("p", 2)])
    assert answer.status_code == 409
    assert "copied" in answer.json()["wrong"]
    stands = phone.share("h", []).json()["entries"]
    assert [(e["counter"], e["name"]) for e in stands] == [(1, "Wren"), (2, "Wren")]


def test_much_comes_in_parts(phone: Phone) -> None:
    for first in (1, 401):
        phone.share("h", [entry("p", n) for n in range(first, first + 400)])
    part = phone.share("h", []).json()
    assert part["more"]
    assert len(part["entries"]) == 500
    rest = phone.share("h", [], of(*part["entries"])).json()
    assert not rest["more"]
    assert [e["counter"] for e in rest["entries"]] == list(range(501, 801))


@pytest.mark.parametrize(
    "body",
    [
        [],
        {"entries": []},
        {"entries": [{}], "seen": {}},
        {"entries": [entry("p", 1, house="other")], "seen": {}},
        {"entries": [entry("p", 0)], "seen": {}},
        {"entries": [], "seen": {"p": {"counter": "1", "sum": ""}}},
        {"entries": [], "seen": {"p": 1}},
        {"entries": [entry("p", n) for n in range(1, 502)], "seen": {}},
    ],
)
def test_what_is_no_share_is_refused_and_nothing_is_taken(phone: Phone, body: object) -> None:
    answer = phone.post("/crew/houses/h/share", body)
    assert answer.status_code == 422
    assert set(answer.json()) == {"read", "wrong", "do"}
    assert phone.get("/crew/houses").json() == []


def test_half_a_sign_goes_on_as_it_came(phone: Phone) -> None:
    assert phone.share("h", [entry("p", 1, name="W\ud800n")]).status_code == 200
    assert phone.share("h", []).json()["entries"][0]["name"] == "W\ud800n"


def test_a_store_that_refuses_is_told_and_the_next_is_served(
    laptop: Laptop, phone: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError("no room")

    with monkeypatch.context() as broken:
        broken.setattr("longpoint.store.sql_store.SqlStore.take", full)
        answer = phone.share("h", [entry("p", 1)])
        assert answer.status_code == 503
    assert phone.share("h", [entry("p", 1)]).status_code == 200

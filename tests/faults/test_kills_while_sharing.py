"""A laptop that is killed in the middle of shares has all that it acknowledged to a phone."""

import random
import threading
from collections.abc import Iterator
from itertools import count
from pathlib import Path

import httpx
import pytest

from longpoint.journal import Key
from longpoint.store.sqlite_store import open_to_read
from tests.crew_server import entry
from tests.serving_process import serving_process

DEVICE = "kimsphone"
AT_ONCE = 20


def share_until_killed(phone: httpx.Client, counters: Iterator[int]) -> set[int]:
    """Share entry after entry, and return the counts that were acknowledged."""
    acknowledged: set[int] = set()
    try:
        while True:
            sent = [next(counters) for _ in range(AT_ONCE)]
            entries = [entry(DEVICE, each, f"house-{each % 3}") for each in sent]
            for house in {each["house"] for each in entries}:
                of = [each for each in entries if each["house"] == house]
                given = {"seen": {}, "entries": of}
                answer = phone.post(f"/crew/houses/{house}/share", json=given)
                if answer.status_code == 200:
                    acknowledged |= {each["counter"] for each in of}
    except httpx.HTTPError:
        return acknowledged


def kept_counters(store: Path) -> set[int]:
    """Return the counts that are in a store, which is sound."""
    kept = open_to_read(store)
    try:
        assert kept.verify() == ()
        keys = [key for house in kept.houses() for _, key in kept.keys(house)]
    finally:
        kept.close()
    assert all(key == Key(DEVICE, key.counter) for key in keys)
    return {key.counter for key in keys}


def killed(folder: Path, rounds: int) -> None:
    draw, counters = random.Random(20), count(1)
    acknowledged: set[int] = set()
    headers: dict[str, str] = {}
    cookies = httpx.Cookies()
    for _ in range(rounds):
        with serving_process(folder) as serving, serving.client() as phone:
            # Who was let in before the laptop was killed is still in.
            phone.headers.update(headers)
            phone.cookies.update(cookies)
            if not headers:
                serving.let_in(phone, DEVICE)
                headers = {"X-Longpoint-Device": phone.headers["X-Longpoint-Device"]}
                cookies.update(phone.cookies)
            threading.Timer(draw.uniform(0.05, 0.6), serving.process.kill).start()
            fresh = share_until_killed(phone, counters)
        acknowledged |= fresh
        assert acknowledged <= kept_counters(folder / "houses.store")
    assert len(acknowledged) >= rounds * AT_ONCE // 4


def test_a_laptop_killed_while_phones_share_has_what_it_acknowledged(tmp_path: Path) -> None:
    killed(tmp_path, 2)


@pytest.mark.long
def test_forty_kills_while_sharing_lose_nothing(tmp_path: Path) -> None:
    killed(tmp_path, 40)

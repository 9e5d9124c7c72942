"""A crew shares with the laptop: how long a share takes, what memory it costs, whether all arrives.

`python -m tests.bench.run_crew` starts a server process with a store of SQLite, lets phones in and
lets each write its operations, one a share, as fast as it gets answers. With `--in-seconds 120`
they pause between shares, so that the work takes about so long. At the end every phone asks until
nothing is missing, and the houses of all are compared.
"""

import argparse
import asyncio
import json
import multiprocessing
import os
import socket
import statistics
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

import httpx
import uvicorn
from starlette.types import ASGIApp, Receive, Scope, Send

from longpoint.journal import Entry, Key, key_of, seen
from longpoint.phone.fold import fold
from longpoint.serve.crew import Crew, Doors, Guard, Keeper, Member, Members, crew_app
from longpoint.store.sqlite_store import open_store, open_to_read


@dataclass(frozen=True, kw_only=True)
class Load:
    """How much is shared.

    Attributes:
        phones: How many share at once.
        operations: What each writes.
        houses: Among how many they are spread.
        pause_s: Between two shares of a phone; 0: none. [s]
    """

    phones: int
    operations: int
    houses: int
    pause_s: float


@dataclass
class Phone:
    """A phone with its secrets and its journal, which shares from an address of its own."""

    number: int
    house: str
    cookie: str
    page: str
    journal: dict[Key, Entry] = field(default_factory=dict)
    took_s: list[float] = field(default_factory=list)
    counters: dict[str, list[int]] = field(default_factory=dict)
    here: dict[str, dict[str, object]] = field(default_factory=dict)

    @property
    def device(self) -> str:
        return f"phone-{self.number}"

    def write(self, counter: int) -> Entry:
        head = {"device": self.device, "counter": counter, "at": "", "house": self.house}
        if counter == 1:
            return {**head, "what": "house-made", "name": "Wren", "units": "mm", "dialect": "uk"}
        if counter == 2:
            said = {"opening": f"W{self.number}", "room": "Hall", "kind": "window"}
            return {**head, "what": "opening-added", "trim": "all-round", **said}
        where = {"opening": f"W{self.number}", "line": "top", "unit": "mm"}
        how = {"value_text": str(1000 + counter), "again": False, "over": []}
        return {**head, "what": "reading", **where, **how}

    async def share(self, client: httpx.AsyncClient, entries: Sequence[Entry]) -> bool:
        """Share; returns whether there is more to be had."""
        self.keep(entries)
        body = json.dumps({"seen": self.here, "entries": entries}).encode()
        start = time.perf_counter()
        answer = await client.post(f"/crew/houses/{self.house}/share", content=body)
        self.took_s.append(time.perf_counter() - start)
        answer.raise_for_status()
        found = answer.json()
        self.keep(found["entries"])
        return bool(found["more"])

    def keep(self, entries: Sequence[Entry]) -> None:
        """Write entries into the journal."""
        for entry in entries:
            self.journal[key_of(entry)] = entry
            self.counters.setdefault(entry["device"], []).append(entry["counter"])
        for device in {entry["device"] for entry in entries}:
            up_to = seen(Key(device, n) for n in self.counters[device])[device]
            self.here[device] = {"counter": up_to.counter, "sum": up_to.sum}


class Timed:
    """How long the server takes for each request, by its own clock.

    Args:
        most: Requests that are noted.
    """

    def __init__(self, most: int) -> None:
        self._took_s = multiprocessing.RawArray("d", most)
        self._count = multiprocessing.RawValue("i", 0)

    def around(self, app: ASGIApp) -> ASGIApp:
        """Return an application that notes how long it takes."""

        async def timed(scope: Scope, receive: Receive, send: Send) -> None:
            start = time.perf_counter()
            await app(scope, receive, send)
            if self._count.value < len(self._took_s):
                self._took_s[self._count.value] = time.perf_counter() - start
                self._count.value += 1

        return timed

    def sorted_s(self) -> list[float]:
        """Return what was noted, the shortest first. [s]"""
        return sorted(self._took_s[: self._count.value])


def serve(
    listening: socket.socket, folder: Path, phones: int, timed: Timed, told: Connection
) -> None:
    """Be the server: let phones in, tell their secrets, serve until the process is ended."""
    members: list[Member] = []

    def save(now: Sequence[Member]) -> None:
        members[:] = now

    host = f"127.0.0.1:{listening.getsockname()[1]}"
    kept = Members(lambda: tuple(members), save, time.time)
    keeper = Keeper(lambda: open_store(folder / "houses.store", "laptop"))
    doors = Doors(time.monotonic)
    crew = Crew(keeper, doors, kept, lambda *_, **__: None, is_secure=False)
    app = crew_app(
        crew,
        folder,
        lambda app: Guard(app, hosts=frozenset({host}), is_secure=False, clock=time.monotonic),
    )
    told.send([kept.let_in(f"phone-{n}", f"Phone {n}")[:2] for n in range(1, phones + 1)])
    app = timed.around(app)
    config = uvicorn.Config(app, log_level="error", lifespan="off", ws="none", access_log=False)
    uvicorn.Server(config).run(sockets=[listening])
    keeper.close()


def memory_mb(process: int) -> float:
    """Return what a process holds in memory. [MB]"""
    status = Path(f"/proc/{process}/status").read_text(encoding="ascii")
    (line,) = (line for line in status.splitlines() if line.startswith("VmRSS"))
    return int(line.split()[1]) / 1000


async def work(
    load: Load, port: int, secrets: Sequence[tuple[str, str]], server: int, timed: Timed
) -> None:
    """Let all phones share, and say how it went."""
    phones = [
        Phone(n, f"house-{n % load.houses}", *secret) for n, secret in enumerate(secrets, start=1)
    ]
    url = f"http://127.0.0.1:{port}"
    memory = [memory_mb(server)]
    start = time.perf_counter()

    def client_of(phone: Phone) -> httpx.AsyncClient:
        headers = {
            "Origin": url,
            "Content-Type": "application/json",
            "X-Longpoint-Device": phone.page,
        }
        # Each from an address of its own, as phones have: the rate is reckoned by address.
        transport = httpx.AsyncHTTPTransport(local_address=f"127.0.1.{phone.number}")
        return httpx.AsyncClient(
            base_url=url,
            transport=transport,
            cookies={"longpoint": phone.cookie},
            headers=headers,
            timeout=60,
        )

    async def day(phone: Phone) -> None:
        async with client_of(phone) as client:
            await asyncio.sleep(load.pause_s * phone.number / load.phones)
            for counter in range(1, load.operations + 1):
                await phone.share(client, [phone.write(counter)])
                await asyncio.sleep(load.pause_s)

    async def watch() -> None:
        while True:
            await asyncio.sleep(1)
            memory.append(memory_mb(server))

    watching = asyncio.create_task(watch())
    await asyncio.gather(*map(day, phones))
    took_s = time.perf_counter() - start
    watching.cancel()
    all_s = sorted(s for phone in phones for s in phone.took_s)
    by_server_s = timed.sorted_s()
    for phone in phones:
        async with client_of(phone) as client:
            while await phone.share(client, []):
                pass
    report(load, phones, (all_s, by_server_s), took_s, memory)


def report(
    load: Load,
    phones: Sequence[Phone],
    by_phones_and_server_s: tuple[Sequence[float], Sequence[float]],
    took_s: float,
    memory: list[float],
) -> None:
    """Say how it went; figures as they were measured."""
    third = len(memory) // 3
    middle = statistics.mean(memory[third : 2 * third + 1])
    print(  # noqa: T201
        f"{load.phones} phones, {load.operations} operations each, {load.houses} house(s), "
        f"pause {load.pause_s:.2f} s: {load.phones * load.operations} shares in {took_s:.1f} s; "
        f"memory of the server {memory[0]:.0f} MB at first, {middle:.0f} MB in the middle, "
        f"{memory[-1]:.0f} MB at the end; load {os.getloadavg()[0]:.1f}"
    )
    for whose, all_s in zip(("phones", "server"), by_phones_and_server_s, strict=True):
        print(  # noqa: T201
            f"by the {whose}: median {statistics.median(all_s) * 1e3:.0f} ms, 95 % under "
            f"{all_s[int(len(all_s) * 0.95)] * 1e3:.0f} ms, longest {all_s[-1] * 1e3:.0f} ms"
        )
    for house in sorted({phone.house for phone in phones}):
        crew = [phone for phone in phones if phone.house == house]
        written = {Key(p.device, n) for p in crew for n in range(1, load.operations + 1)}
        lost = [len(written - phone.journal.keys()) for phone in crew]
        folded = [fold(phone.journal.values()) for phone in crew[:2]]
        same = all(each == folded[0] for each in folded)
        print(f"{house}: lost {sum(lost)}, one house on the phones: {same}")  # noqa: T201
        assert not sum(lost)
        assert same


def compare_store(folder: Path, load: Load) -> None:
    """Look whether the store is sound and holds every operation.

    Raises:
        AssertionError: It isn't, or doesn't.
    """
    store = open_to_read(folder / "houses.store")
    held = sum(len(store.entries(house)) for house in store.houses())
    assert store.verify() == ()
    store.close()
    print(f"the store is sound and holds {held} entries")  # noqa: T201
    assert held == load.phones * load.operations


def main() -> None:
    """Run once."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--phones", type=int, default=50)
    asked.add_argument("--operations", type=int, default=200)
    asked.add_argument("--houses", type=int, default=1)
    asked.add_argument("--in-seconds", type=float, default=0.0, help="0: without a pause")
    said: Any = asked.parse_args()
    pause_s = said.in_seconds / said.operations
    load = Load(phones=said.phones, operations=said.operations, houses=said.houses, pause_s=pause_s)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "index.html").write_text("<!doctype html>", encoding="utf-8")
        # Named as TCP, so that asyncio lets each answer go at once.
        listening = socket.socket(proto=socket.IPPROTO_TCP)
        listening.bind(("127.0.0.1", 0))
        listening.listen(200)
        here, there = multiprocessing.Pipe()
        timed = Timed(load.phones * load.operations)
        server = multiprocessing.get_context("fork").Process(
            target=serve, args=(listening, folder, load.phones, timed, there)
        )
        server.start()
        try:
            port = listening.getsockname()[1]
            asyncio.run(work(load, port, here.recv(), server.pid or 0, timed))
        finally:
            server.terminate()
            server.join()
        compare_store(folder, load)


if __name__ == "__main__":
    main()

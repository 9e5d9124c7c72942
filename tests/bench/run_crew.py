"""A crew shares with the laptop: how long a share takes, what memory it costs, whether all arrives.

`python -m tests.bench.run_crew` starts a server process with a store of SQLite, members and log in
files, lets phones in and lets each write its operations, one a share, as fast as it gets answers.
With `--in-seconds 120` they pause between shares, so that the work takes about so long; with
`--tls` they share over https. At the end every phone asks until nothing is missing, and the houses
of all are compared.
"""

import argparse
import asyncio
import multiprocessing
import os
import resource
import ssl
import statistics
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from functools import partial
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from starlette.types import ASGIApp, Receive, Scope, Send

from longpoint.cli.crew_folder import AuditLog, CrewFolder, LoadedMembers, save_members
from longpoint.journal import Key
from longpoint.phone.fold import fold
from longpoint.serve.authority import tls_files
from longpoint.serve.crew import Crew, Doors, Guard, Keeper, Members, crew_app
from longpoint.serve.crew.running import listening, running
from longpoint.store.sqlite_store import open_store, open_to_read
from tests.bench.crew_phones import Laptop, Phone

HOST = "127.0.0.1"


@dataclass(frozen=True, kw_only=True)
class Load:
    """How much is shared.

    Attributes:
        phones: How many share at once.
        operations: What each writes.
        houses: Among how many they are spread.
        pause_s: Between two shares of a phone; 0: none. [s]
        is_secure: Whether over https.
        watch_s: How often memory is looked at. [s]
        log: Where each look is written down as well; None: nowhere.
    """

    phones: int
    operations: int
    houses: int
    pause_s: float
    is_secure: bool
    watch_s: float
    log: Path | None


@dataclass
class Watched:
    """What is seen of the server's process while phones share.

    Attributes:
        memory_mb: Each look. [MB]
        server_s: Its processor time for all shares. [s]
        phones_s: That of the phones' process. [s]
        took_s: By the clock. [s]
    """

    memory_mb: list[float] = field(default_factory=list)
    server_s: float = 0.0
    phones_s: float = 0.0
    took_s: float = 0.0


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


def serve(folder: Path, load: Load, timed: Timed, told: Connection) -> None:
    """Be the server as `longpoint serve` is: tell port and secrets, serve until told to end."""
    crew_folder = CrewFolder(folder / "houses.store.crew")
    members = Members(LoadedMembers(crew_folder), partial(save_members, crew_folder), time.time)
    keeper = Keeper(lambda: open_store(folder / "houses.store", "laptop"))
    secrets = [members.let_in(f"phone-{n}", f"Phone {n}")[:2] for n in range(1, load.phones + 1)]
    tls = tls_files(crew_folder.path, [HOST], datetime.now(UTC)) if load.is_secure else None
    audit = AuditLog(crew_folder)
    crew = Crew(
        keeper,
        Doors(time.monotonic),
        members,
        audit,
        is_secure=load.is_secure,
        clock=time.monotonic,
    )
    with listening(HOST, 0) as door:
        port = door.getsockname()[1]
        hosts = frozenset({f"{HOST}:{port}"})
        guarded = partial(Guard, hosts=hosts, is_secure=load.is_secure, clock=time.monotonic)
        app = timed.around(crew_app(crew, folder, guarded))
        with running(app, [door], tls):
            told.send((port, secrets, str(tls.authority) if tls else None))
            told.recv()
    keeper.close()


def memory_mb(process: int) -> float:
    """Return what a process holds in memory. [MB]"""
    status = Path(f"/proc/{process}/status").read_text(encoding="ascii")
    (line,) = (line for line in status.splitlines() if line.startswith("VmRSS"))
    return int(line.split()[1]) / 1000


def processor_s(process: int) -> float:
    """Return the processor time that a process has taken. [s]"""
    told = Path(f"/proc/{process}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return (int(told[11]) + int(told[12])) / os.sysconf("SC_CLK_TCK")


async def work(load: Load, phones: Sequence[Phone], server: int) -> Watched:
    """Let all phones share, then ask until nothing is missing."""
    seen = Watched(memory_mb=[memory_mb(server)])
    start, server_s = time.perf_counter(), processor_s(server)

    async def day(phone: Phone) -> None:
        await asyncio.sleep(load.pause_s * phone.number / load.phones)
        for counter in range(1, load.operations + 1):
            due_s = time.perf_counter() + load.pause_s
            await phone.share([phone.write(counter)])
            await asyncio.sleep(max(0.0, due_s - time.perf_counter()))

    async def watch() -> None:
        while True:
            await asyncio.sleep(load.watch_s)
            seen.memory_mb.append(memory_mb(server))
            if load.log is not None:
                with load.log.open("a", encoding="utf-8") as log:
                    log.write(f"{time.perf_counter() - start:.0f} s {seen.memory_mb[-1]:.2f} MB\n")

    watching = asyncio.create_task(watch())
    await asyncio.gather(*map(day, phones))
    seen.took_s = time.perf_counter() - start
    seen.server_s = processor_s(server) - server_s
    used = resource.getrusage(resource.RUSAGE_SELF)
    seen.phones_s = used.ru_utime + used.ru_stime
    watching.cancel()
    for phone in phones:
        while await phone.share([]):
            pass
        await phone.hang_up()
    return seen


def report(load: Load, phones: Sequence[Phone], by_server_s: list[float], seen: Watched) -> None:
    """Say how it went; figures as they were measured."""
    shares = load.phones * load.operations
    third = len(seen.memory_mb) // 3
    middle = statistics.mean(seen.memory_mb[third : 2 * third + 1])
    print(  # noqa: T201
        f"{load.phones} phones, {load.operations} operations each, {load.houses} house(s), "
        f"pause {load.pause_s:.2f} s, {'https' if load.is_secure else 'http'}: {shares} shares in "
        f"{seen.took_s:.1f} s; memory of the server {seen.memory_mb[0]:.1f} MB at first, "
        f"{middle:.1f} MB in the middle, {seen.memory_mb[-1]:.1f} MB at the end; load "
        f"{os.getloadavg()[0]:.1f}"
    )
    print(  # noqa: T201
        f"processor time a share: server {seen.server_s / shares * 1e3:.2f} ms, "
        f"phones {seen.phones_s / shares * 1e3:.2f} ms"
    )
    print(f"{sum(p.turned_away for p in phones)} asked too soon and asked again")  # noqa: T201
    by_phones_s = sorted(s for phone in phones for s in phone.took_s)
    for whose, all_s in (("phones", by_phones_s), ("server", by_server_s)):
        print(  # noqa: T201
            f"by the {whose}: median {statistics.median(all_s) * 1e3:.1f} ms, 95 % under "
            f"{all_s[int(len(all_s) * 0.95)] * 1e3:.0f} ms, longest {all_s[-1] * 1e3:.0f} ms"
        )


def compare_phones(load: Load, phones: Sequence[Phone]) -> None:
    """Look whether each phone has every operation of its house, and folds it to the same one."""
    lost, crews = 0, sorted({phone.house for phone in phones})
    for house in crews:
        crew = [phone for phone in phones if phone.house == house]
        written = {Key(p.device, n) for p in crew for n in range(1, load.operations + 1)}
        lost += sum(len(written - phone.journal.keys()) for phone in crew)
        folded = [fold(phone.journal.values()) for phone in crew[:2]]
        assert all(each == folded[0] for each in folded)
    print(f"{lost} lost on the phones; {len(crews)} house(s) alike on two phones")  # noqa: T201
    assert not lost


def compare_store(folder: Path, load: Load) -> None:
    """Look whether the store is sound and holds every operation."""
    store = open_to_read(folder / "houses.store")
    held = sum(len(store.entries(house)) for house in store.houses())
    assert store.verify() == ()
    store.close()
    print(f"the store is sound and holds {held} entries")  # noqa: T201
    assert held == load.phones * load.operations


def run(load: Load, folder: Path) -> None:
    """Run once."""
    (folder / "index.html").write_text("<!doctype html>", encoding="utf-8")
    here, there = multiprocessing.Pipe()
    timed = Timed(load.phones * load.operations)
    server = multiprocessing.get_context("fork").Process(
        target=serve, args=(folder, load, timed, there)
    )
    server.start()
    try:
        port, secrets, authority = here.recv()
        trusted = ssl.create_default_context(cafile=authority) if authority else None
        laptop = Laptop(port=port, trusted=trusted)
        phones = [
            Phone(n, f"house-{n % load.houses}", secret[0], secret[1], laptop)
            for n, secret in enumerate(secrets, start=1)
        ]
        seen = asyncio.run(work(load, phones, server.pid or 0))
        report(load, phones, timed.sorted_s(), seen)
        compare_phones(load, phones)
    finally:
        here.send("enough")
        server.join(30)
        server.terminate()
    compare_store(folder, load)


def main() -> None:
    """Run what was asked for."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--phones", type=int, default=50)
    asked.add_argument("--operations", type=int, default=200)
    asked.add_argument("--houses", type=int, default=1)
    asked.add_argument("--in-seconds", type=float, default=0.0, help="0: without a pause")
    asked.add_argument("--tls", action="store_true", help="over https")
    asked.add_argument("--watch-seconds", type=float, default=1.0, help="between looks at memory")
    asked.add_argument("--log", type=Path, default=None, help="file for each look at memory")
    said: Any = asked.parse_args()
    load = Load(
        phones=said.phones,
        operations=said.operations,
        houses=said.houses,
        pause_s=said.in_seconds / said.operations,
        is_secure=said.tls,
        watch_s=said.watch_seconds,
        log=said.log,
    )
    with tempfile.TemporaryDirectory() as name:
        run(load, Path(name))


if __name__ == "__main__":
    main()

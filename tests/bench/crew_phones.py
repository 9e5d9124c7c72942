"""Phones of a crew as a load test plays them: they write, share, and keep what they get.

Fifty are played by one process beside the server's, so that what they cost themselves is kept
small: HTTP is spoken by hand, and nothing is worked out over a whole journal at a share.
"""

import asyncio
import json
import ssl
import time
from collections.abc import Sequence
from dataclasses import dataclass, field

from longpoint.journal import Counters, Entry, Key, key_of

PATIENCE_S = 60.0
OK, TOO_SOON = 200, 429


@dataclass(frozen=True, kw_only=True)
class Laptop:
    """Where the phones ask.

    Attributes:
        port: On loopback.
        trusted: What they trust; None: plain http.
    """

    port: int
    trusted: ssl.SSLContext | None

    @property
    def address(self) -> str:
        """Scheme, name and port."""
        return f"http{'s' if self.trusted else ''}://127.0.0.1:{self.port}"

    @property
    def cookie(self) -> str:
        """Name of the cookie."""
        return "__Host-longpoint" if self.trusted else "longpoint"


@dataclass
class Phone:
    """A phone with its secrets and its journal, which shares from an address of its own."""

    number: int
    house: str
    cookie: str
    page: str
    laptop: Laptop
    journal: dict[Key, Entry] = field(default_factory=dict)
    took_s: list[float] = field(default_factory=list)
    turned_away: int = 0
    counters: dict[str, Counters] = field(default_factory=dict)
    here: dict[str, dict[str, object]] = field(default_factory=dict)
    line: tuple[asyncio.StreamReader, asyncio.StreamWriter] | None = None

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

    async def share(self, entries: Sequence[Entry]) -> bool:
        """Share; returns whether there is more to be had."""
        self.keep(entries)
        body = json.dumps({"seen": self.here, "entries": entries}).encode()
        found = json.loads(await self._answered(body))
        self.keep(found["entries"])
        return bool(found["more"])

    def keep(self, entries: Sequence[Entry]) -> None:
        """Write entries into the journal."""
        for entry in entries:
            self.journal[key_of(entry)] = entry
            self.counters.setdefault(entry["device"], Counters()).add(entry["counter"])
        for device in {entry["device"] for entry in entries}:
            up_to = self.counters[device].up_to()
            self.here[device] = {"counter": up_to.counter, "sum": up_to.sum}

    async def hang_up(self) -> None:
        """Close the connection."""
        if self.line is not None:
            self.line[1].close()
            self.line = None

    async def _answered(self, body: bytes) -> bytes:
        """Ask until it is not too soon, as the app does; timed is what was answered."""
        while True:
            start = time.perf_counter()
            status, answer = await asyncio.wait_for(self._asked(body), PATIENCE_S)
            if status != TOO_SOON:
                assert status == OK, (status, answer)
                self.took_s.append(time.perf_counter() - start)
                return answer
            self.turned_away += 1
            await asyncio.sleep(1.0)

    async def _asked(self, body: bytes) -> tuple[int, bytes]:
        head = (
            f"POST /crew/houses/{self.house}/share HTTP/1.1\r\nHost: 127.0.0.1:{self.laptop.port}"
            f"\r\nOrigin: {self.laptop.address}\r\nContent-Type: application/json\r\n"
            f"Cookie: {self.laptop.cookie}={self.cookie}\r\nX-Longpoint-Device: {self.page}\r\n"
            f"Content-Length: {len(body)}\r\n\r\n"
        )
        if self.line is None or self.line[0].at_eof():
            # Each from an address of its own, as phones have: the rate is reckoned by address.
            own = (f"127.0.1.{self.number}", 0)
            self.line = await asyncio.open_connection(
                "127.0.0.1", self.laptop.port, ssl=self.laptop.trusted, local_addr=own
            )
        reader, writer = self.line
        writer.write(head.encode() + body)
        told = (await reader.readuntil(b"\r\n\r\n")).lower()
        length = int(told.partition(b"content-length: ")[2].partition(b"\r\n")[0])
        return int(told.split()[1]), await reader.readexactly(length)

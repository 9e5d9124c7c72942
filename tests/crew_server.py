"""The crew's server as tests use it: a clock that is set, counted secrets, a real store."""

import asyncio
import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path
from typing import Any

import httpx
from starlette.types import ASGIApp

from longpoint.serve.crew import Crew, Doors, Guard, Keeper, Member, Members, crew_app
from longpoint.store.sqlite_store import open_store

HOST = "laptop.local:8621"
ORIGIN = f"https://{HOST}"


@dataclass
class Laptop:
    """A laptop that serves its crew, with the time and the draws in a test's hand."""

    store: Path
    app_folder: Path
    now_s: float = 1_000_000.0
    members: list[Member] = field(default_factory=list)
    said: list[dict[str, Any]] = field(default_factory=list)
    is_secure: bool = True

    def __post_init__(self) -> None:
        numbers = count(1)
        self.doors = Doors(self.clock, lambda: f"secret-{next(numbers)}", lambda: "4711")
        self.kept = Members(self.load, self.save, self.clock)
        self.keeper = Keeper(lambda: open_store(self.store, "laptop"))
        crew = Crew(
            self.keeper,
            self.doors,
            self.kept,
            self.audit,
            is_secure=self.is_secure,
            clock=self.clock,
        )
        self.app = crew_app(crew, self.app_folder, self.guarded)

    def guarded(self, app: ASGIApp) -> Guard:
        return Guard(
            app, hosts=frozenset({HOST}), is_secure=self.is_secure, clock=lambda: self.now_s
        )

    def clock(self) -> float:
        return self.now_s

    def load(self) -> Sequence[Member]:
        return tuple(self.members)

    def save(self, members: Sequence[Member]) -> None:
        self.members = list(members)

    def audit(self, what: str, **facts: Any) -> None:  # noqa: ANN401
        self.said.append({"what": what, **facts})


@dataclass
class Phone:
    """A phone's page, as a browser sends what it asks."""

    laptop: Laptop
    device: str
    headers: dict[str, str] = field(default_factory=dict)
    cookies: dict[str, str] = field(default_factory=dict)

    def post(
        self, path: str, body: object, headers: Mapping[str, str] | None = None
    ) -> httpx.Response:
        # A browser writes half a sign as an escape, so that goes over the line as well.
        sent = {"Content-Type": "application/json", **(headers or {})}
        return self.ask("POST", path, content=json.dumps(body), headers=sent)

    def get(self, path: str, **more: Any) -> httpx.Response:  # noqa: ANN401
        return self.ask("GET", path, **more)

    def ask(
        self,
        method: str,
        path: str,
        headers: Mapping[str, str] | None = None,
        **more: Any,  # noqa: ANN401
    ) -> httpx.Response:
        own = {"Origin": ORIGIN, "Sec-Fetch-Site": "same-origin", **self.headers, **(headers or {})}
        sent = {name: value for name, value in own.items() if value}

        async def asked() -> httpx.Response:
            transport = httpx.ASGITransport(app=self.laptop.app)
            async with httpx.AsyncClient(
                transport=transport, base_url=ORIGIN, cookies=self.cookies
            ) as client:
                return await client.request(method, path, headers=sent, **more)

        answer = asyncio.run(asked())
        self.cookies |= dict(answer.cookies)
        return answer

    def come_in(self, name: str = "Kim's phone") -> None:
        """Be shown the code, knock, be let in."""
        token = self.laptop.doors.new_token()
        ticket = self.post(
            "/crew/knock", {"token": token, "name": name, "device": self.device}
        ).json()["waiting"]
        (knock,) = self.laptop.doors.waiting()
        self.laptop.doors.answer(knock, let_in=True)
        answer = self.post("/crew/let-in", {"waiting": ticket})
        self.headers["X-Longpoint-Device"] = answer.json()["secret"]

    def share(
        self,
        house: str,
        entries: Sequence[Mapping[str, Any]],
        seen: Mapping[str, Any] | None = None,
    ) -> httpx.Response:
        return self.post(f"/crew/houses/{house}/share", {"entries": entries, "seen": seen or {}})


@contextmanager
def crew_laptop(folder: Path, **more: Any) -> Iterator[Laptop]:  # noqa: ANN401
    """Yield a laptop that serves its crew from a folder."""
    app = folder / "app"
    app.mkdir()
    (app / "index.html").write_text("<!doctype html><title>app</title>", encoding="utf-8")
    (app / "core.wasm").write_bytes(b"\0asm")
    laptop = Laptop(folder / "houses.store", app, **more)
    try:
        yield laptop
    finally:
        laptop.keeper.close()


def entry(device: str, counter: int, house: str = "h", **said: object) -> dict[str, Any]:
    """Return an entry of a journal."""
    head = {"device": device, "counter": counter, "at": "", "house": house}
    return {"what": "house-named", "name": "Wren", **head, **said}


Made = Callable[[str], Phone]

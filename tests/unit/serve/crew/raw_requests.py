"""Requests to the crew's server just as they are written, as no browser would send them."""

import asyncio
from typing import Any, Final

from tests.crew_server import HOST, ORIGIN, Laptop

Told = tuple[int, dict[str, str], bytes]
JSON: Final = {"Content-Type": "application/json"}
SHARE: Final = "/crew/houses/h/share"


def sent(
    laptop: Laptop,
    path: str,
    *,
    method: str = "GET",
    headers: dict[str, str] | None = None,
    parts: tuple[bytes, ...] = (b"",),
) -> tuple[Told, int]:
    """Send a path just as it stands, as no browser would; returns how many parts were read, too."""
    own = {"Host": HOST, "Origin": ORIGIN, **(headers or {})}
    scope = {
        "type": "http",
        "asgi": {"version": "3.0"},
        "http_version": "1.1",
        "method": method,
        "scheme": "https",
        "path": path,
        "raw_path": path.encode("utf-8", "surrogatepass"),
        "query_string": b"",
        "root_path": "",
        "headers": [(k.lower().encode(), v.encode()) for k, v in own.items()],
        "client": ("192.0.2.7", 40_000),
        "server": ("192.0.2.1", 8621),
    }
    told: list[Any] = []
    read = 0

    async def receive() -> dict[str, Any]:
        nonlocal read
        if read >= len(parts):
            await asyncio.Event().wait()
        read += 1
        return {"type": "http.request", "body": parts[read - 1], "more_body": read < len(parts)}

    async def send(message: Any) -> None:  # noqa: ANN401
        told.append(message)

    async def answered() -> None:
        await asyncio.wait_for(laptop.app(scope, receive, send), 5)

    asyncio.run(answered())
    found = {k.decode().lower(): v.decode() for k, v in told[0]["headers"]}
    body = b"".join(each.get("body", b"") for each in told[1:])
    return (told[0]["status"], found, body), read

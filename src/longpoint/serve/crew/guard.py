"""In front of every request: who is asked, from where, how often, how much; and headers behind it.

References:
    Fetch Metadata Request Headers (W3C working draft), from memory: `Sec-Fetch-Site` is sent by the
    browser itself and can't be set by a page.
"""

import asyncio
from collections.abc import Callable
from typing import Final

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from longpoint.serve.crew.limits import ADDRESS_RATE, DOOR_RATE, Buckets
from longpoint.serve.crew.refusals import ANSWER_HEADERS, Refused, slow_down

PREFIX: Final = "/crew/"
DOOR: Final = frozenset({"/crew/knock", "/crew/let-in"})
LARGEST_BODY: Final = 1_000_000
"""Bytes of a request. Our choice: 500 entries take a fifth of it."""
LONGEST_LENGTH: Final = 20
"""Figures in the length of a request: what has more is no length, and slow to read as a number."""
BODY_S: Final = 10.0
"""How long a request may take to arrive."""
PAGE_POLICY: Final = (
    "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; "
    "img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; object-src 'none'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""Of the page: its own files only, WebAssembly among them; drawings carry styles of their own."""


class Guard:
    """Answers for itself what is to go no further.

    Args:
        app: What comes behind.
        hosts: Names and ports by which this server is called; any other is a stranger's name.
        is_secure: Whether it speaks https.
        clock: Seconds, never going back.
        seen: Called with every request: the server stops when nobody asks any more.
    """

    def __init__(
        self,
        app: ASGIApp,
        *,
        hosts: frozenset[str],
        is_secure: bool,
        clock: Callable[[], float],
        seen: Callable[[], None] = lambda: None,
    ) -> None:
        self._app, self._hosts, self._seen = app, hosts, seen
        self._scheme = "https" if is_secure else "http"
        self._by_address = Buckets(ADDRESS_RATE, clock)
        self._at_the_door = Buckets(DOOR_RATE, clock)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer it."""
        if scope["type"] == "websocket":
            # None is offered; closed before it is accepted, it is answered with 403.
            await send({"type": "websocket.close", "code": 1008})
            return
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        is_crew = scope["path"].startswith(PREFIX)
        host = Headers(scope=scope).get("host", "")
        dressed = self._dressed(send, host.partition(":")[0], is_crew=is_crew)
        try:
            self._look(scope, Headers(scope=scope), is_crew=is_crew)
            body = await _whole_body(receive, Headers(scope=scope))
        except Refused as refused:
            await refused.response()(scope, receive, dressed)
            return
        self._seen()
        await self._app(scope, _given(body), dressed)

    def _look(self, scope: Scope, headers: Headers, *, is_crew: bool) -> None:
        address = (scope.get("client") or ("", 0))[0]
        slow_down(self._by_address.wait_s(address))
        host = headers.get("host", "")
        if host not in self._hosts:
            raise Refused(
                421,
                "This machine was asked by another name than its own.",
                "A page elsewhere could have given it that name.",
                "Open the address that the laptop shows.",
            )
        if not is_crew:
            return
        if scope["path"] in DOOR:
            slow_down(self._at_the_door.wait_s(address))
        origin = headers.get("origin")
        is_own = origin is None or origin == f"{self._scheme}://{host}"
        site = headers.get("sec-fetch-site", "same-origin")
        if not is_own or site not in ("same-origin", "none"):
            raise _forbidden("It comes from another page than this server's own.")
        if scope["method"] == "POST":
            if origin is None and "sec-fetch-site" not in headers:
                raise _forbidden("It doesn't say which page it comes from.")
            if headers.get("content-type", "").partition(";")[0].strip() != "application/json":
                raise Refused(
                    415,
                    "Something else than JSON was sent.",
                    "Nothing else is taken here: no archive, no XML, no form.",
                    "Share with the app that this server gives.",
                )

    def _dressed(self, send: Send, name: str, *, is_crew: bool) -> Send:
        # A browser binds a name to https on every port: other programs' pages are at this one too.
        is_bound = self._scheme == "https" and name != "localhost"

        async def dressed(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in ANSWER_HEADERS.items():
                    headers.setdefault(name, value)
                if not is_crew:
                    headers["Content-Security-Policy"] = PAGE_POLICY
                    headers["Cache-Control"] = "no-cache"
                if is_bound:
                    headers["Strict-Transport-Security"] = "max-age=31536000"
            await send(message)

        return dressed


def _forbidden(wrong: str) -> Refused:
    return Refused(
        403,
        "Something was asked of the crew's laptop.",
        wrong,
        "Open the address that the laptop shows, and ask from there.",
    )


async def _whole_body(receive: Receive, headers: Headers) -> bytes:
    """Return what was sent, once it is here; too much or too slow is refused."""
    length = headers.get("content-length", "0")
    is_number = length.isascii() and length.isdigit() and len(length) <= LONGEST_LENGTH
    if not is_number or int(length) > LARGEST_BODY:
        raise _too_large()
    try:
        return await asyncio.wait_for(_read(receive), BODY_S)
    except TimeoutError:
        raise Refused(
            408,
            "Something is being sent to the crew's laptop.",
            f"It isn't here after {BODY_S:g} seconds.",
            "Go nearer to the laptop; the app sends it again.",
        ) from None


async def _read(receive: Receive) -> bytes:
    parts, size = [], 0
    while True:
        message = await receive()
        if message["type"] == "http.disconnect":
            return b""
        parts.append(message.get("body", b""))
        size += len(parts[-1])
        if size > LARGEST_BODY:
            raise _too_large()
        if not message.get("more_body", False):
            return b"".join(parts)


def _too_large() -> Refused:
    return Refused(
        413,
        "Something large was sent to the crew's laptop.",
        f"More than {LARGEST_BODY:,} bytes at once are not taken.",
        "Share in smaller parts, as the app does by itself.",
    )


def _given(body: bytes) -> Receive:
    told = False

    async def receive() -> Message:
        nonlocal told
        if told:
            # Whoever waits for the end of the answer waits for the connection's.
            await asyncio.Event().wait()
        told = True
        return {"type": "http.request", "body": body, "more_body": False}

    return receive

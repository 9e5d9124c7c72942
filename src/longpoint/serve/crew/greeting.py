"""The TLS greeting of each connection: within its time, and only so many unfinished ones at once.

Before its greeting is finished, nothing behind knows of a connection: neither its address's rate
nor the number of connections holds it. Whoever connects and says nothing, or one sign at a time,
would hold it as long as he likes, and as many as the laptop has room for.
"""

import asyncio
import ssl
from collections.abc import Coroutine
from dataclasses import dataclass
from typing import Any, Final

from uvicorn.config import Config
from uvicorn.server import ServerState

from longpoint.serve.authority import TlsFiles
from longpoint.serve.crew.patience import PatientProtocol


@dataclass(frozen=True, slots=True, kw_only=True)
class GreetingLimits:
    """How much patience there is with greetings.

    Attributes:
        longest_s: How long one may take, and a farewell. > 0. [s]
        of_address: How many of one address may be unfinished. > 0.
        of_all: How many of all addresses may be. > 0.
    """

    longest_s: float
    of_address: int
    of_all: int


GREETING: Final = GreetingLimits(longest_s=10.0, of_address=10, of_all=100)
"""A phone's greeting is over in a few tenths of a second, and a browser has six connections to one
place. Our choice."""


class Greetings:
    """Greetings that aren't finished.

    Where there are too many, the oldest is broken off for the newest: an honest one is over soon,
    so those that have waited longest are none, and whoever comes always gets a turn.
    """

    def __init__(self, limits: GreetingLimits = GREETING) -> None:
        self.limits = limits
        self._unfinished: dict[asyncio.Task[None], str] = {}

    def begin(self, address: str, greeting: Coroutine[Any, Any, None]) -> "asyncio.Task[None]":
        """Begin one; it is forgotten when it is over, and cancelled when it is broken off."""
        of_address = [task for task, whose in self._unfinished.items() if whose == address]
        if len(of_address) >= self.limits.of_address:
            self._break_off(of_address[0])
        elif len(self._unfinished) >= self.limits.of_all:
            self._break_off(next(iter(self._unfinished)))
        task = asyncio.get_running_loop().create_task(greeting)
        self._unfinished[task] = address
        task.add_done_callback(lambda done: self._unfinished.pop(done, None))
        return task

    def _break_off(self, task: "asyncio.Task[None]") -> None:
        del self._unfinished[task]
        task.cancel()


class GreetedProtocol(asyncio.Protocol):
    """Greets, then hands the connection on to HTTP; both are made by `greeted_by`."""

    tls: ssl.SSLContext
    greetings: Greetings

    def __init__(
        self,
        config: Config,
        server_state: ServerState,
        app_state: dict[str, Any],
        _loop: asyncio.AbstractEventLoop | None = None,
    ) -> None:
        self._http = PatientProtocol(config, server_state, app_state, _loop)
        self._early: list[bytes] = []

    def connection_made(self, transport: Any) -> None:  # noqa: ANN401
        """Begin the greeting; until it is, nothing is read."""
        transport.pause_reading()
        address = (transport.get_extra_info("peername") or ("",))[0]
        task = self.greetings.begin(address, self._greet(transport))
        # Also where it was broken off before its first step: then nobody else hangs up.
        task.add_done_callback(lambda done: transport.abort() if done.cancelled() else None)

    def data_received(self, data: bytes) -> None:
        """Keep what came along with the end of the greeting."""
        self._early.append(data)

    async def _greet(self, plain: asyncio.Transport) -> None:
        try:
            secure = await asyncio.get_running_loop().start_tls(
                plain,
                self,
                self.tls,
                server_side=True,
                ssl_handshake_timeout=self.greetings.limits.longest_s,
                ssl_shutdown_timeout=self.greetings.limits.longest_s,
            )
        except OSError:
            # Too slow, gone, or no TLS that is spoken here: it has been hung up on.
            return
        if secure is None or secure.is_closing():
            return
        secure.set_protocol(self._http)
        self._http.connection_made(secure)
        for data in self._early:
            self._http.data_received(data)


def greeted_by(files: TlsFiles, greetings: Greetings) -> type[GreetedProtocol]:
    """Return the protocol of a server that greets with a certificate.

    Args:
        files: Certificate and key.
        greetings: Holds the unfinished ones.
    """
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    context.load_cert_chain(files.certificate, files.key)

    class Greeted(GreetedProtocol):
        tls = context

    Greeted.greetings = greetings
    return Greeted

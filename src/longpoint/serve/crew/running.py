"""The crew's server while it runs: on its own thread, until it is told to stop or nobody asks."""

import contextlib
import ipaddress
import socket
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

import uvicorn
from starlette.types import ASGIApp

from longpoint.errors import ExchangeError
from longpoint.serve.authority import TlsFiles
from longpoint.serve.certificates import may_vouch_for
from longpoint.serve.crew.greeting import GREETING, GreetingLimits, Greetings, greeted_by
from longpoint.serve.crew.patience import PatientProtocol

LOOPBACK: Final = "127.0.0.1"
MOST_AT_ONCE: Final = 200
"""Connections; more are told to come back."""
START_S: Final = 20.0


@dataclass(slots=True)
class LastAsked:
    """When somebody last asked for something. [s]"""

    at_s: float

    def now(self) -> None:
        """Somebody asks now."""
        self.at_s = time.monotonic()

    def idle_s(self) -> float:
        """Return for how long nobody has asked. [s]"""
        return time.monotonic() - self.at_s


def private_addresses() -> tuple[str, ...]:
    """Return the addresses by which phones on the same network call this machine.

    Addresses that the authority can't vouch for are left out, those of the internet first of all.
    """
    found: dict[str, None] = {}
    # Nothing is sent: it asks which way a packet would go. 192.0.2.1 is for documents, RFC 5737.
    with contextlib.suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        probe.connect(("192.0.2.1", 9))
        found[probe.getsockname()[0]] = None
    with contextlib.suppress(OSError):
        for family, *_, address in socket.getaddrinfo(socket.gethostname(), None):
            if family is socket.AF_INET:
                found[str(address[0])] = None
    return tuple(a for a in found if _is_private(a))


def _is_private(address: str) -> bool:
    return may_vouch_for(address) and not ipaddress.ip_address(address).is_loopback


def listening(host: str, port: int) -> socket.socket:
    """Return a socket that listens.

    Args:
        host: One address of this machine.
        port: 0: any that is free.

    Raises:
        ExchangeError: It can't be had.
    """
    # Named as TCP: only then asyncio sends at once what is short. Else each answer waits some 40 ms
    # until the phone acknowledges the part before.
    made = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    try:
        made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        made.bind((host, port))
    except OSError as error:
        made.close()
        raise ExchangeError(
            f"The crew is to be served at {host}, port {port}.",
            f"That can't be had: {error.strerror or error}.",
            "Name another port with --port, or end what uses it.",
        ) from error
    return made


@contextlib.contextmanager
def running(
    app: ASGIApp,
    sockets: list[socket.socket],
    tls: TlsFiles | None,
    greeting: GreetingLimits = GREETING,
) -> Iterator[None]:
    """Serve an application on a thread of its own while the context is open.

    Args:
        app: The application.
        sockets: Where it listens.
        tls: Certificate and key; None: plain http, for loopback.
        greeting: How much patience there is with greetings of TLS.

    Raises:
        ExchangeError: It doesn't start.
    """
    server = uvicorn.Server(
        uvicorn.Config(
            app,
            log_level="critical",
            access_log=False,
            server_header=False,
            date_header=False,
            proxy_headers=False,
            ws="none",
            lifespan="off",
            limit_concurrency=MOST_AT_ONCE,
            timeout_keep_alive=15,
            timeout_graceful_shutdown=5,
            h11_max_incomplete_event_size=16_384,
            http=greeted_by(tls, Greetings(greeting)) if tls else PatientProtocol,
        )
    )
    thread = threading.Thread(target=server.run, args=(sockets,), daemon=True)
    thread.start()
    try:
        _wait_until(lambda: server.started or not thread.is_alive(), START_S)
        if not server.started:
            raise ExchangeError(
                "The crew's server was to start.",
                "It didn't.",
                "Try again; if it stays so, put the folder with its certificates aside.",
            )
        yield
    finally:
        server.should_exit = True
        thread.join()


def _wait_until(is_so: Callable[[], bool], most_s: float) -> None:
    until = time.monotonic() + most_s
    while not is_so() and time.monotonic() < until:
        time.sleep(0.02)

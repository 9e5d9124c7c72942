"""HTTP as uvicorn speaks it with h11, but with no patience for headers that never end.

One address doesn't get all the connections that there are, either.

Bodies have a limit of their own (`guard`); before a request's headers are whole nobody behind sees
anything of it, so whoever sends them a sign at a time would hold a connection for ever.
"""

import asyncio
from typing import Any, Final

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

HEAD_S: Final = 10.0
"""How long headers may take, from the connection or from their first sign. Our choice."""
MOST_OF_ADDRESS: Final = 50
"""Connections of one address: a browser has six to one place, and phones may share an address. Our
choice."""


class PatientProtocol(H11Protocol):
    """Hangs up on a connection whose request doesn't begin in time."""

    _hang_up: asyncio.TimerHandle | None = None

    def connection_made(self, transport: Any) -> None:  # noqa: ANN401
        """Begin to wait with the connection: one that says nothing at all is no request either."""
        super().connection_made(transport)
        if self._of_same_address() > MOST_OF_ADDRESS:
            transport.abort()
            return
        self._wait()

    def data_received(self, data: bytes) -> None:
        """Wait on while headers are coming; stop once they are whole."""
        super().data_received(data)
        if self.conn.their_state is h11.IDLE:
            self._wait()
        else:
            self._stop()

    def connection_lost(self, exc: Exception | None) -> None:
        """Wait for nothing any more."""
        self._stop()
        super().connection_lost(exc)

    def on_response_complete(self) -> None:
        """Until the next request begins it is uvicorn's own patience that counts."""
        self._stop()
        super().on_response_complete()

    def _of_same_address(self) -> int:
        address = self.client[0] if self.client else ""
        clients = (getattr(each, "client", None) for each in self.connections)
        return sum(client is not None and client[0] == address for client in clients)

    def _wait(self) -> None:
        # What comes meanwhile gives no more time.
        if self._hang_up is None:
            self._hang_up = self.loop.call_later(HEAD_S, self._too_slow)

    def _stop(self) -> None:
        if self._hang_up is not None:
            self._hang_up.cancel()
            self._hang_up = None

    def _too_slow(self) -> None:
        self._hang_up = None
        self.transport.close()

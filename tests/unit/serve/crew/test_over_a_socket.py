"""A real server on loopback, and somebody who doesn't send as a browser does."""

import asyncio
import socket
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
import uvicorn

from longpoint.serve.crew import guard, running
from tests.crew_server import HOST, crew_laptop

HEAD = (
    f"POST /crew/knock HTTP/1.1\r\nHost: {HOST}\r\nOrigin: http://{HOST}\r\n"
    "Content-Type: application/json\r\n"
)
ASK = f"GET /crew/openapi.json HTTP/1.1\r\nHost: {HOST}\r\nConnection: close\r\n\r\n"


@pytest.fixture
def port(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    """Yield the port of a server that waits a fifth of a second for a body."""
    monkeypatch.setattr(guard, "BODY_S", 0.2)
    listening = running.listening("127.0.0.1", 0)
    listening.listen()
    with crew_laptop(tmp_path, is_secure=False) as laptop:
        config = uvicorn.Config(laptop.app, log_config=None, lifespan="off", ws="none")
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
        thread.start()
        try:
            yield listening.getsockname()[1]
        finally:
            server.should_exit = True
            thread.join()
            listening.close()


def answer(port: int, *said: bytes) -> bytes:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as phone:
        for each in said:
            phone.sendall(each)
        return phone.recv(100_000)


def test_a_body_that_never_comes_is_given_up_and_others_are_served_meanwhile(port: int) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as slow:
        slow.sendall(f"{HEAD}Content-Length: 100\r\n\r\n{{".encode())
        assert answer(port, ASK.encode()).startswith(b"HTTP/1.1 200")
        assert slow.recv(100_000).startswith(b"HTTP/1.1 408")


def test_an_answer_is_sent_at_once() -> None:
    async def no_delay() -> int:
        options: list[int] = []

        async def came(_: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
            made = writer.get_extra_info("socket")
            options.append(made.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY))
            writer.close()

        with running.listening("127.0.0.1", 0) as listening:
            async with await asyncio.start_server(came, sock=listening) as server:
                address = server.sockets[0].getsockname()
                reader, writer = await asyncio.open_connection(*address)
                await reader.read()
                writer.close()
        return options[0]

    assert asyncio.run(no_delay()) != 0


def test_headers_without_end_are_refused(port: int) -> None:
    long = b"X-Long: " + b"x" * 200_000 + b"\r\n\r\n"
    assert answer(port, HEAD.encode(), long).startswith(b"HTTP/1.1 400")
    assert answer(port, ASK.encode()).startswith(b"HTTP/1.1 200")


@pytest.mark.parametrize(
    "lengths",
    [
        "Content-Length: 2\r\nContent-Length: 3\r\n",
        "Content-Length: 2\r\nTransfer-Encoding: chunked\r\n",
        "Content-Length: 99999999999999999999999999\r\n",
    ],
)
def test_two_lengths_smuggle_nothing(port: int, lengths: str) -> None:
    hidden = ASK.replace("openapi.json", "hidden")
    found = answer(port, f"{HEAD}{lengths}\r\n0\r\n\r\n{hidden}".encode())
    assert found.split(b" ")[1] in {b"400", b"413", b"422"}
    assert found.count(b"HTTP/1.1") == 1

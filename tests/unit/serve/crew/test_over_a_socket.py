"""A real server on loopback, and somebody who doesn't send as a browser does."""

import asyncio
import socket
import ssl
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path

import pytest

from longpoint.serve.authority import tls_files
from longpoint.serve.crew import guard, patience, running
from longpoint.serve.crew.greeting import GREETING, GreetingLimits, Greetings
from tests.crew_server import HOST, crew_laptop

HEAD = (
    f"POST /crew/knock HTTP/1.1\r\nHost: {HOST}\r\nOrigin: http://{HOST}\r\n"
    "Content-Type: application/json\r\n"
)
ASK = f"GET /crew/openapi.json HTTP/1.1\r\nHost: {HOST}\r\nConnection: close\r\n\r\n"


def hello(version: int) -> bytes:
    """Return a client's first words that ask for one version of TLS; RFC 5246, from memory."""
    suites = bytes.fromhex("c009c02b")  # elliptic curves with AES, older and newer
    more = bytes.fromhex("000a000400020017000d000400020403")  # curve P-256, signed by SHA-256
    body = version.to_bytes(2, "big") + bytes(32) + b"\0" + len(suites).to_bytes(2, "big") + suites
    body += b"\1\0" + len(more).to_bytes(2, "big") + more
    words = b"\1" + len(body).to_bytes(3, "big") + body
    return b"\x16\x03\x01" + len(words).to_bytes(2, "big") + words


@pytest.fixture
def port(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    """Yield the port of a server that waits a fifth of a second for headers, and for a body."""
    monkeypatch.setattr(guard, "BODY_S", 0.2)
    monkeypatch.setattr(patience, "HEAD_S", 0.2)
    with (
        crew_laptop(tmp_path, is_secure=False) as laptop,
        running.listening("127.0.0.1", 0) as listening,
        running.running(laptop.app, [listening], None),
    ):
        yield listening.getsockname()[1]


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


def dribbled(phone: socket.socket, head: bytes) -> int:
    """Send a sign each 50 ms until the other side hangs up; return how many were sent."""
    phone.settimeout(0.05)
    for count, sign in enumerate(head):
        try:
            phone.sendall(bytes([sign]))
            if not phone.recv(1000):
                return count
        except TimeoutError:
            continue
        except ConnectionError:
            return count
    raise AssertionError("it never hung up")


def test_headers_that_come_a_sign_at_a_time_are_cut_off_and_others_are_served(port: int) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as slow:
        assert dribbled(slow, b"GET / HTTP/1.1\r\nX-Long: " + b"x" * 100) < 20
    with socket.create_connection(("127.0.0.1", port), timeout=5) as slow:
        kept = ASK.replace("Connection: close", "Accept: */*").encode()
        slow.sendall(kept)
        assert slow.recv(100_000).startswith(b"HTTP/1.1 200")
        while True:
            slow.settimeout(0.1)
            try:
                slow.recv(100_000)
            except TimeoutError:
                break
        assert dribbled(slow, b"GET / HTTP/1.1\r\nX-Long: " + b"x" * 100) < 20
    assert answer(port, ASK.encode()).startswith(b"HTTP/1.1 200")


def test_whoever_says_nothing_is_hung_up_on(port: int) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as silent:
        assert silent.recv(1000) == b""


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


@contextmanager
def greeting_port(folder: Path, limits: GreetingLimits) -> Iterator[tuple[int, ssl.SSLContext]]:
    """Yield the port of a server that speaks TLS, and what a phone that trusts it goes by."""
    tls = tls_files(folder / "keys", ["127.0.0.1"], datetime.now(UTC))
    with (
        crew_laptop(folder, is_secure=False) as laptop,
        running.listening("127.0.0.1", 0) as listening,
        running.running(laptop.app, [listening], tls, limits),
    ):
        trusting = ssl.create_default_context(cafile=str(tls.authority))
        yield listening.getsockname()[1], trusting


def is_served(port: int, trusting: ssl.SSLContext) -> bool:
    with (
        socket.create_connection(("127.0.0.1", port), timeout=5) as plain,
        trusting.wrap_socket(plain, server_hostname="127.0.0.1") as phone,
    ):
        phone.sendall(ASK.encode())
        return phone.recv(100_000).startswith(b"HTTP/1.1 200")


def is_hung_up_on(phone: socket.socket, wait_s: float) -> bool:
    phone.settimeout(wait_s)
    try:
        return phone.recv(1000) == b""
    except TimeoutError:
        return False
    except ConnectionError:
        return True


def test_a_greeting_that_is_not_finished_is_broken_off_and_others_are_served(
    tmp_path: Path,
) -> None:
    limits = GreetingLimits(longest_s=0.3, of_address=10, of_all=100)
    with greeting_port(tmp_path, limits) as (port, trusting):
        address = ("127.0.0.1", port)
        with socket.create_connection(address) as silent, socket.create_connection(address) as half:
            half.sendall(hello(0x0303)[:20])
            assert is_served(port, trusting)
            assert is_hung_up_on(silent, 5)
            assert is_hung_up_on(half, 5)
        with socket.create_connection(address, timeout=5) as slow:
            assert dribbled(slow, hello(0x0303)) < 20
        assert is_served(port, trusting)


def test_one_address_has_few_unfinished_greetings_and_the_newest_gets_its_turn(
    tmp_path: Path,
) -> None:
    limits = GreetingLimits(longest_s=60, of_address=3, of_all=100)
    with greeting_port(tmp_path, limits) as (port, trusting), ExitStack() as opened:
        begun = [
            opened.enter_context(socket.create_connection(("127.0.0.1", port))) for _ in range(8)
        ]
        assert [is_hung_up_on(each, 5) for each in begun[:5]] == [True] * 5
        assert not any(is_hung_up_on(each, 0.1) for each in begun[5:])
        assert is_served(port, trusting)


def test_of_all_unfinished_greetings_the_oldest_gives_way() -> None:
    async def begun() -> list[str]:
        over: list[str] = []

        async def greeting(name: str) -> None:
            try:
                await asyncio.sleep(60)
            finally:
                over.append(name)

        greetings = Greetings(GreetingLimits(longest_s=60, of_address=2, of_all=3))
        for name in ("a1", "a2", "b1", "c1", "c2", "c3"):
            greetings.begin(name[0], greeting(name))
            await asyncio.sleep(0)
        await asyncio.sleep(0)
        return [*over]

    # c3 takes the place of its own address's first, not of b1.
    assert asyncio.run(begun()) == ["a1", "a2", "c1"]


def test_a_request_that_comes_with_the_end_of_the_greeting_is_answered(tmp_path: Path) -> None:
    with greeting_port(tmp_path, GREETING) as (port, trusting):
        came, goes = ssl.MemoryBIO(), ssl.MemoryBIO()
        phone = trusting.wrap_bio(came, goes, server_hostname="127.0.0.1")
        with socket.create_connection(("127.0.0.1", port), timeout=5) as plain:
            while True:
                try:
                    phone.do_handshake()
                    break
                except ssl.SSLWantReadError:
                    plain.sendall(goes.read())
                    came.write(plain.recv(100_000))
            # The last words of the greeting are still here: request and all go in one.
            phone.write(ASK.encode())
            plain.sendall(goes.read())
            found = b""
            while not found:
                came.write(plain.recv(100_000))
                with suppress(ssl.SSLWantReadError):
                    found = phone.read(100_000)
            assert found.startswith(b"HTTP/1.1 200")


def test_one_address_does_not_get_all_the_connections(
    port: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "MOST_OF_ADDRESS", 3)
    monkeypatch.setattr(patience, "HEAD_S", 60)
    with ExitStack() as opened:
        held = [
            opened.enter_context(socket.create_connection(("127.0.0.1", port))) for _ in range(5)
        ]
        assert [is_hung_up_on(each, 5 if at > 2 else 0.2) for at, each in enumerate(held)] == [
            *[False] * 3,
            *[True] * 2,
        ]
    assert answer(port, ASK.encode()).startswith(b"HTTP/1.1 200")


def test_no_older_tls_is_spoken(tmp_path: Path) -> None:
    tls = tls_files(tmp_path / "keys", ["127.0.0.1"], datetime.now(UTC))
    trusting = ssl.create_default_context(cafile=str(tls.authority))
    with (
        crew_laptop(tmp_path) as laptop,
        running.listening("127.0.0.1", 0) as listening,
        running.running(laptop.app, [listening], tls),
    ):
        address = listening.getsockname()
        with (
            socket.create_connection(address, timeout=5) as plain,
            trusting.wrap_socket(plain, server_hostname="127.0.0.1") as phone,
        ):
            assert phone.version() == "TLSv1.3"
        for version, is_spoken in ((0x0303, True), (0x0302, False), (0x0301, False)):
            with socket.create_connection(address, timeout=5) as old:
                old.sendall(hello(version))
                # A handshake is answered by one: its record begins with 22.
                assert (old.recv(100)[:1] == b"\x16") is is_spoken, hex(version)
        with socket.create_connection(address, timeout=5) as plain:
            plain.sendall(ASK.encode())
            assert b"200" not in plain.recv(100)

import http.client
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from longpoint.errors import ExchangeError
from longpoint.serve.app_files import app_folder, copy_app
from longpoint.serve.loopback import app_server


@pytest.fixture
def built(tmp_path: Path) -> Path:
    folder = tmp_path / "app"
    (folder / "core").mkdir(parents=True)
    (folder / "index.html").write_text("<title>longpoint</title>", encoding="utf-8")
    (folder / "core/highs.wasm").write_bytes(b"\0asm")
    (tmp_path / "secret.txt").write_text("not the app", encoding="utf-8")
    return folder


@pytest.fixture
def port(built: Path) -> Iterator[int]:
    server = app_server(built, 0)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.01})
    thread.start()
    yield server.server_address[1]
    server.shutdown()
    thread.join()
    server.server_close()


def get(port: int, path: str, host: str = "localhost") -> tuple[int, str, bytes]:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.request("GET", path, headers={"Host": f"{host}:{port}"})
    answer = connection.getresponse()
    found = answer.status, answer.headers.get_content_type(), answer.read()
    connection.close()
    return found


def test_the_page_and_its_parts_come_with_their_kinds(port: int) -> None:
    assert get(port, "/")[:2] == (200, "text/html")
    assert get(port, "/core/highs.wasm") == (200, "application/wasm", b"\0asm")


@pytest.mark.parametrize("path", ["/core/", "/core", "/../secret.txt", "/%2e%2e/secret.txt", "/x"])
def test_nothing_but_files_of_the_app_is_given(port: int, path: str) -> None:
    status, _, body = get(port, path)
    assert status == 404
    assert b"not the app" not in body


def test_who_asks_by_another_name_is_refused(port: int) -> None:
    assert get(port, "/", host="elsewhere.example")[0] == 421


def test_a_port_that_is_taken_is_named(port: int, built: Path) -> None:
    with pytest.raises(ExchangeError) as refused:
        app_server(built, port)
    assert str(port) in refused.value.read


def test_an_app_that_was_not_built_is_said_to_be_missing(tmp_path: Path) -> None:
    with pytest.raises(ExchangeError) as refused:
        app_folder(tmp_path)
    assert "make app" in refused.value.do


def test_the_app_is_copied_whole(built: Path, tmp_path: Path) -> None:
    out = copy_app(tmp_path / "host", built)
    assert (out / "core/highs.wasm").read_bytes() == b"\0asm"
    with pytest.raises(ExchangeError):
        copy_app(built / "index.html", built)

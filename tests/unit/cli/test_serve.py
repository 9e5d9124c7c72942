"""`longpoint serve` and `longpoint crew`: a real process, asked over https as a phone asks."""

import re
import signal
import socket
import ssl
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO

import httpx
import pytest
from click.testing import CliRunner

from longpoint.cli import serve
from longpoint.cli.main import main
from longpoint.errors import ExchangeError
from longpoint.serve import app_files
from longpoint.store.sqlite_store import open_to_read
from tests.crew_server import entry

SERVING = """
import sys
from pathlib import Path
from longpoint.serve.crew import running
from longpoint.cli import serve
running.private_addresses = lambda: ("127.0.0.1",)
built = Path(sys.argv.pop(1))
serve.app_folder = lambda: built
from longpoint.cli.main import main
main()
"""


@dataclass
class Serving:
    """A laptop that serves, and what stands on its screen."""

    process: "subprocess.Popen[str]"
    folder: Path
    address: str = ""
    token: str = ""

    def read(self, wanted: str) -> str:
        said = []
        assert self.process.stdout is not None
        for line in self.process.stdout:
            said.append(line)
            if re.search(wanted, line):
                return line
        raise AssertionError("".join(said))

    def type(self, line: str) -> None:
        keys: IO[str] | None = self.process.stdin
        assert keys is not None
        keys.write(line + "\n")
        keys.flush()

    def client(self) -> httpx.Client:
        trusted = ssl.create_default_context(
            cafile=str(self.folder / "houses.store.crew/authority.crt")
        )
        own = {"Origin": self.address, "Sec-Fetch-Site": "same-origin"}
        return httpx.Client(base_url=self.address, verify=trusted, headers=own)

    def run(self, *words: str) -> str:
        store = str(self.folder / "houses.store")
        return CliRunner().invoke(main, ["crew", *words, "--store", store]).output


@pytest.fixture
def serving(tmp_path: Path) -> Iterator[Serving]:
    app = tmp_path / "app"
    app.mkdir()
    (app / "index.html").write_text("<!doctype html>", encoding="utf-8")
    (tmp_path / "serving.py").write_text(SERVING, encoding="utf-8")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    words = ["serve", "--lan", "--port", str(port), "--store", str(tmp_path / "houses.store")]
    process = subprocess.Popen(
        [sys.executable, "-u", str(tmp_path / "serving.py"), str(app), *words],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    found = Serving(process, tmp_path)
    try:
        link = found.read("#crew=").split()[-1]
        found.address, _, found.token = link.partition("/#crew=")
        yield found
    finally:
        process.send_signal(signal.SIGTERM)
        process.communicate(timeout=20)


def test_a_phone_comes_in_shares_and_is_put_out(serving: Serving) -> None:
    with serving.client() as phone:
        body = {"token": serving.token, "name": "Kim's phone", "device": "kimsphone"}
        knocked = phone.post("/crew/knock", json=body).json()
        assert knocked["check"] in serving.read("Let it in")
        serving.type("y")
        serving.read("is let in")
        let_in = phone.post("/crew/let-in", json={"waiting": knocked["waiting"]})
        phone.headers["X-Longpoint-Device"] = let_in.json()["secret"]
        given = {"seen": {}, "entries": [entry("kimsphone", 1, "wren")]}
        assert phone.post("/crew/houses/wren/share", json=given).status_code == 200
        assert "Kim's phone: until" in serving.run("list")
        assert "is out" in serving.run("out", "Kim's phone")
        assert phone.post("/crew/houses/wren/share", json=given).status_code == 401
    assert "shared: device kimsphone, took 1" in serving.run("log")
    store = open_to_read(serving.folder / "houses.store")
    assert store.houses() == ("wren",)
    store.close()


def test_whoever_is_not_let_in_stays_out(serving: Serving) -> None:
    with serving.client() as phone:
        assert phone.get("/").status_code == 200
        body = {"token": serving.token, "name": "\u202emalory", "device": "m"}
        assert phone.post("/crew/knock", json=body).status_code == 422
        body["name"] = "Mal"
        knocked = phone.post("/crew/knock", json=body).json()
        serving.read("Let it in")
        serving.type("")
        serving.read("Not let in")
        assert phone.post("/crew/let-in", json={"waiting": knocked["waiting"]}).status_code == 403
    assert "No phone was let in yet" in serving.run("list")


def test_what_is_missing_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(ExchangeError, match="nosuchpackage"):
        serve._refuse_without_extra(["json", "nosuchpackage"])
    assert app_files.BUILT.name == "app"


def test_a_name_that_nobody_has_is_refused(tmp_path: Path) -> None:
    store = str(tmp_path / "houses.store")
    answer = CliRunner().invoke(main, ["crew", "out", "Kim", "--store", store])
    assert answer.exit_code == 2
    assert "No phone is called so" in answer.stderr

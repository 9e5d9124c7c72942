"""`longpoint serve --lan` as a process of its own, on loopback, and a phone that trusts it."""

import re
import signal
import socket
import ssl
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import IO

import httpx
from click.testing import CliRunner

from longpoint.cli.main import main

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
    said: list[str] = field(default_factory=list)

    def read(self, wanted: str) -> str:
        said = self.said
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

    def let_in(self, phone: httpx.Client, device: str) -> None:
        """Let a phone knock, and say yes at the laptop."""
        body = {"token": self.token, "name": "Kim's phone", "device": device}
        knocked = phone.post("/crew/knock", json=body).json()
        assert knocked["check"] in self.read("Let it in")
        self.type("y")
        self.read("is let in")
        let_in = phone.post("/crew/let-in", json={"waiting": knocked["waiting"]})
        phone.headers["X-Longpoint-Device"] = let_in.json()["secret"]


@contextmanager
def serving_process(folder: Path) -> Iterator[Serving]:
    """Yield a laptop that serves a store in a folder; at the end it is told to stop."""
    app = folder / "app"
    app.mkdir(exist_ok=True)
    (app / "index.html").write_text("<!doctype html>", encoding="utf-8")
    (folder / "serving.py").write_text(SERVING, encoding="utf-8")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    words = ["serve", "--lan", "--port", str(port), "--store", str(folder / "houses.store")]
    process = subprocess.Popen(
        [sys.executable, "-u", str(folder / "serving.py"), str(app), *words],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    found = Serving(process, folder)
    try:
        link = found.read("#crew=").split()[-1]
        found.address, _, found.token = link.partition("/#crew=")
        yield found
    finally:
        process.send_signal(signal.SIGTERM)
        process.communicate(timeout=20)

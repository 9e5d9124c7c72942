"""The wheel carries the built app: installed by itself, it serves the page."""

import re
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
OPTIONS = ("--quiet", "--no-deps", "--no-build-isolation", "--disable-pip-version-check")


def free_port() -> str:
    with socket.socket() as asked:
        asked.bind(("127.0.0.1", 0))
        return str(asked.getsockname()[1])


@pytest.mark.long
@pytest.mark.usefixtures("built")
def test_the_page_comes_out_of_the_wheel(tmp_path: Path) -> None:
    wheel = (*OPTIONS, "--wheel-dir", str(tmp_path), str(ROOT))
    subprocess.run([sys.executable, "-m", "pip", "wheel", *wheel], check=True)
    (made,) = tmp_path.glob("*.whl")
    into = ("install", "--quiet", "--no-deps", "--target", str(tmp_path / "site"), str(made))
    subprocess.run([sys.executable, "-m", "pip", *into], check=True)
    start = (
        "import sys; sys.path.insert(0, sys.argv.pop(1));"
        "import longpoint; assert 'site' in longpoint.__file__;"
        "from longpoint.cli.main import main; main()"
    )
    command = [
        sys.executable,
        "-u",
        "-c",
        start,
        str(tmp_path / "site"),
        "app",
        "--port",
        free_port(),
    ]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=tmp_path) as served:
        try:
            assert served.stdout is not None
            line = next(each for each in served.stdout if "http://" in each)
            address = re.search(r"http://[^\s]+", line)
            assert address is not None
            with urllib.request.urlopen(address[0]) as page:
                assert "<title>longpoint</title>" in page.read().decode()
            with urllib.request.urlopen(f"{address[0].rstrip('/.')}/licences.txt") as licences:
                text = licences.read().decode()
            assert all(name in text for name in ("longpoint (MIT)", "segno", "qr ", "pyodide"))
        finally:
            served.terminate()

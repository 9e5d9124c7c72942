"""A worker's process ends at its limits, and never takes the caller along."""

import sys
from pathlib import Path

import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.limited_work import limited

WORKERS = {
    "takes_memory": "def load():\n    return lambda path: len(bytearray(5_000_000_000))\n",
    "takes_time": "def load():\n    def work(path):\n        while True: pass\n    return work\n",
    "breaks": "def load():\n    return lambda path: 1 / 0\n",
    "crashes": "import os, signal\ndef load():\n    return lambda p: os.kill(os.getpid(), 11)\n",
    "talks": "def load():\n    return lambda path: 'x' * 30_000_000\n",
    "lacks": "def load():\n    import no_such_library\n",
}


@pytest.fixture
def worker(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(sys, "path", [str(tmp_path), *sys.path])
    for name, text in WORKERS.items():
        (tmp_path / f"{name}.py").write_text(text, encoding="utf-8")
    (tmp_path / "good.py").write_text("def load():\n    return lambda p: [p[-1]]\n", "utf-8")
    return tmp_path


def test_an_answer_comes_back(worker: Path) -> None:
    assert limited("good", worker / "a.x", "a drawing", "dxf") == ["x"]


@pytest.mark.parametrize("name", [name for name in WORKERS if name != "lacks"])
@pytest.mark.skipif(sys.platform == "win32", reason="the limits are those of POSIX")
def test_what_goes_beyond_is_refused(worker: Path, name: str) -> None:
    with pytest.raises(ExchangeError) as caught:
        limited(name, worker / "a.x", "a drawing", "dxf", most_seconds=1)
    assert caught.value.read == "The file a.x was to be read as a drawing."


def test_a_missing_library_says_how_to_get_it(worker: Path) -> None:
    with pytest.raises(ExchangeError, match=r"pip install 'longpoint\[dxf\]'"):
        limited("lacks", worker / "a.x", "a drawing", "dxf")

"""A PostgreSQL server of the tests' own, where the machine has one to start."""

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

PLACES = "/usr/lib/postgresql/*/bin"
WHO = "postgres"
"""The server refuses to run as root; then this user runs it, whom its package makes."""


@contextmanager
def postgres_server() -> Iterator[str]:
    """Yield the address of a server that nobody else knows; skip where there is none to start."""
    programs = _programs()
    if programs is None:
        pytest.skip("no PostgreSQL server on this machine: apt install postgresql")
    folder = Path(tempfile.mkdtemp(prefix="pg-"))
    try:
        if os.geteuid() == 0:
            shutil.chown(folder, WHO)
        data = folder / "data"
        _run([programs / "initdb", "-D", data, "-U", WHO, "-A", "trust", "--no-sync", "-E", "UTF8"])
        # Only over a socket in a folder of its own: nobody else gets in, no port is taken.
        options = f"-c listen_addresses='' -c unix_socket_directories='{folder}' -c fsync=off"
        log = folder / "log"
        _run([programs / "pg_ctl", "-D", data, "-o", options, "-l", log, "-w", "start"])
        try:
            yield f"host={folder} user={WHO} dbname=postgres"
        finally:
            _run([programs / "pg_ctl", "-D", data, "-m", "immediate", "-w", "stop"])
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _programs() -> Path | None:
    found = shutil.which("initdb")
    folders = [Path(found).resolve().parent] if found else []
    folders += sorted(Path("/").glob(PLACES.lstrip("/")), reverse=True)
    there = [each for each in folders if (each / "pg_ctl").exists()]
    if not there or (os.geteuid() == 0 and not _has_user()):
        return None
    return there[0]


def _has_user() -> bool:
    import pwd

    return any(each.pw_name == WHO for each in pwd.getpwall())


def _run(words: list[object]) -> None:
    subprocess.run(
        [str(word) for word in words],
        check=True,
        user=WHO if os.geteuid() == 0 else None,
        cwd="/",
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )

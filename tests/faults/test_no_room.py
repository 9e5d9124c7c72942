"""No room on the disk, or nothing may be written there: a clear refusal, and nothing is lost."""

import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Final

import pytest

from longpoint.errors import StoreError
from longpoint.store.copies import back_up, restore
from longpoint.store.sqlite_store import SqliteStore, open_store, open_to_read

AT: Final = "2026-03-02T07:15:00Z"
ROOT: Final = Path(__file__).parents[2]


def reading(number: int) -> dict[str, object]:
    return {"what": "reading", "opening": "W1", "line": "top", "value_text": f"{number}"}


def filled(path: Path, count: int = 30) -> SqliteStore:
    store = open_store(path, "laptop")
    for number in range(count):
        store.write("h", AT, [reading(number)])
    return store


def kept(path: Path) -> list[str]:
    store = open_to_read(path)
    try:
        assert store.verify() == ()
        return [each.entry["value_text"] for each in store.entries("h")]
    finally:
        store.close()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "houses.store"


def test_a_full_file_refuses_and_keeps_what_it_had(path: Path) -> None:
    store = filled(path)
    pages = store._connection.execute("PRAGMA page_count").fetchone()[0]
    store._connection.execute(f"PRAGMA max_page_count={pages + 2}")
    refused, written = None, 30
    while refused is None and written < 1000:
        try:
            store.write("h", AT, [reading(written)])
            written += 1
        except StoreError as error:
            refused = error
    assert refused is not None
    assert "no room" in refused.wrong
    assert "What was kept before is kept." in refused.do
    assert written > 30
    store._connection.execute("PRAGMA max_page_count=1000000")
    store.write("h", AT, [reading(written)])
    store.close()
    assert kept(path) == [str(n) for n in range(written + 1)]


CHILD: Final = """
import json, resource, sys
from pathlib import Path
from longpoint.errors import StoreError
from longpoint.store.copies import back_up
from longpoint.store.sqlite_store import open_store
path, act, most = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
store = open_store(path, "laptop")
resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))
done, refused = 0, ""
try:
    for number in range(10_000):
        if act == "write":
            body = {"what": "reading", "opening": "W1", "line": "top"}
            store.write("h", "", [{**body, "value_text": str(30 + number)}])
        else:
            back_up(store, path.with_name(f"{number}.backup"))
        done += 1
except StoreError as error:
    refused = str(error)
print(json.dumps([done, refused]))
"""


@pytest.mark.parametrize("act", ["write", "backup"])
def test_where_the_system_lets_no_file_grow_that_is_said_and_nothing_is_lost(
    path: Path, act: str
) -> None:
    filled(path).close()
    most = path.stat().st_size + (20_000 if act == "write" else -20_000)
    done = subprocess.run(
        [sys.executable, "-c", CHILD, str(path), act, str(most)],
        check=True,
        capture_output=True,
        text=True,
        cwd=ROOT,
    )
    count, refused = json.loads(done.stdout)
    assert "no room" in refused
    assert kept(path) == [str(n) for n in range(30 + (count if act == "write" else 0))]
    assert list(path.parent.glob("*.part")) == []
    assert (count, list(path.parent.glob("*.backup"))) == (count if act == "write" else 0, [])


ANOTHER: Final = 65534
"""User nobody: the one who runs the tests may be one to whom nothing is forbidden."""


@pytest.fixture
def forbidden() -> Iterator[Path]:
    """Yield a store in a folder in which this process may write nothing."""
    above = Path(tempfile.mkdtemp())
    folder = above / "forbidden"
    folder.mkdir()
    filled(folder / "houses.store").close()
    for each in folder.iterdir():
        each.chmod(0o444)
    folder.chmod(0o555)
    above.chmod(0o755)
    is_root = os.geteuid() == 0
    if is_root:
        os.seteuid(ANOTHER)
    try:
        yield folder / "houses.store"
    finally:
        if is_root:
            os.seteuid(0)
        folder.chmod(0o755)
        shutil.rmtree(above)


def test_a_disk_that_may_only_be_read_is_read(forbidden: Path) -> None:
    assert kept(forbidden) == [str(n) for n in range(30)]


def test_a_disk_that_may_only_be_read_refuses_in_plain_words(forbidden: Path) -> None:
    before = forbidden.read_bytes()
    with pytest.raises(StoreError, match="isn't allowed") as refused:
        open_store(forbidden, "laptop")
    assert "--store" in refused.value.do
    assert forbidden.read_bytes() == before


def test_a_new_store_in_a_folder_that_may_only_be_read_is_refused(forbidden: Path) -> None:
    for name in ("new.store", "deeper/new.store"):
        with pytest.raises(StoreError):
            open_store(forbidden.parent / name, "laptop")


def test_a_backup_to_a_folder_that_may_only_be_read_is_refused(forbidden: Path) -> None:
    store = open_to_read(forbidden)
    with pytest.raises(StoreError):
        back_up(store, forbidden.parent / "new.backup")
    with pytest.raises(StoreError):
        restore(forbidden, forbidden.parent / "new.store", "laptop-2")
    store.close()
    assert sorted(each.name for each in forbidden.parent.iterdir()) == [
        "houses.store",
        "houses.store.seal",
    ]

import sqlite3
from pathlib import Path

import pytest

from longpoint.errors import StoreError
from longpoint.store.schema import MIGRATIONS, Migration
from longpoint.store.sqlite_store import SqliteStore, open_store, open_to_read

AT = "2026-03-02T07:15:00Z"
NEXT = Migration(does="a column more", statements=("ALTER TABLE houses ADD COLUMN street TEXT",))
BROKEN = Migration(
    does="half of it",
    statements=("ALTER TABLE houses ADD COLUMN road TEXT", "INSERT INTO nowhere VALUES (1)"),
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "houses.store"


def kept(path: Path, *names: str) -> SqliteStore:
    store = open_store(path, "laptop")
    store.write("h", AT, [{"what": "house-named", "name": name} for name in names])
    return store


def test_every_write_waits_for_the_disk(path: Path) -> None:
    store = open_store(path, "laptop")
    asked = {
        name: store._connection.execute(f"PRAGMA {name}").fetchone()[0]
        for name in ("journal_mode", "synchronous", "foreign_keys", "application_id")
    }
    store.close()
    # synchronous: 2 is FULL, as in the documentation of SQLite's pragmas.
    assert asked == {
        "journal_mode": "wal",
        "synchronous": 2,
        "foreign_keys": 1,
        "application_id": int.from_bytes(b"LPoi", "big"),
    }


def test_every_table_is_strict(path: Path) -> None:
    store = open_store(path, "laptop")
    tables = store._connection.execute("PRAGMA table_list").fetchall()
    store.close()
    strict = {row[1]: row[5] for row in tables if not row[1].startswith("sqlite_")}
    assert strict == {"facts": 1, "houses": 1, "entries": 1, "milestones": 1}


@pytest.mark.parametrize(
    "statement",
    ["UPDATE entries SET house = 'g'", "DELETE FROM entries", "DELETE FROM houses"],
)
def test_nothing_that_was_written_can_be_changed_or_taken_out(path: Path, statement: str) -> None:
    store = kept(path, "Wren")
    with pytest.raises(sqlite3.IntegrityError):
        store._connection.execute(statement)
    store.close()


def test_a_migration_keeps_a_copy_first_and_loses_nothing(path: Path) -> None:
    kept(path, "Wren", "Lark").close()
    store = open_store(path, "laptop", (*MIGRATIONS, NEXT))
    assert len(store.entries("h")) == 2
    assert store.verify() == ()
    store.close()
    copy = open_to_read(path.with_name("houses.store.before-v2"))
    assert len(copy.entries("h")) == 2
    assert copy.verify() == ()
    copy.close()


def test_a_migration_that_fails_leaves_the_store_as_it_was(path: Path) -> None:
    kept(path, "Wren").close()
    with pytest.raises(StoreError):
        open_store(path, "laptop", (*MIGRATIONS, BROKEN))
    store = open_store(path, "laptop")
    assert store._connection.execute("SELECT * FROM houses").description[-1][0] == "place"
    assert store.verify() == ()
    store.close()


def test_a_store_of_a_newer_longpoint_is_left_alone(path: Path) -> None:
    open_store(path, "laptop", (*MIGRATIONS, NEXT)).close()
    before = path.read_bytes()
    with pytest.raises(StoreError, match="newer"):
        open_store(path, "laptop")
    with pytest.raises(StoreError, match="newer"):
        open_to_read(path)
    assert path.read_bytes() == before


def test_a_database_of_something_else_is_left_alone(path: Path) -> None:
    other = sqlite3.connect(path)
    other.execute("CREATE TABLE birds (name TEXT)")
    other.close()
    with pytest.raises(StoreError, match="something else"):
        open_store(path, "laptop")


@pytest.mark.parametrize("data", [b"format = 1\n" * 100, b"SQLite format 3\0" + b"x" * 4080])
def test_a_file_that_is_no_database_is_left_alone(path: Path, data: bytes) -> None:
    path.write_bytes(data)
    with pytest.raises(StoreError):
        open_store(path, "laptop")
    with pytest.raises(StoreError):
        open_to_read(path)
    assert path.read_bytes() == data


def test_a_store_whose_making_was_cut_off_is_made_anew(path: Path) -> None:
    path.touch()
    with pytest.raises(StoreError, match="nothing in it"):
        open_to_read(path)
    store = kept(path, "Wren")
    assert len(store.entries("h")) == 1
    store.close()


def test_one_that_is_not_there_is_said_to_be_missing(path: Path) -> None:
    with pytest.raises(StoreError, match="none yet"):
        open_to_read(path)
    assert not path.exists()


def test_reading_changes_no_byte(path: Path) -> None:
    kept(path, "Wren").close()
    before = path.read_bytes()
    store = open_to_read(path)
    assert store.verify() == ()
    with pytest.raises(StoreError):
        store.write("h", AT, [{"what": "house-named", "name": "Lark"}])
    store.close()
    assert path.read_bytes() == before


def test_another_that_writes_and_does_not_finish_is_told(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("longpoint.store.sqlite_file.WAITS_S", 0.05)
    one, two = kept(path, "Wren"), open_store(path, "laptop")
    one._connection.execute("BEGIN IMMEDIATE")
    with pytest.raises(StoreError, match="Another longpoint"):
        two.write("h", AT, [{"what": "house-named", "name": "Lark"}])
    one._connection.execute("ROLLBACK")
    assert len(two.write("h", AT, [{"what": "house-named", "name": "Lark"}])) == 1
    two.close()
    one.close()

from pathlib import Path

import pytest

from longpoint.errors import StoreError
from longpoint.journal import key_of
from longpoint.store.copies import back_up, restore
from longpoint.store.sqlite_store import SqliteStore, open_store, open_to_read

AT = "2026-03-02T07:15:00Z"


def kept(path: Path, *names: str) -> SqliteStore:
    store = open_store(path, "laptop")
    for name in names:
        store.write("h", AT, [{"what": "house-named", "name": name}])
    return store


def names(path: Path) -> list[str]:
    store = open_to_read(path)
    try:
        assert store.verify() == ()
        return [each.entry["name"] for each in store.entries("h")]
    finally:
        store.close()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "houses.store"


@pytest.fixture
def backup(path: Path, tmp_path: Path) -> Path:
    target = tmp_path / "stick" / "houses.backup"
    store = kept(path, "Wren", "Lark")
    assert back_up(store, target) == 2
    store.write("h", AT, [{"what": "house-named", "name": "Pipit"}])
    store.close()
    return target


def spoil(path: Path, old: bytes, new: bytes) -> None:
    data = path.read_bytes()
    assert data.count(old) == 1
    path.write_bytes(data.replace(old, new))


def test_a_backup_is_one_whole_file_that_was_looked_through(backup: Path) -> None:
    assert sorted(each.name for each in backup.parent.iterdir()) == [
        "houses.backup",
        "houses.backup.seal",
    ]
    assert names(backup) == ["Wren", "Lark"]


def test_an_older_backup_is_never_written_over(backup: Path, path: Path) -> None:
    store = open_store(path, "laptop")
    with pytest.raises(StoreError, match="older backup"):
        back_up(store, backup)
    store.close()
    assert names(backup) == ["Wren", "Lark"]


def test_a_backup_of_a_damaged_store_is_refused_and_not_left_there(
    path: Path, tmp_path: Path
) -> None:
    kept(path, "Wren", "Lark").close()
    spoil(path, b"Lark", b"Dark")
    store = open_store(path, "laptop")
    with pytest.raises(StoreError):
        back_up(store, tmp_path / "new.backup")
    store.close()
    assert not (tmp_path / "new.backup").exists()


def test_a_store_that_is_gone_comes_back_under_another_name(backup: Path, path: Path) -> None:
    path.unlink()
    done = restore(backup, path, "laptop-2")
    assert (done.entries, done.added, done.set_aside) == (2, 2, None)
    store = open_store(path, "laptop-2")
    (written,) = store.write("h", AT, [{"what": "house-named", "name": "Robin"}])
    store.close()
    # The old name had written a third entry: its key must not be given to another.
    assert key_of(written) == ("laptop-2", 3)


def test_a_sound_store_keeps_all_it_has_and_takes_in_what_it_lacks(
    backup: Path, path: Path, tmp_path: Path
) -> None:
    done = restore(backup, path, "laptop-2")
    assert (done.entries, done.added) == (3, 0)
    other = tmp_path / "other.store"
    kept(other).close()
    assert restore(backup, other, "laptop-2").added == 2


def test_a_damaged_store_is_set_aside_and_what_is_sound_in_it_is_kept(
    backup: Path, path: Path
) -> None:
    store = kept(path, "Robin", "Finch")
    store.close()
    spoil(path, b'"name":"Robin"', b'"name":"Rabin"')
    done = restore(backup, path, "laptop-2")
    assert (done.entries, done.added, done.salvaged, done.lost) == (4, 2, 2, 1)
    assert names(path) == ["Wren", "Lark", "Pipit", "Finch"]
    assert done.set_aside is not None
    assert b"Rabin" in done.set_aside.read_bytes()


def test_an_entry_whose_sum_alone_was_damaged_is_kept(backup: Path, path: Path) -> None:
    store = kept(path, "Robin", "Finch")
    total = store._connection.execute("SELECT sum FROM entries WHERE number = 4").fetchone()[0]
    store.close()
    spoil(path, total, bytes(32))
    done = restore(backup, path, "laptop-2")
    assert (done.entries, done.lost) == (5, 0)


def test_a_store_that_is_no_database_any_more_gives_way_to_the_backup(
    backup: Path, path: Path
) -> None:
    path.write_bytes(b"x" * 5000)
    done = restore(backup, path, "laptop-2")
    assert (done.entries, done.salvaged, done.lost) == (2, 0, None)
    assert names(path) == ["Wren", "Lark"]


def test_a_damaged_backup_changes_nothing(backup: Path, path: Path) -> None:
    spoil(backup, b"Lark", b"Dark")
    before = path.read_bytes()
    with pytest.raises(StoreError, match="older backup"):
        restore(backup, path, "laptop-2")
    assert path.read_bytes() == before


def test_a_second_damaged_store_does_not_take_the_place_of_the_first(
    backup: Path, path: Path
) -> None:
    set_aside = []
    for _ in range(2):
        path.write_bytes(b"x" * 5000)
        set_aside.append(restore(backup, path, "laptop-2").set_aside)
    assert [each.name for each in set_aside if each] == [
        "houses.store.damaged-1",
        "houses.store.damaged-2",
    ]

"""A byte that changed by itself, wherever it stands, and a log that was torn."""

import random
import shutil
from pathlib import Path

import pytest

from longpoint.errors import StoreError
from longpoint.store import Milestone, MilestoneKind
from longpoint.store.seal import read_seal, seal_path
from longpoint.store.sqlite_store import SqliteStore, open_store, open_to_read

AT = "2026-03-02T07:15:00Z"
FLIPS = 400


def reading(number: int) -> dict[str, object]:
    return {"what": "reading", "opening": "W1", "line": "top", "value_text": f"{1000 + number}"}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "houses.store"
    store = open_store(path, "laptop")
    for number in range(60):
        store.write(f"house-{number % 3}", AT, [reading(number)])
    kind = MilestoneKind.PLAN
    store.keep(Milestone(house="house-1", kind=kind, at=AT, after=60, code="K", said={}))
    store.close()
    return path


def is_noticed(path: Path) -> bool:
    try:
        store = open_to_read(path)
    except StoreError:
        return True
    try:
        return bool(store.verify())
    finally:
        store.close()


def flipped(path: Path, place: int, bit: int) -> None:
    with path.open("r+b") as file:
        file.seek(place)
        byte = file.read(1)[0]
        file.seek(place)
        file.write(bytes([byte ^ (1 << bit)]))


def missed(path: Path, seed: int, count: int) -> list[int]:
    """Flip one bit after another in a store; return the places where nobody noticed."""
    drawn = random.Random(seed)
    size = path.stat().st_size
    unnoticed = []
    for _ in range(count):
        place, bit = drawn.randrange(size), drawn.randrange(8)
        flipped(path, place, bit)
        if not is_noticed(path):
            unnoticed.append(place)
        flipped(path, place, bit)
    return unnoticed


def test_a_flipped_bit_is_noticed_wherever_it_stands(path: Path) -> None:
    assert not is_noticed(path)
    assert missed(path, seed=1, count=FLIPS) == []
    assert not is_noticed(path)


def test_a_name_of_a_table_that_is_no_text_any_more_is_told(path: Path) -> None:
    flipped(path, path.read_bytes().index(b"triggermilestones_are") + 11, 7)
    with pytest.raises(StoreError, match="damaged"):
        open_to_read(path)


def test_a_row_whose_values_are_of_another_kind_is_noticed(path: Path) -> None:
    seal_path(path).unlink()
    data = path.read_bytes()
    # The lengths and kinds of a row's values stand in front of its first text.
    head = data.index(b"laptop", data.index(b'"value_text":"1005"') - 300) - 12
    for place in range(head, head + 12):
        for bit in range(8):
            flipped(path, place, bit)
            assert is_noticed(path)
            flipped(path, place, bit)


@pytest.mark.long
def test_a_flipped_bit_is_noticed_in_every_byte(path: Path) -> None:
    for place in range(path.stat().st_size):
        flipped(path, place, place % 8)
        assert is_noticed(path), place
        flipped(path, place, place % 8)


def test_without_its_seal_every_sign_of_an_entry_is_still_vouched_for(path: Path) -> None:
    seal_path(path).unlink()
    data = path.read_bytes()
    for number in (0, 17, 59):
        place = data.index(f'"value_text":"{1000 + number}"'.encode())
        for offset in range(20):
            flipped(path, place + offset, 0)
            assert is_noticed(path)
            flipped(path, place + offset, 0)


def test_a_damaged_entry_is_never_read_as_a_length(path: Path) -> None:
    place = path.read_bytes().index(b'"1017"') + 1
    flipped(path, place, 1)
    store = open_to_read(path)
    with pytest.raises(StoreError, match="Cut nothing"):
        store.entries("house-2")
    assert len(store.entries("house-0")) == 20
    store.close()


@pytest.mark.parametrize(
    "statement",
    [
        "DELETE FROM entries WHERE number = 60",
        "DELETE FROM entries WHERE number = 31",
        "DELETE FROM milestones",
        "UPDATE entries SET number = number + 100 WHERE number = 60",
        "UPDATE entries SET house = 'house-0' WHERE number = 60",
        "UPDATE facts SET value = 'phone' WHERE name = 'device'",
        "UPDATE facts SET value = '59' WHERE name = 'entries'",
        "DELETE FROM facts WHERE name = 'sum'",
        "INSERT INTO houses VALUES ('house-9', 4)",
    ],
)
def test_rows_that_somebody_changed_by_hand_are_noticed(path: Path, statement: str) -> None:
    store = open_store(path, "laptop")
    for table in ("entries", "milestones", "houses"):
        store._connection.execute(f"DROP TRIGGER {table}_are_never_changed")
        store._connection.execute(f"DROP TRIGGER {table}_are_never_taken_out")
    store._connection.execute(statement)
    found = store.verify()
    store._connection.close()
    assert {each.code for each in found} == {"store-damaged"}


def crashed(path: Path, more: int) -> SqliteStore:
    """Return a store that is as after a crash: sealed, then written to, its log not yet laid in."""
    store = open_store(path, "laptop")
    store._connection.execute("PRAGMA wal_autocheckpoint=0")
    store.seal()
    for number in range(more):
        store.write("house-0", AT, [reading(100 + number)])
    return store


def copied(path: Path, folder: Path) -> Path:
    folder.mkdir()
    for name in (path.name, f"{path.name}-wal", seal_path(path).name):
        shutil.copyfile(path.with_name(name), folder / name)
    return folder / path.name


def test_a_log_cut_off_anywhere_leaves_whole_entries_from_the_first_on(
    path: Path, tmp_path: Path
) -> None:
    store = crashed(path, 5)
    log = path.with_name(f"{path.name}-wal")
    size = log.stat().st_size
    drawn = random.Random(2)
    counts = set()
    for number in range(12):
        copy = copied(path, tmp_path / f"copy-{number}")
        with copy.with_name(log.name).open("r+b") as file:
            file.truncate(size if number == 0 else drawn.randrange(size))
        torn = open_store(copy, "laptop")
        assert torn.verify() == ()
        found = [each.entry["value_text"] for each in torn.entries("house-0")][20:]
        assert found == [str(1100 + n) for n in range(len(found))]
        counts.add(len(found))
        torn._connection.close()
    store.close()
    assert max(counts) == 5
    assert len(counts) > 2


def test_a_flipped_bit_in_the_log_is_no_other_reading(path: Path, tmp_path: Path) -> None:
    store = crashed(path, 5)
    size = path.with_name(f"{path.name}-wal").stat().st_size
    drawn = random.Random(3)
    for number in range(12):
        copy = copied(path, tmp_path / f"copy-{number}")
        flipped(copy.with_name(f"{copy.name}-wal"), drawn.randrange(size), number % 8)
        torn = open_store(copy, "laptop")
        assert torn.verify() == ()
        found = [each.entry["value_text"] for each in torn.entries("house-0")][20:]
        assert found == [str(1100 + n) for n in range(len(found))]
        torn._connection.close()
    store.close()


def test_what_a_torn_log_swallowed_after_the_seal_is_said(path: Path, tmp_path: Path) -> None:
    store = crashed(path, 3)
    copy = copied(path, tmp_path / "copy")
    store.close()
    shutil.copyfile(seal_path(path), seal_path(copy))
    copy.with_name(f"{copy.name}-wal").unlink()
    (found,) = open_to_read(copy).verify()
    assert "63 entries" in found.read
    assert "60 are there" in found.wrong


def test_a_seal_that_is_older_than_the_store_raises_no_alarm(path: Path) -> None:
    before = read_seal(path)
    store = crashed(path, 2)
    assert store.verify() == ()
    store._connection.close()
    store = open_store(path, "laptop")
    assert store.verify() == ()
    store.close()
    after = read_seal(path)
    assert before is not None
    assert after is not None
    assert after.entries == before.entries + 2

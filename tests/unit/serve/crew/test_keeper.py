"""Shares that arrive together are taken in one write, and each is answered for itself."""

import asyncio
from pathlib import Path

from longpoint.serve.crew.kept import Keeper, Share
from longpoint.store.sqlite_store import SqliteStore, open_store
from tests.crew_server import entry


def test_a_clash_is_told_to_the_one_that_brought_it(tmp_path: Path) -> None:
    keeper = Keeper(lambda: open_store(tmp_path / "houses.store", "laptop"))
    first, copy = entry("p", 1), entry("p", 1, name="Lark")

    async def together() -> list[int]:
        shares = [Share(house="h", seen={}, entries=(each,)) for each in (first, copy)]
        found = await asyncio.gather(*(keeper.share(share) for share in shares))
        return [len(each.clashes) for each in found]

    try:
        assert asyncio.run(together()) == [0, 1]
    finally:
        keeper.close()


def test_many_that_share_at_once_wait_for_the_disk_together(tmp_path: Path) -> None:
    writes = 0

    class Counted(SqliteStore):
        def take(self, entries):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
            nonlocal writes
            writes += 1
            return super().take(entries)

    def opened() -> SqliteStore:
        store = open_store(tmp_path / "houses.store", "laptop")
        store.__class__ = Counted
        return store

    keeper = Keeper(opened)

    async def together() -> int:
        shares = [
            Share(house="h", seen={}, entries=(entry(f"p{phone}", 1),)) for phone in range(50)
        ]
        await asyncio.gather(*(keeper.share(share) for share in shares))
        return sum(up.counter for up in (await keeper.houses())[0][1].values())

    try:
        assert asyncio.run(together()) == 50
    finally:
        keeper.close()
    assert writes < 50

"""What the contract doesn't ask, since only a server has it."""

import psycopg
import pytest

from longpoint.errors import StoreError
from longpoint.store.postgres_store import PostgresStore, open_postgres_store
from tests.store_adapters import PostgresAdapter, postgres_adapter

AT = "2026-03-02T07:15:00Z"


def opened(adapter: object) -> PostgresStore:
    assert isinstance(adapter, PostgresAdapter)
    return open_postgres_store(adapter.address, "laptop")


def test_a_server_that_is_not_there_is_told_in_plain_words() -> None:
    with pytest.raises(StoreError, match="doesn't answer") as refused:
        open_postgres_store("host=/nowhere/at/all dbname=houses connect_timeout=2", "laptop")
    assert "before you write it again" in refused.value.do


@pytest.mark.parametrize(
    "statement",
    ["UPDATE entries SET house = 'h'", "DELETE FROM entries", "TRUNCATE milestones"],
)
def test_nothing_can_be_changed_or_taken_out(server: str, statement: str) -> None:
    name = f"never_{statement.split()[0].lower()}"
    with postgres_adapter(server, name) as adapter:
        store = opened(adapter)
        store.write("h", AT, [{"what": "house-named", "name": "Wren"}])
        assert isinstance(adapter, PostgresAdapter)
        with psycopg.connect(adapter.address) as behind, pytest.raises(psycopg.Error):
            behind.execute(statement)
        assert len(store.entries("h")) == 1
        store.close()


def test_a_server_that_goes_away_is_told_and_what_was_kept_is_there_again(server: str) -> None:
    with postgres_adapter(server, "goes_away") as adapter:
        store = opened(adapter)
        store.write("h", AT, [{"what": "house-named", "name": "Wren"}])
        with psycopg.connect(server, autocommit=True) as behind:
            behind.execute(
                "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = %s",
                ("goes_away",),
            )
        with pytest.raises(StoreError):
            store.write("h", AT, [{"what": "house-named", "name": "Lark"}])
        store.close()
        store = opened(adapter)
        assert [each.entry["name"] for each in store.entries("h")] == ["Wren"]
        assert store.verify() == ()
        store.close()


def test_a_database_of_a_newer_longpoint_is_left_alone(server: str) -> None:
    with postgres_adapter(server, "newer") as adapter:
        opened(adapter).close()
        assert isinstance(adapter, PostgresAdapter)
        with psycopg.connect(adapter.address) as behind:
            behind.execute("UPDATE store_version SET version = version + 1")
        with pytest.raises(StoreError, match="newer"):
            opened(adapter)

"""A store in PostgreSQL, for a firm with several crews: the same tables, the same sums."""

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any, Final

import psycopg

from longpoint.errors import Finding, StoreError
from longpoint.store.schema import APPLICATION_ID
from longpoint.store.sql_store import SqlStore
from longpoint.store.tail import Tail

Connection = psycopg.Connection[tuple[Any, ...]]

VERSION: Final = 1
_NEVER: Final = "entries_milestones_houses_are_only_ever_added"
_TABLES: Final = (
    "CREATE TABLE store_version (application BIGINT NOT NULL, version INTEGER NOT NULL)",
    "CREATE TABLE facts (name TEXT PRIMARY KEY, value TEXT NOT NULL)",
    "CREATE TABLE houses (house TEXT PRIMARY KEY, place INTEGER NOT NULL UNIQUE)",
    "CREATE TABLE entries ("
    " device TEXT NOT NULL,"
    " counter BIGINT NOT NULL CHECK (counter > 0),"
    " number BIGINT NOT NULL UNIQUE CHECK (number > 0),"
    " house TEXT NOT NULL REFERENCES houses (house),"
    " entry TEXT NOT NULL,"
    " sum BYTEA NOT NULL CHECK (length(sum) = 32),"
    " PRIMARY KEY (device, counter))",
    "CREATE INDEX entries_by_house ON entries (house, number)",
    "CREATE TABLE milestones ("
    " number BIGINT PRIMARY KEY CHECK (number > 0),"
    " house TEXT NOT NULL REFERENCES houses (house),"
    " milestone TEXT NOT NULL,"
    " sum BYTEA NOT NULL CHECK (length(sum) = 32))",
    "CREATE INDEX milestones_by_house ON milestones (house, number)",
    f"CREATE FUNCTION {_NEVER}() RETURNS trigger LANGUAGE plpgsql AS"
    " $$ BEGIN RAISE EXCEPTION '% are only ever added', TG_TABLE_NAME; END $$",
    *(
        f"CREATE TRIGGER {table}_are_never_changed BEFORE UPDATE OR DELETE OR TRUNCATE ON {table}"
        f" FOR EACH STATEMENT EXECUTE FUNCTION {_NEVER}()"
        for table in ("houses", "entries", "milestones")
    ),
)


class PostgresLink:
    """A connection to a database, made anew once it is lost; see `link.Link`.

    Args:
        connect: Makes it.

    Raises:
        StoreError: It can't be made.
    """

    def __init__(self, connect: Callable[[], Connection]) -> None:
        self._connect = connect
        self._connection = connect()
        self._name = self._connection.info.dbname

    @property
    def name(self) -> str:
        """Name of the database."""
        return self._name

    @contextmanager
    def transaction(self, *, writes: bool) -> Iterator[None]:
        """Do what is inside as a whole, on the disk at its end, or not at all if it raises."""
        act = "written" if writes else "read"
        if self._connection.closed:
            # What was in the middle when it was lost has been told; the next one goes on.
            self._connection = self._connect()
        with _told(self.name, act), self._connection.transaction():
            if writes:
                # Whoever writes next waits here until this one is done.
                self.rows("LOCK TABLE facts IN EXCLUSIVE MODE")
            else:
                self.rows("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY")
            yield

    def rows(self, statement: str, values: Sequence[object] = ()) -> list[tuple[Any, ...]]:
        """Run a statement inside a transaction, and return what it gives."""
        # No statement of ours has a question mark in a text.
        asked = statement.replace("?", "%s")
        done = self._connection.execute(asked, tuple(values) or None)
        return done.fetchall() if done.description else []

    def inspected(self) -> list[Finding]:
        """Return nothing: PostgreSQL looks through its pages itself, where it has checksums."""
        return []

    def close(self) -> None:
        """Let go of the database."""
        with _told(self.name, "closed"):
            self._connection.close()


class PostgresStore(SqlStore):
    """A store in a database; see `port.HouseStore`.

    Several laptops write to it, each under its own name: what one of them last wrote of a house can
    be told from what another did.

    Args:
        link: To the database.
        device: Name of this laptop.
    """

    def __init__(self, link: PostgresLink, device: str) -> None:
        super().__init__(link)
        self._device = device

    def _writer(self, tail: Tail) -> str:
        return self._device


def open_postgres_store(address: str, device: str) -> PostgresStore:
    """Return the store in a database; its tables are made when they aren't there.

    Args:
        address: As libpq takes it, such as "postgresql://host/houses" or "dbname=houses".
        device: Name under which this laptop writes to it; unique among all devices.

    Raises:
        StoreError: The database can't be used.
    """
    return _opened(address, device, lambda connection: _make_tables(connection, device))


def open_postgres_to_read(address: str, device: str = "") -> PostgresStore:
    """Return the store in a database; it isn't made when it isn't there.

    Args:
        address: As for `open_postgres_store`.
        device: Name under which this laptop writes; empty where it never wrote.

    Raises:
        StoreError: There is none, or the database can't be used.
    """
    return _opened(address, device, _refuse_empty)


def _opened(address: str, device: str, look: Callable[[Connection], None]) -> PostgresStore:
    link = PostgresLink(lambda: _connected(address, look))
    try:
        return PostgresStore(link, device)
    except BaseException:
        link.close()
        raise


def _connected(address: str, look: Callable[[Connection], None]) -> Connection:
    with _told("in PostgreSQL", "opened"):
        connection = psycopg.connect(address, autocommit=True)
    try:
        with _told(connection.info.dbname, "opened"):
            # Each commit on the disk before it comes back, however the server is set.
            connection.execute("SET synchronous_commit = on")
            look(connection)
    except BaseException:
        connection.close()
        raise
    return connection


def _is_store(connection: Connection) -> bool:
    found = connection.execute("SELECT to_regclass('store_version')").fetchone()
    return found is not None and found[0] is not None


def _refuse_empty(connection: Connection) -> None:
    if not _is_store(connection):
        raise StoreError(
            f"The store {connection.info.dbname} was to be read.",
            "There is nothing in it.",
            "Put a house into it with `longpoint houses add`, or name another with --store.",
        )
    _refuse_another(connection)


def _make_tables(connection: Connection, device: str) -> None:
    with connection.transaction():
        connection.execute("SELECT pg_advisory_xact_lock(%s)", (APPLICATION_ID,))
        if _is_store(connection):
            _refuse_another(connection)
            return
        for statement in _TABLES:
            connection.execute(statement)
        connection.execute("INSERT INTO store_version VALUES (%s, %s)", (APPLICATION_ID, VERSION))
        for fact in Tail(device=device).facts().items():
            connection.execute("INSERT INTO facts (name, value) VALUES (%s, %s)", fact)


def _refuse_another(connection: Connection) -> None:
    row = connection.execute("SELECT application, version FROM store_version").fetchone()
    if row != (APPLICATION_ID, VERSION):
        raise StoreError(
            f"The database {connection.info.dbname} was to be a store of houses.",
            "It is of a newer longpoint, or of something else.",
            "Bring longpoint up to date, or name another database; nothing was changed.",
        )


@contextmanager
def _told(name: str, act: str) -> Iterator[None]:
    """Turn what PostgreSQL raises inside into a `StoreError`."""
    try:
        yield
    except psycopg.Error as error:
        raise StoreError(f"The store {name} was to be {act}.", *_words(error)) from None


def _words(error: psycopg.Error) -> tuple[str, str]:
    if isinstance(error, psycopg.errors.DiskFull):
        return (
            "There is no room for it on the server's disk.",
            "Make room there, then do it again. What was kept before is kept.",
        )
    if isinstance(error, psycopg.errors.InsufficientPrivilege):
        return (
            "The server doesn't allow it.",
            "Have whoever looks after the server give you leave. What was kept is kept.",
        )
    if isinstance(error, psycopg.IntegrityError):
        return (
            "What was to be kept doesn't go with what is kept.",
            "Nothing was written. Please report this, with the command.",
        )
    if isinstance(error, psycopg.OperationalError):
        return (
            "The server doesn't answer, or hung up.",
            "Check that it runs and can be reached. Then look whether what was written last is "
            "there, before you write it again.",
        )
    reason = (error.diag.message_primary or str(error)).rstrip(".").lower()
    return f"PostgreSQL refuses: {reason}.", "Nothing was written. Look at the server's log."

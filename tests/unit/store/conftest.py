from collections.abc import Iterator

import pytest

from tests.postgres_server import postgres_server


@pytest.fixture(scope="session")
def server() -> Iterator[str]:
    """Yield the address of a PostgreSQL server; skip where none can be started."""
    with postgres_server() as found:
        yield found

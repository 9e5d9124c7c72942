from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.crew_server import Laptop, Phone, crew_laptop


@pytest.fixture
def laptop(tmp_path: Path) -> Iterator[Laptop]:
    """Yield a laptop that serves its crew."""
    with crew_laptop(tmp_path) as found:
        yield found


@pytest.fixture
def phone(laptop: Laptop) -> Phone:
    """Return a phone that was let in."""
    found = Phone(laptop, "p")
    found.come_in()
    return found

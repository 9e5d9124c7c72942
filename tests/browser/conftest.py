"""What the browser tests need of the machine: Node, Chromium, the built app."""

import os
import shutil
from pathlib import Path
from typing import Any

import pytest
from xdist.scheduler import LoadScopeScheduling

from app.node import with_node

ROOT = Path(__file__).resolve().parents[2]


class ByStart(LoadScopeScheduling):  # type: ignore[misc]
    """Keeps tests of one file together, as they look at one run; every job on the app is its own.

    Files of several tests take longest, and begin first.
    """

    def _split_scope(self, nodeid: str) -> str:
        file, _, _ = nodeid.partition("::")
        return nodeid if file.endswith("test_phone_app.py") else file


def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> ByStart:  # noqa: ANN401
    """Share the tests out to the processes."""
    return ByStart(config, log)


def leave_out(why: str) -> None:
    """Leave a test out and say why; in CI that is a failure."""
    if os.environ.get("CI") == "true":
        pytest.fail(why)
    pytest.skip(f"LEFT OUT: {why}")


@pytest.fixture(scope="session")
def node_env() -> dict[str, str]:
    """Return an environment in which `node` is one that is new enough, with the app's packages."""
    if not (ROOT / "app/node_modules").is_dir():
        leave_out("what the app is built from isn't here: make app")
    return with_node()


@pytest.fixture(scope="session")
def chromium() -> str:
    """Return the path of Chromium."""
    found = os.environ.get("CHROMIUM") or shutil.which("chromium")
    if found is None:
        leave_out("no Chromium here: install the system's package `chromium`")
    return found or ""


@pytest.fixture(scope="session")
def built() -> Path:
    """Return the folder of the built app."""
    folder = ROOT / "src/longpoint/serve/app"
    if not (folder / "index.html").is_file():
        leave_out("the app isn't built: make app")
    return folder

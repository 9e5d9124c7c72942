"""What the browser tests need of the machine: Node, Chromium, the built app."""

import os
import shutil
from pathlib import Path

import pytest

from app.node import with_node

ROOT = Path(__file__).resolve().parents[2]


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

"""What every test may ask for, and how hypothesis draws."""

import contextlib
import importlib
import os
import pkgutil
import sys
from collections.abc import Generator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, settings

pytest_plugins = ["tests.golden_files", "tests.kept_plans"]

TESTS = Path(__file__).resolve().parent
KINDS = frozenset({"unit", "property", "published", "golden", "solids", "browser", "bench"})

# On a busy machine drawing may be slow without anything being wrong.
settings.register_profile(
    "ci",
    derandomize=True,
    database=None,
    deadline=None,
    max_examples=30,
    suppress_health_check=[HealthCheck.too_slow],
)
# For a second run on the phone's Python, which is slower. What fails there for want of a package
# isn't made smaller: that takes longer than all examples.
settings.register_profile(
    "few",
    settings.get_profile("ci"),
    max_examples=3,
    phases=[Phase.explicit, Phase.generate],
)
settings.register_profile(
    "long",
    deadline=None,
    max_examples=2000,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Give each test the marker of its folder, before `-m` chooses among them."""
    for item in items:
        if item.path.is_relative_to(TESTS):
            kind = item.path.relative_to(TESTS).parts[0]
            if kind in KINDS:
                item.add_marker(kind)


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Count the lines of the program that run when it is imported, and none of the collecting.

    Tests are read and made with nothing traced, which otherwise takes twice as long.
    """
    if sys.gettrace() is not None:
        program = importlib.import_module("longpoint")
        for module in pkgutil.walk_packages(program.__path__, "longpoint."):
            importlib.import_module(module.name)
    with _untraced():
        return (yield)


@pytest.hookimpl(wrapper=True, trylast=True)
def pytest_runtest_call(item: pytest.Item) -> Generator[None, object, object]:
    """Trace nothing where no lines are counted.

    In a process of pytest-xdist, pytest-cov has begun to count twice, and stops once: what the
    marker is to spare, five times as long as the test itself, is spent all the same.
    """
    if item.get_closest_marker("no_cover") is None:
        return (yield)
    with _untraced():
        return (yield)


@contextlib.contextmanager
def _untraced() -> Generator[None]:
    tracer = sys.gettrace()
    sys.settrace(None)
    try:
        yield
    finally:
        sys.settrace(tracer)


@pytest.fixture(scope="session")
def shared() -> Path:
    """Return the folder of reference values beside the checkout; skip where there is none."""
    folder = TESTS.parent.parent / "shared"
    if not folder.is_dir():
        pytest.skip("no folder of reference values beside the checkout")
    return folder

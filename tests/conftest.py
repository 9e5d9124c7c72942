"""What every test may ask for, and how hypothesis draws."""

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

pytest_plugins = ["tests.golden_files", "tests.kept_plans"]

TESTS = Path(__file__).resolve().parent
KINDS = frozenset({"unit", "property", "published", "golden", "solids", "browser", "bench"})

# On a busy machine drawing may be slow without anything being wrong.
settings.register_profile(
    "ci",
    derandomize=True,
    database=None,
    deadline=None,
    max_examples=50,
    suppress_health_check=[HealthCheck.too_slow],
)
# For a second run on the phone's Python, which is slower.
settings.register_profile("few", settings.get_profile("ci"), max_examples=5)
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


@pytest.fixture(scope="session")
def shared() -> Path:
    """Return the folder of reference values beside the checkout; skip where there is none."""
    folder = TESTS.parent.parent / "shared"
    if not folder.is_dir():
        pytest.skip("no folder of reference values beside the checkout")
    return folder

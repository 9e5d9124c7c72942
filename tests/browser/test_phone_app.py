"""The jobs of a carpenter on the built app, in Chromium at the size of a phone, network off.

The tests themselves are in `app/tests`, by file; here they are run, and what one says is passed on.
"""

import os
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
JOBS = sorted((ROOT / "app/tests").glob("*.test.mjs"))


@pytest.fixture(scope="module")
def chromium() -> str:
    found = os.environ.get("CHROMIUM") or shutil.which("chromium")
    if found is None:
        if os.environ.get("CI"):
            pytest.fail("Chromium is missing: install the system's package `chromium`")
        pytest.skip("LEFT OUT: no Chromium here; install the system's package `chromium`")
    return found


@pytest.fixture(scope="module")
def built() -> Path:
    page = ROOT / "src/longpoint/serve/app/index.html"
    if not page.is_file():
        pytest.fail("the app isn't built: make app")
    return page


@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.name.split(".")[0])
def test_the_app_does_the_job(job: Path, chromium: str, built: Path) -> None:
    done = subprocess.run(
        ["node", "--test", "--test-reporter=spec", str(job)],
        env=os.environ | {"CHROMIUM": chromium},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]


def test_there_are_jobs() -> None:
    assert {job.name.split(".")[0] for job in JOBS} >= {"access", "flat_battery", "scenario_a"}

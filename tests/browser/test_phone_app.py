"""The jobs of a carpenter on the built app, in Chromium at the size of a phone, network off.

The tests themselves are in `app/tests`, by file; here they are run, and what one says is passed on.
"""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LONGEST = ("access", "hand_over", "scenario_a", "flat_battery")
"""They begin first, so that no process has one left when the other has nothing more to do."""

JOBS = sorted(
    (ROOT / "app/tests").glob("*.test.mjs"),
    key=lambda job: (not job.name.startswith(LONGEST), job.name),
)


def run(job: Path, env: dict[str, str]) -> None:
    done = subprocess.run(
        ["node", "--test", "--test-reporter=spec", str(job)],
        env=env,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]


@pytest.mark.usefixtures("built")
@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.name.split(".")[0])
def test_the_app_does_the_job(job: Path, chromium: str, node_env: dict[str, str]) -> None:
    run(job, node_env | {"CHROMIUM": chromium, "PYTHON": sys.executable})


@pytest.mark.long
@pytest.mark.usefixtures("built")
def test_a_hundred_flat_batteries_lose_nothing(chromium: str, node_env: dict[str, str]) -> None:
    job = ROOT / "app/tests/flat_battery.test.mjs"
    run(job, node_env | {"CHROMIUM": chromium, "KILLS": "100"})


def test_there_are_jobs() -> None:
    names = {job.name.split(".")[0] for job in JOBS}
    assert names >= {"access", "flat_battery", "scenario_a", "update"}

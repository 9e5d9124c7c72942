"""The jobs of a carpenter on the built app, in Chromium at the size of a phone, network off.

The tests themselves are in `app/tests`, by file; here they are run, and what one says is passed on.
"""

import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
JOBS = sorted((ROOT / "app/tests").glob("*.test.mjs"))


@pytest.mark.usefixtures("built")
@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.name.split(".")[0])
def test_the_app_does_the_job(job: Path, chromium: str, node_env: dict[str, str]) -> None:
    done = subprocess.run(
        ["node", "--test", "--test-reporter=spec", str(job)],
        env=node_env | {"CHROMIUM": chromium},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]


def test_there_are_jobs() -> None:
    assert {job.name.split(".")[0] for job in JOBS} >= {"access", "flat_battery", "scenario_a"}

"""Throw bytes at one of the targets for so many seconds, by hand: never part of `make test`.

    pip install atheris
    python -m tests.fuzz.run table 600

What breaks it is left beside where it was run; a mended case is kept in tests/corpus/foreign.
"""

import sys
import tempfile
from pathlib import Path

from tests.fuzz import targets

SEEDS = Path(__file__).parents[1] / "corpus" / "foreign"


def main() -> None:
    # Here, so that who only collects tests can do without it.
    import atheris

    name, seconds = sys.argv[1], sys.argv[2]
    target = targets.TARGETS[name]
    memory = Path("/dev/shm")
    targets.FOLDER = memory if memory.is_dir() else targets.FOLDER  # type: ignore[misc]
    with tempfile.TemporaryDirectory() as grown:
        options = [
            f"-max_total_time={seconds}",
            "-max_len=4096",
            "-timeout=20",
            "-rss_limit_mb=2000",
            f"-artifact_prefix={name}-",
        ]
        atheris.instrument_all()
        atheris.Setup([sys.argv[0], *options, grown, str(SEEDS / name)], target)
        atheris.Fuzz()


if __name__ == "__main__":
    main()

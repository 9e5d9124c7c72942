"""Every foreign file kept here is read or refused in three sentences; many once broke a reader."""

from pathlib import Path

import pytest

from tests.fuzz.targets import TARGETS

FOLDER = Path(__file__).resolve().parent / "foreign"
FILES = sorted(path.relative_to(FOLDER).as_posix() for path in FOLDER.rglob("*") if path.is_file())


def test_each_target_has_seeds_and_they_are_small() -> None:
    assert {name.partition("/")[0] for name in FILES} == set(TARGETS)
    assert max((FOLDER / name).stat().st_size for name in FILES) < 8_000


@pytest.mark.parametrize("name", FILES)
def test_a_kept_file_is_read_or_refused(name: str) -> None:
    is_read = TARGETS[name.partition("/")[0]]((FOLDER / name).read_bytes())
    assert is_read is not Path(name).name.startswith("bad-")

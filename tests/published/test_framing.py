"""What stands behind a wall's face.

Sources: NHBC Standards 2020, cl. 6.3.9, table 3: timber partitions of 63 x 38 studs at 600 at most;
read. NZS 3604:2011 as a panel maker gives it: 600 at most; read. IRC table R602.3(5) as adapted in
a builders' journal: 16 in under one floor; read. Boards and stud faces elsewhere: from memory.
"""

from pathlib import Path

import pytest

from longpoint.fixing.wall_behind import CUSTOMS, Rests
from longpoint.survey.house import Dialect
from tests.published.reference import rows


@pytest.mark.parametrize(
    ("country", "row", "spacing_mm"),
    [(Dialect.UK, "FR-01", 600.0), (Dialect.NZ, "FR-04", 600.0), (Dialect.US, "FR-02", 406.4)],
)
def test_stud_spacings_that_were_read(
    country: Dialect, row: str, spacing_mm: float, shared: Path
) -> None:
    value_mm, rests, source = CUSTOMS[country]["stud_spacing"]
    assert value_mm == pytest.approx(spacing_mm)
    assert rests is Rests.READ
    assert source
    assert rows(shared)[row].how_known == "read"


def test_the_british_stud_is_63_by_38() -> None:
    usual = CUSTOMS[Dialect.UK]
    assert [usual[key][:2] for key in ("stud_face", "stud_depth")] == [
        (38.0, Rests.READ),
        (63.0, Rests.READ),
    ]


def test_boards_are_remembered_and_say_so(shared: Path) -> None:
    assert rows(shared)["FR-06"].how_known == "memory"
    for country, board_mm in ((Dialect.NZ, 10.0), (Dialect.UK, 12.5), (Dialect.US, 12.7)):
        assert CUSTOMS[country]["board"] == (board_mm, Rests.REMEMBERED, "")


def test_what_is_marked_read_names_its_source() -> None:
    for usual in CUSTOMS.values():
        for _, rests, source in usual.values():
            assert (rests is Rests.READ) == bool(source)

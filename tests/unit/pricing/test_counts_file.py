"""The counts file: a house before its walls are lined."""

from decimal import Decimal
from typing import Any

import pytest

from longpoint.errors import PricingError
from longpoint.pricing.counts_file import read_counts
from longpoint.pricing.work import Task, WorkKind
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import Place
from tests.priced_jobs import OUR_COUNTS, example


def counts(**changes: Any) -> Any:  # noqa: ANN401
    return read_counts({**OUR_COUNTS, **changes})


def test_the_example_reads() -> None:
    read = read_counts(example("wren-counts.toml"))

    assert read.survey.house.name == "Wren House"
    assert not read.is_spread_assumed


def test_windows_and_doors_become_openings_as_drawn() -> None:
    house = counts().survey.house

    assert [o.mark for o in house.openings] == ["W1", "W2", "W3", "D1"]
    assert house.openings[0].readings.mean_mm(Place.WIDTH) == 1187
    assert house.openings[3].kind is OpeningKind.DOOR
    assert house.openings[3].faces == 2


def test_marks_go_on_from_one_entry_to_the_next() -> None:
    size = {"width": 900, "height": 900}
    house = counts(windows=[{"count": 2, **size}, size]).survey.house

    assert [o.mark for o in house.openings] == ["W1", "W2", "W3", "D1"]


def test_a_length_of_skirting_is_shared_by_its_runs() -> None:
    read = counts()

    assert [run.length_mm for run in read.survey.house.runs] == [2250.0] * 4
    assert read.doubt.shared == (("S1-1", "S1-2", "S1-3", "S1-4"),)


def test_inches_stay_inches() -> None:
    house = counts(
        units="in",
        defaults={"architrave": "OG", "quirk": 0.25},
        profiles={"OG": {"face": 2.25, "thickness": 0.75}},
        stock=[],
        windows=[{"width": 36, "height": "48 1/2"}],
        doors=[],
        skirting=[],
    ).survey.house

    assert house.openings[0].readings.mean_mm(Place.HEIGHT) == pytest.approx(48.5 * 25.4)


def test_what_runs_and_what_is_allowed_for_is_work_without_pieces() -> None:
    read = counts(running=[{"kind": "cornice", "length": 12345}], allow={"pack_corner": 2})

    assert read.tasks == (
        Task(kind=WorkKind.CORNICE, quantity=Decimal("12.35"), place="T1"),
        Task(
            kind=WorkKind.PACK_CORNER,
            quantity=Decimal(2),
            place="allowed",
            why="allowed for, not seen yet",
        ),
    )


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"format": "longpoint-house/1"}, "format"),
        ({"windows": [{"width": 900}]}, "height"),
        ({"windows": [{"width": 0, "height": 900}]}, "width"),
        ({"windows": [{"width": 900, "height": 900, "count": 0}]}, "count"),
        ({"windows": [{"width": 900, "height": 900, "faces": 2}]}, "faces"),
        ({"windows": {"width": 900}}, "windows"),
        ({"skirting": [{"length": 900, "internal": 4, "pieces": 2}]}, "pieces"),
        ({"running": [{"kind": "skirting", "length": 900}]}, "kind"),
        ({"profiles": {}}, "SK95"),
        ({"rooms": []}, "rooms"),
    ],
)
def test_what_cannot_be_counted_is_refused_by_its_name(changes: dict[str, Any], told: str) -> None:
    with pytest.raises(PricingError) as refused:
        counts(**changes)

    assert told in str(refused.value)

"""What may be written of a cornice."""

from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.cornice.cornice import TRIM
from longpoint.catalogue.cornice.cornice_keys import KEYS
from longpoint.survey.house_file import read_house
from tests.house_documents import house, wall
from tests.unit.catalogue.cornice_houses import PROFILES


def read(**entry: Any) -> list[str]:  # noqa: ANN401
    """Return what is said of an entry."""
    written = {"mark": "C1", "kind": "cornice", "room": "Hall", "profile": "CR90", **entry}
    rooms = [{"name": "Hall", "closed": False, "walls": [wall("N"), wall("E")]}]
    document = house(trims=[written], profiles=PROFILES, rooms=rooms)
    survey = read_house(document, trim_tables((TRIM,)))
    return [str(finding) for finding in survey.findings if finding.place == "C1"]


def test_every_key_reads_as_in_its_example() -> None:
    assert read(**{key.name: key.example for key in KEYS}) == []


@pytest.mark.parametrize(
    "entry",
    [
        {"spring": 5},
        {"spring": 85},
        {"spring_from": "floor"},
        {"corners": "butt"},
        {"ends": "round"},
        {"drop": 0},
        {"spring": 38, "climb": [{"slope": 15}]},
        {"spring": 38, "climb": [{"wall": "E", "slope": 70}]},
        {"spring": 38, "springs": [{"wall": "E"}]},
    ],
)
def test_what_is_out_of_reason_is_not_read(entry: dict[str, Any]) -> None:
    assert read(**entry) != []


def test_a_ceiling_may_fall_to_the_right() -> None:
    assert read(spring=38, climb=[{"wall": "E", "slope": -15}, {"wall": "N", "rise": -200}]) == []

from datetime import date
from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.handover import Defect, DefectKind, Handover, Trade
from longpoint.survey.house_file import house_document, read_house, readings_code
from tests.house_documents import codes, found, house, the_house, window

TOLD: dict[str, Any] = {
    "place": "au-nsw",
    "contract": "2024-05-01",
    "handed_over": date(2025, 3, 1),
    "bare_floor": True,
    "fills": "painter",
    "caulks": "carpenter",
    "fixed": ["W1", "Kitchen"],
    "wet": ["Kitchen"],
}
DEFECTS: list[dict[str, Any]] = [
    {
        "place": "W1",
        "what": "gap",
        "kind": "joint",
        "found": 1.5,
        "height": 2400,
        "seen": "2025-04-01",
        "mended": "2025-05-01",
    },
    {"place": "Kitchen", "what": "hammer mark"},
]


def test_what_is_told_of_handing_over_is_kept() -> None:
    told = the_house(handover=TOLD, defects=DEFECTS)
    assert told.handover == Handover(
        place="au-nsw",
        contract=date(2024, 5, 1),
        handed_over=date(2025, 3, 1),
        bare_floor=True,
        fills=Trade.PAINTER,
        caulks=Trade.CARPENTER,
        fixed=("W1", "Kitchen"),
        wet=("Kitchen",),
    )
    assert told.defects == (
        Defect(
            place="W1",
            what="gap",
            kind=DefectKind.JOINT,
            found_mm=1.5,
            height_mm=2400.0,
            seen=date(2025, 4, 1),
            mended=date(2025, 5, 1),
        ),
        Defect(place="Kitchen", what="hammer mark"),
    )


def test_a_house_that_tells_nothing_of_it_is_told_nothing() -> None:
    result = read_house(house(openings=[window()]))
    assert result.house.handover == Handover(assumed=True)
    assert codes(result) == []


@pytest.mark.parametrize(
    "bad",
    [
        {"place": "au-qld"},
        {"contract": "last May"},
        {"fills": "nobody"},
        {"bare_floor": 1},
        {"fixed": "W1"},
        {"fixd": ["W1"]},
    ],
)
def test_a_bad_part_is_left_out_with_a_warning(bad: dict[str, Any]) -> None:
    result = read_house(house(openings=[window()], handover={"wet": ["Hall"], **bad}))
    (finding,) = found(result, "handover-unreadable")
    assert finding.severity is Severity.WARNING
    assert result.house.handover == Handover(wet=("Hall",))


def test_what_is_no_table_is_left_out_as_a_whole() -> None:
    result = read_house(house(openings=[window()], handover="soon"))
    assert codes(result) == ["handover-unreadable"]
    assert result.house.handover.assumed


@pytest.mark.parametrize(
    "bad", [{"place": "W1"}, {"place": "W1", "what": "x", "kind": "colour"}, "gap at W1"]
)
def test_a_bad_defect_is_left_out_and_the_others_stay(bad: object) -> None:
    result = read_house(house(openings=[window()], defects=[bad, DEFECTS[1]]))
    assert set(codes(result)) == {"defect-unreadable"}
    assert [defect.what for defect in result.house.defects] == ["hammer mark"]


@pytest.mark.parametrize("units", ["mm", "in"])
def test_it_is_written_back_as_it_was_read(units: str) -> None:
    defects = DEFECTS if units == "mm" else [{**DEFECTS[0], "found": "1/16", "height": "96"}]
    first = the_house(units=units, handover=TOLD, defects=defects)
    again = read_house(house_document(first)).house
    assert (again.handover, again.defects) == (first.handover, first.defects)


def test_handing_over_changes_no_readings_code() -> None:
    plain = the_house(openings=[window()])
    told = the_house(openings=[window()], handover=TOLD, defects=DEFECTS)
    assert readings_code(plain) == readings_code(told)

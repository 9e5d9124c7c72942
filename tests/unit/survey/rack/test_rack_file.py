from datetime import date, datetime
from typing import Any

import pytest

from longpoint.errors import SurveyError
from longpoint.quantities.length import Units
from longpoint.survey.rack import Gone, Out, Rack, RackPiece, Section, read_rack

SECTION = {"name": "OG57", "face": 57, "thickness": 18, "least": 250}
OFFCUT = {"label": "EMKR", "section": "S", "length": 1310, "put_up": date(2026, 3, 1)}


def document(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    whole = {
        "format": "longpoint-rack/1",
        "sections": {"S": SECTION},
        "offcuts": [OFFCUT],
    }
    return {key: value for key, value in {**whole, **keys}.items() if value is not None}


def with_offcut(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    entry = {key: value for key, value in {**OFFCUT, **keys}.items() if value is not None}
    return document(offcuts=[entry])


def test_a_rack_is_read_as_written() -> None:
    offcut = {
        **OFFCUT,
        "label": "em-kr",
        "left": "mitre 45.0",
        "house": "Wren House",
        "gone": "used",
        "gone_on": "2026-05-12",
        "gone_to": "Plover House",
    }
    found = read_rack(document(offcuts=[offcut], old_after=365))

    assert found == Rack(
        old_after_days=365,
        sections=(("S", Section(name="OG57", width_mm=57.0, thickness_mm=18.0, least_mm=250.0)),),
        pieces=(
            RackPiece(
                label="EMKR",
                section="S",
                length_mm=1310.0,
                left="mitre 45.0",
                house="Wren House",
                put_up=date(2026, 3, 1),
                gone=Gone(why=Out.USED, on=date(2026, 5, 12), house="Plover House"),
            ),
        ),
    )


def test_a_rack_in_inches_is_read_in_inches() -> None:
    section = {"name": "OG", "face": "2 1/4", "thickness": "3/4"}
    found = read_rack(
        document(units="in", sections={"S": section}, offcuts=[{**OFFCUT, "length": "51 1/2"}])
    )

    assert found.units is Units.INCH
    assert found.pieces[0].length_mm == pytest.approx(51.5 * 25.4)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (document(format="longpoint-house/1"), "longpoint-rack/1"),
        (document(format=None), "longpoint-rack/1"),
        (document(offcut=[]), "offcuts"),
        (document(sections={"S": {**SECTION, "width": 57}}), "width"),
        (document(sections={"S": {"name": "OG57", "face": 57}}), "thickness"),
        (document(sections=[]), "table"),
        (document(offcuts=3), "list"),
        (document(offcuts=[3]), "offcuts 1"),
        (document(offcuts=[OFFCUT, OFFCUT]), "twice"),
        (with_offcut(label="EMKP"), "last sign"),
        (with_offcut(section="T"), "section"),
        (with_offcut(length=0), "more than"),
        (with_offcut(length="long"), "length"),
        (with_offcut(put_up="the other day"), "calendar"),
        (with_offcut(put_up=datetime(2026, 3, 1, 12, 0)), "text"),  # noqa: DTZ001
        (with_offcut(put_up=None), "put_up"),
        (with_offcut(gone="burnt", gone_on=date(2026, 3, 1)), "used, thrown, missing"),
        (with_offcut(gone="used"), "gone_on"),
        (with_offcut(gone_on=date(2026, 3, 1)), "in part"),
        (document(old_after=0), "whole number"),
    ],
)
def test_anything_that_can_not_be_read_refuses_the_whole_rack(
    wrong: dict[str, Any], said: str
) -> None:
    with pytest.raises(SurveyError) as refused:
        read_rack(wrong)
    assert said in f"{refused.value.read} {refused.value.wrong} {refused.value.do}"
    assert all((refused.value.read, refused.value.wrong, refused.value.do))

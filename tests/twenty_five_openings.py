"""A house of 25 windows of five widths and five heights, one width and one height read of each."""

from typing import Any

from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests import house_documents

WIDTHS_MM = (450, 940, 1425, 1910, 2400)
HEIGHTS_MM = (600, 825, 1050, 1275, 1500)


def document() -> dict[str, Any]:
    """Return the house's document: faces of 70, quirks of 4.5, a saw that isn't proved."""
    sizes = [(width, height) for width in WIDTHS_MM for height in HEIGHTS_MM]
    unread: dict[str, object] = dict.fromkeys(house_documents.SIZE)
    whole = house_documents.house(
        openings=[
            house_documents.window(
                **{**unread, "mark": f"W{number}", "width": width, "height": height}
            )
            for number, (width, height) in enumerate(sizes, start=1)
        ],
        saws={"S1": {"kerf": 2.4, "end_trim": 10}},
        profiles={
            "OG57": {"face": 70, "thickness": 18},
            "SK95": {"face": 95, "thickness": 16},
        },
    )
    whole["defaults"] |= {"quirk": 4.5, "quirk_band": [2.7, 6.3]}
    return whole


def house_and_shapes() -> tuple[House, Shapes]:
    """Return the house as read, and its fitted openings."""
    house = read_house(document()).house
    openings, _ = fit_openings(house)
    return house, Shapes(openings=openings)

"""Small houses with arched openings, and ones of any number of sides, read from a document."""

from typing import Any

from longpoint.errors import Finding
from longpoint.pieces.other_shapes import other_shape
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings, fit_outlines
from longpoint.survey.house import House
from tests.house_documents import house, the_house

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "OG66": {"face": 66, "thickness": 18},
    "OG90": {"face": 90, "thickness": 20},
    "BD100": {"face": 100, "thickness": 20},
    "BD140": {"face": 140, "thickness": 20},
    "BB25": {"face": 25, "thickness": 24},
    "PB75": {"face": 75, "thickness": 26},
    "WB150": {"face": 150, "thickness": 25},
    "SK95": {"face": 95, "thickness": 16},
}

GABLE = {"corners": [[0, 0], [900, 0], [900, 1050], [450, 1500], [0, 1050]]}
"""Five corners: a square with a gable."""

HALL = {
    "top": 914,
    "bottom": 915,
    "left": 1012,
    "right": 1013,
    "architrave": "OG90",
    "arch": {"rise": 286, "blank": "BD140"},
}
"""The cottage's arched window, its rise mended and a board named."""


def document(*openings: dict[str, Any], **changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a house with these openings and profiles enough for any of them."""
    whole = [{"mark": "W1", "kind": "window", "trim": "all-round", **one} for one in openings]
    return house(**{"openings": whole, "profiles": PROFILES, **changes})


def read(*openings: dict[str, Any]) -> House:
    """Return that house as read."""
    return the_house(**document(*openings))


def shapes(found: House) -> Shapes:
    """Return its fitted shapes."""
    return Shapes(openings=fit_openings(found)[0], outlines=fit_outlines(found)[0])


def made(
    opening: dict[str, Any],
    **changes: Any,  # noqa: ANN401
) -> tuple[dict[str, Piece], dict[str, Finding]]:
    """Return the pieces of one opening by mark, and what is said of them by code."""
    found = read({**opening, **changes})
    both = other_shape(found, shapes(found), found.openings[0])
    assert both is not None
    pieces, findings = both
    assert len({piece.mark for piece in pieces}) == len(pieces)
    return {p.mark: p for p in pieces}, {f.code: f for f in findings}

"""Pieces and houses for the tests of nails."""

from dataclasses import replace
from typing import Any

from longpoint.fixing.nailing import Nailing, nail_house
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.survey.house import House
from tests.house_documents import the_house, window

MITRE = EndCut(kind=CutKind.MITRE, mitre_deg=45.0)


def piece(role: Role = Role.HEAD, mark: str = "W1-head", **changes: Any) -> Piece:  # noqa: ANN401
    """Return a head of OG57 with an inner edge of 1200, some of it changed."""
    head = Piece(
        mark=mark,
        role=role,
        opening="W1",
        profile="OG57",
        width_mm=57.0,
        thickness_mm=18.0,
        inner_mm=1200.0,
        outer_mm=1314.0,
        back_mm=1314.0,
        left=MITRE,
        right=MITRE,
    )
    return replace(head, **changes)


def skirting(mark: str = "S1", length_mm: float = 2400.0, **changes: Any) -> Piece:  # noqa: ANN401
    plain = piece(
        Role.RUN,
        mark,
        opening=None,
        run=mark,
        profile="SK95",
        width_mm=95.0,
        thickness_mm=16.0,
        inner_mm=length_mm,
        outer_mm=length_mm,
        back_mm=length_mm,
        left=SQUARE_CUT,
        right=SQUARE_CUT,
    )
    return replace(plain, **changes)


def house(**fixing: Any) -> House:  # noqa: ANN401
    """Return a house with a window W1 and what is told of fixing."""
    return the_house(openings=[window()], fixing=fixing)


def nailed(*pieces: Piece, **fixing: Any) -> Nailing:  # noqa: ANN401
    return nail_house(house(**fixing), pieces)

"""A house's pieces as plain values, to the last figure, for what is planned over many houses."""

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from longpoint.pieces.piece import CutKind, EndCut, Piece, Role

_TEXTS = ("mark", "opening", "run", "trim", "room", "face", "profile")
_LENGTHS = ("width_mm", "thickness_mm", "inner_mm", "outer_mm", "back_mm")


def cut_values(piece: Piece) -> dict[str, Any]:
    """Return what the saw needs of a piece, unrounded, ready for JSON."""
    return {
        **{key: getattr(piece, key) for key in (*_TEXTS, *_LENGTHS)},
        "role": piece.role.value,
        "left": asdict(piece.left),
        "right": asdict(piece.right),
    }


def piece_in(values: Mapping[str, Any]) -> Piece:
    """Return the piece of these values, without its readings, sum and notes.

    Raises:
        KeyError, TypeError, ValueError: They are damaged.
    """
    texts: dict[str, Any] = {key: _text(values[key]) for key in _TEXTS}
    lengths: dict[str, Any] = {key: float(values[key]) for key in _LENGTHS}
    return Piece(
        **texts,
        **lengths,
        role=Role(values["role"]),
        left=_end(values["left"]),
        right=_end(values["right"]),
    )


def _text(value: object) -> str | None:
    return None if value is None else str(value)


def _end(values: Mapping[str, Any]) -> EndCut:
    return EndCut(
        kind=CutKind(values["kind"]),
        mitre_deg=float(values["mitre_deg"]),
        bevel_deg=float(values["bevel_deg"]),
    )

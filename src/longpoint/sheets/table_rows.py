"""Pieces, sticks and what is held, as plain rows for other people's programs.

Lengths are in mm and angles in degrees whatever the house was read in; figures are rounded to
hundredths, as in plan.json. The first row names the columns.
"""

from typing import Final

from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import EndCut, Piece
from longpoint.sticks.plan import CutStick, Laid

Row = tuple[str, ...]

PIECE_COLUMNS: Final = (
    *("mark", "room", "opening", "run", "trim", "face", "role", "profile"),
    *("width (mm)", "thickness (mm)", "inner (mm)", "outer (mm)", "short (mm)", "long (mm)"),
    *("back (mm)", "hook (mm)", "hook from"),
    *("left cut", "left mitre (deg)", "left bevel (deg)"),
    *("right cut", "right mitre (deg)", "right bevel (deg)", "method", "stick", "notes"),
)
STICK_COLUMNS: Final = (
    *("stick", "profile", "length (mm)", "source", "label", "place", "piece", "turned"),
    *("from (mm)", "to (mm)", "left over (mm)"),
)
HELD_COLUMNS: Final = ("mark", "finding", "read", "wrong", "do")


def piece_rows(plan: HousePlan) -> tuple[Row, ...]:
    """Return a row for each piece; places that are held have none."""
    sticks = {laid.piece: stick.name for stick in plan.cut_plan.sticks for laid in stick.laid}
    return (PIECE_COLUMNS, *(_piece(piece, sticks) for piece in plan.pieces))


def stick_rows(plan: HousePlan) -> tuple[Row, ...]:
    """Return a row for each piece on each stick, from its left end on."""
    return (
        STICK_COLUMNS,
        *(
            _laid(stick, number, laid)
            for stick in plan.cut_plan.sticks
            for number, laid in enumerate(stick.laid, start=1)
        ),
    )


def held_rows(plan: HousePlan) -> tuple[Row, ...]:
    """Return a row for each finding that holds a place: what isn't in the other rows, and why."""
    return (
        HELD_COLUMNS,
        *(
            (found.place, found.code, found.read, found.wrong, found.do)
            for found in plan.findings
            if found.place in plan.held and found.severity == "stop"
        ),
    )


def _piece(piece: Piece, sticks: dict[str, str]) -> Row:
    return (
        *(piece.mark, piece.room, piece.opening or "", piece.run or "", piece.trim or ""),
        *(piece.face, piece.role.value, piece.profile),
        *(_figure(piece.width_mm), _figure(piece.thickness_mm)),
        *(_figure(piece.inner_mm), _figure(piece.outer_mm)),
        *(_figure(piece.short_mm), _figure(piece.long_mm), _figure(piece.back_mm)),
        "" if piece.hook_mm is None else _figure(piece.hook_mm),
        piece.hook_from.value if piece.hook_from else "",
        *_end(piece.left),
        *_end(piece.right),
        piece.method.value if piece.method else "",
        sticks.get(piece.mark, ""),
        "; ".join(piece.notes),
    )


def _end(cut: EndCut) -> Row:
    return (cut.kind.value, _figure(cut.mitre_deg), _figure(cut.bevel_deg))


def _laid(stick: CutStick, number: int, laid: Laid) -> Row:
    return (
        *(stick.name, stick.profile, _figure(stick.length_mm), stick.source.value, stick.label),
        *(str(number), laid.piece, "yes" if laid.turned else ""),
        *(_figure(laid.start_mm), _figure(laid.end_mm), _figure(stick.left_mm)),
    )


def _figure(value: float) -> str:
    """A figure in hundredths, without noughts at its end.

    Example:
        >>> _figure(1187.0), _figure(45.034), _figure(-0.001)
        ('1187', '45.03', '0')
    """
    text = f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")
    return text or "0"

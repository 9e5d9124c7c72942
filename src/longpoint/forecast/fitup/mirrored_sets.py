"""The mirror images of a set of rows: what rules a frame rules it upside down and mirrored too."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.forecast.fitup.frame import FrameRow, RowKind
from longpoint.forecast.fitup.respect import Respect

RowSet = tuple[int, ...]
"""Indices of rows, rising."""

_JOINT_ROWS: Final = 8
_SIDE_ROWS: Final = 6
_CLOSED_SIDES: Final = 4
_OPEN_SIDES: Final = 3


def images(chosen: RowSet, *, is_closed: bool, respect: Respect) -> tuple[RowSet, ...]:
    """Return a set of rows with its mirror images.

    Args:
        chosen: Indices among the rows of the respect.
        is_closed: True for four sides with four joints, False for three sides with two.
        respect: Whose rows are counted.

    Returns:
        Each once: mirrored left to right, and for a closed frame upside down and both as well.
    """
    sideways = _mirror(is_closed=is_closed, upside_down=False)
    mirrors = [sideways]
    if is_closed:
        upright = _mirror(is_closed=True, upside_down=True)
        mirrors += [upright, tuple(upright[i] for i in sideways)]
    full = _rows_of(is_closed=is_closed, respect=respect)
    place = {row: index for index, row in enumerate(full)}
    found = [chosen]
    for mirror in mirrors:
        found.append(tuple(sorted(place[mirror[full[i]]] for i in chosen)))
    return tuple(dict.fromkeys(found))


def turned(chosen: RowSet, respect: Respect) -> RowSet:
    """Return a set of rows of a closed frame of four sides after a quarter turn.

    Args:
        chosen: Indices among the rows of the respect.
        respect: Whose rows are counted.

    Returns:
        The same rows of the next side and joint each.

    Example:
        >>> turned((0, 3, 32), Respect.IN_PLANE)
        (8, 11, 38)
    """
    full = _rows_of(is_closed=True, respect=respect)
    place = {row: index for index, row in enumerate(full)}
    joint_rows, side_rows = _JOINT_ROWS * _CLOSED_SIDES, _SIDE_ROWS * _CLOSED_SIDES

    def after(row: int) -> int:
        if row < joint_rows:
            return (row + _JOINT_ROWS) % joint_rows
        return joint_rows + (row - joint_rows + _SIDE_ROWS) % side_rows

    return tuple(sorted(place[after(full[i])] for i in chosen))


def tightness(rows: Sequence[FrameRow]) -> float:
    """Return the least room of a quirk against the gap allowed; infinite where one is missing."""
    quirk_mm = min((r.limit_mm for r in rows if r.kind is RowKind.QUIRK), default=math.inf)
    gap_mm = max((r.limit_mm for r in rows if r.kind is RowKind.HEEL_GAP), default=0.0)
    return quirk_mm / gap_mm if gap_mm else math.inf


def _rows_of(*, is_closed: bool, respect: Respect) -> tuple[int, ...]:
    """Return which of all rows count in a respect."""
    joints, sides = (_CLOSED_SIDES,) * 2 if is_closed else (_OPEN_SIDES - 1, _OPEN_SIDES)
    gaps = range(_JOINT_ROWS * joints)
    match respect:
        case Respect.GAPS:
            return tuple(gaps)
        case Respect.QUIRK:
            # The second and fourth row of a joint: heel and toe not under 0.
            quirks = range(len(gaps), len(gaps) + _SIDE_ROWS * sides)
            return (*(i for i in gaps if i % _JOINT_ROWS in (1, 3)), *quirks)
        case Respect.IN_PLANE:
            return tuple(range(len(gaps) + _SIDE_ROWS * sides))


def _mirror(*, is_closed: bool, upside_down: bool) -> tuple[int, ...]:
    """Return where each row of a frame goes when the frame is mirrored."""
    sides = _CLOSED_SIDES if is_closed else _OPEN_SIDES
    joints = sides if is_closed else sides - 1
    goes: tuple[int, ...] = (2, 1, 0)
    if is_closed and upside_down:
        goes = (2, 1, 0, 3)
    elif is_closed:
        goes = (0, 3, 2, 1)
    rows = []
    for joint in range(joints):
        # The side after a joint comes before it in the mirror.
        there = goes[(joint + 1) % sides]
        for row in range(_JOINT_ROWS):
            # A step that ran out one way runs out the other way.
            turned = row ^ 1 if row >= _JOINT_ROWS // 2 else row
            rows.append(_JOINT_ROWS * there + turned)
    for side in range(sides):
        for row in range(_SIDE_ROWS):
            slot, way = divmod(row, 2)
            rows.append(_JOINT_ROWS * joints + _SIDE_ROWS * goes[side] + 2 * (2 - slot) + way)
    return tuple(rows)

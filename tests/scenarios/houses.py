"""The three houses, planned as read and as mended, and the keys they are held against."""

import copy
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from longpoint.catalogue.all_trims import trim_tables
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece, Role
from longpoint.pipeline import plan_house
from longpoint.shape.fitted import FittedOpening
from longpoint.survey.house_file import read_house

HERE = Path(__file__).parent

MENDS: Mapping[str, Mapping[str, Mapping[str, object]]] = {
    "pipit": {"W3": {"top": 1178}, "S6": {"length": 2215}},
    "fallow-end": {
        "W5": {"rising": 1484, "falling": 1492},
        "W7": {"left": 1069},
        "D6": {"right": 1974},
        "W10": {"arch": {"rise": 286, "crown": 1298, "blank": "BD130"}},
    },
    "series-k": {"9-W2": {"right": 1093.5}, "12-D2": {"left": 2040.5}},
}
"""Readings as they should have been, by house and mark: the planted slips taken back."""


def document(name: str, *, mended: bool = False, first_only: bool = False) -> dict[str, Any]:
    """Return a house file as read, or with its planted slips taken back.

    Args:
        name: The house.
        mended: Take the planted slips back.
        first_only: Leave out second readings; the answer keys suppose the first ones alone.
    """
    with (HERE / f"{name}.toml").open("rb") as file:
        found = tomllib.load(file)
    if first_only:
        for entry in found["openings"]:
            repeated = {k: v[0] for k, v in entry.items() if isinstance(v, list)}
            entry.update(repeated)
    if mended:
        found = copy.deepcopy(found)
        for entry in (*found["openings"], *found["runs"]):
            entry.update(MENDS[name].get(entry["mark"], {}))
    return found


@cache
def planned(name: str, *, mended: bool = False, first_only: bool = False) -> HousePlan:
    """Return the plan of one of the houses, by the built-in search alone."""
    found = document(name, mended=mended, first_only=first_only)
    return plan_house(read_house(found, trim_tables()))


def fitted(plan: HousePlan, mark: str) -> FittedOpening:
    """Return the fitted shape of the first face of an opening."""
    return next(f for f in plan.shapes.openings if f.mark == mark and f.face in ("", "a"))


def piece_at(plan: HousePlan, mark: str, side: str) -> Piece:
    """Return the piece along a side ("top", "left", ...) of the first face of an opening."""
    role = {
        "top": Role.HEAD,
        "left": Role.LEFT_LEG,
        "right": Role.RIGHT_LEG,
        "bottom": Role.SILL,
    }[side]
    return next(
        p for p in plan.pieces if p.opening == mark and p.role is role and p.face in ("", "a")
    )


class PieceKey(NamedTuple):
    """What an answer key gives for one piece; its start and end go anticlockwise."""

    mark: str
    side: str
    short_mm: float
    long_mm: float
    hook_mm: float | None
    start_deg: float
    end_deg: float


def rows_under(text: str, heading: str) -> list[list[str]]:
    """Return the rows of the table whose heading starts so."""
    rows: list[list[str]] = []
    lines = iter(text.splitlines())
    for line in lines:
        if line.startswith(f"| {heading}"):
            break
    for line in lines:
        if not line.startswith("|"):
            break
        if set(line) - set("|- "):
            rows.append([cell.strip() for cell in line.strip().strip("|").split("|")])
    assert rows, heading
    return rows


def corner_keys(text: str, heading: str) -> dict[str, tuple[float, ...]]:
    """Return the true corners of each opening: bottom left, bottom right, top right, top left."""
    return {row[0]: tuple(float(x) for x in row[1:5]) for row in rows_under(text, heading)}


def piece_keys(text: str) -> list[PieceKey]:
    """Return the key of every piece."""
    keys = []
    for mark, side, short, long, hook, ends in rows_under(text, "id | piece"):
        start, end = (float(end.split()[-1].replace("+", "")) for end in ends.split(","))
        keys.append(
            PieceKey(
                mark=mark,
                side=side,
                short_mm=float(short),
                long_mm=float(long),
                hook_mm=None if hook == "-" else float(hook),
                start_deg=start,
                end_deg=end,
            )
        )
    return keys

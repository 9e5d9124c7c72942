"""What stands behind the trim: lining, packing, board and stud, told or assumed."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house import Dialect, House

LINING_MM: Final = 19.0
PACKING_MM: Final = 10.0
SPACING_MM: Final = 300.0
FIRST_MM: Final = 50.0


class Rests(StrEnum):
    """What a figure rests on."""

    TOLD = "told in the house file"
    READ = "published, read"
    REMEMBERED = "from memory, no source read"
    PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One figure of the wall, and what it rests on.

    Attributes:
        name: What it is.
        value_mm: The figure. [mm]
        rests: What it rests on.
        source: The published source, where there is one.
    """

    name: str
    value_mm: float
    rests: Rests
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallBehind:
    """What stands behind the trim of a house.

    Attributes:
        country: Whose customs were taken.
        lining: Thickness of the linings' edge, where an opening gives none.
        packing: Room between lining and stud.
        board: Thickness of the board on the wall.
        stud_face: Width of the stud beside a lining.
        stud_depth: How deep the studs are.
        stud_spacing: From stud to stud.
        spacing: From nail to nail along a piece.
        first: First nail from an end or a mitre's point.
    """

    country: Dialect
    lining: Figure
    packing: Figure
    board: Figure
    stud_face: Figure
    stud_depth: Figure
    stud_spacing: Figure
    spacing: Figure
    first: Figure

    def figures(self) -> tuple[Figure, ...]:
        """Return all of them in the order in which a sheet gives them."""
        return (
            self.lining,
            self.packing,
            self.board,
            self.stud_face,
            self.stud_depth,
            self.stud_spacing,
            self.spacing,
            self.first,
        )


_Known = tuple[float, Rests, str]
_NHBC: Final = say("NHBC Standards 2020, cl. 6.3.9")

_ISLES: Final[dict[str, _Known]] = {
    "board": (12.5, Rests.REMEMBERED, ""),
    "stud_face": (38.0, Rests.READ, _NHBC),
    "stud_depth": (63.0, Rests.READ, _NHBC),
    "stud_spacing": (600.0, Rests.READ, _NHBC),
}
_SOUTH: Final[dict[str, _Known]] = {
    "board": (10.0, Rests.REMEMBERED, ""),
    "stud_face": (45.0, Rests.REMEMBERED, ""),
    "stud_depth": (90.0, Rests.REMEMBERED, ""),
    "stud_spacing": (600.0, Rests.REMEMBERED, ""),
}
_NEW_ZEALAND: Final[dict[str, _Known]] = {
    **_SOUTH,
    "stud_spacing": (600.0, Rests.READ, say("NZS 3604:2011, as a panel maker gives it")),
}
_STATES: Final[dict[str, _Known]] = {
    "board": (12.7, Rests.REMEMBERED, ""),
    "stud_face": (38.0, Rests.REMEMBERED, ""),
    "stud_depth": (89.0, Rests.REMEMBERED, ""),
    "stud_spacing": (16 * 25.4, Rests.READ, say("IRC table R602.3(5), as a journal gives it")),
}
CUSTOMS: Final[dict[Dialect, dict[str, _Known]]] = {
    Dialect.UK: _ISLES,
    Dialect.IE: {key: (mm, Rests.REMEMBERED, "") for key, (mm, _, _) in _ISLES.items()},
    Dialect.AU: _SOUTH,
    Dialect.NZ: _NEW_ZEALAND,
    Dialect.US: _STATES,
    Dialect.CA: {key: (mm, Rests.REMEMBERED, "") for key, (mm, _, _) in _STATES.items()},
}
"""What is usual in a country's houses: largest stud spacing, board, stud."""


def country_of(house: House) -> Dialect:
    """Return whose customs hold: the country written under fixing, or the dialect's."""
    return Dialect(house.fixing.country) if house.fixing.country else house.dialect


def wall_behind(house: House) -> WallBehind:
    """Return what stands behind the trim of a house; what isn't told is assumed.

    Example:
        >>> from longpoint.survey.house_file import read_house
        >>> written = {"format": "longpoint-house/1", "name": "Wren House"}
        >>> wall = wall_behind(read_house(written).house)
        >>> wall.stud_face.value_mm, wall.stud_face.rests.value
        (38.0, 'published, read')
    """
    told, country = house.fixing, country_of(house)
    usual = CUSTOMS[country]

    def figure(name: str, told_mm: float | None, known: _Known) -> Figure:
        if told_mm is not None:
            return Figure(name=name, value_mm=told_mm, rests=Rests.TOLD)
        value_mm, rests, source = known
        return Figure(name=name, value_mm=value_mm, rests=rests, source=source)

    def ours(value_mm: float) -> _Known:
        return (value_mm, Rests.PRACTICE, "")

    return WallBehind(
        country=country,
        lining=figure("lining's edge", told.lining_mm, ours(LINING_MM)),
        packing=figure("packing between lining and stud", told.packing_mm, ours(PACKING_MM)),
        board=figure("board on the wall", told.board_mm, usual["board"]),
        stud_face=figure("stud beside a lining", told.stud_face_mm, usual["stud_face"]),
        stud_depth=figure("depth of the studs", told.stud_depth_mm, usual["stud_depth"]),
        stud_spacing=figure("stud to stud", told.stud_spacing_mm, usual["stud_spacing"]),
        spacing=figure("nail to nail", told.spacing_mm, ours(SPACING_MM)),
        first=figure("first nail from an end or a mitre's point", told.first_mm, ours(FIRST_MM)),
    )

"""Timbers and boards that trim is made of, as data.

Each figure carries how it is known. Timbers for which two sources disagree (mahogany, merbau) are
left out until somebody reads them.
"""

from typing import Final

from longpoint.forecast.season.coefficients import (
    Coefficient,
    Species,
    Standing,
    coefficient_from_shrinkage,
)
from longpoint.speech.said import say

_TABLE: Final = "Wood Handbook, FPL-GTR-190 (2010), table 13-5"
_CHAPTER: Final = "Wood Handbook, FPL-GTR-190 (2010), chapter 13, worked example"
_CHART: Final = say("flooring trade chart after Agriculture Handbook 72 (1987)")


def _read(per_percent: float, source: str = _TABLE) -> Coefficient:
    return Coefficient(per_percent=per_percent, standing=Standing.READ, source=source)


def _remembered(per_percent: float) -> Coefficient:
    return Coefficient(per_percent=per_percent, standing=Standing.MEMORY, source=_TABLE)


def _assumed(per_percent: float, why: str) -> Coefficient:
    return Coefficient(per_percent=per_percent, standing=Standing.ASSUMED, source=why)


def _derived(shrinkage_percent: float, source: str) -> Coefficient:
    return Coefficient(
        per_percent=round(coefficient_from_shrinkage(shrinkage_percent), 5),
        standing=Standing.DERIVED,
        source=say(
            "from shrinkage {shrinkage_percent} %, {source}",
            shrinkage_percent=shrinkage_percent,
            source=source,
        ),
    )


def _timber(name: str, aliases: str, radial: Coefficient, tangential: Coefficient) -> Species:
    parts = tuple(part.strip() for part in aliases.split(",") if part.strip())
    return Species(name=name, aliases=parts, radial=radial, tangential=tangential)


MDF: Final = _timber(
    "MDF",
    "medium density fibreboard, fibreboard, medium density fiberboard, fiberboard",
    _assumed(0.0004, "no grain: least value, taken"),
    _assumed(0.0006, "no grain: most, taken; per percent by which solid timber would change"),
)

EUROPEAN_REDWOOD: Final = _timber(
    say("European redwood"),
    "redwood, scots pine, baltic pine, red deal, pinus sylvestris",
    _assumed(0.0020, say("so that the mean is the 0.25 % per percent that EN 1313-1 allows for")),
    _assumed(0.0030, "most, taken"),
)

_HANDBOOK: Final = (
    _timber(say("white ash"), "ash, american ash", _read(0.00169), _read(0.00274)),
    _timber(say("red alder"), "alder", _read(0.00151), _read(0.00256)),
    _timber(say("American basswood"), "basswood", _read(0.00230), _read(0.00330)),
    _timber(say("American beech"), "beech", _read(0.00190), _read(0.00431)),
    _timber(say("yellow birch"), "birch, american birch", _read(0.00256), _read(0.00338)),
    _timber(say("black cherry"), "cherry, american cherry", _read(0.00126), _read(0.00248)),
    _timber(say("red maple"), say("soft maple"), _read(0.00137), _read(0.00289)),
    _timber(say("sugar maple"), "maple, hard maple, rock maple", _read(0.00165), _read(0.00353)),
    _timber(say("silver maple"), "", _read(0.00102), _read(0.00252)),
    _timber(say("red oak"), say("american red oak"), _read(0.00158), _read(0.00369)),
    _timber(
        say("white oak"),
        "oak, american oak, american white oak",
        _read(0.00180),
        _read(0.00365),
    ),
    _timber(say("black walnut"), "walnut, american walnut", _read(0.00190), _read(0.00274)),
    _timber(say("quaking aspen"), "aspen", _read(0.00119), _read(0.00234)),
    _timber("sweetgum", "american red gum, sweet gum", _read(0.00183), _read(0.00365)),
    _timber("hackberry", "", _read(0.00165), _read(0.00315)),
    _timber(say("black tupelo"), "tupelo", _read(0.00176), _read(0.00308)),
)

_PARTLY_READ: Final = (
    _timber(
        say("Douglas fir"),
        "coast douglas fir, oregon, oregon pine",
        _remembered(0.00165),
        _read(0.00267, _CHART),
    ),
    _timber("teak", "", _remembered(0.00101), _read(0.00186, _CHART)),
    _timber(say("white fir"), "", _read(0.00112, _CHAPTER), _remembered(0.00245)),
    _timber(
        "jarrah",
        "",
        _assumed(0.00198, "half of the tangential figure, taken"),
        _read(0.00396, _CHART),
    ),
)

_REMEMBERED: Final = (
    _timber(
        say("western redcedar"),
        "western red cedar, red cedar, redcedar, cedar, wrc",
        _remembered(0.00111),
        _remembered(0.00234),
    ),
    _timber(
        say("eastern white pine"), say("white pine"), _remembered(0.00071), _remembered(0.00212)
    ),
    _timber(say("ponderosa pine"), "ponderosa", _remembered(0.00133), _remembered(0.00216)),
    _timber(
        say("loblolly pine"),
        "loblolly, southern pine, southern yellow pine",
        _remembered(0.00165),
        _remembered(0.00259),
    ),
    _timber(say("western hemlock"), "hemlock", _remembered(0.00144), _remembered(0.00274)),
    _timber(say("Sitka spruce"), "", _remembered(0.00148), _remembered(0.00263)),
    _timber(
        say("Californian redwood"),
        "california redwood, coast redwood, old growth redwood",
        _remembered(0.00120),
        _remembered(0.00205),
    ),
    _timber(
        "yellow-poplar",
        "poplar, tulipwood, tulip, tulip poplar, american poplar",
        _remembered(0.00158),
        _remembered(0.00289),
    ),
    _timber("meranti", "", _remembered(0.00126), _remembered(0.00289)),
)

_RADIATA_SOURCE: Final = "itself from memory: Wood Handbook, table 4-4"
_MERANTI_SOURCE: Final = "read: Wood Handbook, FPL-GTR-190 (2010), table 4-4"

_WORKED_OUT: Final = (
    _timber(
        say("radiata pine"),
        "radiata, monterey pine, pine, primed pine",
        _derived(3.4, _RADIATA_SOURCE),
        _derived(6.7, _RADIATA_SOURCE),
    ),
    _timber(
        say("white meranti"), "", _derived(3.0, _MERANTI_SOURCE), _derived(6.6, _MERANTI_SOURCE)
    ),
    _timber(
        say("European oak"),
        "english oak, french oak",
        _assumed(0.00180, say("taken as white oak")),
        _assumed(0.00365, say("taken as white oak")),
    ),
)

TIMBERS: Final = (
    MDF,
    EUROPEAN_REDWOOD,
    *_HANDBOOK,
    *_PARTLY_READ,
    *_REMEMBERED,
    *_WORKED_OUT,
)
"""Every timber and board that is known."""

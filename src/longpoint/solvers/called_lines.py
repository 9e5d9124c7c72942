"""Draws of a house judged outside of Python, behind the port of the lines: arrays in a browser."""

import json
from array import array
from collections.abc import Sequence
from typing import Protocol

from longpoint.forecast.lines import LineHouse, LineTally, OpeningTally
from longpoint.forecast.stream import CENTRE, TAIL, Spread, key_of

_LETTERS = {Spread.NORMAL: "n", Spread.RECTANGULAR: "r"}


class LinesCall(Protocol):
    """What is called: a house's lines in, counts as a text out."""

    def __call__(self, told: str, lines: "array[float]", /) -> str:
        """Draw and judge.

        Args:
            told: JSON object: `draws`; `key`, the two words of the stream's key; `poolRows`;
                `centre` and `tail`, the polynomials of the normal quantile, above and below;
                `shared`, a letter for each error of the house, n(ormal) or r(ectangular);
                `openings`, each with `firstRow`, `own` (letters) and `groups` (lines in each).
            lines: Of every opening, group and line in turn: its offset, then its coefficients,
                those of the house first.

        Returns:
            JSON object: `openings`, each with `fits` and `together`; `misfits`.
        """
        ...


class CalledLines:
    """Judges draws by a call; holds nothing between two calls."""

    def __init__(self, call: LinesCall) -> None:
        self._call = call

    def tally(self, house: LineHouse) -> LineTally:
        """Return in how many draws each opening fits, and how many don't at once."""
        flat = array("d")
        for opening in house.openings:
            for group in opening.groups:
                for line in group.lines:
                    flat.append(line.offset)
                    flat.extend(line.shared)
                    flat.extend(line.private)
        told = {
            "draws": house.draws,
            "key": key_of(house.seed),
            "poolRows": house.pool_rows,
            "centre": CENTRE,
            "tail": TAIL,
            "shared": _letters(house.shared),
            "openings": [
                {
                    "firstRow": house.first_row(number),
                    "own": _letters(opening.private),
                    "groups": [len(group.lines) for group in opening.groups],
                }
                for number, opening in enumerate(house.openings)
            ],
        }
        found = json.loads(self._call(json.dumps(told), flat))
        return LineTally(
            openings=tuple(
                OpeningTally(
                    mark=opening.mark, fits=tuple(counts["fits"]), together=counts["together"]
                )
                for opening, counts in zip(house.openings, found["openings"], strict=True)
            ),
            misfits=tuple(found["misfits"]),
            draws=house.draws,
        )


def _letters(spreads: Sequence[Spread]) -> str:
    return "".join(_LETTERS[spread] for spread in spreads)

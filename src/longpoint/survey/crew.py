"""The crew: the walls it works in, and what its time is worth."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

LEAST_SURE: Final = 0.5
MOST_SURE: Final = 0.99
"""Nothing is asked to be surer than this: no forecast of ours reaches beyond it."""


ASSUMED_SLIPS: Final = 1.0
"""Pieces in a hundred spoiled by a slip, where the crew says nothing; ours, no source."""


class WallAge(StrEnum):
    """How true the walls of the house are likely to stand."""

    NEW = "new"
    OLD = "old"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingMinutes:
    """What each thing that can still be read or proved takes; assumed until the crew says.

    Attributes:
        proof: A frame of offcuts to prove the saw. [min]
        diagonals: Both diagonals of an opening. [min]
        bevel: One corner with a bevel gauge. [min]
        other_side: The second width and the second height. [min]
        repeat: The same reading once more. [min]
        stop_block: A stop block set for a pair. [min]
        straightedge: A straightedge along the sides, for a bow. [min]
    """

    proof: float = 6.0
    diagonals: float = 1.0
    bevel: float = 1.5
    other_side: float = 0.8
    repeat: float = 0.5
    stop_block: float = 0.3
    straightedge: float = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Crew:
    """What the crew says of its walls, its time and its ways.

    Attributes:
        walls: New or old walls.
        refit_min: To take a misfit off, recut it and fit it again. [min]
        spoiled_min: What the timber spoiled in a misfit is worth, in time. [min]
        batch_saves_min: What cutting in one batch saves at each opening. [min]
        stop_block: True when pairs are cut against a stop block.
        feeler_mm: Step of the feelers with which gaps are read.
        minutes: What each further reading takes.
        slips: Pieces in a hundred spoiled by a slip at the saw or on the wall; None: the crew
            hasn't said. 0 to 50
        assumed: True when the file tells nothing of the crew.
    """

    walls: WallAge = WallAge.NEW
    refit_min: float = 12.0
    spoiled_min: float = 0.0
    batch_saves_min: float = 1.2
    stop_block: bool = False
    feeler_mm: float = 0.05
    minutes: ReadingMinutes = ReadingMinutes()
    slips: float | None = None
    assumed: bool = False

    @property
    def has_our_minutes(self) -> bool:
        """Tell whether the minutes that the break-even rests on are ours, not the crew's own."""
        ours = Crew()
        return (self.refit_min, self.spoiled_min, self.batch_saves_min) == (
            ours.refit_min,
            ours.spoiled_min,
            ours.batch_saves_min,
        )

    @property
    def slips_counted(self) -> float:
        """Pieces in a hundred that are counted as spoiled by a slip: the crew's own, or assumed."""
        return ASSUMED_SLIPS if self.slips is None else self.slips

    @property
    def sure(self) -> float:
        """Return the chance of fitting from which cutting in one batch pays.

        Cutting in a batch saves minutes at every opening and costs a refit and the spoiled timber
        at each that doesn't fit. With a chance p of fitting it pays when the saving is more than
        (1 - p) of that cost, so the two break even at p = 1 - saving / cost.

        Returns:
            Chance, held between 0.5 and 0.99.

        Example:
            >>> Crew(batch_saves_min=1.2, refit_min=12.0).sure
            0.9
            >>> Crew(refit_min=8.0, spoiled_min=4.0, batch_saves_min=3.0).sure
            0.75
        """
        misfit_min = self.refit_min + self.spoiled_min
        if misfit_min <= 0:
            return LEAST_SURE
        return min(max(1.0 - self.batch_saves_min / misfit_min, LEAST_SURE), MOST_SURE)

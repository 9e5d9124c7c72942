"""What is known about a house before the saw starts."""

from dataclasses import dataclass

from longpoint.catalogue.plan_trims import PlannedTrim
from longpoint.errors import Finding
from longpoint.forecast.forecast_house import Outlook
from longpoint.forecast.recut_counts import RecutCount
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.sticks.plan import CutPlan
from longpoint.sticks.spare_sticks import SpareSticks
from longpoint.survey.house import House


@dataclass(frozen=True, slots=True, kw_only=True)
class Spares:
    """What to have spare, and what it rests on.

    Attributes:
        counts: How many pieces of each profile will have to be cut again.
        sticks: The spares for that many, of each profile that is cut.
    """

    counts: tuple[RecutCount, ...] = ()
    sticks: tuple[SpareSticks, ...] = ()

    def count_of(self, profile: str) -> RecutCount | None:
        """Return the count of a profile."""
        return next((count for count in self.counts if count.profile == profile), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class HousePlan:
    """Everything that is known about a house before the saw starts.

    Attributes:
        house: The readings.
        shapes: What they mean.
        pieces: What to cut.
        cut_plan: Out of which sticks.
        findings: What is to be said, the whole house through, in the order of the house.
        held: Marks of openings, runs and trims that get no lengths.
        readings_code: Short code of the readings, the same whenever they are the same.
        trims: Trim other than sets and skirting, with its drawings.
        outlook: How likely each opening is to fit, and what to do first; None: not forecast.
        spares: What to have spare, as things stand.
        spares_if_proved: The same once the saw is proved; None when it is, or without a forecast.
    """

    house: House
    shapes: Shapes
    pieces: tuple[Piece, ...]
    cut_plan: CutPlan
    findings: tuple[Finding, ...]
    held: frozenset[str]
    readings_code: str
    trims: tuple[PlannedTrim, ...] = ()
    outlook: Outlook | None = None
    spares: Spares = Spares()
    spares_if_proved: Spares | None = None

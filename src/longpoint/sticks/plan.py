"""The cut plan: which piece comes out of which stick, in which order."""

from dataclasses import dataclass
from enum import StrEnum

from longpoint.errors import Finding


class StickSource(StrEnum):
    """Where a stick comes from."""

    STOCK = "stock"
    OFFCUT = "offcut"


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """One piece as it lies on its stick.

    Attributes:
        piece: Mark of the piece.
        turned: True when it lies turned end for end (reversible sections only).
        start_mm: From the stick's left end to the leftmost point of the piece. [mm]
        end_mm: From the stick's left end to the rightmost point of the piece. [mm]
    """

    piece: str
    turned: bool = False
    start_mm: float
    end_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CutStick:
    """One stick with its pieces from left to right.

    Attributes:
        name: Short name on the sheets, e.g. "OG57-3".
        profile: Name of the profile.
        length_mm: Length of the stick.
        source: New stock or an offcut from the rack.
        laid: Pieces from the left end to the right.
        used_mm: Length used by trims, pieces, leans and cuts.
        left_mm: What can still be used (0 when nothing can).
    """

    name: str
    profile: str
    length_mm: float
    source: StickSource
    laid: tuple[Laid, ...]
    used_mm: float
    left_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """How good the plan for one profile is known to be.

    Attributes:
        profile: Name of the profile.
        cost: What the plan costs: the sum of prices, or metres bought where a price is missing.
        lower_bound: No plan can cost less than this.
        optimal: True when cost and bound meet.
        unit: "price" or "m".
        solver: Who found it and who proved it, with versions.
    """

    profile: str
    cost: float
    lower_bound: float
    optimal: bool
    unit: str = "m"
    solver: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPlan:
    """Sticks of the whole house in cutting order, and how good they are.

    Attributes:
        sticks: The sticks, those of one profile together.
        proofs: How good the plan of each profile is.
        findings: What is to be said about it.
        unplaced: Marks of pieces that no stick was found for; a finding says why.
    """

    sticks: tuple[CutStick, ...] = ()
    proofs: tuple[Proof, ...] = ()
    findings: tuple[Finding, ...] = ()
    unplaced: tuple[str, ...] = ()

"""The cut plan: which piece comes out of which stick, in which order."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.errors import Finding


class StickSource(StrEnum):
    """Where a stick comes from."""

    STOCK = "stock"
    OFFCUT = "offcut"
    REST = "rest"
    """What is left of a spoiled piece; never of a first plan."""


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
        label: What is written on an offcut from the rack; empty where it has none. Of what is left
            of a spoiled piece, that piece's mark.
    """

    name: str
    profile: str
    length_mm: float
    source: StickSource
    laid: tuple[Laid, ...]
    used_mm: float
    left_mm: float
    label: str = ""


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


SHOWN_MM: Final = 0.5
"""Offcuts are shown to half a millimetre, so no plan that betters one by less is a better one."""


class Goal(StrEnum):
    """What a plan is made for, beside its cost: each while all before it are held."""

    FEW_STICKS = "few-sticks"
    """New sticks opened."""
    LONG_OFFCUT = "long-offcut"
    """The longest length left over, in mm: one long one is worth more than many short ones."""
    BIG_FIRST = "big-first"
    """Sticks that are cut before one with a much bigger piece."""
    TOGETHER = "together"
    """Openings whose pieces come from more than one stick, where the profile asks for one."""
    FEW_SETTINGS = "few-settings"
    """Times that the saw is set anew, among all orders of these sticks and of what lies on them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reached:
    """How far a plan gets with one of its goals.

    Attributes:
        goal: The goal.
        profile: Name of the profile; empty: the whole house.
        value: What the plan has.
        limit: What no plan can better that holds the goals before it, as far as is known.
    """

    goal: Goal
    profile: str = ""
    value: float
    limit: float

    @property
    def is_proved(self) -> bool:
        """True when no plan can do better."""
        if self.goal is Goal.LONG_OFFCUT:
            return self.value > self.limit - SHOWN_MM
        return self.value <= self.limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """The plan for one profile beside every plan that takes its pieces as long-point rectangles.

    Attributes:
        profile: Name of the profile.
        can_turn: Whether its pieces may be turned end for end; nothing is worked out otherwise.
        cost: What the plan costs, as in its `Proof`.
        long_point_bound: No plan by long points costs less; 0 where it isn't worked out.
        unit: "price" or "m".
    """

    profile: str
    can_turn: bool
    cost: float
    long_point_bound: float
    unit: str = "m"

    @property
    def at_least(self) -> float:
        """What is proved to be saved, in its unit. >= 0."""
        return max(0.0, self.long_point_bound - self.cost)


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPlan:
    """Sticks of the whole house in cutting order, and how good they are.

    Attributes:
        sticks: The sticks, those of one profile together.
        proofs: How good the plan of each profile is.
        reached: How far it gets with the goals that follow the cost, in their order.
        savings: What the plan of each profile saves against plans by long points.
        findings: What is to be said about it.
        unplaced: Marks of pieces that no stick was found for; a finding says why.
        code: Six signs for which piece lies where; they stay while all is cut as planned.
    """

    sticks: tuple[CutStick, ...] = ()
    proofs: tuple[Proof, ...] = ()
    reached: tuple[Reached, ...] = ()
    savings: tuple[Saved, ...] = ()
    findings: tuple[Finding, ...] = ()
    unplaced: tuple[str, ...] = ()
    code: str = ""

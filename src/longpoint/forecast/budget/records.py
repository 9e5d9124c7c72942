"""The error budget: one line for each way in which a piece or a reading may be out."""

from dataclasses import dataclass, replace
from enum import StrEnum

from longpoint.forecast.lines import Spread


class Standing(StrEnum):
    """What a figure rests on."""

    SOURCE = "source"
    """A published figure."""
    ASSUMPTION = "assumption"
    """Ours, until the crew's own figures replace it."""
    STATED = "stated"
    """The crew's own word."""
    LEARNED = "learned"
    """From gaps that the crew read on finished work."""


class Cause(StrEnum):
    """What a carpenter could do something about."""

    SAW = "saw"
    CUTS = "single cuts"
    READINGS = "readings"
    TAPE = "tape"
    MARKS = "marking and cutting to length"
    WIDTH = "face width"
    TIMBER = "bow of the timber"
    SHAPE = "shape taken for granted"
    REVEAL = "bow of the reveal"
    FACES = "thickness and lining"


class ErrorName(StrEnum):
    """The lines of a budget."""

    SAW_SCALE = "saw scale"
    """Both swings cut too steep, or both too shallow. [deg]"""
    SAW_FENCE = "saw fence"
    """One swing cuts too steep and the other too shallow by as much. [deg]"""
    STOP_CUT = "cut at the stop"
    """One cut at the saw's 45 stop, by itself. [deg]"""
    HAND_SET_CUT = "cut at a set angle"
    """One cut at an angle set by hand, by itself. [deg]"""
    INSIDE_READING = "inside reading"
    """What one tape reads off on all inside readings. [mm]"""
    MARK_OFFSET = "mark"
    """What all marks at the saw are off by together. [mm]"""
    MARK_AND_CUT = "mark and cut"
    """What one piece's length is off by, by itself. [mm]"""
    FACE_WIDTH = "face width"
    """Between pieces of one batch. [mm]"""
    EDGE_BOW = "edge bow"
    """Sag of a piece once nailed, for a piece of one metre; grows with its square. [mm]"""
    REVEAL_BOW = "reveal bow"
    """Of one side of the reveal, at mid length. [mm]"""
    LEAN = "lean"
    """Of an opening that is taken as square, over its height. [mm]"""
    TAPER = "taper"
    """Between opposite sides of which one was read. [mm]"""
    THICKNESS = "thickness"
    """Between pieces of one batch. [mm]"""
    LIE = "lie of the lining"
    """Between the two pieces at a joint. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetLine:
    """One way of being out.

    Attributes:
        name: Which.
        cause: What it counts under.
        u: Standard uncertainty, in the unit of its name.
        unit: "mm" or "deg".
        spread: Shape of its distribution.
        is_shared: True when it is one and the same all through the house, for its saw or tape.
        bias: What is known of it, in the same unit; it moves the forecast.
        standing: What the figure rests on.
        basis: The same in words.
    """

    name: ErrorName
    cause: Cause
    u: float
    unit: str
    spread: Spread = Spread.NORMAL
    is_shared: bool = False
    bias: float = 0.0
    standing: Standing = Standing.ASSUMPTION
    basis: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ErrorBudget:
    """All lines, one for each name."""

    lines: tuple[BudgetLine, ...]

    def line(self, name: ErrorName) -> BudgetLine:
        """Return the line of a name."""
        return next(line for line in self.lines if line.name is name)

    def u(self, name: ErrorName) -> float:
        """Return the standard uncertainty of a name, in its unit."""
        return self.line(name).u

    def with_line(self, line: BudgetLine) -> "ErrorBudget":
        """Return the budget with one line in the place of that of its name."""
        return ErrorBudget(lines=tuple(line if x.name is line.name else x for x in self.lines))

    def changed(self, name: ErrorName, **changes: object) -> "ErrorBudget":
        """Return the budget with some attributes of one line changed."""
        return self.with_line(replace(self.line(name), **changes))  # type: ignore[arg-type]

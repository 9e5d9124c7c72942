"""How each ink looks; told apart by weight, dash and hatch, so that grey print keeps them apart."""

from dataclasses import dataclass
from typing import Final

from longpoint.sheets.blocks import Ink

TIMBER: Final = "#f3e3c3"
DARK: Final = "#16130f"
PALE: Final = "#5a5a5a"
WHITE: Final = "#ffffff"
BAR_GREY: Final = "#8a8a8a"


@dataclass(frozen=True, slots=True, kw_only=True)
class InkStyle:
    """How outlines of one ink are drawn.

    Attributes:
        fill: Colour inside; None: see-through.
        is_hatched: True when the inside is hatched instead.
        stroke: Colour of the line.
        weight_mm: Its weight; 0: no line.
        dash_mm: Lengths of dash and gap; empty: unbroken.
        has_round_ends: True when dashes end round, as dots do.
    """

    fill: str | None = None
    is_hatched: bool = False
    stroke: str = DARK
    weight_mm: float = 0.0
    dash_mm: tuple[float, ...] = ()
    has_round_ends: bool = False


def ink_style(ink: Ink) -> InkStyle:
    """Return how an ink is drawn."""
    match ink:
        case Ink.PIECE:
            return InkStyle(fill=TIMBER, weight_mm=0.35)
        case Ink.WASTE:
            return InkStyle(is_hatched=True, weight_mm=0.18)
        case Ink.LEFT:
            return InkStyle(fill=WHITE, weight_mm=0.3, dash_mm=(1.6, 0.9))
        case Ink.OPENING:
            return InkStyle(weight_mm=0.45)
        case Ink.TRUE:
            return InkStyle(weight_mm=0.4, dash_mm=(0.05, 0.95), has_round_ends=True)
        case Ink.CUT:
            return InkStyle(weight_mm=0.5)
        case Ink.MARK:
            return InkStyle(stroke=PALE, weight_mm=0.18)
        case Ink.HOOK:
            return InkStyle(fill=DARK)
        case Ink.BAR:
            return InkStyle(fill=BAR_GREY)

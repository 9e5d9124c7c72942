"""A saw setting as it is written on a sheet."""

from typing import Final

from longpoint.pieces.piece import CutKind, EndCut
from longpoint.quantities.formatting import format_angle
from longpoint.sheets.dialects import Words
from longpoint.sticks.saw_setting import SawSetting, Side

NO_BREAK: Final = "\N{NO-BREAK SPACE}"
"""Between a swing and its figure, so that no line ends there."""

_LETTER: Final = {Side.LEFT: "L", Side.RIGHT: "R", Side.SQUARE: ""}


def setting_figure(setting: SawSetting) -> str:
    """Return a setting as printed: "L 45.0", "tilt R 45.0", "square".

    L and R stand for the side to which the handle is swung, or the top of the blade leans.
    """
    parts = []
    if setting.swing is not Side.SQUARE:
        parts.append(f"{_LETTER[setting.swing]}{NO_BREAK}{format_angle(setting.swing_deg)}")
    if setting.tilt is not Side.SQUARE:
        parts.append(f"tilt {_LETTER[setting.tilt]}{NO_BREAK}{format_angle(setting.tilt_deg)}")
    return " + ".join(parts) or "square"


def setting_remarks(setting: SawSetting, cut: EndCut, words: Words) -> tuple[str, ...]:
    """Return what is to be said besides the figure: the dial, and what comes after the cut."""
    lines = []
    if setting.dial_deg is not None and setting.dial_deg != setting.swing_deg:
        lines.append(f"dial {format_angle(setting.dial_deg)}")
    match cut.kind:
        case CutKind.SCRIBE:
            lines.append(words.scribe)
        case CutKind.SCARF:
            lines.append("scarf")
        case CutKind.SQUARE | CutKind.MITRE | CutKind.BEVEL | CutKind.COMPOUND:
            pass
    return tuple(lines)

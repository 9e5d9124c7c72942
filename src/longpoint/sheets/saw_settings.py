"""A saw setting as it is written on a sheet."""

from typing import Final

from longpoint.pieces.piece import CutKind, EndCut
from longpoint.quantities.formatting import format_angle
from longpoint.sheets.dialects import Words
from longpoint.speech.said import joined, say
from longpoint.sticks.order.saw_setting import SawSetting, Side

NO_BREAK: Final = "\N{NO-BREAK SPACE}"
"""Between a swing and its figure, so that no line ends there."""

_LETTER: Final = {Side.LEFT: say("L"), Side.RIGHT: say("R"), Side.SQUARE: ""}


def setting_figure(setting: SawSetting) -> str:
    """Return a setting as printed: "L 45.0", "tilt R 45.0", "square".

    L and R stand for the side to which the handle is swung, or the top of the blade leans.
    """
    parts = []
    if setting.swing is not Side.SQUARE:
        parts.append(
            say(
                "{letter}{no_break}{swing}",
                letter=_LETTER[setting.swing],
                no_break=NO_BREAK,
                swing=format_angle(setting.swing_deg),
            )
        )
    if setting.tilt is not Side.SQUARE:
        parts.append(
            say(
                "tilt {letter}{no_break}{tilt}",
                letter=_LETTER[setting.tilt],
                no_break=NO_BREAK,
                tilt=format_angle(setting.tilt_deg),
            )
        )
    return joined(" + ", parts) or say("square")


def setting_remarks(setting: SawSetting, cut: EndCut, words: Words) -> tuple[str, ...]:
    """Return what is to be said besides the figure: the dial, and what comes after the cut."""
    lines = []
    if setting.dial_deg is not None and setting.dial_deg != setting.swing_deg:
        lines.append(say("dial {dial}", dial=format_angle(setting.dial_deg)))
    match cut.kind:
        case CutKind.SCRIBE:
            lines.append(words.scribe)
        case CutKind.SCARF:
            lines.append(say("scarf"))
        case CutKind.SQUARE | CutKind.MITRE | CutKind.BEVEL | CutKind.COMPOUND:
            pass
    return tuple(lines)

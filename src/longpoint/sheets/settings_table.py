"""Every setting of the saw that a house needs, told once, so that odd ones are no surprise."""

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from typing import Final

from longpoint.quantities.formatting import format_angle
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Table
from longpoint.sheets.saw_settings import NO_BREAK, setting_figure
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.order.saw_order import SettingUse
from longpoint.sticks.order.saw_setting import Side

COLUMNS: Final = (
    Column(title=say("Angle"), share=2.0),
    Column(title=say("L: ends"), share=2.0),
    Column(title=say("R: ends"), share=2.0),
    Column(title=say("Pieces set by hand"), share=6.0),
)


def settings_blocks(settings: Sequence[SettingUse]) -> tuple[Block, ...]:
    """Return the table of settings, a line for each angle; nothing where nothing is cut."""
    if not settings:
        return ()
    by_angle: dict[str, list[SettingUse]] = {}
    for use in settings:
        by_angle.setdefault(_angle(use), []).append(use)
    rows = tuple(row for angle, uses in by_angle.items() for row in _rows(angle, uses))
    return (
        Heading(text=say("Settings in this house")),
        Table(columns=COLUMNS, rows=rows, is_close=True),
    )


def ends_words(settings: Sequence[SettingUse]) -> str:
    """Return how many ends are cut at 45, square and at other angles.

    Where the saw's own 45 doesn't cut 45, the stops are of no use and that is said.
    """
    at_45 = [use for use in settings if use.is_at_45]
    square = sum(use.count for use in settings if use.is_square)
    odd = sum(use.count for use in settings) - square - sum(use.count for use in at_45)
    stops = (
        say("on the 45 stops")
        if not any(map(_is_off_scale, at_45))
        else say("at 45, by the dial figure")
    )
    return say(
        "{counted} {stops}, {square} square, {odd} at angles set by hand",
        counted=say_many("{count} end", "{count} ends", count=sum(use.count for use in at_45)),
        stops=stops,
        square=square,
        odd=odd,
    )


def _rows(angle: str, uses: Sequence[SettingUse]) -> Iterator[tuple[str | Cell, ...]]:
    """Give the line of an angle; a second one where its dial figure falls to two tenths."""
    if uses[0].is_square:
        yield (
            Cell(text=angle, behind=say_many("{count} end", "{count} ends", count=uses[0].count)),
            "",
            "",
            "",
        )
        return
    left = [use for use in uses if _side(use) is Side.LEFT]
    right = [use for use in uses if _side(use) is Side.RIGHT]
    for pair in zip_longest(left, right):
        by_hand = [use for use in pair if use and not use.is_at_45]
        marks = dict.fromkeys(mark for use in by_hand for mark in use.pieces)
        yield (Cell(text=angle), *map(_ends, pair), Cell(small=(joined(", ", marks),)))


def _angle(use: SettingUse) -> str:
    setting = use.setting
    if setting.swing is not Side.SQUARE and setting.tilt is not Side.SQUARE:
        return setting_figure(setting)
    if setting.tilt is not Side.SQUARE:
        return say("tilt {tilt}", tilt=format_angle(setting.tilt_deg))
    return say("square") if use.is_square else format_angle(setting.swing_deg)


def _side(use: SettingUse) -> Side:
    return use.setting.tilt if use.setting.swing is Side.SQUARE else use.setting.swing


def _ends(use: SettingUse | None) -> str | Cell:
    if use is None:
        return ""
    dial = use.setting.dial_deg
    said = "" if dial is None else say("dial {dial}", dial=format_angle(dial))
    return Cell(text=say("{count}", count=use.count), behind=said.replace(" ", NO_BREAK))


def _is_off_scale(use: SettingUse) -> bool:
    setting = use.setting
    return setting.dial_deg is not None and setting.dial_deg != setting.swing_deg

"""Any sheet as plain text: for a terminal, a message, or a reader of screens."""

import textwrap
from typing import Final

from longpoint.sheets.blocks import (
    Beside,
    Blank,
    Block,
    Cell,
    Drawing,
    Heading,
    Note,
    Paragraph,
    Sheet,
    SheetState,
    Table,
    Together,
)
from longpoint.sheets.html import VOID
from longpoint.sheets.in_tongue import spoken

WIDTH: Final = 78
_LEAST_COLUMN: Final = 6
_BLANKS: Final = {Blank.TICK: "[ ]", Blank.LINE: "________"}


def sheet_text(sheet: Sheet, width: int = WIDTH) -> str:
    """Return a sheet as text, no line longer than the width where words allow it.

    Args:
        sheet: The sheet.
        width: Signs in a line. >= 40
    """
    sheet = spoken(sheet)
    lines = [f"{sheet.house}: {sheet.title}"]
    lines.append("=" * min(width, len(lines[0])))
    lines += _wrapped(f"{sheet.made_from} {sheet.readings_code}. {sheet.subtitle}".strip(), width)
    if sheet.state is SheetState.STALE:
        lines.append(sheet.tongue.text(VOID))
    for block in sheet.blocks:
        lines += ["", *_block(block, width)]
    if sheet.cautions:
        lines.append("")
        for caution in sheet.cautions:
            lines += _wrapped(f"- {caution}", width)
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _block(block: Block, width: int) -> list[str]:
    match block:
        case Heading():
            return [block.text, "-" * min(width, len(block.text))]
        case Paragraph():
            return _wrapped(f"{block.lead} {block.text}".strip(), width)
        case Note():
            ask = f" {block.ask} ________" if block.ask else ""
            return _wrapped(f"{block.title}: {block.text} {block.small}{ask}".strip(), width)
        case Drawing():
            return _wrapped(block.described or block.caption, width)
        case Table():
            return _table(block, width)
        case Beside():
            parts: tuple[Block, ...] = (*block.left, *block.right)
            return _several(parts, width)
        case Together():
            return _several(block.blocks, width)


def _several(blocks: tuple[Block, ...], width: int) -> list[str]:
    lines: list[str] = []
    for block in blocks:
        lines += [*([""] if lines else []), *_block(block, width)]
    return lines


def _table(table: Table, width: int) -> list[str]:
    titles = [column.title for column in table.columns]
    cells = [[_cell(cell) for cell in row] for row in table.rows]
    widths = _widths([titles, *cells], [column.is_number for column in table.columns], width)
    groups, steps, under = dict(table.groups), dict(table.steps), dict(table.under)
    lines = _wrapped(table.caption, width) if table.caption else []
    if any(titles):
        lines += [*_row(titles, widths, table), "  ".join("-" * each for each in widths)]
    for index, (row, texts) in enumerate(zip(table.rows, cells, strict=True)):
        if index in groups:
            lines += [groups[index]]
        lines += _row(texts, widths, table)
        small = [line for cell in row if isinstance(cell, Cell) for line in cell.small]
        for told in (*small, *steps.get(index, ()), *([under[index]] if index in under else [])):
            lines += _wrapped(f"  {told}", width, indent="  ")
    return lines


def _cell(cell: str | Cell) -> str:
    if isinstance(cell, str):
        return cell
    blank = _BLANKS[cell.blank] if cell.blank else ""
    return " ".join(part for part in (cell.text, cell.behind, blank) if part)


def _widths(rows: list[list[str]], numbers: list[bool], width: int) -> list[int]:
    """Return widths in which figures stand whole, and words take what is left."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    longest = [
        max((len(word) for text in column for word in text.split()), default=1)
        for column in zip(*rows, strict=True)
    ]
    for is_number in (False, True):
        room = width - 2 * (len(widths) - 1)
        while sum(widths) > room:
            able = [
                index
                for index, each in enumerate(widths)
                if numbers[index] is is_number and each > max(_LEAST_COLUMN, longest[index])
            ]
            if not able:
                break
            widths[max(able, key=lambda index: widths[index])] -= 1
    return widths


def _row(texts: list[str], widths: list[int], table: Table) -> list[str]:
    parts = [
        textwrap.wrap(text, each, break_long_words=False) or [""]
        for text, each in zip(texts, widths, strict=True)
    ]
    lines = []
    for number in range(max(map(len, parts))):
        line = []
        for part, each, column in zip(parts, widths, table.columns, strict=True):
            text = part[number] if number < len(part) else ""
            line.append(text.rjust(each) if column.is_number else text.ljust(each))
        lines.append("  ".join(line))
    return lines


def _wrapped(text: str, width: int, indent: str = "") -> list[str]:
    return textwrap.wrap(text, width, subsequent_indent=indent) or []

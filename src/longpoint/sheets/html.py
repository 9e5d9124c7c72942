"""A sheet as one HTML page that needs nothing beside itself: no scripts, no fonts, no net."""

from html import escape

from longpoint.errors import Severity
from longpoint.sheets.blocks import (
    Beside,
    Blank,
    Block,
    Cell,
    Column,
    Drawing,
    Heading,
    Note,
    Paragraph,
    Sheet,
    SheetState,
    Table,
    Together,
)
from longpoint.sheets.html_style import STYLE
from longpoint.sheets.in_tongue import spoken
from longpoint.sheets.svg import drawing_svg
from longpoint.sheets.text_width import LONG_WORD, word_parts
from longpoint.speech.said import say

VOID = say("VOID - READINGS HAVE CHANGED")
CARDS_FROM = 5
"""A table with this many columns turns into cards on a phone."""
WIDE_MM = 120.0
"""A drawing wider than this keeps its size on a phone and is pushed sideways."""


def sheet_html(sheet: Sheet) -> str:
    """Return a sheet as a page for screen, phone and printer.

    Args:
        sheet: The sheet.

    Returns:
        The whole document. Everything that came from a house file is escaped.
    """
    sheet, said = spoken(sheet), sheet.tongue.text
    title = f"{sheet.title} - {sheet.house}"
    void = _void(said(VOID)) if sheet.state is SheetState.STALE else ""
    blocks = "\n".join(_block(block) for block in sheet.blocks)
    return (
        f'<!doctype html>\n<html lang="{sheet.tongue.code}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>{STYLE}{_page_rules(sheet)}</style>\n</head>\n<body>\n"
        f"{void}{_header(sheet)}\n<main>\n{blocks}\n</main>\n{_footer(sheet)}</body>\n</html>\n"
    )


def _header(sheet: Sheet) -> str:
    said = sheet.tongue.text
    state = said(say("current") if sheet.state is SheetState.CURRENT else VOID)
    replaces, date = said(say("replaces")), said(say("date"))
    subtitle = f"<p>{escape(sheet.subtitle)}</p>" if sheet.subtitle else ""
    return (
        f'<header>\n<p class="house">{escape(sheet.house)}</p>\n'
        f"<h1>{escape(sheet.title)}</h1>\n{subtitle}\n"
        f'<p class="by"><span>{escape(sheet.made_from)} <b>{escape(sheet.readings_code)}</b></span>'
        f"<span>{escape(state)}</span>"
        f'<span>{escape(replaces)} <span class="hand">&nbsp;</span></span>'
        f'<span>{escape(date)} <span class="hand">&nbsp;</span></span></p>\n</header>'
    )


def _page_rules(sheet: Sheet) -> str:
    """Return what stands in the margin of every printed page."""
    said = sheet.tongue.text
    state = "" if sheet.state is SheetState.CURRENT else f" {said(VOID)}"
    page, of = said(say("page")), said(say("of"))
    replaces = f"{said(say('replaces'))} ...................."
    code = f"{sheet.made_from} {sheet.readings_code}{state}"
    return (
        f"@page {{ @top-left {{ content: {_css_text(sheet.house)}; }} "
        f"@top-right {{ content: {_css_text(code)}; }} "
        f"@bottom-left {{ content: {_css_text(replaces)}; }} "
        f"@bottom-right {{ content: {_css_text(f'{sheet.title}, {page} ')} counter(page) "
        f"{_css_text(f' {of} ')} counter(pages); }} }}\n"
    )


def _css_text(text: str) -> str:
    """Return a text as a CSS string in which no sign can end the string or the style."""
    plain = (sign if sign.isalnum() or sign in " .,-" else f"\\{ord(sign):x} " for sign in text)
    return f'"{"".join(plain)}"'


def _void(words: str) -> str:
    return f'<div class="void"></div><div class="voided"><b>{escape(words)}</b></div>\n'


def _footer(sheet: Sheet) -> str:
    if not sheet.cautions:
        return ""
    lines = "".join(f"<li>{escape(caution)}</li>" for caution in sheet.cautions)
    return f"<footer><ul>{lines}</ul></footer>\n"


def _block(block: Block) -> str:
    match block:
        case Heading():
            level = 3 if block.level > 2 else 2
            return f"<h{level}>{escape(block.text)}</h{level}>"
        case Paragraph():
            return _paragraph(block)
        case Note():
            return _note(block)
        case Table():
            return _table(block)
        case Drawing():
            caption = f"<figcaption>{escape(block.caption)}</figcaption>" if block.caption else ""
            wide = ' class="wide"' if block.width_mm > WIDE_MM else ""
            return f"<figure{wide}>{drawing_svg(block)}{caption}</figure>"
        case Beside():
            left = "".join(_block(part) for part in block.left)
            right = "".join(_block(part) for part in block.right)
            split = f"{block.left_share:.2f}fr {1 - block.left_share:.2f}fr"
            return (
                f'<div class="beside" style="--split: {split}">'
                f"<div>{left}</div><div>{right}</div></div>"
            )
        case Together():
            return f'<div class="together">{"".join(_block(part) for part in block.blocks)}</div>'


def _paragraph(paragraph: Paragraph) -> str:
    lead = f"<b>{escape(paragraph.lead)}</b> " if paragraph.lead else ""
    words = f"{lead}{escape(paragraph.text)}"
    names = ["said"] if paragraph.is_small else []
    if paragraph.picture is not None:
        words = f"{drawing_svg(paragraph.picture)}<span>{words}</span>"
        names.append("pair")
    kind = f' class="{" ".join(names)}"' if names else ""
    return f"<p{kind}>{words}</p>"


def _note(note: Note) -> str:
    role = ' role="alert"' if note.severity is Severity.STOP else ""
    ask = (
        f'<span class="ask"><span class="tick"></span>{escape(note.ask)}'
        '<span class="line"></span></span>'
        if note.ask
        else ""
    )
    small = f'<span class="small">{escape(note.small)}</span>' if note.small else ""
    return (
        f'<div class="note {note.severity.value}"{role}><strong>{escape(note.title)}</strong>'
        f"{escape(note.text)}{small}{ask}</div>"
    )


def _table(table: Table) -> str:
    caption = f"<caption>{escape(table.caption)}</caption>" if table.caption else ""
    total = sum(column.share for column in table.columns)
    widths = (
        "<colgroup>"
        + "".join(f'<col style="width: {c.share / total:.1%}">' for c in table.columns)
        + "</colgroup>"
        if total
        else ""
    )
    heads = "".join(
        f'<th scope="col"{_class(column)}>{escape(column.title)}</th>' for column in table.columns
    )
    groups, steps, under = dict(table.groups), dict(table.steps), dict(table.under)
    rows = []
    for index, row in enumerate(table.rows):
        if index in groups:
            rows.append(
                f'<tr class="group"><th scope="rowgroup" colspan="{len(table.columns)}">'
                f"{escape(groups[index])}</th></tr>"
            )
        cells = "".join(
            _cell(cell, column) for cell, column in zip(row, table.columns, strict=True)
        )
        rows.append(f"<tr>{cells}</tr>")
        if index in steps or index in under:
            span = len(table.columns)
            below = "".join(f'<p class="step">{escape(step)}</p>' for step in steps.get(index, ()))
            below += escape(under.get(index, ""))
            rows.append(f'<tr class="under"><td colspan="{span}">{below}</td></tr>')
    names = [*(["cards"] if len(table.columns) >= CARDS_FROM else [])]
    names += ["close"] if table.is_close else []
    names += ["told"] if table.under_is_said else []
    kind = f' class="{" ".join(names)}"' if names else ""
    body = "\n".join(rows)
    return (
        f"<table{kind}>{caption}{widths}<thead><tr>{heads}</tr></thead>\n"
        f"<tbody>\n{body}\n</tbody></table>"
    )


def _cell(cell: str | Cell, column: Column) -> str:
    title = f' data-title="{escape(column.title)}"'
    if isinstance(cell, str):
        return f"<td{_class(column)}{title}><span>{_words(cell)}</span></td>"
    return f"<td{_class(column, cell)}{title}>{_cell_content(cell)}</td>"


def _cell_content(cell: Cell) -> str:
    small = "".join(f'<span class="small">{_words(line)}</span>' for line in cell.small)
    tick = '<span class="tick"></span>' if cell.blank is Blank.TICK else ""
    line = '<span class="line"></span>' if cell.blank is Blank.LINE else ""
    behind = f' <span class="behind">{escape(cell.behind)}</span>' if cell.behind else ""
    main = (
        f'<span class="main">{tick}{_mark(cell.text)}{behind}</span>' if cell.text or tick else ""
    )
    words = f"<span>{main}{small}{line}</span>"
    if cell.picture is None:
        return words
    picture = drawing_svg(cell.picture)
    if cell.picture_last:
        return f'<span class="pair last">{words}{picture}</span>'
    return f'<span class="pair">{picture}{words}</span>'


def _mark(text: str) -> str:
    """Return a cell's main text: in one piece where it is short, so that a mark never breaks."""
    if 0 < len(text) <= LONG_WORD:
        return f'<span class="one">{escape(text)}</span>'
    return _words(text)


def _words(text: str) -> str:
    """Return a text in which only very long words may break, and those where a sheet of paper does.

    Example:
        >>> _words("window"), _words("x" * 20)
        ('window', 'xxxxxxxxxxxxxxxx<wbr>xxxx')
    """
    return " ".join("<wbr>".join(map(escape, word_parts(word))) for word in text.split(" "))


def _class(column: Column, cell: Cell | None = None) -> str:
    names = []
    if column.is_number:
        names.append("n")
    if column.is_key or (cell and cell.is_key):
        names.append("key")
    if cell and cell.picture:
        names.append("end")
    if cell and cell.blank is Blank.TICK:
        names.append("no")
    if cell and cell.blank is Blank.LINE:
        names.append("write")
    return f' class="{" ".join(names)}"' if names else ""

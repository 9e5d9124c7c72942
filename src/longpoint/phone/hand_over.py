"""A house from one phone to another: its journal as a text, and as a run of coded pictures.

The text is what is kept, entry by entry, so nothing is lost on the way: readings that another took
the place of, undone ones, what happened at the saw. The pictures are for where there is no network
and no cable: numbered parts, each with the sum of the whole, read in any order off the screen.
"""

import base64
import binascii
import json
import re
import zlib
from collections.abc import Callable, Iterable, Sequence
from typing import Any, Final

from longpoint.errors import SurveyError
from longpoint.journal import WHY_REFUSED, Entry, checked_entry, furthest_ahead, in_order
from longpoint.phone.messages.files import HandOver, Joined
from longpoint.survey.house_file.parsed_text import LARGEST_FILE_BYTES, refuse_size

FORMAT: Final = "longpoint-journal/1"
PART_SIGNS: Final = 640
"""So many signs a picture: its squares are large enough for a phone held by hand, by trial."""
MOST_PARTS: Final = 40
"""More pictures than this and a file is quicker: our choice."""

Modules = Callable[[str], Sequence[Sequence[int]]]
"""What draws a code: a text in, its rows of dark (1) and light (0) squares out."""

_PART: Final = re.compile(r"^LPJ1\.([0-9A-F]{8})\.(\d{1,3})\.(\d{1,3})\.([A-Z2-7]+)$")
_QUIET: Final = 4
"""Light squares round a code, which it can't be read without (ISO/IEC 18004, from memory)."""


def journal_text(entries: Iterable[Entry]) -> str:
    """Return the journal of a house as the text of a file."""
    found = {"format": FORMAT, "entries": in_order(entries)}
    return json.dumps(found, ensure_ascii=False, separators=(",", ":"))


def journal_in(document: dict[str, Any], highest: int) -> tuple[Entry, ...]:
    """Return the entries of a journal's file, every one of them checked.

    Args:
        document: The file, parsed.
        highest: The highest count of any device on the phone that opens it; 0 where there is none.

    Raises:
        SurveyError: One of them is no entry or too far ahead, or they are of more than one house,
            or of none.
    """
    found = document.get("entries")
    entries = [checked_entry(each) for each in found] if isinstance(found, list) else []
    houses = {entry["house"] for entry in entries}
    if len(houses) != 1:
        raise SurveyError(
            f"A journal was opened; it holds {len(entries)} entries of {len(houses)} houses.",
            "It has to be of one house.",
            "Hand the house over once more from the other phone.",
        )
    far = furthest_ahead(entries, highest)
    if far is not None:
        raise SurveyError(
            f"A journal was opened; entry {far['counter']} of {far['device']} is in it.",
            WHY_REFUSED,
            "Nothing of it was taken, and all that is on this phone stays. If the crew has a "
            "laptop, share with that first and open it again; else begin a new journal on the "
            "phone that wrote it, and read there again what is missing here.",
        )
    return in_order(entries)


def parts_of(text: str) -> tuple[str, ...]:
    """Return a text as numbered parts, each short enough for one picture.

    Example:
        >>> parts_of("W1")[0][:18]
        'LPJ1.E5FDD956.1.1.'
    """
    data = text.encode()
    coded = base64.b32encode(zlib.compress(data, 9)).decode().rstrip("=")
    pieces = [coded[at : at + PART_SIGNS] for at in range(0, len(coded), PART_SIGNS)]
    total = f"{zlib.crc32(data):08X}"
    return tuple(
        f"LPJ1.{total}.{number}.{len(pieces)}.{piece}"
        for number, piece in enumerate(pieces, start=1)
    )


def handed_over(entries: Sequence[Entry], modules: Modules | None) -> HandOver:
    """Return what hands a house over: its journal's text, and pictures where they are few enough.

    Args:
        entries: Its journal.
        modules: Draws a code; None: no pictures.
    """
    text = journal_text(entries)
    parts = parts_of(text)
    are_few = modules is not None and len(parts) <= MOST_PARTS
    return HandOver(
        text=text,
        count=len(parts),
        pictures=tuple(code_svg(modules(part)) for part in parts) if modules and are_few else (),
    )


def joined(parts: Iterable[str]) -> Joined:
    """Return the text that parts make up, or which of them are still missing.

    Args:
        parts: As they were read, in any order, any of them twice.

    Raises:
        SurveyError: One is no part of a house, they are of two, or the whole is damaged.

    Example:
        >>> joined(parts_of("W1")).text
        'W1'
    """
    found: dict[int, str] = {}
    totals, counts = set(), set()
    for part in parts:
        match = _PART.match(part.strip())
        if match is None:
            raise _refused("It is no picture of a house that longpoint showed.")
        totals.add(match[1])
        counts.add(int(match[3]))
        found[int(match[2])] = match[4]
    if len(totals) > 1 or len(counts) > 1:
        raise _refused("They are of two houses, or of one house at two times.")
    count = counts.pop() if counts else 0
    missing = tuple(number for number in range(1, count + 1) if number not in found)
    if missing or not count:
        return Joined(count=count, missing=missing, text="")
    coded = "".join(found[number] for number in range(1, count + 1))
    return Joined(count=count, missing=(), text=_text_of(coded, totals.pop()))


def code_svg(rows: Sequence[Sequence[int]]) -> str:
    """Return a code as a drawing: black on white whatever the screen's light, with its quiet edge.

    Example:
        >>> "h2v1h-2z" in code_svg([[1, 1, 0]])
        True
    """
    wide, high = len(rows[0]) + 2 * _QUIET, len(rows) + 2 * _QUIET
    path = []
    for y, row in enumerate(rows):
        x = 0
        while x < len(row):
            run = 0
            while x + run < len(row) and row[x + run]:
                run += 1
            if run:
                path.append(f"M{x + _QUIET} {y + _QUIET}h{run}v1h-{run}z")
            x += run + 1
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" role="img" '
        'aria-label="Code for another phone" shape-rendering="crispEdges">'
        f'<path fill="#fff" d="M0 0h{wide}v{high}H0z"/>'
        f'<path fill="#000" d="{"".join(path)}"/></svg>'
    )


def _text_of(coded: str, total: str) -> str:
    try:
        packed = base64.b32decode(coded + "=" * (-len(coded) % 8))
        unpacking = zlib.decompressobj()
        data = unpacking.decompress(packed, LARGEST_FILE_BYTES + 1)
        refuse_size(len(data), "What the pictures hold")
        text = data.decode()
    except (ValueError, binascii.Error, zlib.error):
        raise _refused("They are damaged.") from None
    if f"{zlib.crc32(data):08X}" != total:
        raise _refused("They don't add up to what was shown.")
    return text


def _refused(wrong: str) -> SurveyError:
    return SurveyError(
        "Pictures of a house were read off another phone.",
        wrong,
        "Begin again with the first picture, or hand the house over as a file.",
    )

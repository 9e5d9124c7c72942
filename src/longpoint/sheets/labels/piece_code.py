"""What the QR code of a label says: which piece, of which readings.

It names no host: whatever reads it looks the piece up in the plan that it has.
"""

from typing import Final

from longpoint.errors import SheetError

KIND: Final = "longpoint:1"
LONGEST: Final = 120


def piece_code(readings_code: str, mark: str) -> str:
    """Return the text of a piece's QR code.

    Example:
        >>> piece_code("XPGPPW", "W1-head")
        'longpoint:1:XPGPPW:W1-head'
    """
    return f"{KIND}:{readings_code}:{mark}"


def read_piece_code(text: str) -> tuple[str, str]:
    """Return the readings' code and the mark that a QR code names.

    Raises:
        SheetError: It is another kind of code, or one of a later version.

    Example:
        >>> read_piece_code("longpoint:1:XPGPPW:W1-head")
        ('XPGPPW', 'W1-head')
    """
    start = f"{KIND}:"
    code, _, mark = text.strip()[len(start) :].partition(":")
    if not text.strip().startswith(start) or not code or not mark or len(text) > LONGEST:
        raise SheetError(
            f"The code says {text[:40]!r}.",
            "It is no label of a piece, or of a later version of this program.",
            "Scan the square code on a piece's label.",
        )
    return code, mark

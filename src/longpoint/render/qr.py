"""QR codes as rows of modules, for the labels."""

import segno


def qr_modules(text: str) -> tuple[tuple[bool, ...], ...]:
    """Return a text as the modules of a QR code, without its quiet zone.

    A whole QR code of level M, never a Micro one, which many phones can't read.

    Args:
        text: What it says, short.

    References:
        ISO/IEC 18004.
    """
    code = segno.make(text, error="m", micro=False, boost_error=True)
    return tuple(tuple(bool(module) for module in row) for row in code.matrix)

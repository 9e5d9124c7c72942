"""Papers that a sheet is set on."""

from enum import StrEnum


class Paper(StrEnum):
    """Paper of the PDF."""

    A4 = "a4"
    US_LETTER = "us-letter"

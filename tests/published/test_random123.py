"""Known answers of the counter-based generator Philox.

Source: known answers of the distribution of Random123 for `philox4x32` with 10 rounds (Salmon,
Moraes, Dror, Shaw, "Parallel random numbers: as easy as 1, 2, 3", 2011). Read in the tests of
several open libraries that repeat them, all alike; not in the distribution itself. The third
counter and key are digits of pi.
"""

import pytest

from longpoint.forecast.stream import philox

ALL = 0xFFFFFFFF


@pytest.mark.parametrize(
    ("counter", "key", "published"),
    [
        ((0, 0, 0, 0), (0, 0), (0x6627E8D5, 0xE169C58D, 0xBC57AC4C, 0x9B00DBD8)),
        ((ALL, ALL, ALL, ALL), (ALL, ALL), (0x408F276D, 0x41C83B0E, 0xA20BC7C6, 0x6D5451FD)),
        (
            (0x243F6A88, 0x85A308D3, 0x13198A2E, 0x03707344),
            (0xA4093822, 0x299F31D0),
            (0xD16CFE09, 0x94FDCCEB, 0x5001E420, 0x24126EA1),
        ),
    ],
)
def test_four_words_of_32_bits_after_ten_rounds_are_the_published_ones(
    counter: tuple[int, int, int, int],
    key: tuple[int, int],
    published: tuple[int, int, int, int],
) -> None:
    assert philox(counter, key) == published

"""Give the readings of a house a short code, to be printed on every sheet made from them."""

import hashlib
import json
from typing import Final

from longpoint.survey.house import House
from longpoint.survey.house_file.document import house_document

CODE_SIGNS: Final = "34679ACDEFGHJKMNPQRTWXY"
"""No sign that is taken for another when written by hand: no 0 O, 1 I L, 2 Z, 5 S, 8 B, U V."""
CODE_LENGTH: Final = 6


def readings_code(house: House) -> str:
    """Return a short code of a house as read, the same whenever the house is the same.

    Six signs out of 23, so two different houses share one by chance once in 148 million.

    Example:
        >>> from longpoint.survey.house_file.reader import read_house
        >>> house = read_house({"format": "longpoint-house/1", "name": "Wren House"}).house
        >>> code = readings_code(house)
        >>> len(code), set(code) <= set(CODE_SIGNS)
        (6, True)
    """
    held = [[entry.kind.value, entry.mark, entry.room] for entry in house.held]
    text = json.dumps([house_document(house), held], sort_keys=True, separators=(",", ":"))
    number = int.from_bytes(hashlib.sha256(text.encode()).digest(), "big")
    signs = []
    for _ in range(CODE_LENGTH):
        number, sign = divmod(number, len(CODE_SIGNS))
        signs.append(CODE_SIGNS[sign])
    return "".join(signs)

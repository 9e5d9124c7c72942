"""Give the readings of a house a short code, to be printed on every sheet made from them."""

import hashlib
import json
from dataclasses import replace
from typing import Final

from longpoint.survey.crew import Crew
from longpoint.survey.fixing import FixingSetup
from longpoint.survey.handover import Handover
from longpoint.survey.house import House
from longpoint.survey.house_file.document import house_document
from longpoint.survey.season import HouseSeasons

CODE_SIGNS: Final = "34679ACDEFGHJKMNPQRTWXY"
"""No sign that is taken for another when written by hand: no 0 O, 1 I L, 2 Z, 5 S, 8 B, U V."""
CODE_LENGTH: Final = 6


def readings_code(house: House) -> str:
    """Return a short code of a house as read, the same whenever the same pieces are cut.

    What is written down once a set is up, and what only a forecast is made from, changes no piece
    and is left out: sheets don't go void because gaps were read, a supplier was named or a section
    was drawn. So are offcuts with a label: they come from the crew's rack, which changes from house
    to house, not from what was read.

    Six signs out of 23, so two different houses share one by chance once in 148 million.

    Example:
        >>> from longpoint.survey.house_file.reader import read_house
        >>> house = read_house({"format": "longpoint-house/1", "name": "Wren House"}).house
        >>> code = readings_code(house)
        >>> len(code), set(code) <= set(CODE_SIGNS)
        (6, True)
    """
    held = [[entry.kind.value, entry.mark, entry.room] for entry in house.held]
    text = json.dumps([house_document(_as_cut(house)), held], sort_keys=True, separators=(",", ":"))
    return short_code(hashlib.sha256(text.encode()).digest())


def short_code(digest: bytes) -> str:
    """Return the six signs that stand for a sum over something.

    Example:
        >>> short_code(bytes([1, 0]))
        '7H3333'
    """
    number = int.from_bytes(digest, "big")
    signs = []
    for _ in range(CODE_LENGTH):
        number, sign = divmod(number, len(CODE_SIGNS))
        signs.append(CODE_SIGNS[sign])
    return "".join(signs)


def _as_cut(house: House) -> House:
    """Return a house without what changes no piece."""
    return replace(
        house,
        saw_tape="",
        stock=tuple(replace(stick, supplier="", code="") for stick in house.stock),
        offcuts=tuple(offcut for offcut in house.offcuts if not offcut.label),
        crew=Crew(assumed=True),
        seasons=HouseSeasons(assumed=True),
        fixing=FixingSetup(assumed=True),
        profiles=tuple(
            replace(profile, thin_edge_mm=None, section=()) for profile in house.profiles
        ),
        handover=Handover(assumed=True),
        defects=(),
        saw=replace(house.saw, blade="", setting="", dialled_left_deg=0.0, dialled_right_deg=0.0),
        openings=tuple(
            replace(opening, tap_room_mm=None, as_built=None, as_built_b=None)
            for opening in house.openings
        ),
    )

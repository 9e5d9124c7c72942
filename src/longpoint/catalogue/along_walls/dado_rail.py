"""Dado rails."""

from typing import Final

from longpoint.catalogue.along_walls.rail_keys import RAIL_KEYS
from longpoint.catalogue.along_walls.rails import plan_rail
from longpoint.catalogue.trim import TrimKind
from longpoint.speech.said import say

TRIM: Final = TrimKind(
    name="dado-rail",
    title=say("a dado rail"),
    asks=RAIL_KEYS,
    plan=plan_rail,
    needs_room=True,
)

"""The kinds of trim that there are, in the order in which the pages list them."""

from collections.abc import Iterable
from typing import Final

from longpoint.catalogue.along_walls import cover_bead, dado_rail, picture_rail
from longpoint.catalogue.bays import bay
from longpoint.catalogue.cornice import cornice
from longpoint.catalogue.panels import panelling
from longpoint.catalogue.reveals import (
    door_stop,
    extension_lining,
    jamb_lining,
    splayed_lining,
)
from longpoint.catalogue.shelves import shelf
from longpoint.catalogue.stairs import handrail, stair_skirting
from longpoint.catalogue.trim import TrimKind
from longpoint.survey.house_file.trim_tables import TrimTables, trim_table

CATALOGUE: Final[tuple[TrimKind, ...]] = (
    extension_lining.TRIM,
    jamb_lining.TRIM,
    splayed_lining.TRIM,
    door_stop.TRIM,
    bay.TRIM,
    cover_bead.TRIM,
    dado_rail.TRIM,
    picture_rail.TRIM,
    cornice.TRIM,
    stair_skirting.TRIM,
    handrail.TRIM,
    panelling.TRIM,
    shelf.TRIM,
)


def trim_tables(kinds: Iterable[TrimKind] = CATALOGUE) -> TrimTables:
    """Return what the house file may hold behind each kind, for its reader and its schema."""
    return {kind.name: trim_table(kind.title, kind.asks) for kind in kinds}

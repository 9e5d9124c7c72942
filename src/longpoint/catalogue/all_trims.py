"""The kinds of trim that there are, in the order in which the pages list them."""

from collections.abc import Iterable
from typing import Final

from longpoint.catalogue.trim import TrimKind
from longpoint.survey.house_file.trim_tables import TrimTables, trim_table

CATALOGUE: Final[tuple[TrimKind, ...]] = ()


def trim_tables(kinds: Iterable[TrimKind] = CATALOGUE) -> TrimTables:
    """Return what the house file may hold behind each kind, for its reader and its schema."""
    return {kind.name: trim_table(kind.title, kind.asks) for kind in kinds}

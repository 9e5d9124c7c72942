"""Rows of the reference values that lie beside the checkout."""

import csv
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One reference value.

    Attributes:
        value: As written; several figures are parted by semicolons.
        how_known: "read" or "memory".
    """

    value: str
    how_known: str

    def numbers(self) -> list[float]:
        """Return the figures of the value."""
        return [float(part) for part in self.value.split(";")]


def rows(shared: Path) -> dict[str, Row]:
    """Return every row by its id."""
    path = shared / "reference" / "published-values.csv"
    with path.open(encoding="utf-8", newline="") as file:
        return {
            line["id"]: Row(value=line["value"], how_known=line["how_known"])
            for line in csv.DictReader(file)
        }

"""Whether the forecast tells the truth: chances it gave beside what became of simulated houses.

`python -m tests.calibration` prints the tables of `docs/explanation/calibration.md`; with
`--write` it puts them there. `--houses 4000` counts more of them.
"""

import argparse
from pathlib import Path

from tests.calibration.tables import (
    Counts,
    tables,
)

PAGE = Path(__file__).parents[2] / "docs" / "explanation" / "calibration.md"
BEGIN, END = "<!-- tables: begin -->", "<!-- tables: end -->"


def main() -> None:
    """Print the tables, or write them into the page."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--houses", type=int, default=Counts().houses)
    asked.add_argument("--write", action="store_true")
    words = asked.parse_args()
    made = tables(Counts(houses=words.houses))
    if not words.write:
        print(made)  # noqa: T201
        return
    text = PAGE.read_text(encoding="utf-8")
    before, after = text.split(BEGIN)[0], text.split(END)[1]
    PAGE.write_text(f"{before}{BEGIN}\n{made}\n{END}{after}", encoding="utf-8")


if __name__ == "__main__":
    main()

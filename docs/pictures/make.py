"""Makes the pictures of the README from the example house; `make pictures` runs it."""

from pathlib import Path

from longpoint.cli.imagined import house_imagined
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_png
from longpoint.sheets.book import house_sheets
from longpoint.solvers.highs import HighsSolver

HERE = Path(__file__).parent
PPI = 110


def main() -> None:
    """Write the first page of the cut sheet, the forecast, and the page of a leaning window."""
    house = load_house(HERE.parents[1] / "examples" / "wren-house.toml")
    plan = plan_house(house, HighsSolver(), house_imagined())
    sheets = {sheet.name: sheet for sheet in house_sheets(plan)}
    pictures = (("cut-sheet", "cut", 1), ("outlook", "outlook", 1), ("opening", "openings", 2))
    for name, sheet, page in pictures:
        png = render_png((sheets[sheet],), Paper.A4, page, PPI)
        (HERE / f"{name}.png").write_bytes(png)


if __name__ == "__main__":
    main()

"""Makes the pictures of the README from the example houses; `make pictures` runs it."""

from pathlib import Path

from longpoint.cli.imagined import house_imagined
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_png
from longpoint.sheets.blocks import Sheet
from longpoint.sheets.book import house_sheets
from longpoint.solvers.highs import HighsSolver

HERE = Path(__file__).parent
PPI = 110


def main() -> None:
    """Write pages of the cut sheet, the forecast, a leaning window, and other trim."""
    wren, mill = sheets_of("wren-house"), sheets_of("otter-mill")
    pictures = (
        ("cut-sheet", wren["cut"], 1),
        ("outlook", wren["outlook"], 1),
        ("opening", wren["openings"], 2),
        ("cornice", mill["trims"], 9),
    )
    for name, sheet, page in pictures:
        (HERE / f"{name}.png").write_bytes(render_png((sheet,), Paper.A4, page, PPI))


def sheets_of(name: str) -> dict[str, Sheet]:
    """Return the sheets of an example house by their names."""
    house = load_house(HERE.parents[1] / "examples" / f"{name}.toml")
    plan = plan_house(house, HighsSolver(), house_imagined())
    return {sheet.name: sheet for sheet in house_sheets(plan)}


if __name__ == "__main__":
    main()

"""Small house files on disk, with gaps as they were read on the wall."""

import json
from pathlib import Path
from typing import Any

from click.testing import CliRunner, Result

from longpoint.cli.main import main
from tests.house_documents import house

CORNERS = ("bl", "br", "tr", "tl")


def longpoint(*words: str | Path) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words])


def written(folder: Path, *openings: dict[str, Any], **changes: Any) -> Path:  # noqa: ANN401
    """Write a house file; its name is that of the house."""
    document = house(openings=list(openings), **changes)
    path = folder / f"{document['name'].replace(' ', '-').lower()}.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


def heels(heel_mm: float) -> dict[str, Any]:
    """Return a set whose four heels stand open and whose toes are shut."""
    return {"gaps": {corner: [heel_mm, 0] for corner in CORNERS}}

"""Drawings and models of others. What reads them runs apart; here its work is called in place."""

import json
import math
from pathlib import Path
from typing import Any, Final
from unittest.mock import patch

from longpoint.errors import ExchangeError
from longpoint.exchange.confirm.confirm_list import read_list, write_list
from longpoint.exchange.models import read_ifc
from longpoint.exchange.models.ifc_worker import KINDS, LONGEST_NAME, MOST_OPENINGS
from longpoint.exchange.sections import dxf_worker, read_section
from tests.fuzz.refusing import refused_or_read

HEAD: Final = b"ISO-10303-21;"
CLASSES: Final = dict(zip("dwc", KINDS.items(), strict=True))


def dxf(data: bytes) -> bool:
    """A section as DXF, its lines read without the limits of the process apart."""

    def in_place(_module: str, path: Path, *_: object) -> Any:  # noqa: ANN401
        try:
            return json.loads(json.dumps(dxf_worker.load()(str(path))))
        except Exception:
            # As the process apart: whatever its library raises is a damaged file.
            raise ExchangeError("read", "wrong", "do") from None

    with patch.object(read_section, "limited", in_place):
        return refused_or_read(read_section.read_section, data, ".dxf")


def ifc(data: bytes) -> bool:
    """A building model: how it begins, and lines as its library would tell its openings.

    Each line is d, w or c, then tag, name, storey, width and height in mm, tabs between them. The
    library itself is C++ and stays in its process.
    """
    head, _, body = data.partition(b"\n")

    def in_place(*_: object) -> list[dict[str, Any]]:
        lines = body.decode("utf-8", "replace").split("\n")[:MOST_OPENINGS]
        return [_opening(number, line.split("\t")) for number, line in enumerate(lines) if line]

    def work(path: Path) -> None:
        with patch.object(read_ifc, "limited", in_place):
            found = read_ifc.model_values(path)
        listed = path.with_name("list.csv")
        listed.write_bytes(write_list(listed, found))
        again = read_list(listed)
        assert [(v.mark, v.path, v.value) for v in again] == [
            (v.mark, v.path, v.value) for v in found
        ]

    return refused_or_read(work, head + b"\n", ".ifc")


def _opening(number: int, parts: list[str]) -> dict[str, Any]:
    kind, tag, name, storey, width, height = (*parts, *[""] * 6)[:6]
    ifc_class, our_kind = CLASSES.get(kind, CLASSES["d"])
    return {
        "class": ifc_class,
        "kind": our_kind,
        "id": number,
        "name": name[:LONGEST_NAME],
        "tag": tag[:LONGEST_NAME],
        "storey": storey[:LONGEST_NAME],
        "width_mm": _figure(width),
        "height_mm": _figure(height),
    }


def _figure(text: str) -> float | None:
    try:
        return float(text)
    except ValueError:
        return None if text else math.nan


TARGETS: Final = {"dxf": dxf, "ifc": ifc}
"""Each by its name."""

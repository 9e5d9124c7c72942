"""Write what is told of handing over, and what was found wrong, back as tables."""

from collections.abc import Callable
from typing import Any

from longpoint.survey.handover import Defect, Handover


def handover_document(handover: Handover) -> dict[str, Any]:
    """Return what stands under handover."""
    written = {
        "place": handover.place or None,
        "contract": handover.contract and handover.contract.isoformat(),
        "handed_over": handover.handed_over and handover.handed_over.isoformat(),
        "bare_floor": handover.bare_floor or None,
        "fills": handover.fills and handover.fills.value,
        "caulks": handover.caulks and handover.caulks.value,
        "fixed": list(handover.fixed) or None,
        "wet": list(handover.wet) or None,
    }
    return {key: value for key, value in written.items() if value is not None}


def defect_document(defect: Defect, length: Callable[[float | None], Any]) -> dict[str, Any]:
    """Return one entry of defects.

    Args:
        defect: What was found.
        length: Gives a length [mm] as it is written in the house.
    """
    written = {
        "place": defect.place,
        "what": defect.what,
        "kind": defect.kind and defect.kind.value,
        "found": length(defect.found_mm),
        "height": length(defect.height_mm),
        "seen": defect.seen and defect.seen.isoformat(),
        "mended": defect.mended and defect.mended.isoformat(),
    }
    return {key: value for key, value in written.items() if value is not None}

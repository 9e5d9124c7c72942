"""Write the crew and the seasons back as tables of the house file."""

from collections.abc import Callable
from dataclasses import asdict
from typing import Any

from longpoint.survey.crew import Crew
from longpoint.survey.season import Air, HouseSeasons


def crew_document(crew: Crew, length: Callable[[float | None], Any]) -> dict[str, Any]:
    """Return what stands under crew.

    Args:
        crew: The crew.
        length: Gives a length [mm] as it is written in the house.
    """
    return {
        "walls": crew.walls.value,
        "refit": crew.refit_min,
        "spoiled": crew.spoiled_min,
        "batch_saves": crew.batch_saves_min,
        "stop_block": crew.stop_block,
        "feeler": length(crew.feeler_mm),
        **({} if crew.slips is None else {"slips": crew.slips}),
        "minutes": asdict(crew.minutes),
    }


def season_document(seasons: HouseSeasons) -> dict[str, Any]:
    """Return what stands under season."""
    airs = {
        "fitting": seasons.fitting,
        "driest": seasons.driest,
        "dampest": seasons.dampest,
    }
    written: dict[str, Any] = {key: _air(air) for key, air in airs.items() if air is not None}
    if seasons.fitting_moisture_percent is not None:
        written["moisture"] = seasons.fitting_moisture_percent
    return written


def _air(air: Air) -> dict[str, float]:
    return {"humidity": air.humidity_percent, "temperature": air.temperature_c}

"""Read the air that the trim meets."""

from typing import Any, Final

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.survey.house_file.assumptions import SEASON_LEFT_OUT, SEASON_NOT_TOLD
from longpoint.survey.house_file.entry import as_table, read_parts
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.season_tables import (
    ASSUMED_SEASONS,
    ASSUMED_TEMPERATURE_C,
    SEASON,
)
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.season import DAMPEST, DRIEST, FITTING, Air, HouseSeasons

_CONSEQUENCE: Final = say("It changes no length, so it is taken as if it weren't there.")


def read_seasons(written: object, remarks: Remarks, *, is_needed: bool) -> HouseSeasons:
    """Return the seasons; what isn't told of them, or can't be read, is assumed.

    Args:
        written: What stands under season; None: no such table.
        remarks: Where to say what is assumed.
        is_needed: True when the house has openings, whose forecast hangs on it.
    """
    if written is None:
        if is_needed:
            remarks.assume(SEASON_NOT_TOLD)
        return ASSUMED_SEASONS
    try:
        table = as_table(written, "season")
    except HouseFileTrouble as trouble:
        _say(trouble, remarks)
        return ASSUMED_SEASONS
    entry = read_parts(SEASON, table, remarks.units, "season.")
    for each in entry.troubles:
        _say(each, remarks)
    told = table.keys()
    at_fitting = {"fitting", "moisture"} & told
    if is_needed and not ({"driest", "dampest"} <= told and at_fitting):
        remarks.assume(SEASON_LEFT_OUT)
    moisture = entry.values.get("moisture")
    if moisture is not None and "fitting" in told:
        remarks.house_wide(
            Severity.NOTE,
            code="key-unused",
            read=say("season gives fitting and moisture."),
            wrong=say("What the meter showed on the wood counts, so the air at fitting does not."),
            do=say("Take one of them out."),
        )
    return HouseSeasons(
        fitting=None if moisture is not None else _air(entry.values, "fitting", FITTING),
        fitting_moisture_percent=moisture,
        driest=_air(entry.values, "driest", DRIEST),
        dampest=_air(entry.values, "dampest", DAMPEST),
    )


def _air(values: dict[str, Any], key: str, assumed: Air) -> Air:
    air = values.get(key, {})
    if "humidity" not in air:
        return assumed
    return Air(
        humidity_percent=air["humidity"],
        temperature_c=air.get("temperature", ASSUMED_TEMPERATURE_C),
    )


def _say(trouble: HouseFileTrouble, remarks: Remarks) -> None:
    remarks.trouble(trouble, _CONSEQUENCE, code="season-unreadable", severity=Severity.WARNING)

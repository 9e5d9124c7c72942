"""Read what the crew says of its walls, its time and its ways."""

from typing import Any, Final

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.survey.crew import Crew, ReadingMinutes, WallAge
from longpoint.survey.house_file.assumptions import CREW_LEFT_OUT, CREW_NOT_TOLD
from longpoint.survey.house_file.crew_tables import ASSUMED_CREW, CREW, MINUTES
from longpoint.survey.house_file.entry import as_table, read_parts
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.trouble import HouseFileTrouble

_CONSEQUENCE: Final = say("It changes no length, so it is taken as if it weren't there.")


def read_crew(written: object, remarks: Remarks, *, is_needed: bool) -> Crew:
    """Return the crew; what it doesn't say, or can't be read, is assumed.

    Args:
        written: What stands under crew; None: no such table.
        remarks: Where to say what is assumed.
        is_needed: True when the house has openings, whose forecast hangs on it.
    """
    if written is None:
        if is_needed:
            remarks.assume(CREW_NOT_TOLD)
        return ASSUMED_CREW
    try:
        table = as_table(written, "crew")
    except HouseFileTrouble as trouble:
        _say(trouble, remarks)
        return ASSUMED_CREW
    entry = read_parts(CREW, table, remarks.units, "crew.")
    for each in entry.troubles:
        _say(each, remarks)
    if is_needed and not {"refit", "batch_saves"} <= table.keys():
        remarks.assume(CREW_LEFT_OUT)
    minutes = entry.values.get("minutes", {})
    values: dict[str, Any] = {
        key.name: entry.values.get(key.name, key.default) for key in CREW.keys
    }
    return Crew(
        walls=WallAge(values["walls"]),
        refit_min=values["refit"],
        spoiled_min=values["spoiled"],
        batch_saves_min=values["batch_saves"],
        stop_block=values["stop_block"],
        feeler_mm=values["feeler"],
        slips=values["slips"],
        minutes=ReadingMinutes(
            **{key.name: minutes.get(key.name, key.default) for key in MINUTES.keys}
        ),
    )


def _say(trouble: HouseFileTrouble, remarks: Remarks) -> None:
    remarks.trouble(trouble, _CONSEQUENCE, code="crew-unreadable", severity=Severity.WARNING)

"""Read what is told of handing over, and what was found wrong; a bad part costs only itself."""

from typing import Any, Final

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.survey.handover import Defect, DefectKind, Handover, Trade
from longpoint.survey.house_file.entry import as_table, read_entry, read_parts
from longpoint.survey.house_file.handover_tables import ASSUMED_HANDOVER, DEFECT, HANDOVER
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.trouble import HouseFileTrouble

_CONSEQUENCE: Final = say("It changes no length, so it is taken as if it weren't there.")


def read_handover(written: object, remarks: Remarks) -> Handover:
    """Return what is told of handing over; what can't be read is left out, and said.

    Args:
        written: What stands under handover; None: no such table.
        remarks: Where to say what can't be used.
    """
    if written is None:
        return ASSUMED_HANDOVER
    try:
        table = as_table(written, "handover")
    except HouseFileTrouble as trouble:
        _say(trouble, remarks)
        return ASSUMED_HANDOVER
    entry = read_parts(HANDOVER, table, remarks.units, "handover.")
    for each in entry.troubles:
        _say(each, remarks)
    told: dict[str, Any] = entry.values
    return Handover(
        place=told.get("place", ""),
        contract=told.get("contract"),
        handed_over=told.get("handed_over"),
        bare_floor=told.get("bare_floor", False),
        fills=Trade(told["fills"]) if "fills" in told else None,
        caulks=Trade(told["caulks"]) if "caulks" in told else None,
        fixed=told.get("fixed", ()),
        wet=told.get("wet", ()),
    )


def read_defects(written: list[object], remarks: Remarks) -> tuple[Defect, ...]:
    """Return what was found wrong; one that can't be read is left out, and said."""
    defects = []
    for index, one in enumerate(written, start=1):
        path = say("defects {index}", index=index)
        try:
            entry = read_entry(DEFECT, as_table(one, path), remarks.units, f"{path}, ")
        except HouseFileTrouble as trouble:
            _leave_out(trouble, remarks)
            continue
        for each in entry.troubles:
            _leave_out(each, remarks)
        if entry.troubles:
            continue
        told: dict[str, Any] = entry.values
        defects.append(
            Defect(
                place=told["place"],
                what=told["what"],
                kind=DefectKind(told["kind"]) if "kind" in told else None,
                found_mm=told.get("found"),
                height_mm=told.get("height"),
                seen=told.get("seen"),
                mended=told.get("mended"),
            )
        )
    return tuple(defects)


def _say(trouble: HouseFileTrouble, remarks: Remarks) -> None:
    remarks.trouble(trouble, _CONSEQUENCE, code="handover-unreadable", severity=Severity.WARNING)


def _leave_out(trouble: HouseFileTrouble, remarks: Remarks) -> None:
    remarks.trouble(
        trouble,
        say("This defect is left out."),
        code="defect-unreadable",
        severity=Severity.WARNING,
    )

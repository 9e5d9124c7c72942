"""Read the sticks that can be bought and those on the rack; a bad one is left out, and said."""

from typing import Any

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.survey.house_file.entry import as_table, read_entry
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.named_tables import Named
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.tool_tables import OFFCUT, STOCK
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.instruments import Saw
from longpoint.survey.profiles import Offcut, Profile, Stock


def read_stock(
    written: list[object], profiles: Named[Profile], saw: Saw, remarks: Remarks
) -> tuple[Stock, ...]:
    """Return the sticks that can be bought; what can't be read is left out, and said."""
    stock = []
    for path, values in _sticks(STOCK, "stock", written, profiles, remarks):
        if values["length"] <= 2 * saw.end_trim_mm + saw.kerf_mm:
            _say_too_short(path, values["length"], say("its two end trims and a saw cut"), remarks)
            continue
        stock.append(
            Stock(
                profile=values["profile"],
                length_mm=values["length"],
                price=values.get("price"),
                count=values.get("count"),
                supplier=values.get("supplier", ""),
                code=values.get("code", ""),
            )
        )
    return tuple(stock)


def read_offcuts(
    written: list[object], profiles: Named[Profile], saw: Saw, remarks: Remarks
) -> tuple[Offcut, ...]:
    """Return the sticks on the rack; what can't be read is left out, and said."""
    offcuts = []
    for path, values in _sticks(OFFCUT, "offcuts", written, profiles, remarks):
        if values["length"] <= 2 * saw.kerf_mm:
            _say_too_short(path, values["length"], say("a saw cut at each end"), remarks)
            continue
        offcuts.append(
            Offcut(
                profile=values["profile"],
                length_mm=values["length"],
                count=1 if "label" in values else values.get("count", 1),
                label=values.get("label", ""),
            )
        )
    return tuple(offcuts)


def _sticks(
    table: Table, name: str, written: list[object], profiles: Named[Profile], remarks: Remarks
) -> list[tuple[str, dict[str, Any]]]:
    readable = []
    for index, inner in enumerate(written, start=1):
        path = f"{name} {index}"
        try:
            entry = read_entry(table, as_table(inner, path), remarks.units, f"{path}, ")
        except HouseFileTrouble as trouble:
            remarks.trouble(trouble, say("This stick is left out."), code="stick-unreadable")
            continue
        for each in entry.troubles:
            remarks.trouble(each, say("This stick is left out."), code="stick-unreadable")
        if entry.troubles or entry.values["profile"] in profiles.spoiled:
            continue
        try:
            profiles.get(entry.values["profile"], path.capitalize())
        except HouseFileTrouble as trouble:
            remarks.house_wide(
                Severity.WARNING,
                code=trouble.code,
                read=trouble.read,
                wrong=say("{wrong} The stick is left out.", wrong=trouble.wrong),
                do=trouble.do,
            )
            continue
        readable.append((path, entry.values))
    return readable


def _say_too_short(path: str, length_mm: float, than: str, remarks: Remarks) -> None:
    remarks.house_wide(
        Severity.STOP,
        code="stick-too-short",
        read=say(
            "{path} is {length} long.",
            path=path.capitalize(),
            length=remarks.tell(length_mm),
        ),
        wrong=say(
            "That is no longer than {than} take, so nothing is left of it. It is left out.",
            than=than,
        ),
        do=say("Write its whole length, in the house's unit."),
    )

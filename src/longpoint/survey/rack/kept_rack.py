"""The rack as entries of a journal: what was done to it, one after the other, and nothing lost.

Each entry speaks in the words of the rack file, so the same reader holds it to the same rules.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any, Final

from longpoint.errors import Finding, Severity, SurveyError
from longpoint.journal import Entry, counting, in_order
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.parsed_text import parsed_house
from longpoint.survey.rack.rack_file import FORMAT, read_rack
from longpoint.survey.rack.rack_text import rack_text
from longpoint.survey.rack.records import Rack

RACK_KEY: Final = ".rack"
"""What stands in an entry of the rack where another has the key of its house."""
HEAD: Final = "rack-set"
SECTION: Final = "rack-section"
PUT_UP: Final = "offcut-put-up"
CHANGED: Final = "offcut-changed"
GONE: Final = "offcut-gone"
GONE_KEYS: Final = ("gone", "gone_on", "gone_to")

Body = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class RackNow:
    """The rack as it stands after all that was written of it.

    Attributes:
        rack: The rack.
        findings: What is to be mended by hand.
    """

    rack: Rack
    findings: tuple[Finding, ...] = ()


def rack_now(entries: Iterable[Entry]) -> RackNow:
    """Return the rack that entries come to, in whatever order they are given.

    Two devices that knew nothing of each other may have given one label to two offcuts. The one
    that was written first has it, the other is told: it is on the rack once it has another.

    Args:
        entries: Of the rack; entries of a kind that this version doesn't know change nothing.

    Raises:
        SurveyError: What they come to is no rack.

    Example:
        >>> head = {"device": "laptop", "counter": 1, "what": "rack-set"}
        >>> rack_now([{**head, "set": {"old_after": 365}}]).rack.old_after_days
        365
    """
    ordered = in_order(entries)
    try:
        document, twice = _document(counting(ordered))
        once_given = {e["offcut"]["label"] for e in ordered if e["what"] == PUT_UP}
        units = Units(document.pop("units"))
    except (KeyError, TypeError, AttributeError, ValueError):
        raise SurveyError(
            say("What was written of the rack was read."),
            say("There is an entry in it that says nothing of a rack."),
            say("`longpoint history --rack` gives its number for `longpoint undo --rack`."),
        ) from None
    rack = read_rack({"format": FORMAT, "units": Units.MM.value, **document})
    spent = once_given - {piece.label for piece in rack.pieces}
    return RackNow(
        rack=replace(rack, units=units, spent=frozenset(spent)),
        findings=tuple(_twice(each) for each in twice),
    )


def rack_changes(before: Rack, after: Rack) -> tuple[Body, ...]:
    """Return the entries that make one rack of another.

    What the later one doesn't have stays as it was: nothing is ever taken out without a word of
    what came of it.

    Args:
        before: The rack as it is kept.
        after: The rack as it is to be.
    """
    old, new = _as_document(before), _as_document(after)
    changes: list[Body] = []
    head = {key: new.get(key) for key in ("units", "old_after") if new.get(key) != old.get(key)}
    if head:
        changes.append({"what": HEAD, "set": head})
    sections = old.get("sections", {})
    changes += [
        {"what": SECTION, "key": key, "section": section}
        for key, section in new.get("sections", {}).items()
        if sections.get(key) != section
    ]
    there = {offcut["label"]: offcut for offcut in old.get("offcuts", ())}
    for offcut in new.get("offcuts", ()):
        changes += _offcut_changes(there.get(offcut["label"]), offcut)
    return tuple(changes)


def rack_words(entry: Entry) -> str:
    """Return an entry of the rack in words, without who wrote it and when."""
    match entry:
        case {"what": "rack-set", "set": {**said}}:
            return ", ".join(f"{key} = {value}" for key, value in said.items())
        case {"what": "rack-section", "key": key}:
            return say("section {key} described", key=key)
        case {"what": "offcut-put-up", "offcut": {"label": label, **said}}:
            return say(
                "{label} put up: {section}, {length} mm",
                label=label,
                section=said.get("section"),
                length=said.get("length"),
            )
        case {"what": "offcut-changed", "offcut": {"label": label, **said}}:
            return say(
                "{label} mended: {section}, {length} mm",
                label=label,
                section=said.get("section"),
                length=said.get("length"),
            )
        case {"what": "offcut-gone", "label": label, "said": {"gone": why, **said}}:
            gone_to = said.get("gone_to")
            return (
                say("{label} gone: {why}, {house}", label=label, why=why, house=gone_to)
                if gone_to
                else say("{label} gone: {why}", label=label, why=why)
            )
        case {"what": "offcut-gone", "label": label}:
            return say("{label} is on the rack again", label=label)
        case {"what": "undo"}:
            return say("taken back: ")
        case _:
            return say("{other}, which a newer longpoint wrote", other=entry["what"])


def _document(entries: Iterable[Entry]) -> tuple[Body, list[Mapping[str, Any]]]:
    """Return the file that entries come to, in mm, and offcuts whose label was given before."""
    head: Body = {"units": Units.MM.value}
    sections: Body = {}
    offcuts: dict[str, Body] = {}
    twice = []
    for entry in entries:
        match entry["what"]:
            case "rack-set":
                head |= entry["set"]
            case "rack-section":
                sections[entry["key"]] = entry["section"]
            case "offcut-put-up" if entry["offcut"]["label"] in offcuts:
                twice.append(entry["offcut"])
            case "offcut-put-up":
                offcuts[entry["offcut"]["label"]] = {**entry["offcut"]}
            case "offcut-changed" if entry["offcut"]["label"] in offcuts:
                there = offcuts[entry["offcut"]["label"]]
                gone: Body = {key: there[key] for key in GONE_KEYS if key in there}
                offcuts[entry["offcut"]["label"]] = {**entry["offcut"], **gone}
            case "offcut-gone" if entry["label"] in offcuts:
                there = offcuts[entry["label"]]
                kept = {key: value for key, value in there.items() if key not in GONE_KEYS}
                offcuts[entry["label"]] = {**kept, **entry["said"]}
            case _:
                # Of an offcut whose putting up was taken back, or of a later version's kind.
                pass
    said = {key: value for key, value in head.items() if value is not None}
    return {**said, "sections": sections, "offcuts": list(offcuts.values())}, twice


def _offcut_changes(before: Body | None, after: Body) -> list[Body]:
    said = {key: value for key, value in after.items() if key not in GONE_KEYS}
    gone = {key: after[key] for key in GONE_KEYS if key in after}
    changes: list[Body] = []
    if before is None:
        changes.append({"what": PUT_UP, "offcut": said})
    elif {key: value for key, value in before.items() if key not in GONE_KEYS} != said:
        changes.append({"what": CHANGED, "offcut": said})
    if {key: before[key] for key in GONE_KEYS if before and key in before} != gone:
        changes.append({"what": GONE, "label": after["label"], "said": gone})
    return changes


def _as_document(rack: Rack) -> Body:
    """Return a rack as its file's tables, lengths in mm, days as text."""
    found = parsed_house(rack_text(replace(rack, units=Units.MM)))
    offcuts = [
        {key: value.isoformat() if isinstance(value, date) else value for key, value in o.items()}
        for o in found.get("offcuts", ())
    ]
    return {**found, "units": rack.units.value, "offcuts": offcuts}


def _twice(offcut: Mapping[str, Any]) -> Finding:
    return Finding(
        code="rack-label-twice",
        severity=Severity.WARNING,
        place=say("the rack"),
        read=say(
            "The label {label} was given to two offcuts, on two machines; the second is of "
            "{section}, {length} mm.",
            label=offcut.get("label"),
            section=offcut.get("section"),
            length=offcut.get("length"),
        ),
        wrong=say("The second is not on the rack, so nothing is cut from it."),
        do=say(
            "Find it, put it up again with longpoint rack put, write the new label on it, and take "
            "the second entry back: longpoint history --rack gives its number."
        ),
    )

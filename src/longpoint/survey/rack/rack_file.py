"""Read the rack: all of it or nothing, so that nothing is lost when it is written again."""

from collections.abc import Mapping
from typing import Any, Final

from longpoint.errors import SurveyError
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.entry import as_table, read_entry
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, quoted, shown
from longpoint.survey.house_file.written_text import read_text
from longpoint.survey.rack.labels import as_written, is_label
from longpoint.survey.rack.rack_tables import OFFCUT, RACK, SECTION
from longpoint.survey.rack.records import Gone, Out, Rack, RackPiece, Section

FORMAT: Final = "longpoint-rack/1"


def read_rack(document: Mapping[str, object]) -> Rack:
    """Return the rack in a document.

    Args:
        document: The parsed TOML or JSON file.

    Raises:
        SurveyError: It is no rack, or anything in it can't be used: a rack of which a part is left
            out would lose that part when it is written again.

    Example:
        >>> read_rack({"format": "longpoint-rack/1", "old_after": 365}).old_after_days
        365
    """
    try:
        return _read(document)
    except HouseFileTrouble as trouble:
        raise SurveyError(trouble.read, trouble.wrong, trouble.do) from None


def _read(document: Mapping[str, object]) -> Rack:
    if document.get("format") != FORMAT:
        raise HouseFileTrouble(
            say("The format is written as {shown}.", shown=shown(document.get("format"))),
            say('A rack of offcuts is kept as "{format}".', format=FORMAT),
            say("Look whether it is another file, or one of a later version of this program."),
        )
    head = _values(RACK, document, Units.MM, "")
    units = Units(head.get("units", Units.MM.value))
    sections = tuple(
        (read_text(key, say("The name of a section")), _section(key, written, units))
        for key, written in head.get("sections", {}).items()
    )
    known = dict(sections)
    if len(known) < len(sections):
        raise _twice("section", next(k for k, _ in sections))
    pieces = []
    taken: set[str] = set()
    for number, written in enumerate(head.get("offcuts", ()), start=1):
        piece = _piece(written, say("offcuts {number}", number=number), units, known)
        if piece.label in taken:
            raise _twice("label", piece.label)
        taken.add(piece.label)
        pieces.append(piece)
    return Rack(
        units=units,
        old_after_days=head.get("old_after"),
        sections=sections,
        pieces=tuple(pieces),
    )


def _section(key: str, written: object, units: Units) -> Section:
    path = f"sections.{key}"
    values = _values(SECTION, as_table(written, path), units, f"{path}.")
    return Section(
        name=values["name"],
        width_mm=values["face"],
        thickness_mm=values["thickness"],
        reversible=values.get("reversible", False),
        least_mm=values.get("least"),
    )


def _piece(written: object, path: str, units: Units, known: Mapping[str, Section]) -> RackPiece:
    values = _values(OFFCUT, as_table(written, path), units, f"{path}, ")
    label = as_written(values["label"])
    if not is_label(label):
        raise HouseFileTrouble(
            say(
                "{path}, label is written as {values}.",
                path=path,
                values=quoted(values["label"]),
            ),
            say("Its last sign doesn't agree with the others, so it is no label that was given."),
            say("Read it on the offcut; a new offcut gets its label from longpoint rack put."),
        )
    if values["section"] not in known:
        raise HouseFileTrouble(
            say(
                "{path}, section is written as {values}.",
                path=path,
                values=quoted(values["section"]),
            ),
            say("No section of that name is described."),
            instead(values["section"], known),
        )
    return RackPiece(
        label=label,
        section=values["section"],
        length_mm=values["length"],
        left=values.get("left", "rough"),
        right=values.get("right", "rough"),
        house=values.get("house", ""),
        origin=values.get("origin", ""),
        put_up=values["put_up"],
        note=values.get("note", ""),
        gone=_gone(values, path),
    )


def _gone(values: Mapping[str, Any], path: str) -> Gone | None:
    if "gone" not in values and not values.keys() & {"gone_on", "gone_to"}:
        return None
    if not {"gone", "gone_on"} <= values.keys():
        raise HouseFileTrouble(
            say("{path} says in part that it is gone.", path=path),
            say("What came of it and the day stand together: gone and gone_on."),
            say("Write both, or neither."),
        )
    return Gone(why=Out(values["gone"]), on=values["gone_on"], house=values.get("gone_to", ""))


def _values(table: Table, written: Mapping[Any, object], units: Units, path: str) -> dict[str, Any]:
    entry = read_entry(table, written, units, path)
    for trouble in entry.troubles:
        raise trouble
    return entry.values


def _twice(what: str, name: str) -> HouseFileTrouble:
    return HouseFileTrouble(
        say("The {what} {name} stands in the file twice.", what=what, name=quoted(name)),
        say("Which of the two is meant can't be told."),
        say("Give one of them another, or take it out if it is the same thing."),
    )

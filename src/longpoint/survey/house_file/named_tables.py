"""Read tables that stand under names; a bad one spoils only what uses it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from longpoint.speech.said import say
from longpoint.survey.house_file.entry import as_table, read_entry
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, quoted
from longpoint.survey.house_file.written_text import read_text

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Named(Generic[T]):
    """Entries under their names, and the names of those that can't be used.

    Attributes:
        kind: What they are ("tape").
        known: Those that can be used.
        spoiled: Names of those that can't.
        unknown_code: Code of the finding that one is named which isn't described.
        unreadable_code: Code of the finding that one can't be used.
    """

    kind: str
    known: dict[str, T]
    spoiled: frozenset[str]
    unknown_code: str
    unreadable_code: str

    def get(self, name: str, where: str) -> T:
        """Return the entry that a key names.

        Args:
            name: The name.
            where: The key that names it.

        Raises:
            HouseFileTrouble: There is none of that name, or it couldn't be read.
        """
        kind = self.kind
        if name in self.spoiled:
            raise HouseFileTrouble(
                say(
                    "{where} names the {kind} {name}.",
                    where=where,
                    kind=kind,
                    name=quoted(name),
                ),
                say(
                    "What is written under [{kind}s.{name}] can't be used.",
                    kind=kind,
                    name=name,
                ),
                say("Put it right there, or name another {kind}.", kind=kind),
                code=self.unreadable_code,
            )
        if name not in self.known:
            raise HouseFileTrouble(
                say(
                    "{where} names the {kind} {name}.",
                    where=where,
                    kind=kind,
                    name=quoted(name),
                ),
                say("No {kind} of that name is described under [{kind}s].", kind=kind),
                say(
                    "{instead} Name one that is there, or describe it.",
                    instead=instead(name, self.known),
                ),
                code=self.unknown_code,
            )
        return self.known[name]


def read_named(
    table: Table,
    kind: str,
    written: Mapping[object, object],
    remarks: Remarks,
    build: Callable[[str, dict[str, Any]], T],
    consequence: str,
    *,
    unknown_code: str,
    unreadable_code: str,
) -> Named[T]:
    """Return every entry that can be used, and say of the others what follows.

    Args:
        table: Description of the keys of each.
        kind: What they are ("tape").
        written: The tables under their names.
        remarks: Where to say what can't be used.
        build: Makes an entry of its name and its values.
        consequence: What follows when one can't be used.
        unknown_code: Code of the finding that one is named which isn't described.
        unreadable_code: Code of the finding that one can't be used.
    """
    known: dict[str, T] = {}
    spoiled: set[str] = set()
    for name, inner in written.items():
        text = name.strip() if isinstance(name, str) else ""
        troubles: tuple[HouseFileTrouble, ...] = ()
        try:
            text = read_text(name, say("The name of a {kind}", kind=kind))
            if text in known or text in spoiled:
                raise _named_twice(kind, text)
            path = f"{kind}s.{text}"
            entry = read_entry(table, as_table(inner, path), remarks.units, f"{path}.")
            troubles = entry.troubles
            if not troubles:
                known[text] = build(text, entry.values)
        except HouseFileTrouble as trouble:
            troubles = (trouble,)
        if troubles:
            spoiled.add(text)
            known.pop(text, None)
        for each in troubles:
            remarks.trouble(each, consequence, code=unreadable_code)
    return Named(
        kind=kind,
        known=known,
        spoiled=frozenset(spoiled),
        unknown_code=unknown_code,
        unreadable_code=unreadable_code,
    )


def _named_twice(kind: str, name: str) -> HouseFileTrouble:
    return HouseFileTrouble(
        say("The {kind} {name} is described twice.", kind=kind, name=quoted(name)),
        say("Which of the two counts can't be told."),
        say("Give one of them another name."),
    )

"""Put what a person confirmed into a house's document, and nothing else."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from longpoint.exchange.confirm.found_values import (
    FoundValue,
    as_written_value,
    trouble_with,
)
from longpoint.exchange.confirm.record_keys import (
    LENGTHS,
    LISTS,
    REPEATED,
    RecordKind,
    cell_keys,
)
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import Key
from longpoint.survey.house_file.trouble import HouseFileTrouble, shown
from longpoint.survey.house_file.values import read_value

_UNITS: Final = frozenset({"mm", "cm", "m", "in"})


@dataclass(frozen=True, slots=True, kw_only=True)
class PutPlan:
    """What is to be written into a house file.

    Attributes:
        into: Keys for entries that are there: by list and place, or by table and name.
        new: Whole new entries: list or table, name in a table, keys.
        said: What was done and what not, one sentence each.
        waiting: Marks that still wait for a person.
        refused: Sentences about what can't go in as it is.
    """

    into: dict[tuple[str, int | str], dict[str, Any]]
    new: tuple[tuple[str, str, dict[str, Any]], ...]
    said: tuple[str, ...]
    waiting: tuple[str, ...]
    refused: tuple[str, ...]

    @property
    def is_empty(self) -> bool:
        """Whether the house file stays as it is."""
        return not self.into and not self.new


def put_plan(document: Mapping[str, Any], values: Iterable[FoundValue], units: Units) -> PutPlan:
    """Return what a confirm list changes in a house.

    An opening, run or profile goes in only when a person has settled every line of it. A value
    that the house already has stays, and one that differs from it is refused, never written over.

    Args:
        document: The house file as parsed.
        values: The list, as a person left it.
        units: The house's unit.
    """
    records: dict[tuple[RecordKind, str], list[FoundValue]] = {}
    for each in values:
        records.setdefault((each.kind, each.mark), []).append(each)
    work = _Putting(document, units)
    for (kind, mark), lines in records.items():
        open_lines = sum(not line.is_settled for line in lines)
        if open_lines:
            work.waiting.append(
                say(
                    "{mark} ({open_lines} of {lines} lines)",
                    mark=mark,
                    open_lines=open_lines,
                    lines=len(lines),
                )
            )
            continue
        work.put(kind, mark, [line for line in lines if not line.is_struck_out])
    return PutPlan(
        into=work.into,
        new=tuple(work.new),
        said=tuple(work.said),
        waiting=tuple(work.waiting),
        refused=tuple(work.refused),
    )


class _Putting:
    def __init__(self, document: Mapping[str, Any], units: Units) -> None:
        self.document, self.units = document, units
        self.into: dict[tuple[str, int | str], dict[str, Any]] = {}
        self.new: list[tuple[str, str, dict[str, Any]]] = []
        self.said: list[str] = []
        self.waiting: list[str] = []
        self.refused: list[str] = []

    def put(self, kind: RecordKind, mark: str, lines: Sequence[FoundValue]) -> None:
        troubles = [wrong for line in lines if (wrong := self.trouble(line))]
        if troubles:
            self.refused += troubles
            return
        wanted = self.keys(kind, lines)
        where, there = self.there(kind, mark)
        if there is None:
            self.new_one(kind, mark, lines, wanted)
            return
        clash = self.clashes(kind, mark, there, wanted)
        if clash:
            self.refused += clash
            return
        more = {path: value for path, value in wanted.items() if _inside(there, path) is _MISSING}
        if not more:
            self.said.append(say("{mark}: the house has all of it already.", mark=mark))
            return
        nested = _nested(more)
        halves = [key for key, value in nested.items() if isinstance(value, dict) and key in there]
        if halves:
            self.refused.append(
                say(
                    "{mark}: the house has part of {halves} already. Write the rest of "
                    "it in by hand.",
                    mark=mark,
                    halves=joined(", ", halves),
                )
            )
            return
        self.into[where] = nested
        self.said.append(say("{mark}: {more} added.", mark=mark, more=joined(", ", more)))

    def new_one(
        self, kind: RecordKind, mark: str, lines: Sequence[FoundValue], wanted: dict[str, Any]
    ) -> None:
        required = [
            path
            for path, key in cell_keys(kind).items()
            if key.required and "." not in path and path != "mark" and path not in wanted
        ]
        if required:
            self.refused.append(
                say(
                    "{mark}: {required} is missing, and a new {kind} can't do without. "
                    "Write it under confirmed in the list, or make that entry in the "
                    "house file first.",
                    mark=mark,
                    required=joined(", ", required),
                    kind=kind.value,
                )
            )
            return
        if not lines:
            self.said.append(say("{mark}: left out, as every line of it says no.", mark=mark))
            return
        nested = _nested(wanted)
        if kind is RecordKind.PROFILE:
            self.new.append(("profiles", mark, nested))
        else:
            self.new.append((LISTS[kind], "", {"mark": mark, **nested}))
        self.said.append(
            say(
                "{mark}: new {kind} with {wanted}.",
                mark=mark,
                kind=kind.value,
                wanted=joined(", ", wanted),
            )
        )

    def trouble(self, line: FoundValue) -> str:
        key = cell_keys(line.kind)[line.path]
        value = line.settled_value
        name = _name(line)
        if key.kind in LENGTHS and line.unit not in _UNITS:
            return say(
                "{name}: its unit is {unit}; it has to be mm, cm, m or in.",
                name=name,
                unit=line.unit or "missing",
            )
        if not value:
            return say(
                "{name}: there is no value to confirm. Write it under confirmed, or no.",
                name=name,
            )
        wrong = trouble_with(key, value, line.unit, line.path)
        return (
            say("{name}, {shown}: {wrong}", name=name, shown=shown(value), wrong=wrong)
            if wrong
            else ""
        )

    def keys(self, kind: RecordKind, lines: Sequence[FoundValue]) -> dict[str, Any]:
        found: dict[str, list[Any]] = {}
        for line in sorted(lines, key=lambda each: each.number):
            key = cell_keys(kind)[line.path]
            value = as_written_value(key, line.settled_value, line.unit, self.units)
            found.setdefault(line.path, []).append(value)
            if line.settled_value != line.value:
                self.said.append(
                    say(
                        "{name}: {shown} as you wrote, not {shown_2}.",
                        name=_name(line),
                        shown=shown(line.settled_value),
                        shown_2=shown(line.value),
                    )
                )
        keys = cell_keys(kind)
        return {
            path: found[path] if len(found[path]) > 1 else found[path][0]
            for path in keys
            if path in found
        }

    def there(
        self, kind: RecordKind, mark: str
    ) -> tuple[tuple[str, int | str], Mapping[str, Any] | None]:
        if kind is RecordKind.PROFILE:
            profiles = self.document.get("profiles", {})
            entry = profiles.get(mark) if isinstance(profiles, Mapping) else None
            return ("profiles", mark), entry if isinstance(entry, Mapping) else None
        entries = self.document.get(LISTS[kind], [])
        for n, entry in enumerate(entries if isinstance(entries, list) else []):
            if isinstance(entry, Mapping) and str(entry.get("mark", "")).strip() == mark:
                return (LISTS[kind], n), entry
        return (LISTS[kind], len(entries)), None

    def clashes(
        self, kind: RecordKind, mark: str, there: Mapping[str, Any], wanted: Mapping[str, Any]
    ) -> list[str]:
        found = []
        for path, value in wanted.items():
            old = _inside(there, path)
            key = cell_keys(kind)[path]
            if old is not _MISSING and not self.same(key, old, value):
                found.append(
                    say(
                        "{mark} {path}: the house has {listed}, the list {listed_2}. "
                        "Nothing of it is changed: put the right one into the house "
                        "file by hand, or write no beside it in the list.",
                        mark=mark,
                        path=path,
                        listed=_listed(old),
                        listed_2=_listed(value),
                    )
                )
        return found

    def same(self, key: Key, one: object, other: object) -> bool:
        try:
            read = [read_value(key, each, self.units, key.name) for each in (one, other)]
        except HouseFileTrouble:
            return False
        if key.kind in REPEATED and all(hasattr(each, "__len__") for each in read):
            read = [[getattr(v, "value_mm", v) for v in each] for each in read]
        return bool(read[0] == read[1])


_MISSING: Final = object()


def _inside(entry: Mapping[str, Any], path: str) -> object:
    value: object = entry
    for part in path.split("."):
        if not isinstance(value, Mapping) or part not in value:
            return _MISSING
        value = value[part]
    return value


def _nested(values: Mapping[str, Any]) -> dict[str, Any]:
    nested: dict[str, Any] = {}
    for path, value in values.items():
        *tables, name = path.split(".")
        inner = nested
        for table in tables:
            inner = inner.setdefault(table, {})
        inner[name] = value
    return nested


def _name(line: FoundValue) -> str:
    again = f" {line.number}" if line.number > 1 else ""
    return f"{line.mark} {line.path}{again} ({line.source})"


def _listed(value: object) -> str:
    return joined(", ", map(shown, value)) if isinstance(value, list | tuple) else shown(value)

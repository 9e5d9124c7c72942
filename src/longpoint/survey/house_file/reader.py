"""Read a whole house file: what is good is kept, what is not is held and said."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from types import MappingProxyType
from typing import Any, Final, Generic, TypeVar

from longpoint.errors import SurveyError
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house import Dialect, EntryKind, HeldEntry, House, SurveyResult
from longpoint.survey.house_file.assumptions import DIALECT, UNITS
from longpoint.survey.house_file.cross_checks import compare_entries
from longpoint.survey.house_file.entry import as_list, as_table, read_entry
from longpoint.survey.house_file.house_table import FORMAT, HOUSE
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.opening_tables import OPENING
from longpoint.survey.house_file.openings import build_opening
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.room_tables import ROOM, RUN
from longpoint.survey.house_file.rooms import build_room, build_run
from longpoint.survey.house_file.settings import Settings, read_settings
from longpoint.survey.house_file.trim_tables import TrimTables
from longpoint.survey.house_file.trims import build_trim, table_of
from longpoint.survey.house_file.trouble import HouseFileTrouble, quoted, shown
from longpoint.survey.house_file.written_numbers import from_digits
from longpoint.survey.house_file.written_text import read_mark, read_text
from longpoint.survey.openings import Opening
from longpoint.survey.rooms import Room, Run
from longpoint.survey.trims import TrimEntry

T = TypeVar("T", Opening, Room, Run, TrimEntry)

_TableOf = Callable[[Mapping[object, object]], Table]

FORMAT_STEM: Final = FORMAT.rpartition("/")[0]
_OURS: Final = "longpoint-"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Read(Generic[T]):
    entries: tuple[T, ...]
    held: tuple[HeldEntry, ...]


def read_house(
    document: Mapping[str, object], trims: TrimTables = MappingProxyType({})
) -> SurveyResult:
    """Return a house as written down, and what is to be said about it.

    Args:
        document: The parsed TOML or JSON file.
        trims: What each kind of the catalogue may hold; a trim of any other kind is held.

    Returns:
        The house with every entry that could be read; the others are in `House.held`, each with
        a finding of severity stop.

    Raises:
        SurveyError: The file can't be used as a whole.

    Example:
        >>> result = read_house({"format": "longpoint-house/1", "name": "Wren House"})
        >>> result.house.name, result.house.units.value
        ('Wren House', 'mm')
    """
    try:
        return _read(as_table(document, say("The house file")), trims)
    except HouseFileTrouble as trouble:
        raise SurveyError(trouble.read, trouble.wrong, trouble.do) from None


def _read(document: Mapping[object, object], tables: TrimTables) -> SurveyResult:
    _check_format(document)
    head = {key: value for key, value in document.items() if key != "defaults"}
    entry = read_entry(HOUSE, head, Units.MM)
    for trouble in entry.troubles:
        raise trouble
    values = entry.values
    remarks = Remarks(values["name"], Units(values.get("units", "mm")))
    _say_head_assumptions(values, remarks)
    settings = read_settings(document, remarks)
    openings, rooms, runs, trims = _read_entries(document, settings, tables)
    house = House(
        name=values["name"],
        units=remarks.units,
        dialect=Dialect(values.get("dialect", "uk")),
        profiles=tuple(settings.profiles.known.values()),
        tapes=settings.all_tapes(),
        saw=settings.saw,
        stock=settings.stock,
        offcuts=settings.offcuts,
        openings=openings.entries,
        rooms=rooms.entries,
        runs=runs.entries,
        trims=trims.entries,
        held=(*openings.held, *rooms.held, *runs.held, *trims.held),
        skirting_profile=settings.defaults.get("skirting", ""),
        floor_gap_mm=settings.defaults.get("floor_gap", 0.0),
        longest_run_mm=settings.defaults.get("max_run"),
        saw_tape=settings.saw_tape or settings.all_tapes()[0].name,
        crew=settings.crew,
        seasons=settings.seasons,
        fixing=settings.fixing,
        handover=settings.handover,
        defects=settings.defects,
    )
    own_cover = {mark for mark, one in _marked(document) if "floor_cover" in one}
    remarks.at_place(*compare_entries(house, own_cover))
    return SurveyResult(house=house, findings=remarks.all())


def is_something_else(written: object) -> bool:
    """Tell whether a file's format is that of another kind of file of this program, like rates.

    Args:
        written: What stands as the file's format; None where nothing does.

    Example:
        >>> is_something_else("longpoint-rates/1"), is_something_else("longpoint-house/7")
        (True, False)
    """
    return (
        isinstance(written, str)
        and written.startswith(_OURS)
        and written.rpartition("/")[0] != FORMAT_STEM
    )


def _check_format(document: Mapping[object, object]) -> None:
    written = document.get("format")
    if written == FORMAT:
        return
    start = say('Start the file with format = "{format}".', format=FORMAT)
    if "format" not in document:
        raise SurveyError(
            say("The file gives no format."), say("It may be of another kind."), start
        )
    stem, _, version = written.rpartition("/") if isinstance(written, str) else ("", "", "")
    if stem == FORMAT_STEM and version.isdecimal() and len(version) < 9 and int(version) > 1:
        raise SurveyError(
            say("The file's format is written as {shown}.", shown=shown(written)),
            say("That is a later version of the format than this program reads."),
            say("Bring the program up to date, or save the file in the older format."),
        )
    if is_something_else(written):
        raise SurveyError(
            say("The file's format is written as {shown}.", shown=shown(written)),
            say("That is another file of this program, not a house."),
            say("Name the house file instead."),
        )
    raise SurveyError(
        say("The file's format is written as {shown}.", shown=shown(written)),
        say("That is not a house file this program reads."),
        start,
    )


def _say_head_assumptions(values: dict[str, Any], remarks: Remarks) -> None:
    for key, assumption in (("units", UNITS), ("dialect", DIALECT)):
        if key not in values:
            remarks.assume(assumption)


def _read_entries(
    document: Mapping[object, object], settings: Settings, tables: TrimTables
) -> tuple[_Read[Opening], _Read[Room], _Read[Run], _Read[TrimEntry]]:
    openings, rooms, runs, trims = (
        as_list(document.get(key, []), key) for key in ("openings", "rooms", "runs", "trims")
    )
    marks = Counter(mark for written in (*openings, *runs, *trims) for mark in _labels(written))
    names = Counter(name for written in rooms if (name := _name(written)))

    def same(table: Table) -> _TableOf:
        return lambda _: table

    trim_of, build = partial(table_of, tables=tables), partial(build_trim, tables=tables)
    return (
        _read_each(openings, same(OPENING), EntryKind.OPENING, settings, marks, build_opening),
        _read_each(rooms, same(ROOM), EntryKind.ROOM, settings, names, build_room),
        _read_each(runs, same(RUN), EntryKind.RUN, settings, marks, build_run),
        _read_each(trims, trim_of, EntryKind.TRIM, settings, marks, build),
    )


def _read_each(
    written: list[object],
    table_of: _TableOf,
    kind: EntryKind,
    settings: Settings,
    names: Counter[str],
    build: Callable[[InHand], T | None],
) -> _Read[T]:
    entries: list[T] = []
    held: list[HeldEntry] = []
    is_room = kind is EntryKind.ROOM
    for index, one in enumerate(written, start=1):
        place = (_name(one) if is_room else _mark(one)) or f"{kind.value} {index}"
        try:
            rows = as_table(one, place)
            entry = read_entry(table_of(rows), rows, settings.remarks.units)
        except HouseFileTrouble as trouble:
            settings.remarks.at_place(trouble.finding(place))
            held.append(HeldEntry(kind=kind, mark=place))
            continue
        hand = InHand(entry, place, settings, rows)
        twice = [label for label in _labels(one) or (place,) if names[label] > 1]
        built = _build(hand, build, twice)
        if built is not None:
            entries.append(built)
        else:
            room = place if is_room else entry.values.get("room", "")
            held.append(HeldEntry(kind=kind, mark=place, room=room))
    return _Read(entries=tuple(entries), held=tuple(held))


def _build(hand: InHand, build: Callable[[InHand], T | None], twice: list[str]) -> T | None:
    if twice:
        hand.troubles.append(_named_twice(twice[0]))
    if hand.troubles:
        hand.hold(*hand.troubles)
        return None
    try:
        built = build(hand)
    except HouseFileTrouble as trouble:
        hand.hold(trouble)
        return None
    if built is not None:
        hand.close()
    return built


def _named_twice(name: str) -> HouseFileTrouble:
    return HouseFileTrouble(
        say("{name} stands in the file more than once.", name=quoted(name)),
        say("Its pieces would carry the same label, so all of them are held."),
        say("Give each opening, run, trim and room its own mark or name."),
        code="mark-twice",
    )


def _mark(written: object) -> str:
    return _named(written, "mark", read_mark)


def _name(written: object) -> str:
    return _named(written, "name", read_text)


def _named(written: object, key: str, read: Callable[[object, str], str]) -> str:
    if not isinstance(written, Mapping) or key not in written:
        return ""
    try:
        return read(written[key], key)
    except HouseFileTrouble:
        return ""


def _marked(document: Mapping[object, object]) -> Iterator[tuple[str, Mapping[object, object]]]:
    """Return every opening that has a mark, as written."""
    for one in as_list(document.get("openings", []), "openings"):
        if isinstance(one, Mapping) and _mark(one):
            yield _mark(one), one


def _labels(written: object) -> tuple[str, ...]:
    """Return the mark of an opening, run or trim, and those of its faces where two are trimmed."""
    mark = _mark(written)
    if not mark or not isinstance(written, Mapping):
        return ()
    two_faces = from_digits(written.get("faces")) == 2 or "b" in written
    return (mark, f"{mark}a", f"{mark}b") if two_faces else (mark,)

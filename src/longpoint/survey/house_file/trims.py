"""Read one entry of [[trims]] by what its kind asks for."""

from collections.abc import Mapping
from typing import Any

from longpoint.speech.said import say
from longpoint.survey.house_file.entry import as_table, read_entry
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.repeats import Repeats
from longpoint.survey.house_file.trim_tables import COMMON_KEYS, TRIM, TrimTables
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, shown
from longpoint.survey.trims import TrimEntry


def table_of(written: Mapping[Any, object], tables: TrimTables) -> Table:
    """Return the keys of the kind that an entry names; the common ones where it names none.

    Raises:
        HouseFileTrouble: There is no such kind.
    """
    kind = written.get("kind")
    if kind is None:
        return TRIM
    if isinstance(kind, str) and kind in tables:
        return tables[kind]
    known = instead(kind if isinstance(kind, str) else "", tables)
    raise HouseFileTrouble(
        say("kind is written as {shown}.", shown=shown(kind)),
        say("The catalogue has no trim of that name."),
        say("{known} `longpoint catalogue` lists them all.", known=known),
        code="trim-unknown",
        key="kind",
    )


def build_trim(hand: InHand, tables: TrimTables) -> TrimEntry:
    """Return the trim that an entry describes.

    Args:
        hand: The entry; every key of it could be read, its inner lists of tables not yet.
        tables: The keys of every kind.

    Raises:
        HouseFileTrouble: A list of tables in it can't be read, or it names what isn't described.
    """
    values = hand.values
    tape = hand.tape()
    repeats = Repeats(hand=hand, tape=tape)
    profile = values.get("profile", "")
    return TrimEntry(
        mark=values["mark"],
        kind=values["kind"],
        room=values.get("room", ""),
        openings=values.get("openings", ()),
        profile=hand.profile(profile, "profile") if profile else "",
        tape=tape.name,
        values={
            key.name: _plain(repeats, key, values[key.name], key.name)
            for key in table_of(hand.written, tables).keys
            if key.name in values and key.name not in COMMON_KEYS
        },
        written={str(key): value for key, value in hand.written.items()},
        accept=values.get("accept", ()),
    )


def _plain(repeats: Repeats, key: Key, value: Any, path: str) -> Any:  # noqa: ANN401
    """Return a value as the catalogue takes it: repeats as their mean, tables as dicts."""
    match key.kind:
        case Kind.READING:
            return repeats.length_mm(value, path)
        case Kind.READINGS:
            lengths = enumerate(value, start=1)
            return tuple(repeats.length_mm(one, f"{path} {index}") for index, one in lengths)
        case Kind.SIGNED_READING:
            return repeats.offset_mm(value, path)
        case Kind.ANGLE_READING:
            return repeats.angle_deg(value, path)
        case Kind.TABLE:
            return _inner(repeats, key, value, path)
        case Kind.TABLES:
            return tuple(
                _listed(repeats, key, one, f"{path} {index}")
                for index, one in enumerate(value, start=1)
            )
        case _:
            return value


def _listed(repeats: Repeats, key: Key, written: object, path: str) -> dict[str, Any]:
    if key.table is None:
        raise AssertionError(f"the key {key.name} describes no table")
    units = repeats.hand.settings.remarks.units
    entry = read_entry(key.table, as_table(written, path), units, f"{path}, ")
    for trouble in entry.troubles:
        raise trouble
    return _inner(repeats, key, entry.values, path)


def _inner(repeats: Repeats, key: Key, values: Mapping[str, Any], path: str) -> dict[str, Any]:
    if key.table is None:
        raise AssertionError(f"the key {key.name} describes no table")
    keys = key.table.by_name
    return {
        name: _plain(repeats, keys[name], value, f"{path}, {name}")
        for name, value in values.items()
    }

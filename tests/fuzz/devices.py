"""What comes from other devices: entries, requests, coded pictures, and a store on a bad disk."""

import base64
import contextlib
import tempfile
import zlib
from functools import cache
from pathlib import Path
from typing import Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import LongpointError
from longpoint.journal import Entry, as_written, key_of, read_entry, seen
from longpoint.phone.fold import fold
from longpoint.phone.hand_over import FORMAT, joined, journal_in
from longpoint.phone.passing import came
from longpoint.serve.crew.bodies import name_in, read_body, share_in
from longpoint.store.salvage import salvaged
from longpoint.store.sqlite_store import open_store, open_to_read
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.parsed_text import parsed_house
from longpoint.survey.rack.kept_rack import rack_now, rack_words
from tests.fuzz.refusing import FOLDERS, refused_or_read, told

AT: Final = "2026-03-02T07:15:00Z"
HIGHEST: Final = 1_000
"""The highest count on the phone that opens a journal."""
EDIT: Final = 4
"""Bytes of one change of a store: three for the place, one for what stands there then."""


def journal(data: bytes) -> bool:
    """Entries, a line each; each is written as it was read, and their houses can be folded."""
    entries: list[Entry] = []

    def work() -> None:
        for line in data.decode("utf-8", "replace").splitlines():
            entry = read_entry(line)
            # What can't be written is refused by whoever takes it in.
            assert as_written(read_entry(as_written(entry))) == as_written(entry)
            entries.append(entry)

    is_read = told(work)
    for house in {entry["house"] for entry in entries}:
        fold(entry for entry in entries if entry["house"] == house)
    came(entries)
    seen(map(key_of, entries))
    return is_read


def rack_entries(data: bytes) -> bool:
    """Entries of a rack, a line each; or none of them is one, and that is said."""

    def work() -> None:
        entries = [read_entry(line) for line in data.decode("utf-8", "replace").splitlines()]
        for entry in entries:
            as_written(entry)
            rack_words(entry)
        rack_now(entries)

    return told(work)


def request(data: bytes) -> bool:
    """What a phone sends to the crew's laptop; what is taken in is given again as it came."""

    def work() -> None:
        body = read_body(data)
        with contextlib.suppress(LongpointError):
            name_in(body, "name")
        share = share_in("h", body)
        with tempfile.TemporaryDirectory(dir=next(iter(FOLDERS), None)) as folder:
            store = open_store(Path(folder) / "s.store", "laptop")
            try:
                taken = store.take(share.entries)
                there = {as_written(each.entry) for each in store.entries("h")}
                came_in = {as_written(each) for each in share.entries}
                assert there == {as_written(each) for each in taken.added} <= came_in
                store.lacking(share.seen)
                assert not store.verify()
            finally:
                store.close()

    return told(work)


def pictures(data: bytes) -> bool:
    """Coded pictures, a line each; or, where it is none, what a picture would hold packed."""

    def work() -> None:
        text = data.decode("utf-8", "replace")
        parts = text.splitlines() if data.startswith(b"LPJ1.") else [_picture(data)]
        found = joined(parts)
        if not found.text:
            return
        document = parsed_house(found.text)
        if document.get("format") == FORMAT:
            document = fold(journal_in(document, HIGHEST)).document
        read_house(document, trim_tables())

    return told(work)


def _picture(packed: bytes) -> str:
    data = b""
    with contextlib.suppress(zlib.error):
        data = zlib.decompressobj().decompress(packed, 1_000_000)
    coded = base64.b32encode(packed).decode().rstrip("=")
    return f"LPJ1.{zlib.crc32(data):08X}.1.1.{coded}"


def store(data: bytes) -> bool:
    """A store of which some bytes changed; nothing comes out that didn't go in.

    Returns:
        Whether its file was read and nothing found wrong with it.
    """
    sound, texts = sound_store()
    findings: list[object] = []

    def work(path: Path) -> None:
        vouched = {as_written(entry) for entry in salvaged(path).entries}
        assert vouched <= texts
        kept = open_to_read(path)
        try:
            findings.extend(kept.verify())
            came_out = {
                as_written(each.entry) for house in kept.houses() for each in kept.entries(house)
            }
            assert came_out <= texts
            assert came_out == texts or findings
        finally:
            kept.close()

    return refused_or_read(work, changed(sound, data), ".store") and not findings


def changed(sound: bytes, edits: bytes) -> bytes:
    """Return bytes of which some are others, as the edits say."""
    found = bytearray(sound)
    for at in range(0, len(edits) - EDIT + 1, EDIT):
        found[int.from_bytes(edits[at : at + EDIT - 1]) % len(sound)] = edits[at + EDIT - 1]
    return bytes(found)


@cache
def sound_store() -> tuple[bytes, frozenset[str]]:
    """Return the bytes of a sound store, and its entries as they were written."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.store"
        made = open_store(path, "laptop")
        for number in range(12):
            said = {"opening": "W1", "line": "top", "value_text": f"{1000 + number}"}
            made.write(f"house-{number % 2}", AT, [{"what": "reading", **said}])
        texts = frozenset(
            as_written(each.entry) for house in made.houses() for each in made.entries(house)
        )
        made.close()
        return path.read_bytes(), texts


TARGETS: Final = {
    "journal": journal,
    "rack-entries": rack_entries,
    "request": request,
    "pictures": pictures,
    "store": store,
}
"""Each by its name."""

"""What longpoint kept itself, after somebody's disk, cloud folder or editor was at it."""

import tempfile
from functools import cache
from pathlib import Path
from typing import Final
from unittest.mock import patch

from longpoint.cli import street_house
from longpoint.cli.crew_folder import CrewFolder, load_members, read_log
from longpoint.cli.plan_folder import PDF, PLAN, READINGS, planned_code, void_sheets
from longpoint.cli.saw_folder import document_in
from longpoint.cli.street_house import RECORD, HouseTask, batch_house, kept_row
from longpoint.exchange.paper_files import keep_quote, kept_quote, kept_variations
from longpoint.journal import as_written
from longpoint.pricing.quote import Quote
from longpoint.render.paper import Paper
from longpoint.sheets.plan_file import bought_in, sticks_in
from longpoint.store.copies import restore
from longpoint.store.seal import read_seal, seal_path
from longpoint.store.sqlite_store import open_to_read
from tests.fuzz.devices import changed, sound_store
from tests.fuzz.refusing import FOLDERS, told
from tests.priced_jobs import counted, quoted, rates

KEY: Final = "what it was made from"
"""Stands in a street's record for the sums that no chance finds."""


def folder() -> "tempfile.TemporaryDirectory[str]":
    """Return a folder in memory, where there is one."""
    return tempfile.TemporaryDirectory(dir=next(iter(FOLDERS), None))


def quote(data: bytes) -> bool:
    """A quote as it was given; what is read is kept again and read as the same."""
    with folder() as place:
        first, again = Path(place) / "first", Path(place) / "again"
        first.mkdir()
        (first / "quote.json").write_bytes(data)

        def work() -> None:
            found = kept_quote(first)
            keep_quote(again, found)
            assert kept_quote(again) == found

        return told(work)


def variation(data: bytes) -> bool:
    """A variation beside its quote, which is as it was given."""
    with folder() as place:
        (Path(place) / "variation-1.json").write_bytes(data)
        return told(lambda: kept_variations(Path(place), _quote()))


@cache
def _quote() -> Quote:
    return quoted(counted(rates()))


def plan(data: bytes) -> bool:
    """The plan file of a folder of sheets: what an order, labels and a delivery go by."""
    with folder() as place:
        sheets = Path(place)
        (sheets / PLAN).write_bytes(data)

        def work() -> None:
            planned_code(sheets)
            document = document_in(sheets, PLAN)
            bought_in(document)
            sticks_in(document)

        return told(work)


def readings(data: bytes) -> bool:
    """The readings in a folder of sheets, which are to be voided; they are, or there are none."""
    with folder() as place:
        (Path(place) / READINGS).write_bytes(data)
        return void_sheets(Path(place), Paper.A4)


def street_record(data: bytes) -> bool:
    """What a street remembers of a house that is done; what can't be read is planned anew."""
    with (
        folder() as place,
        patch.object(street_house, "task_key", lambda _: KEY),
        patch.object(street_house, "_sum_of", lambda _: KEY),
    ):
        out = Path(place) / "a"
        out.mkdir()
        (out / RECORD).write_bytes(data)
        (out / PDF).touch()
        task = HouseTask(file=Path(place) / "a.toml", out=out, paper=None)
        row = kept_row(task)
        if row is not None:
            batch_house(task, row)
        return row is not None


def members(data: bytes) -> bool:
    """The list of phones that were let in; the same bytes as the log of the crew's server."""
    with folder() as place:
        crew = CrewFolder(Path(place))
        crew.members.write_bytes(data)
        crew.log.write_bytes(data)
        list(read_log(crew))
        return told(lambda: load_members(crew))


def seal(data: bytes) -> bool:
    """The seal beside a store; one that can't be read is as good as none."""
    with folder() as place:
        path = Path(place) / "a.store"
        seal_path(path).write_bytes(data)
        return read_seal(path) is not None


def backup(data: bytes) -> bool:
    """A backup of which some bytes changed: nothing comes back that didn't go in."""
    sound, texts = sound_store()
    with folder() as place:
        copy, path = Path(place) / "a.backup", Path(place) / "a.store"
        copy.write_bytes(changed(sound, data))
        is_restored = told(lambda: restore(copy, path, "laptop"))
        if is_restored:
            store = open_to_read(path)
            try:
                assert not store.verify()
                came = {as_written(e.entry) for h in store.houses() for e in store.entries(h)}
                assert came == texts
            finally:
                store.close()
        else:
            assert not path.exists()
        return is_restored


TARGETS: Final = {
    "quote": quote,
    "variation": variation,
    "plan": plan,
    "readings": readings,
    "street-record": street_record,
    "members": members,
    "seal": seal,
    "backup": backup,
}
"""Each by its name."""

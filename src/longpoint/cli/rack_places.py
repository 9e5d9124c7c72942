"""Where the crew's rack is: in a file of its own, or in the store beside the houses."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final, Protocol

import click

from longpoint.cli.data_folder import new_name
from longpoint.cli.kept_rack import kept_rack, rack_in_store, save_rack_in_store
from longpoint.cli.store_places import StorePlace, open_store
from longpoint.errors import Finding, StoreError
from longpoint.exchange.rack_files import load_or_begin_rack, load_rack, save_rack
from longpoint.speech.said import say
from longpoint.survey.rack import Rack

IN_STORE: Final = "store"
"""The word that stands for the rack in the store; a file of that name is ./store."""


class RackPlace(Protocol):
    """Where a rack is read from and written to."""

    def load(self) -> Rack:
        """Return the rack.

        Raises:
            LongpointError: There is none, or anything in it can't be read.
        """

    def load_or_begin(self) -> Rack:
        """Return the rack; an empty one where there is none yet."""

    def findings(self) -> tuple[Finding, ...]:
        """Return what is to be mended by hand."""

    def save(self, before: Rack, after: Rack, at: str) -> Path | None:
        """Write the rack as a whole or not at all.

        Args:
            before: As it was read.
            after: As it is to be.
            at: The moment.

        Returns:
            A copy that was kept of the file as it was; None where none was needed.

        Raises:
            LongpointError: Somebody else changed it meanwhile, or it can't be written.
        """


@dataclass(frozen=True, slots=True)
class RackFile:
    """A rack in a file of its own."""

    path: Path

    def load(self) -> Rack:
        """Return the rack."""
        return load_rack(self.path)

    def load_or_begin(self) -> Rack:
        """Return the rack; an empty one where there is no file yet."""
        return load_or_begin_rack(self.path)

    def findings(self) -> tuple[Finding, ...]:
        """Return nothing: a file with anything to be mended is refused."""
        return ()

    def save(self, before: Rack, after: Rack, at: str) -> Path | None:
        """Write the file."""
        return save_rack(self.path, before, after)


@dataclass(frozen=True, slots=True)
class RackInStore:
    """The rack in the store."""

    store: StorePlace

    def load(self) -> Rack:
        """Return the rack."""
        found = rack_in_store(self.store)
        if not found.entries:
            raise StoreError(
                say("The rack in the store was to be read."),
                say("Nothing was put up there yet."),
                say("Put offcuts up with `longpoint rack put store`, or a file with `rack add`."),
            )
        return found.rack

    def load_or_begin(self) -> Rack:
        """Return the rack; an empty one where nothing was written yet."""
        store = open_store(self.store, new_name())
        try:
            return kept_rack(store).rack
        finally:
            store.close()

    def findings(self) -> tuple[Finding, ...]:
        """Return what is to be mended by hand."""
        return rack_in_store(self.store).findings

    def save(self, before: Rack, after: Rack, at: str) -> Path | None:
        """Write what was done to it."""
        save_rack_in_store(self.store, before, after, at)
        return None


class RackType(click.ParamType[Path | str]):
    """What RACK takes: a file, or the word that stands for the one in the store."""

    name = "rack"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> Path | str:
        """Return the file, or the word."""
        if isinstance(value, Path) or value == IN_STORE:
            return value if isinstance(value, Path) else IN_STORE
        file = click.Path(path_type=Path, dir_okay=False)
        return Path(file.convert(str(value), param, ctx))


def rack_place(written: Path | str, store: StorePlace) -> RackPlace:
    """Return where a rack is.

    Args:
        written: As `RackType` gives it.
        store: The store.
    """
    return RackFile(written) if isinstance(written, Path) else RackInStore(store)

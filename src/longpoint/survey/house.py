"""The whole house as written down."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeVar

from longpoint.errors import Finding, SurveyError
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.crew import Crew
from longpoint.survey.fixing import FixingSetup
from longpoint.survey.handover import Defect, Handover
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Opening
from longpoint.survey.profiles import Offcut, Profile, Stock
from longpoint.survey.rooms import Room, Run
from longpoint.survey.season import HouseSeasons
from longpoint.survey.trims import TrimEntry


class Dialect(StrEnum):
    """Whose words stand on the sheets."""

    AU = "au"
    NZ = "nz"
    UK = "uk"
    IE = "ie"
    US = "us"
    CA = "ca"


class EntryKind(StrEnum):
    """What an entry of the house file describes."""

    OPENING = "opening"
    ROOM = "room"
    RUN = "run"
    TRIM = "trim"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldEntry:
    """An opening, room, run or trim that couldn't be read; kept so that it stands on every sheet.

    Attributes:
        kind: What it is.
        mark: Its mark, or a place-holder such as "opening 3" when even that is missing.
        room: Its room, if that could be read.
    """

    kind: EntryKind
    mark: str
    room: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class House:
    """One house file, read.

    Attributes:
        name: The house's name.
        units: Unit in which it was read and is printed.
        dialect: Whose words stand on the sheets.
        profiles: Every moulding section.
        tapes: Every tape, the default first.
        saw: The saw in use.
        stock: Sticks that can be bought.
        offcuts: Sticks on the rack.
        openings: Openings that could be read.
        rooms: Rooms that could be read.
        runs: Skirting runs read on their own.
        trims: All other trim: rails, cornice, linings, stops, panelling and so on.
        held: Entries that couldn't be read.
        skirting_profile: Name of the default skirting; may be empty.
        floor_gap_mm: Gap left under the skirting.
        longest_run_mm: Longest skirting piece the crew will carry; None: the longest stick.
        saw_tape: Name of the tape that marks at the saw; the reader always gives one.
        crew: What the crew says of its walls and its time.
        seasons: Air around the trim, at fitting and through the year.
        fixing: What is told of nails and of the wall behind the trim.
        handover: What is told of handing over.
        defects: What was found wrong.
    """

    name: str
    units: Units
    dialect: Dialect
    profiles: tuple[Profile, ...]
    tapes: tuple[Tape, ...]
    saw: Saw
    stock: tuple[Stock, ...] = ()
    offcuts: tuple[Offcut, ...] = ()
    openings: tuple[Opening, ...] = ()
    rooms: tuple[Room, ...] = ()
    runs: tuple[Run, ...] = ()
    trims: tuple[TrimEntry, ...] = ()
    held: tuple[HeldEntry, ...] = ()
    skirting_profile: str = ""
    floor_gap_mm: float = 0.0
    longest_run_mm: float | None = None
    saw_tape: str = ""
    crew: Crew = field(default_factory=Crew)
    seasons: HouseSeasons = field(default_factory=HouseSeasons)
    fixing: FixingSetup = field(default_factory=lambda: FixingSetup(assumed=True))
    handover: Handover = field(default_factory=lambda: Handover(assumed=True))
    defects: tuple[Defect, ...] = ()

    def profile(self, name: str) -> Profile:
        """Return the profile of that name.

        Raises:
            SurveyError: There is none. The reader of the house file makes sure that every opening
                and run it lets through names a profile that exists.
        """
        return _named(self.profiles, name, "profile")

    def tape(self, name: str) -> Tape:
        """Return the tape of that name.

        Raises:
            SurveyError: There is none.
        """
        return _named(self.tapes, name, "tape")


@dataclass(frozen=True, slots=True, kw_only=True)
class SurveyResult:
    """A house as read, and what is to be said about it."""

    house: House
    findings: tuple[Finding, ...]


_Named = TypeVar("_Named", Profile, Tape)


def _named(entries: tuple[_Named, ...], name: str, kind: str) -> _Named:
    for entry in entries:
        if entry.name == name:
            return entry
    raise SurveyError(
        say("The house names the {kind} {name!r}.", kind=kind, name=name),
        say("No {kind} of that name is described.", kind=kind),
        say("Describe it under [{kind}s.{name}], or name one that is.", kind=kind, name=name),
    )

"""A house of the store: found by its name, and what became of its readings and sheets."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.data_folder import new_name
from longpoint.cli.plan_folder import planned_code, void_sheets
from longpoint.cli.store_places import StorePlace, open_store, open_to_read
from longpoint.errors import LongpointError, StoreError
from longpoint.journal import Entry, is_house
from longpoint.phone.fold import fold
from longpoint.phone.messages import Fold
from longpoint.phone.ways import with_gaps
from longpoint.speech.said import joined, say
from longpoint.store import HouseStore, Milestone, MilestoneKind
from longpoint.store.records import Numbered
from longpoint.survey.house_file import read_house, readings_code

SHORTEST_KEY: Final = 4
NO_CODE: Final = ""
"""Of a house that can't be read as it stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptHouse:
    """A house as it stands in the store.

    Attributes:
        key: Its key.
        entries: What was written of it, in the order in which it came.
        milestones: Revisions and plans.
        now: As it stands.
    """

    key: str
    entries: tuple[Numbered, ...]
    milestones: tuple[Milestone, ...]
    now: Fold

    @property
    def name(self) -> str:
        """The house's name; its key where it has none."""
        return self.now.name or self.key

    @property
    def document(self) -> dict[str, Any]:
        """The house file that it comes to, with what was read of sets on the wall."""
        return with_gaps(self.now.document, self.now.gaps)

    @property
    def revisions(self) -> tuple[Milestone, ...]:
        """Revisions of the readings, the first first."""
        return tuple(m for m in self.milestones if m.kind is MilestoneKind.REVISION)

    @property
    def plans(self) -> tuple[Milestone, ...]:
        """The last plan of each folder of sheets."""
        plans = (m for m in self.milestones if m.kind is MilestoneKind.PLAN)
        return tuple({str(plan.said.get("folder")): plan for plan in plans}.values())

    def revision_at(self, milestone: Milestone) -> int:
        """Return the number of the revision that a milestone was made in."""
        return sum(each.number <= milestone.number for each in self.revisions)


def kept_house(store: HouseStore, key: str) -> KeptHouse:
    """Return a house of the store.

    Raises:
        StoreError: What is kept of it isn't as it was written.
        SurveyError: It can't be made of its entries.
    """
    entries = store.entries(key)
    return KeptHouse(
        key=key,
        entries=entries,
        milestones=store.milestones(key),
        now=folded(each.entry for each in entries),
    )


def folded(entries: Any) -> Fold:  # noqa: ANN401
    """Return the house of some entries."""
    return fold(entries)


def all_houses(store: HouseStore) -> tuple[KeptHouse, ...]:
    """Return all houses of the store, in the order in which they came."""
    return tuple(kept_house(store, key) for key in store.houses() if is_house(key))


def house_named(store: HouseStore, written: str) -> KeptHouse:
    """Return the house of a name, or of the beginning of a key.

    Raises:
        StoreError: There is none, or more than one.
    """
    houses = all_houses(store)
    found = [each for each in houses if each.name.casefold() == written.strip().casefold()]
    if not found and len(written) >= SHORTEST_KEY:
        found = [each for each in houses if each.key.startswith(written)]
    if len(found) == 1:
        return found[0]
    if found:
        keys = joined(", ", (each.key[: SHORTEST_KEY * 2] for each in found))
        raise StoreError(
            say("The house {written} was asked for.", written=written),
            say("{found} houses of the store have that name.", found=len(found)),
            say("Say which by the beginning of its key: {keys}.", keys=keys),
        )
    names = joined(", ", sorted(each.name for each in houses))
    raise StoreError(
        say("The house {written} was asked for.", written=written),
        say("The store has none of that name; it has {names}.", names=names)
        if names
        else say("The store is empty."),
        say(
            "Write its name as `longpoint houses` gives it, in quotes when there is a blank in it."
        ),
    )


def code_of(document: Mapping[str, Any]) -> str:
    """Return the code of a house's readings; an empty one where it can't be read."""
    try:
        return readings_code(read_house(document, trim_tables()).house)
    except LongpointError:
        return NO_CODE


def mark_revision(store: HouseStore, house: KeptHouse, at: str) -> KeptHouse:
    """Remember that the readings of a house are others now, if they are.

    Returns:
        The house, with a revision more where there is one.
    """
    code = code_of(house.document)
    if house.revisions and house.revisions[-1].code == code:
        return house
    store.keep(
        Milestone(
            house=house.key,
            kind=MilestoneKind.REVISION,
            at=at,
            after=house.entries[-1].number,
            code=code,
            said={},
        )
    )
    return kept_house(store, house.key)


def house_in_store(path: StorePlace, written: str) -> KeptHouse:
    """Return a house of the store in a file, by its name.

    Raises:
        StoreError: There is no such house or store.
    """
    store = open_to_read(path)
    try:
        return house_named(store, written)
    finally:
        store.close()


def remember_plan(path: StorePlace, key: str, at: str, folder: Path, code: str) -> list[str]:
    """Remember that sheets of a house were made, and say from which revision.

    Args:
        path: Where the store is.
        key: Key of the house.
        at: The moment.
        folder: Where the sheets are.
        code: Code of the readings that they were made from.
    """
    store = open_store(path, new_name())
    try:
        house = mark_revision(store, kept_house(store, key), at)
        store.keep(
            Milestone(
                house=key,
                kind=MilestoneKind.PLAN,
                at=at,
                after=house.entries[-1].number,
                code=code,
                said={"folder": str(folder.resolve())},
            )
        )
        house = kept_house(store, key)
    finally:
        store.close()
    made = say(
        "Made from revision {revisions} of the readings in the store, {code}.",
        revisions=len(house.revisions),
        code=code,
    )
    return [made, *voided_lines(house)]


def stale_plans(house: KeptHouse) -> tuple[Milestone, ...]:
    """Return the plans whose readings aren't those of the house any more."""
    code = code_of(house.document)
    return tuple(plan for plan in house.plans if plan.code != code)


def voided_lines(house: KeptHouse) -> list[str]:
    """Mark the sheets of older readings VOID where they lie, and say so."""
    lines = []
    for plan in stale_plans(house):
        folder = Path(str(plan.said.get("folder")))
        if planned_code(folder) != plan.code:
            lines.append(
                say(
                    "Sheets were made into {folder}, and aren't there now: don't cut by them.",
                    folder=folder,
                )
            )
            continue
        is_voided = void_sheets(folder, None)
        said = (
            say("are now marked VOID") if is_voided else say("can't be voided: don't cut from them")
        )
        lines.append(
            say(
                "The sheets in {folder} are of older readings; they {said}.",
                folder=folder,
                said=said,
            )
        )
    return lines


def effect_lines(before: KeptHouse | None, after: KeptHouse) -> Sequence[str]:
    """Return what a change did to the readings and the sheets."""
    revision = len(after.revisions)
    code = after.revisions[-1].code if after.revisions else NO_CODE
    if before is not None and len(before.revisions) == revision:
        return [
            say(
                "The readings stay as they were: revision {revision}, {code}.",
                revision=revision,
                code=code,
            )
        ]
    if code == NO_CODE:
        return [
            say(
                "Revision {revision}: the house can't be planned as it stands. "
                "`longpoint check` on its file says why.",
                revision=revision,
            )
        ]
    again = [
        say(
            "The sheets in {said} were made from these very readings. Where they are "
            "marked VOID, plan again.",
            said=plan.said.get("folder"),
        )
        for plan in after.plans
        if plan.code == code
    ]
    return [
        say("Revision {revision} of the readings, {code}.", revision=revision, code=code),
        *voided_lines(after),
        *again,
    ]


def entries_of(house: KeptHouse) -> tuple[Entry, ...]:
    """Return what was written of a house, without the store's numbers."""
    return tuple(each.entry for each in house.entries)

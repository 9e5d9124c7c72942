"""Plan every entry of [[trims]] by its kind; one that can't be planned holds nothing but itself."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from longpoint.catalogue.all_trims import CATALOGUE
from longpoint.catalogue.trim import TRIM_WAITS, Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, LongpointError, PieceError, Severity
from longpoint.shape.fitted import Shapes
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.trims import TrimEntry

TRIM_NOT_PLANNED: Final = "trim-not-planned"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedTrim:
    """One entry with its plan.

    Attributes:
        entry: The entry.
        title: What it is, to stand in a sentence: "a picture rail".
        plan: Its pieces, drawings and sentences.
    """

    entry: TrimEntry
    title: str
    plan: TrimPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimsPlanned:
    """All entries, planned.

    Attributes:
        trims: Those that could be planned, in house order.
        findings: All that is to be said of them.
    """

    trims: tuple[PlannedTrim, ...]
    findings: tuple[Finding, ...]


def plan_trims(
    house: House,
    shapes: Shapes,
    held: frozenset[str] = frozenset(),
    kinds: Iterable[TrimKind] = CATALOGUE,
) -> TrimsPlanned:
    """Return the plan of every trim that isn't held.

    Args:
        house: The house as read.
        shapes: Fitted openings and rooms.
        held: Places held back so far. A trim of a held opening does without that opening; one that
            has no other, or whose room is held, waits.
        kinds: The catalogue.
    """
    by_name = {kind.name: kind for kind in kinds}
    planned: list[PlannedTrim] = []
    findings: list[Finding] = []
    for entry in house.trims:
        if entry.mark in held:
            continue
        kind = by_name[entry.kind]
        try:
            sound, waiting = _without_held(house, entry, kind, held)
            plan = kind.plan(Asked(house=house, shapes=shapes, entry=sound, held=held))
            _refuse_nothing(entry, plan)
        except LongpointError as error:
            findings.append(_stop(entry.mark, error))
            continue
        planned.append(PlannedTrim(entry=entry, title=kind.title, plan=plan))
        findings += (*waiting, *plan.findings)
    return TrimsPlanned(trims=tuple(planned), findings=tuple(findings))


def _without_held(
    house: House, entry: TrimEntry, kind: TrimKind, held: frozenset[str]
) -> tuple[TrimEntry, tuple[Finding, ...]]:
    """Return an entry with what its kind needs, less the openings that are held."""
    if kind.needs_profile and not entry.profile:
        raise _missing(entry, say("a profile"), "profile")
    _check_room(house, entry, kind, held)
    known = {opening.mark for opening in house.openings}
    known |= {each.mark for each in house.held}
    unknown = [mark for mark in entry.openings if mark not in known]
    if unknown:
        raise PieceError(
            say("{mark} names the opening {unknown}.", mark=entry.mark, unknown=unknown[0]),
            say("The house has no opening of that mark."),
            say("Name one that is described, or describe it under [[openings]]."),
        )
    if kind.needs_openings and not entry.openings:
        raise _missing(entry, say("an opening"), "openings")
    lost = held | {each.mark for each in house.held}
    sound = tuple(mark for mark in entry.openings if mark not in lost)
    if sound == entry.openings:
        return entry, ()
    waiting = joined(", ", (mark for mark in entry.openings if mark in lost))
    if not sound:
        raise PieceError(
            say("{mark} is fixed to {waiting}.", mark=entry.mark, waiting=waiting),
            say("No length may be printed there yet, so none is worked out for this either."),
            say("Put that right first."),
        )
    return replace(entry, openings=sound), (
        Finding(
            code=TRIM_WAITS,
            severity=Severity.WARNING,
            place=entry.mark,
            read=say(
                "{mark} is fixed to {waiting} as well.",
                mark=entry.mark,
                waiting=waiting,
            ),
            wrong=say("No length may be printed there yet, so its pieces for it are left out."),
            do=say("Put that right, then plan again before you order."),
        ),
    )


def _check_room(house: House, entry: TrimEntry, kind: TrimKind, held: frozenset[str]) -> None:
    if not kind.needs_room:
        return
    if not entry.room:
        raise _missing(entry, say("a room"), "room")
    if entry.room in held or entry.room in {each.mark for each in house.held}:
        raise PieceError(
            say("{mark} runs round {room}.", mark=entry.mark, room=entry.room),
            say("That room is held, so no length is worked out for this either."),
            say("Put the room right first."),
        )
    if entry.room not in {room.name for room in house.rooms}:
        raise PieceError(
            say("{mark} names the room {room}.", mark=entry.mark, room=entry.room),
            say("The walls of no such room are described."),
            say("Describe it under [[rooms]], or name one that is."),
        )


def _refuse_nothing(entry: TrimEntry, plan: TrimPlan) -> None:
    if not plan.pieces and not plan.findings:
        raise PieceError(
            say("{mark} asks for nothing that is cut.", mark=entry.mark),
            say("An entry without a piece is written in vain."),
            say("Look whether a list in it is empty, or take it out."),
        )


def _missing(entry: TrimEntry, what: str, key: str) -> PieceError:
    return PieceError(
        say("{mark} is written without {what}.", mark=entry.mark, what=what),
        say("{kind} can't be done without {what}.", kind=entry.kind, what=what),
        say("Write {key} at it.", key=key),
    )


def _stop(mark: str, error: LongpointError) -> Finding:
    return Finding(
        code=TRIM_NOT_PLANNED,
        severity=Severity.STOP,
        place=mark,
        read=error.read,
        wrong=error.wrong,
        do=error.do,
    )

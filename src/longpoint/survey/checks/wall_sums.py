"""Do the skirting runs and the openings of a wall add up to the wall?"""

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.checks.wall_slips import guess_slip, is_of_digits, slip_words
from longpoint.survey.checks.wall_witness import Witness, hear_witness
from longpoint.survey.digits import Slip
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.rooms import Room, Run, RunEnd, Wall
from longpoint.survey.trimmed_openings import TrimmedOpening, trimmed_opening

WALL_SUM: Final = "wall-sum"
WALL_SUM_UNCHECKED: Final = "wall-sum-unchecked"

SUM_LIMIT_MM: Final = 12.0
"""How far a sum may be out before it is called wrong: our limit, no source.

About four times the doubt of three tape readings between plastered corners.
"""

_CORNER_ENDS: Final = frozenset({RunEnd.INTERNAL, RunEnd.EXTERNAL})


@dataclass(frozen=True, slots=True, kw_only=True)
class _Standing:
    """An opening between two runs of a wall."""

    trim: TrimmedOpening
    outer_mm: float
    from_left_mm: float | None

    @property
    def outer_left_mm(self) -> float | None:
        return None if self.from_left_mm is None else self.from_left_mm - self.trim.left_mm

    @property
    def outer_right_mm(self) -> float | None:
        left_mm = self.outer_left_mm
        return None if left_mm is None else left_mm + self.outer_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class _Cover:
    """A wall that runs and openings cover from corner to corner."""

    house: House
    room: Room
    wall: Wall
    wall_mm: float
    runs: tuple[Run, ...]
    standing: tuple[_Standing, ...]

    @property
    def total_mm(self) -> float:
        return math.fsum(
            (*(run.length_mm for run in self.runs), *(each.outer_mm for each in self.standing))
        )

    @property
    def over_mm(self) -> float:
        return self.total_mm - self.wall_mm

    def shown(self, length_mm: float) -> str:
        return format_length(length_mm, self.house.units)

    def with_unit(self, length_mm: float) -> str:
        return format_with_unit(length_mm, self.house.units)

    def slip(self, run: Run) -> Slip | None:
        return guess_slip(run.length_mm, run.length_mm - self.over_mm, self.house.units)

    def mended_mm(self, run: Run) -> float:
        slip = self.slip(run)
        return slip.value_mm if slip is not None else run.length_mm - self.over_mm

    def guessed(self, slip: Slip | None, before: str, after: str) -> str:
        return (
            say(
                "{before}{slip}{after}",
                before=before,
                slip=slip_words(slip, self.house.units),
                after=after,
            )
            if slip is not None
            else ""
        )

    def sentence(self) -> str:
        parts = [
            say(
                "{mark} {shown}",
                mark=self.runs[0].mark,
                shown=self.shown(self.runs[0].length_mm),
            )
        ]
        for each, run in zip(self.standing, self.runs[1:], strict=True):
            parts.append(
                say(
                    "{mark} with its architraves {shown}",
                    mark=each.trim.mark,
                    shown=self.shown(each.outer_mm),
                )
            )
            parts.append(
                say(
                    "{mark} {shown}",
                    mark=run.mark,
                    shown=self.shown(run.length_mm),
                )
            )
        sum_text = joined(" + ", parts)
        if len(parts) > 1:
            sum_text += say(" = {shown}", shown=self.shown(self.total_mm))
        return say(
            "Wall {mark} of {room} reads {with_unit}; along it stand {sum_text}.",
            mark=self.wall.mark,
            room=self.room.name,
            with_unit=self.with_unit(self.wall_mm),
            sum_text=sum_text,
        )

    def misfit(self) -> str:
        way = say("over") if self.over_mm > 0 else say("short")
        return say(
            "That is {with_unit} {way}, and our limit is {with_unit_2}",
            with_unit=self.with_unit(abs(self.over_mm)),
            way=way,
            with_unit_2=self.with_unit(SUM_LIMIT_MM),
        )


def check_wall_sums(house: House) -> tuple[Finding, ...]:
    """Check every wall that the runs naming it cover from corner to corner.

    Args:
        house: The house as read.

    Returns:
        A stop for every run (or for the wall) that may hold the slip; nothing for a wall that adds
        up, or that isn't covered: a run that ends square stops short of something unread. A wall
        whose doors aren't all listed gets a note, since its sum can't be checked.
    """
    return tuple(
        finding
        for room in house.rooms
        for wall in room.walls
        for finding in _check_wall(house, room, wall)
    )


def _check_wall(house: House, room: Room, wall: Wall) -> tuple[Finding, ...]:
    runs = tuple(run for run in house.runs if run.room == room.name and run.wall == wall.mark)
    if wall.length_mm is None or not _reach_both_corners(runs):
        return ()
    standing = _standing(house, room, wall)
    if standing is None or len(standing) != len(runs) - 1:
        return (_unchecked(room, wall, runs),)
    cover = _Cover(
        house=house,
        room=room,
        wall=wall,
        wall_mm=wall.length_mm,
        runs=runs,
        standing=standing,
    )
    return () if abs(cover.over_mm) <= SUM_LIMIT_MM else _misfit(cover)


def _reach_both_corners(runs: tuple[Run, ...]) -> bool:
    return (
        bool(runs)
        and runs[0].left in _CORNER_ENDS
        and runs[-1].right in _CORNER_ENDS
        and all(
            a.right is RunEnd.ARCHITRAVE and b.left is RunEnd.ARCHITRAVE for a, b in pairwise(runs)
        )
    )


def _standing(house: House, room: Room, wall: Wall) -> tuple[_Standing, ...] | None:
    """Return the doors of a wall from left to right; None when one of them isn't known."""
    by_mark: dict[str, Opening] = {opening.mark: opening for opening in house.openings}
    standing = []
    for place in wall.openings:
        opening = by_mark.get(place.mark)
        if opening is None:
            return None
        if not opening.stands_on_floor:
            continue
        trim = trimmed_opening(house, opening, room.name)
        if trim.outer_mm is None:
            return None
        standing.append(
            _Standing(trim=trim, outer_mm=trim.outer_mm, from_left_mm=place.from_left_mm)
        )
    return tuple(standing)


def _misfit(cover: _Cover) -> tuple[Finding, ...]:
    witness = hear_witness(cover.room, cover.wall, cover.total_mm)
    if witness is not None and witness.speaks_for_sum:
        return (_wall_in_doubt(cover, witness),)
    suspects = sorted(_suspects(cover), key=lambda run: _likelihood(cover, run), reverse=True)
    first, others = suspects[0], tuple(suspects[1:])
    return (
        _first_in_doubt(cover, first, others, witness),
        *(_also_in_doubt(cover, run, first) for run in others),
    )


def _likelihood(cover: _Cover, run: Run) -> tuple[bool, float]:
    """Rank a run: swapped digits fit one figure only, a tape slip fits the longest best."""
    slip = cover.slip(run)
    return (slip is not None and is_of_digits(slip), run.length_mm)


def _suspects(cover: _Cover) -> tuple[Run, ...]:
    """Return the runs that may hold the slip, as far as the doors' places tell."""
    open_runs = []
    for index, run in enumerate(cover.runs[:-1]):
        start_mm = 0.0 if index == 0 else cover.standing[index - 1].outer_right_mm
        end_mm = cover.standing[index].outer_left_mm
        if start_mm is None or end_mm is None:
            open_runs.append(run)
            continue
        own_over_mm = run.length_mm - (end_mm - start_mm)
        if abs(own_over_mm - cover.over_mm) <= SUM_LIMIT_MM:
            return (run,)
        if abs(own_over_mm) > SUM_LIMIT_MM:
            open_runs.append(run)
    return (*open_runs, cover.runs[-1])


def _first_in_doubt(
    cover: _Cover, run: Run, others: tuple[Run, ...], witness: Witness | None
) -> Finding:
    slip = cover.slip(run)
    reason = cover.guessed(slip, say("; {mark}: ", mark=run.mark), "?")
    if witness is not None:
        wall = say(
            " The walls opposite leave {shown}, so the wall stands.",
            shown=cover.shown(witness.opposite_mm),
        )
    else:
        own = guess_slip(cover.wall_mm, cover.total_mm, cover.house.units)
        hint = cover.guessed(own, " (", "?)") if slip is None else ""
        wall = say(" If the runs stand, read the wall itself again{hint}.", hint=hint)
    then = (
        say(
            ", then {others}",
            others=joined(say(" and "), (other.mark for other in others)),
        )
        if others
        else ""
    )
    return Finding(
        code=WALL_SUM,
        severity=Severity.STOP,
        place=run.mark,
        read=cover.sentence(),
        wrong=say("{misfit}{reason}", misfit=cover.misfit(), reason=reason or "."),
        do=say(
            "Read {mark} again first ({shown} would fit){then}.{wall}",
            mark=run.mark,
            shown=cover.shown(cover.mended_mm(run)),
            then=then,
            wall=wall,
        ),
    )


def _also_in_doubt(cover: _Cover, run: Run, first: Run) -> Finding:
    reason = cover.guessed(cover.slip(run), say("; or {mark}: ", mark=run.mark), "?")
    return Finding(
        code=WALL_SUM,
        severity=Severity.STOP,
        place=run.mark,
        read=cover.sentence(),
        wrong=say(
            "{misfit}; the slip is more likely at {mark}{reason}",
            misfit=cover.misfit(),
            mark=first.mark,
            reason=reason or ".",
        ),
        do=say(
            "Read {mark} first; if it stands, read {mark_2} again ({shown} would fit).",
            mark=first.mark,
            mark_2=run.mark,
            shown=cover.shown(cover.mended_mm(run)),
        ),
    )


def _wall_in_doubt(cover: _Cover, witness: Witness) -> Finding:
    slip = guess_slip(cover.wall_mm, cover.total_mm, cover.house.units)
    reason = cover.guessed(slip, "; ", "?")
    marks = joined(say(" and "), (run.mark for run in cover.runs))
    return Finding(
        code=WALL_SUM,
        severity=Severity.STOP,
        place=say("{room} {mark}", room=cover.room.name, mark=cover.wall.mark),
        read=cover.sentence(),
        wrong=say(
            "{misfit}, but the walls opposite leave {with_unit}: the wall is the "
            "likelier slip{reason}",
            misfit=cover.misfit(),
            with_unit=cover.with_unit(witness.opposite_mm),
            reason=reason or ".",
        ),
        do=say(
            "Read wall {mark} again ({shown} would fit); {marks} may be cut.",
            mark=cover.wall.mark,
            shown=cover.shown(cover.total_mm),
            marks=marks,
        ),
    )


def _unchecked(room: Room, wall: Wall, runs: tuple[Run, ...]) -> Finding:
    marks = joined(say(" and "), (run.mark for run in runs))
    return Finding(
        code=WALL_SUM_UNCHECKED,
        severity=Severity.NOTE,
        place=say("{room} {mark}", room=room.name, mark=wall.mark),
        read=say(
            "Wall {mark} of {room} is covered by {marks}.",
            mark=wall.mark,
            room=room.name,
            marks=marks,
        ),
        wrong=say(
            "The doors between them are not all listed on the wall and read, so "
            "their sum was not checked against the wall."
        ),
        do=say("List every door of the wall under its openings, from left to right."),
    )

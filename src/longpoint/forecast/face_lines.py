"""The lines by which a face is judged: each a way in which its errors add up against a limit."""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from operator import mul
from typing import Final

from longpoint.forecast.budget.records import Cause, ErrorBudget, ErrorName
from longpoint.forecast.fitup.lines import FitLine, Respect, fit_lines
from longpoint.forecast.fitup.squared import squared_up
from longpoint.forecast.fitup.weighing import Weigher, weighed_lines
from longpoint.forecast.lines import Line, LineGroup, LineOpening, Spread
from longpoint.forecast.planned_face import PlannedFace
from longpoint.forecast.records import CauseShare
from longpoint.forecast.terms import FrameErrors, FrameTerm
from longpoint.linear.port import LinearSolver

FACE_STEP_MM: Final = 0.5
"""Step between the faces of neighbours that still counts as level; assumed."""

LINES_AT_A_GLANCE: Final = 6
ALIKE: Final = 0.5
"""Two lines correlated more than this are taken for one in the quick look."""

OUT_OF_REACH: Final = 6.0
"""A line more than so many uncertainties below its limit is passed once in 10^9: left out."""

RESPECTS: Final = (Respect.GAPS, Respect.QUIRK, Respect.IN_PLANE)


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceLines:
    """One face with its lines over the slots of its frame.

    Attributes:
        face: The face.
        lines: For each respect (gaps, quirk, in-plane) its lines.
    """

    face: PlannedFace
    lines: tuple[tuple[FitLine, ...], ...]

    @property
    def name(self) -> str:
        """Mark and face, as on the pieces."""
        return f"{self.face.opening.mark}{self.face.fitted.face}"

    def in_plane(self) -> "FaceLines":
        """Return the face with the lines of the fit alone, gaps and quirk each left out."""
        return replace(self, lines=((), (), self.lines[-1]))


@dataclass(frozen=True, slots=True, kw_only=True)
class TermLine:
    """One line over the terms of a frame.

    Attributes:
        offset: Its value with no error but what is known.
        over: Its change per standard uncertainty of each term.
        u: Its standard uncertainty.
        biased: What tools are known for makes of its offset, by cause.
    """

    offset: float
    over: tuple[float, ...]
    u: float
    biased: tuple[tuple[Cause, float], ...] = ()

    @property
    def reserve(self) -> float:
        """How many of its uncertainties it stays below its limit."""
        if not self.u:
            return math.inf if self.offset <= 1.0 else -math.inf
        return (1.0 - self.offset) / self.u


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighedFace:
    """A face whose lines are put over what its frame may be out by.

    Attributes:
        name: Mark and face.
        terms: What it may be out by.
        lines: For each respect those lines that can be passed at all, the nearest first.
    """

    name: str
    terms: tuple[FrameTerm, ...]
    lines: tuple[tuple[TermLine, ...], ...]


def face_lines(
    face: PlannedFace, solver: LinearSolver | None = None, weigh: Weigher = weighed_lines
) -> FaceLines:
    """Return the lines of a face in every respect.

    A frame a little out of square takes those of the true one: they differ by no more than the
    angle, while the known lists would lose sets whose weights just turn negative.

    Args:
        face: The face as planned.
        solver: For shapes whose lines aren't known beforehand; None: the built-in one.
        weigh: Weighs the rows of shapes whose lines are.
    """
    frame = squared_up(face.frame) or face.frame
    return FaceLines(
        face=face,
        lines=tuple(fit_lines(frame, face.limits, respect, solver, weigh) for respect in RESPECTS),
    )


def weighed_face(found: FaceLines, errors: FrameErrors) -> WeighedFace:
    """Return a face's lines over what its frame may be out by."""
    known = _entries(errors.known)
    biases = tuple((cause, _entries(effect)) for cause, effect in errors.biases)
    terms = tuple(_entries(term.effect) for term in errors.terms)
    return WeighedFace(
        name=found.name,
        terms=errors.terms,
        lines=tuple(
            tuple(
                sorted(
                    (
                        line
                        for line in (_term_line(each, known, terms, biases) for each in lines)
                        if line.reserve < OUT_OF_REACH
                    ),
                    key=lambda line: line.reserve,
                )
            )
            for lines in found.lines
        ),
    )


def line_opening(weighed: WeighedFace, shared: tuple[str, ...]) -> LineOpening:
    """Return the lines of a face over the errors of its house.

    Args:
        weighed: The face.
        shared: Names of the errors that the house shares, in order.

    Returns:
        Groups gaps, quirk and in-plane, in that order.
    """
    at = {term.name: index for index, term in enumerate(weighed.terms) if term.is_shared}
    common = [at.get(name) for name in shared]
    own = [index for index, term in enumerate(weighed.terms) if not term.is_shared]
    return LineOpening(
        mark=weighed.name,
        groups=tuple(
            LineGroup(
                name=respect.value,
                lines=tuple(
                    Line(
                        offset=line.offset,
                        shared=tuple(0.0 if i is None else line.over[i] for i in common),
                        private=tuple(line.over[i] for i in own),
                    )
                    for line in lines
                ),
            )
            for respect, lines in zip(RESPECTS, weighed.lines, strict=True)
        ),
        private=tuple(weighed.terms[index].spread for index in own),
    )


def step_opening(found: FaceLines, budget: ErrorBudget) -> LineOpening:
    """Return the lines by which the faces of neighbours are level or not.

    Thickness is each piece's own, the lie of the lining each joint's; both are independent of all
    that moves the pieces in the plane of the wall, and shared with no other opening.

    Args:
        found: The face.
        budget: Gives thickness and lie.
    """
    frame = found.face.frame
    sides, joints = len(frame.sides), len(frame.joints)
    lines = []
    for index, joint in enumerate(frame.joints):
        row = [0.0] * (sides + joints)
        row[joint.before] = budget.u(ErrorName.THICKNESS) / FACE_STEP_MM
        row[joint.after] = -row[joint.before]
        row[sides + index] = budget.u(ErrorName.LIE) / FACE_STEP_MM
        for sign in (1.0, -1.0):
            private = tuple(sign * x for x in row)
            lines.append(Line(offset=0.0, shared=(), private=private))
    return LineOpening(
        mark=found.name,
        groups=(LineGroup(name="faces", lines=tuple(lines)),),
        private=(Spread.NORMAL,) * (sides + joints),
    )


def cause_shares(weighed: WeighedFace) -> tuple[CauseShare, ...]:
    """Return what part of a face's doubt comes from each cause, the largest first.

    References:
        First order: each line's mean square by cause, what is known of a tool as well as what
        isn't; lines weighted by their chance to be passed.
    """
    shares: dict[Cause, float] = defaultdict(float)
    weights = 0.0
    for line in weighed.lines[-1]:
        weight = math.exp(-0.5 * line.reserve**2) if line.reserve > 0.0 else 1.0
        weights += weight
        parts = [(term.cause, x) for term, x in zip(weighed.terms, line.over, strict=True)]
        total = math.fsum(x * x for _, x in (*parts, *line.biased))
        for cause, x in (*parts, *line.biased):
            shares[cause] += weight * x * x / total if total else 0.0
    found = (CauseShare(cause=c, share=s / weights) for c, s in shares.items() if s > 0.0)
    return tuple(sorted(found, key=lambda s: (-s.share, s.cause.value)))


def first_look(weighed: WeighedFace) -> float:
    """Return the chance of a fit by formula: the lines nearest to their limits, one of a kind.

    References:
        Product of Phi(reserve) over lines that hardly go together; lines left out make it too
        hopeful.
    """
    chance = 1.0
    taken: list[TermLine] = []
    for line in weighed.lines[-1]:
        if all(_together(line, other) <= ALIKE for other in taken):
            taken.append(line)
            chance *= 0.5 * math.erfc(-line.reserve / math.sqrt(2.0))
        if len(taken) == LINES_AT_A_GLANCE:
            break
    return chance


_Entries = tuple[tuple[int, float], ...]


def _entries(effect: Sequence[float]) -> _Entries:
    """Return what isn't nothing in an effect; most errors reach two or three slots."""
    return tuple((slot, size) for slot, size in enumerate(effect) if size)


def _term_line(
    line: FitLine,
    known: _Entries,
    terms: Sequence[_Entries],
    biases: Sequence[tuple[Cause, _Entries]],
) -> TermLine:
    over = tuple([sum([line[slot] * size for slot, size in entries]) for entries in terms])
    return TermLine(
        offset=sum(line[slot] * size for slot, size in known),
        over=over,
        u=math.hypot(*over),
        biased=tuple(
            (cause, sum(line[slot] * size for slot, size in entries)) for cause, entries in biases
        ),
    )


def _together(one: TermLine, other: TermLine) -> float:
    if not one.u or not other.u:
        return 0.0
    together: float = sum(map(mul, one.over, other.over))
    return together / (one.u * other.u)

"""What a crew has learned so far: one belief for each saw as set up, and for each way of reading.

Nothing is ever forgotten. A term keeps every frame's value and works its belief out of them; a saw
set up anew starts a new term behind the old one. Were the old history counted on, five frames after
a moved stop it would still be wrong by most of what the stop was moved.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Final

from longpoint.errors import Finding
from longpoint.forecast.learning.as_built import (
    CUT_U_DEG,
    FEELER_MM,
    Axis,
    BuiltFrame,
    built_angle,
    built_sizes,
)
from longpoint.forecast.learning.belief import Belief, Prior, Weighed, belief_of
from longpoint.forecast.learning.setup_key import AngleKey, SizeKey

Key = AngleKey | SizeKey

ANGLE_PRIOR: Final = Prior(mean_sd=0.10, spread=0.02)
"""A saw not proved is out by 0.1 degrees, assumed. Eight cuts of 0.05 and feelers that tell 0.05 mm
let frames of a 70 mm face differ by 0.02."""

SIZE_PRIOR: Final = Prior(mean_sd=0.50, spread=0.62)
"""Frames are 0.5 mm too large or small on the mean and differ by 0.62; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What one frame told of one term.

    Attributes:
        mark: Mark of the frame.
        value: What it was out by, in the unit of the term.
        weight: How much it counts; 1 for a full frame.
        axis: Along which axis, for a size.
    """

    mark: str
    value: float
    weight: float = 1.0
    axis: Axis | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One error of a crew: a saw's angle [deg], or the size that a tape gives [mm].

    Attributes:
        key: What it belongs to.
        prior: What was believed before the first frame.
        seen: What frames told, in the order they came in.
        set_up: 1 for the first time that this key was set up, one more each time it was set anew.
    """

    key: Key
    prior: Prior
    seen: tuple[Seen, ...] = ()
    set_up: int = 1

    @property
    def belief(self) -> Belief:
        """What is believed of it now."""
        return belief_of(self.prior).updated(Weighed(x.value, x.weight) for x in self.seen)

    @property
    def frames(self) -> int:
        """How many frames told of it."""
        return len({x.mark for x in self.seen})

    def with_seen(self, seen: Seen) -> "Term":
        """Return the term with one frame more; read again, a frame takes its old place."""
        place = (seen.mark, seen.axis)
        others = tuple(x for x in self.seen if (x.mark, x.axis) != place)
        return replace(self, seen=(*others, seen))


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """All that a crew has learned.

    Attributes:
        terms: In the order they were first seen; the last of a key is the one that holds now.
    """

    terms: tuple[Term, ...] = ()

    def term(self, key: Key) -> Term | None:
        """Return what is known of a key as it is set up now; None when nothing is."""
        return next((term for term in reversed(self.terms) if term.key == key), None)

    def now(self) -> tuple[Term, ...]:
        """Return the terms that hold now, one for each key."""
        last = {term.key: term for term in self.terms}
        return tuple(last.values())

    def set_anew(self, key: Key) -> "Learned":
        """Return what is known after a saw or tape was set anew under its old name.

        A new blade or a moved stop under a new name needs no such word. The old term is kept, but
        tells nothing of the new one.
        """
        old = self.term(key)
        if old is None:
            return self
        return Learned(terms=(*self.terms, Term(key=key, prior=old.prior, set_up=old.set_up + 1)))

    def with_seen(self, key: Key, seen: Seen, prior: Prior) -> "Learned":
        """Return what is known after one frame more."""
        old = self.term(key)
        if old is None:
            return Learned(terms=(*self.terms, Term(key=key, prior=prior).with_seen(seen)))
        new = old.with_seen(seen)
        return Learned(terms=tuple(new if term is old else term for term in self.terms))


@dataclass(frozen=True, slots=True, kw_only=True)
class Beforehand:
    """What is taken for granted before a crew's own figures.

    Attributes:
        angle: Of a saw never seen. [deg]
        size: Of a tape never seen. [mm]
        feeler_mm: Step of the feelers.
        cut_u_deg: What one cut is out by, by itself.
    """

    angle: Prior = field(default=ANGLE_PRIOR)
    size: Prior = field(default=SIZE_PRIOR)
    feeler_mm: float = FEELER_MM
    cut_u_deg: float = CUT_U_DEG


def learn(
    frames: Iterable[BuiltFrame],
    onto: Learned | None = None,
    beforehand: Beforehand | None = None,
) -> tuple[Learned, tuple[Finding, ...]]:
    """Return what a crew knows of its saw and tape after some more frames.

    A frame that was learned before is taken anew, not twice. What a frame can't tell is said; the
    rest of it is used.

    Args:
        frames: As they went up.
        onto: What was known before; nothing when left out.
        beforehand: What is taken for granted of a saw or tape never seen.

    Returns:
        What is known, and notes of frames that tell nothing of the saw.
    """
    known = onto or Learned()
    taken = beforehand or Beforehand()
    findings: list[Finding] = []
    for frame in frames:
        angle, notes = built_angle(frame, feeler_mm=taken.feeler_mm, cut_u_deg=taken.cut_u_deg)
        findings += notes
        if angle is not None:
            weight = min(1.0, (taken.angle.spread / angle.u_deg) ** 2)
            seen = Seen(mark=angle.mark, value=angle.over_cut_deg, weight=weight)
            known = known.with_seen(angle.key, seen, taken.angle)
        for size in built_sizes(frame):
            told = Seen(mark=size.mark, value=size.too_large_mm, axis=size.axis)
            known = known.with_seen(size.key, told, taken.size)
    return known, tuple(findings)

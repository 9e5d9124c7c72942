"""What a crew is told of its own saw and tape."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.forecast.learning.belief import USUAL, Interval
from longpoint.forecast.learning.setup import Learned, Term
from longpoint.forecast.learning.setup_key import AngleKey, SizeKey
from longpoint.speech.said import say

LEAST_ANGLE_DEG: Final = 0.03
"""Less than this no stop is moved for; our limit."""

LEAST_SIZE_MM: Final = 0.3
"""Less than this no tape is corrected for; our limit."""


class LearnedKind(StrEnum):
    """Of what something was learned."""

    SAW = "saw"
    SIZE = "size"


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnedAdvice:
    """What a crew is told of one saw or tape.

    Attributes:
        kind: Of what.
        key: Which saw as set up, or which tape and way of reading.
        off: What it is out by, with nothing allowed for; [deg] past the angle, or [mm] too large.
        u: Its standard uncertainty.
        within: Between which values it lies, 90 times in 100; model output.
        frames: How many frames told it.
        words: What to do, for the sheet.
    """

    kind: LearnedKind
    key: AngleKey | SizeKey
    off: float
    u: float
    within: Interval
    frames: int
    words: str


def learned_advice(learned: Learned) -> tuple[LearnedAdvice, ...]:
    """Return what is worth telling a crew: what is surely out, and by enough to do something.

    The saw is known from the sum of all joints of a frame, into which no length enters, so readings
    are never blamed for it. The tape is known from quirks alone.

    Args:
        learned: What the crew has learned.

    Returns:
        Advice, saws before tapes.
    """
    said = [advice for term in learned.now() if (advice := _advice(term)) is not None]
    return tuple(sorted(said, key=lambda advice: advice.kind is LearnedKind.SIZE))


def _advice(term: Term) -> LearnedAdvice | None:
    belief = term.belief
    within = belief.mean_within(USUAL)
    is_angle = isinstance(term.key, AngleKey)
    least = LEAST_ANGLE_DEG if is_angle else LEAST_SIZE_MM
    is_sure = within.lowest > 0.0 or within.highest < 0.0
    if not term.seen or not is_sure or abs(belief.mean) < least:
        return None
    return LearnedAdvice(
        kind=LearnedKind.SAW if is_angle else LearnedKind.SIZE,
        key=term.key,
        off=belief.mean,
        u=belief.mean_u,
        within=within,
        frames=term.frames,
        words=_saw_words(term) if is_angle else _size_words(term),
    )


def _saw_words(term: Term) -> str:
    off_deg, within = term.belief.mean, term.belief.mean_within(USUAL)
    way, end = ("steep", "heels") if off_deg > 0 else ("shallow", "toes")
    return say(
        "Your 45 cuts {way} by about {off_deg:.2f} degrees ({range}, {frames}): "
        "move the stop, or enter it and it is allowed for. The readings are not to "
        "blame: no length opens the {end} all round a frame.",
        way=way,
        off_deg=abs(off_deg),
        range=_range(within, 2),
        frames=_frames(term),
        end=end,
    )


def _size_words(term: Term) -> str:
    off_mm, within = term.belief.mean, term.belief.mean_within(USUAL)
    way, do = (say("large"), say("off")) if off_mm > 0 else (say("small"), say("to"))
    verb = say("take") if off_mm > 0 else say("add")
    return say(
        "Your frames come out about {off_mm:.1f} mm too {way} ({range}, {frames}): "
        "{verb} that much {do} every width and height, or enter it for the tape "
        "and it is allowed for. Reading and marking can't be told apart by it.",
        off_mm=abs(off_mm),
        way=way,
        range=_range(within, 1),
        frames=_frames(term),
        verb=verb,
        do=do,
    )


def _range(within: Interval, places: int) -> str:
    low, high = sorted((abs(within.lowest), abs(within.highest)))
    return say("{low:.{places}f} to {high:.{places}f}", low=low, places=places, high=high)


def _frames(term: Term) -> str:
    return (
        say("from 1 frame")
        if term.frames == 1
        else say(
            "from {frames} frames",
            frames=term.frames,
        )
    )

"""The advice in plain words: what it is, what to tap, what stays, what can't be told."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.diagnosis import Blind, Diagnosis, Observable
from longpoint.forecast.tapping.names import joint_name, piece_names, tap_words
from longpoint.forecast.tapping.remedies import FILLER_MM, Remedy, RemedyKind
from longpoint.forecast.tapping.seen import SeenFrame
from longpoint.forecast.tapping.taps import Cannot, TapPlan
from longpoint.forecast.tapping.told import AngleTold, LengthTold
from longpoint.speech.said import joined, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """What is said to the carpenter, short sentences in the order to read them.

    Attributes:
        says: What the gaps say.
        taps: One sentence per tap, in their order. [mm]
        leaves: What stays after them.
        then: What to do next.
        blind: What can't be told, and what would tell.
    """

    says: tuple[str, ...]
    taps: tuple[str, ...]
    leaves: tuple[str, ...]
    then: tuple[str, ...]
    blind: tuple[str, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """All of it, the taps numbered."""
        numbered = tuple(
            say("{number}. {tap}", number=number, tap=tap)
            for number, tap in enumerate(self.taps, start=1)
        )
        return (*self.says, *numbered, *self.leaves, *self.then, *self.blind)


def advice_for(
    frame: Frame,
    seen: SeenFrame,
    limits: FitLimits,
    diagnosis: Diagnosis,
    plan: TapPlan,
    remedy: Remedy,
) -> Advice:
    """Return the advice in words.

    Args:
        frame: The set.
        seen: What was read.
        limits: What counts as a fit.
        diagnosis: What the readings say.
        plan: The taps.
        remedy: What to do after them.

    Returns:
        The sentences; all figures in mm and degrees.
    """
    return Advice(
        says=_says(frame, diagnosis),
        taps=tuple(tap_words(frame, tap) for tap in plan.taps),
        leaves=_leaves(seen, limits, plan),
        then=_then(frame, plan, remedy),
        blind=tuple(_BLIND_WORDS[blind] for blind in diagnosis.blind),
    )


def _says(frame: Frame, diagnosis: Diagnosis) -> tuple[str, ...]:
    first = {
        Observable.UNREAD: say("Too little is read to say what is wrong."),
        Observable.CLOSED: say("No joint stands open by more than a leaf of the feeler."),
        Observable.POSE: say(
            "As far as the readings show, it is all in how the pieces are nailed."
        ),
        Observable.ANGLE_SUM: say("The cuts don't add up to the corners; no tapping changes that."),
        Observable.LENGTHS: say("The lengths don't go together."),
        Observable.WHOLE_SIZE: say("The whole set is of another size than its opening asks for."),
        Observable.MIXED: say("Angles and lengths are both off."),
    }[diagnosis.observable]
    return (
        first,
        *(_angle_words(frame, angle) for angle in diagnosis.angles if angle.is_wrong),
        *(_length_words(frame, length) for length in diagnosis.lengths if length.is_wrong),
    )


def _angle_words(frame: Frame, angle: AngleTold) -> str:
    where = (
        say("All cuts together")
        if angle.joint is None
        else say("The cuts at ") + joint_name(frame, angle.joint)
    )
    past, opens = ("past", "heels") if angle.over_deg > 0.0 else (say("short of"), "toes")
    left = (
        say("shared evenly, every joint's")
        if angle.joint is None
        else say("with both pieces true to the reveal, the")
    )
    return say(
        "{where} are {over_deg:.2f} degrees {past} their angle, give or take {up}: "
        "{left} {opens} stay open by {left_mm:.1f}.",
        where=where,
        over_deg=abs(angle.over_deg),
        past=past,
        up=_up(2.0 * angle.u_deg, 2),
        left=left,
        opens=opens,
        left_mm=angle.left_mm,
    )


def _length_words(frame: Frame, length: LengthTold) -> str:
    names = piece_names(frame)
    doubt = say("give or take {up}", up=_up(2.0 * length.u_mm, 1))
    size = f"{abs(length.over_mm):.1f}"
    if length.is_difference:
        pieces = length.pieces if length.over_mm > 0.0 else length.pieces[::-1]
        longer, shorter = (names[piece].piece for piece in pieces)
        return say(
            "The {longer} is longer than the {shorter} by {size}, {doubt}.",
            longer=longer,
            shorter=shorter,
            size=size,
            doubt=doubt,
        )
    what = joined(say(" and "), (names[piece].piece for piece in length.pieces))
    side = say("too long") if length.over_mm > 0.0 else say("too short")
    if len(length.pieces) == 1:
        return say(
            "The {what} is {side} for the opening by {size}, {doubt}.",
            what=what,
            side=side,
            size=size,
            doubt=doubt,
        )
    return say(
        "The {what} are {side} for the opening, by {size} on the mean, {doubt}.",
        what=what,
        side=side,
        size=size,
        doubt=doubt,
    )


def _leaves(seen: SeenFrame, limits: FitLimits, plan: TapPlan) -> tuple[str, ...]:
    if plan.before_worst_mm is None or plan.after_worst_mm is None:
        return (
            say("No gap was read, so there is nothing to advise: read heel and toe of each joint."),
        )
    before, after = (f"{abs(x) + 0.0:.1f}" for x in (plan.before_worst_mm, plan.after_worst_mm))
    first = say(
        "Leave it as it lies: no safe order of taps was found that betters the "
        "widest joint read, now {before}.",
        before=before,
    )
    if plan.taps:
        first = say(
            "Worked out, not measured: the widest joint read goes from {before} to "
            "about {after}; allowed {gap_mm:g}. Read again after the taps.",
            before=before,
            after=after,
            gap_mm=limits.gap_mm,
        )
    elif Cannot.PART_READ in plan.cannot:
        first = say("No tap is sure to help before the other joint ends are read.")
    rest = [_CANNOT_WORDS[cannot] for cannot in plan.cannot if cannot in _CANNOT_WORDS]
    if any(gap is not None and gap < 0.0 for gap in seen.gaps_mm):
        rest.insert(0, say("A joint is forced: start where the wood presses, and don't drive it."))
    return (first, *rest)


def _then(frame: Frame, plan: TapPlan, remedy: Remedy) -> tuple[str, ...]:
    then = _remedy_words(frame, remedy)
    if remedy.filler_will_do:
        fill = say(
            "Or, under paint, fill it: filler holds up to about {filler_mm:g}",
            filler_mm=FILLER_MM,
        )
        then = (*then, say("{fill} (common practice, no source).", fill=fill))
    return (say("Make the taps first."), *then) if plan.taps and _cuts(remedy) else then


def _remedy_words(frame: Frame, remedy: Remedy) -> tuple[str, ...]:
    names = piece_names(frame)
    pieces = tuple(names[piece].piece for piece in remedy.pieces)
    match remedy.kind:
        case RemedyKind.GLUE_AND_PIN:
            return (say("It is within what is allowed: glue and pin it now."),)
        case RemedyKind.READ_MORE:
            return (say("Read heel and toe of every joint, zeros too, before anything is cut."),)
        case RemedyKind.LOOSEN:
            return (
                say(
                    "Free the {listed}, set again and read again: loose, it can close.",
                    listed=_listed(pieces),
                ),
            )
        case RemedyKind.RECUT_ANGLE:
            return _recut_words(remedy)
        case RemedyKind.SHORTEN:
            return _shorten_words(pieces, remedy)
        case RemedyKind.REPLACE:
            return (
                say(
                    "Nothing can be put back on the {listed}: cut anew, or leave it so "
                    "if the joints are shut and the quirk may be as it is.",
                    listed=_listed(pieces),
                ),
            )
        case RemedyKind.SHIFT_SET:
            return (
                say("The joints are shut: shift the set as one to even the quirk, or leave it."),
            )
        case RemedyKind.READ_AGAIN:
            return (say("Read the wall again and ask again; cut nothing before."),)


def _cuts(remedy: Remedy) -> bool:
    return remedy.kind in (RemedyKind.RECUT_ANGLE, RemedyKind.SHORTEN, RemedyKind.REPLACE)


def _recut_words(remedy: Remedy) -> tuple[str, ...]:
    if remedy.recut is None:
        return ()
    toe_mm, heel_mm = remedy.recut.toe_mm, remedy.recut.heel_mm
    if toe_mm > 0.0:
        off = say(
            "{toe_mm:.1f} off its long point and nothing off its short point; its long edge",
            toe_mm=toe_mm,
        )
    else:
        off = say(
            "{heel_mm:.1f} off its short point and nothing off its long point; its short edge",
            heel_mm=heel_mm,
        )
    return (
        say(
            "Hold a bevel set to its saw angle to each of the {ends} ends, or swap two "
            "pieces of one length and see whether the gap goes with one. Both pieces "
            "at a joint open it alike, so don't guess.",
            ends=len(remedy.ends),
        ),
        say("If one end holds it all: plane or saw {off} loses that much.", off=off),
        say(
            "If all ends are off alike it is the saw: set it, and recut the set only "
            "if the quirk can take the length."
        ),
        say(
            "Instead of any cut: glue a shaving {shaving_mm:.1f} thick at the open end "
            "into each of these joints, tapering to nothing. Cut or shaving, not both.",
            shaving_mm=remedy.shaving_mm,
        ),
    )


def _shorten_words(pieces: tuple[str, ...], remedy: Remedy) -> tuple[str, ...]:
    size = f"{remedy.shorter_mm:.1f}"
    if len(pieces) == 2 and remedy.shorter_mm > 0.0:
        return (
            say(
                "Hold {pieces} and {pieces_2} back to back: they should differ by "
                "about {size}. If so, cut the longer one down at its own angle; if the "
                "shorter one is the wrong one, cut that anew.",
                pieces=pieces[0],
                pieces_2=pieces[1],
                size=size,
            ),
        )
    return (
        say(
            "Measure the {listed}; cut {size} off at the same angle if it is so.",
            listed=_listed(pieces),
            size=size,
        ),
    )


def _listed(words: tuple[str, ...]) -> str:
    *most, last = words
    return say("{most} and {last}", most=joined(", ", most), last=last) if most else last


def _up(value: float, places: int) -> str:
    """Return a doubt rounded up, so that it is never said smaller than it is."""
    scale = 10**places
    return say(
        "{ceil:.{places}f}",
        ceil=math.ceil(value * scale - 1e-09) / scale,
        places=places,
    )


_CANNOT_WORDS: Final = {
    Cannot.PART_READ: say("Some joint ends weren't read; no tap is given that would open them."),
    Cannot.GAP_LEFT: say("A joint stays open wider than allowed."),
    Cannot.FORCED_LEFT: say("A joint stays forced; easing it takes more than tapping."),
    Cannot.STEP_LEFT: say("Inner edges stay out of line by more than allowed."),
    Cannot.QUIRK_LEFT: say("A quirk stays further off than allowed."),
}

_BLIND_WORDS: Final = {
    Blind.WHICH_END: say("Gaps can't tell which of the two pieces at a joint is cut wrong."),
    Blind.WHICH_LENGTH: say(
        "Gaps can't tell which of two opposite pieces is wrong, "
        "only that they differ: measure both."
    ),
    Blind.SLIDE_OR_LENGTH: say(
        "A piece slid along looks the same as one too long at one end and too short at the other."
    ),
    Blind.PIECES_OR_OPENING: say(
        "A set too large looks the same as an opening smaller than it was read: measure a piece."
    ),
    Blind.ANGLES: say(
        "Whether the angles add up can't be told: read heel and toe of "
        "every joint, and where the set is open at the bottom the quirk "
        "of every piece at both ends."
    ),
    Blind.LENGTHS: say(
        "Whether the lengths go together can't be told: read steps and "
        "quirks, and settle the angles first."
    ),
}

"""What keeps joints shut through the seasons, the greatest effect first."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from longpoint.forecast.season.coefficients import Species
from longpoint.forecast.season.joint_opening import HELD_SHARES, JointKind, Restraint
from longpoint.forecast.season.seasons import JointBoard, Season, SeasonJoint, free_opening
from longpoint.forecast.season.species import MDF
from longpoint.quantities.formatting import format_gap, format_tenth, format_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import say


class AdviceKind(StrEnum):
    """What to do."""

    CONDITION = "condition the timber"
    GLUE_AND_PIN = "glue and pin"
    NARROWER_FACE = "narrower face"
    STEADIER_TIMBER = "timber that moves less"
    SCRIBE = "scribe instead of mitre"


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonAdvice:
    """One thing to do, with what it does.

    Attributes:
        kind: What to do.
        places: The joints it helps.
        before_mm: Widest gap among them as planned, in the worse season. It is the gap with the
            middle of the shares held: model output, to compare with the one after.
        after_mm: The same with the advice followed. Less than before, also as printed.
        words: A sentence for the sheet.
    """

    kind: AdviceKind
    places: tuple[str, ...]
    before_mm: float
    after_mm: float
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonPlan:
    """How a set of joints is to be fitted, and the house it is to live in.

    Attributes:
        joints: The joints.
        fitted_percent: Moisture of the boards at fitting.
        driest: Driest season of the house.
        dampest: Its dampest.
        restraint: What is to hold the joints.
    """

    joints: tuple[SeasonJoint, ...]
    fitted_percent: float
    driest: Season
    dampest: Season
    restraint: Restraint = Restraint.WEAK

    @property
    def middle_percent(self) -> float:
        """Moisture half-way between the two seasons: both ends then open alike."""
        return (self.driest.moisture_percent + self.dampest.moisture_percent) / 2.0

    def widest_mm(self, of: frozenset[str]) -> float:
        """Return the widest gap to be seen among some of its joints, in the worse season."""
        return max((_gap_mm(self, j) for j in self.joints if j.place in of), default=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Remedy:
    kind: AdviceKind
    plan: SeasonPlan
    words: str


def season_advice(
    plan: SeasonPlan,
    *,
    faces_mm: tuple[float, ...] = (),
    species: tuple[Species, ...] = (MDF,),
    units: Units = Units.MM,
) -> tuple[SeasonAdvice, ...]:
    """Return what would keep the joints of a set tighter, the greatest effect first.

    Each is worked out alone, over the joints that it changes. Advice that doesn't help, or by less
    than is printed, isn't given.

    Args:
        plan: The joints and how they are to be fitted.
        faces_mm: Face widths to be had instead; only narrower ones count. [mm]
        species: Timbers and boards to be had instead.
        units: Units of the words.

    Returns:
        The advice that helps.

    Raises:
        QuantityError: A moisture, temperature or humidity that no figure covers.

    Example:
        >>> from longpoint.forecast.season.species import EUROPEAN_REDWOOD
        >>> leg = JointBoard(across_mm=70.0, species=EUROPEAN_REDWOOD)
        >>> plan = SeasonPlan(
        ...     joints=(SeasonJoint(place="W1", boards=(leg, leg)),),
        ...     fitted_percent=11.0,
        ...     driest=Season(name="heating on", humidity_percent=35.0),
        ...     dampest=Season(name="late summer", humidity_percent=60.0),
        ... )
        >>> for advice in season_advice(plan, faces_mm=(57.0,)):
        ...     print(advice.words)
        Trim of MDF: 0.9 to 0.2 mm.
        Mitres glued and pinned (how much that holds is assumed): 0.9 to 0.3 mm.
        Fitted at 9 % instead of 11 %: 0.9 to 0.5 mm.
        A face of 57 mm: 0.9 to 0.7 mm.

    References:
        Remedies are common practice; their figures are those of `free_opening`.
    """
    said = (_advice(plan, remedy, units) for remedy in _remedies(plan, faces_mm, species, units))
    helpful = [advice for advice in said if advice is not None]
    return tuple(sorted(helpful, key=lambda a: (a.after_mm - a.before_mm, a.kind.value)))


def _remedies(
    plan: SeasonPlan, faces_mm: tuple[float, ...], species: tuple[Species, ...], units: Units
) -> Iterable[_Remedy]:
    middle = round(plan.middle_percent, 1)
    yield _Remedy(
        kind=AdviceKind.CONDITION,
        plan=replace(plan, fitted_percent=middle),
        words=say(
            "Fitted at {middle:g} % instead of {fitted_percent:g} %",
            middle=middle,
            fitted_percent=round(plan.fitted_percent, 1),
        ),
    )
    if plan.restraint is not Restraint.STRONG:
        yield _Remedy(
            kind=AdviceKind.GLUE_AND_PIN,
            plan=replace(plan, restraint=Restraint.STRONG),
            words=say("Mitres glued and pinned (how much that holds is assumed)"),
        )
    for face_mm in faces_mm:
        yield _Remedy(
            kind=AdviceKind.NARROWER_FACE,
            plan=_with(plan, (_narrowed(joint, face_mm) for joint in plan.joints)),
            words=say(
                "A face of {face} {units}",
                face=format_tenth(face_mm, units),
                units=format_unit(units),
            ),
        )
    for other in species:
        yield _Remedy(
            kind=AdviceKind.STEADIER_TIMBER,
            plan=_with(plan, (_made_of(joint, other) for joint in plan.joints)),
            words=say("Trim of {other}", other=other.name),
        )
    yield _Remedy(
        kind=AdviceKind.SCRIBE,
        plan=_with(plan, (_scribed(joint) for joint in plan.joints)),
        words=say("Internal corners of skirting scribed instead of mitred"),
    )


def _advice(plan: SeasonPlan, remedy: _Remedy, units: Units) -> SeasonAdvice | None:
    helped = tuple(
        was.place
        for was, then in zip(plan.joints, remedy.plan.joints, strict=True)
        if _prints_less(_gap_mm(remedy.plan, then), _gap_mm(plan, was), units)
    )
    before_mm = plan.widest_mm(frozenset(helped))
    after_mm = remedy.plan.widest_mm(frozenset(helped))
    if not helped or not _prints_less(after_mm, before_mm, units):
        return None
    before, after = format_gap(before_mm, units), format_gap(after_mm, units)
    return SeasonAdvice(
        kind=remedy.kind,
        places=helped,
        before_mm=before_mm,
        after_mm=after_mm,
        words=say(
            "{words}: {before} to {after} {units}.",
            words=remedy.words,
            before=before,
            after=after,
            units=format_unit(units),
        ),
    )


def _prints_less(after_mm: float, before_mm: float, units: Units) -> bool:
    return after_mm < before_mm and format_gap(after_mm, units) != format_gap(before_mm, units)


def _gap_mm(plan: SeasonPlan, joint: SeasonJoint) -> float:
    openings = (
        free_opening(joint, plan.fitted_percent, season.moisture_percent)
        for season in (plan.driest, plan.dampest)
    )
    left = 1.0 - sum(HELD_SHARES[plan.restraint]) / 2.0
    return max(opening.gap_mm * left if opening.end.is_seen else 0.0 for opening in openings)


def _with(plan: SeasonPlan, joints: Iterable[SeasonJoint]) -> SeasonPlan:
    return replace(plan, joints=tuple(joints))


def _narrowed(joint: SeasonJoint, face_mm: float) -> SeasonJoint:
    if joint.kind is not JointKind.FACE_MITRE:
        return joint
    first, second = (replace(b, across_mm=min(b.across_mm, face_mm)) for b in joint.boards)
    return replace(joint, boards=(first, second))


def _made_of(joint: SeasonJoint, species: Species) -> SeasonJoint:
    first, second = (
        JointBoard(across_mm=board.across_mm, species=species) for board in joint.boards
    )
    return replace(joint, boards=(first, second))


def _scribed(joint: SeasonJoint) -> SeasonJoint:
    if joint.kind is not JointKind.INTERNAL_MITRE:
        return joint
    return replace(joint, kind=JointKind.SCRIBE)

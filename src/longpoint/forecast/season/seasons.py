"""Which end of a joint opens in the driest and in the dampest season, and how far."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from longpoint.errors import PieceError
from longpoint.forecast.season.chance import FITTED_U_PERCENT, chance_over, lost_percents
from longpoint.forecast.season.coefficients import Species
from longpoint.forecast.season.emc import equilibrium_moisture_percent
from longpoint.forecast.season.joint_opening import (
    HELD_SHARES,
    JointEnd,
    JointKind,
    JointOpening,
    Restraint,
    mitre_opening,
    scribe_opening,
    skirting_opening,
)
from longpoint.forecast.season.movement import MovementForm, form_of, shrink_share
from longpoint.speech.said import joined, say

LIMIT_MM: Final = 0.3
"""Gap from which a joint counts as open; our limit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Season:
    """Air of a room through a season.

    Attributes:
        name: As told to the carpenter.
        humidity_percent: Relative humidity, a mean over weeks.
        temperature_c: Temperature.
    """

    name: str
    humidity_percent: float
    temperature_c: float = 20.0

    @property
    def moisture_percent(self) -> float:
        """Moisture content that solid timber settles at. [%]"""
        return equilibrium_moisture_percent(self.temperature_c, self.humidity_percent)


@dataclass(frozen=True, slots=True, kw_only=True)
class JointBoard:
    """One of the two boards of a joint.

    Attributes:
        across_mm: Its size across the joint: face width of an architrave, thickness of skirting.
        species: What it is made of.
    """

    across_mm: float
    species: Species


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonJoint:
    """One joint as it is fitted.

    Attributes:
        place: Its mark.
        kind: What meets.
        corner_deg: Angle between the boards of a face mitre, 0 to 180; of skirting the angle of
            the room, above 180 round an external corner.
        boards: Its two boards; of a scribe the one that runs through first.
    """

    place: str
    kind: JointKind = JointKind.FACE_MITRE
    corner_deg: float = 90.0
    boards: tuple[JointBoard, JointBoard]

    def __post_init__(self) -> None:
        """Refuse corners that no mitre closes, and boards without a size.

        Raises:
            PieceError: One of these.
        """
        least, most = (180.0, 360.0) if self.kind is JointKind.EXTERNAL_MITRE else (0.0, 180.0)
        if least < self.corner_deg < most and all(b.across_mm > 0.0 for b in self.boards):
            return
        sizes = joined(say(" and "), (f"{b.across_mm:g}" for b in self.boards))
        raise PieceError(
            say(
                "{place}: {kind}, corner {corner_deg:g} deg, boards {sizes} mm.",
                place=self.place,
                kind=self.kind.value,
                corner_deg=self.corner_deg,
                sizes=sizes,
            ),
            say(
                "Such a joint has a corner between {least:g} and {most:g} deg and "
                "boards with a size.",
                least=least,
                most=most,
            ),
            say("Look at the corner and at the sizes of the profile."),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonOpening:
    """One joint in one season.

    Attributes:
        season: The season.
        moisture_percent: What the boards settle at.
        form: The form that gave its movement; `form.standing` says how well that is known.
        end: The end that opens.
        free_mm: Gap of boards sawn the worst way that nothing holds and that go along all the way.
        slip_mm: How far its cuts miss each other along the joint.
        held_mm: Least and most of the gap that is held back; assumed shares.
        chance_over_limit: How likely a gap that can be seen is over the limit, at either end; model
            output.
    """

    season: Season
    moisture_percent: float
    form: MovementForm
    end: JointEnd
    free_mm: float
    slip_mm: float
    held_mm: tuple[float, float]
    chance_over_limit: float

    @property
    def left_mm(self) -> float:
        """Gap left with the middle of the shares held: to rank by, not to promise."""
        return self.free_mm - sum(self.held_mm) / 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonOutlook:
    """One joint through the year.

    Attributes:
        joint: The joint.
        fitted_percent: Moisture at fitting.
        restraint: What holds it.
        limit_mm: The limit that its chances are about.
        driest: In the driest season.
        dampest: In the dampest.
    """

    joint: SeasonJoint
    fitted_percent: float
    restraint: Restraint
    limit_mm: float
    driest: SeasonOpening
    dampest: SeasonOpening

    @property
    def worst(self) -> SeasonOpening:
        """The season in which it opens further, of those in which it can be seen."""
        return max(self.driest, self.dampest, key=lambda o: (o.end.is_seen, o.free_mm))


def season_outlook(
    joint: SeasonJoint,
    *,
    fitted_percent: float,
    driest: Season,
    dampest: Season,
    restraint: Restraint = Restraint.WEAK,
    limit_mm: float = LIMIT_MM,
    fitted_u_percent: float = FITTED_U_PERCENT,
) -> SeasonOutlook:
    """Return which end of a joint opens in either season, how far, and how likely too far.

    Args:
        joint: The joint.
        fitted_percent: Moisture of the boards at fitting, 0 to 30. [%]
        driest: Driest season of the house.
        dampest: Its dampest.
        restraint: What holds the joint.
        limit_mm: Gap that still passes. >= 0. [mm]
        fitted_u_percent: Standard uncertainty of the moisture at fitting. [%]

    Returns:
        The outlook. Free gaps are those of boards sawn the worst way (for a face flat, for a
        thickness on the quarter); chances are taken over all ways of sawing.

    Raises:
        QuantityError: A moisture, temperature or humidity that no figure covers.

    Example:
        >>> from longpoint.forecast.season.species import species_of
        >>> leg = JointBoard(across_mm=70.0, species=species_of("oak"))
        >>> outlook = season_outlook(
        ...     SeasonJoint(place="W1", boards=(leg, leg)),
        ...     fitted_percent=11.0,
        ...     driest=Season(name="heating on", humidity_percent=40.0),
        ...     dampest=Season(name="late summer", humidity_percent=65.0),
        ... )
        >>> outlook.driest.end.value, round(outlook.driest.free_mm, 2), outlook.dampest.end.value
        ('heel', 1.18, 'toe')
    """

    def opening(season: Season) -> SeasonOpening:
        free = free_opening(joint, fitted_percent, season.moisture_percent)
        least, most = HELD_SHARES[restraint]
        swings = lost_percents(
            season.temperature_c, season.humidity_percent, fitted_percent, fitted_u_percent
        )
        return SeasonOpening(
            season=season,
            moisture_percent=season.moisture_percent,
            form=form_of(fitted_percent, season.moisture_percent),
            end=free.end,
            free_mm=free.gap_mm,
            slip_mm=free.slip_mm,
            held_mm=(least * free.gap_mm, most * free.gap_mm),
            chance_over_limit=chance_over(
                limit_mm, _gap_per_percent(joint), (least, most), _seen(joint, swings)
            ),
        )

    return SeasonOutlook(
        joint=joint,
        fitted_percent=fitted_percent,
        restraint=restraint,
        limit_mm=limit_mm,
        driest=opening(driest),
        dampest=opening(dampest),
    )


def free_opening(joint: SeasonJoint, from_percent: float, to_percent: float) -> JointOpening:
    """Return how a joint opens that nothing holds, its boards sawn the worst way.

    Args:
        joint: The joint.
        from_percent: Moisture of its boards at fitting, 0 to 30. [%]
        to_percent: Moisture they settle at, 0 to 30. [%]

    Returns:
        The open end, its gap and slip.

    Raises:
        QuantityError: A moisture outside 0 to 30 %.
    """
    first, second = (
        shrink_share(from_percent, to_percent, board.species.tangential.per_percent)
        for board in joint.boards
    )
    return _opening(joint, (first, second))


def _gap_per_percent(joint: SeasonJoint) -> Callable[[float], float]:
    """Return the free gap of a percent of moisture, given how flat the boards are sawn."""

    def gap_mm(flat_share: float) -> float:
        first, second = (board.species.per_percent(flat_share) for board in joint.boards)
        return _opening(joint, (first, second)).gap_mm

    return gap_mm


def _seen(joint: SeasonJoint, swings: tuple[float, ...]) -> tuple[float, ...]:
    """Return the swings with 0 for those that open the joint where nobody sees it."""
    first, second = (board.species.tangential.per_percent for board in joint.boards)
    if not _opening(joint, (first, second)).end.is_seen:
        swings = tuple(min(lost, 0.0) for lost in swings)
    if not _opening(joint, (-first, -second)).end.is_seen:
        swings = tuple(max(lost, 0.0) for lost in swings)
    return swings


def _opening(joint: SeasonJoint, shrinks: tuple[float, float]) -> JointOpening:
    first, second = joint.boards
    across_mm = (first.across_mm, second.across_mm)
    match joint.kind:
        case JointKind.FACE_MITRE:
            return mitre_opening(joint.corner_deg, across_mm, shrinks)
        case JointKind.INTERNAL_MITRE | JointKind.EXTERNAL_MITRE:
            return skirting_opening(joint.corner_deg, across_mm, shrinks)
        case JointKind.SCRIBE:
            return scribe_opening(first.across_mm, shrinks[0])

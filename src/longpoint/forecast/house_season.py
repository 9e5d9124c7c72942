"""What the seasons will do to the joints of a house, profile by profile."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from longpoint.errors import LongpointError
from longpoint.forecast.season.advice import SeasonAdvice, SeasonPlan, season_advice
from longpoint.forecast.season.coefficients import Species
from longpoint.forecast.season.emc import equilibrium_moisture_percent
from longpoint.forecast.season.joint_opening import JointKind
from longpoint.forecast.season.seasons import (
    JointBoard,
    Season,
    SeasonJoint,
    SeasonOutlook,
    season_outlook,
)
from longpoint.forecast.season.species import EUROPEAN_REDWOOD, species_of
from longpoint.pieces.face_trim import has_mitred_corners
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.profiles import Profile
from longpoint.survey.season import Air, HouseSeasons

ASSUMED_SPECIES: Final = EUROPEAN_REDWOOD
"""What a profile is taken to be made of when its material isn't one we know; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseSeason:
    """The joints of a house through the year; model output.

    Attributes:
        fitted_percent: Moisture of the timber at fitting.
        outlooks: One for each profile that is mitred round openings, and one for the skirting.
        advice: What would keep them tighter, the greatest effect first.
        taken_for_granted: Profiles whose timber isn't known, and what they are taken for; seasons
            that were written the wrong way round.
        assumed: True when the file tells nothing of the seasons.
        trouble: Why nothing was worked out, in the usual three sentences; empty: it was.
    """

    fitted_percent: float
    outlooks: tuple[SeasonOutlook, ...]
    advice: tuple[SeasonAdvice, ...]
    taken_for_granted: tuple[str, ...]
    assumed: bool
    trouble: str = ""


def house_season(house: House) -> HouseSeason:
    """Return what the driest and the dampest season do to the joints of a house.

    Args:
        house: Gives profiles, and the air at fitting and through the year.

    Returns:
        The outlook; where its air or its corners can't be worked with, the reason instead, so that
        no plan is lost by it.
    """
    try:
        return _worked_out(house)
    except LongpointError as error:
        return HouseSeason(
            fitted_percent=0.0,
            outlooks=(),
            advice=(),
            taken_for_granted=(),
            assumed=house.seasons.assumed,
            trouble=str(error),
        )


def _worked_out(house: House) -> HouseSeason:
    seasons = house.seasons
    driest, dampest = _season("driest", seasons.driest), _season("dampest", seasons.dampest)
    swapped: tuple[str, ...] = ()
    if driest.moisture_percent > dampest.moisture_percent:
        swapped = (
            say("The driest air under [season] is damper than the dampest: taken as swapped"),
        )
        driest, dampest = _season("driest", seasons.dampest), _season("dampest", seasons.driest)
    fitted_percent = _fitted_percent(seasons)
    joints = tuple(_joints(house))
    return HouseSeason(
        fitted_percent=fitted_percent,
        outlooks=tuple(
            season_outlook(j, fitted_percent=fitted_percent, driest=driest, dampest=dampest)
            for j in joints
        ),
        advice=season_advice(
            SeasonPlan(
                joints=joints, fitted_percent=fitted_percent, driest=driest, dampest=dampest
            ),
            units=house.units,
        ),
        taken_for_granted=swapped
        + tuple(
            say(
                "{p} ({material}) taken for {assumed_species}",
                p=p.name,
                material=p.material or say("no material given"),
                assumed_species=ASSUMED_SPECIES.name,
            )
            for p in _profiles(house)
            if species_of(p.material) is None
        ),
        assumed=seasons.assumed,
    )


def _fitted_percent(seasons: HouseSeasons) -> float:
    if seasons.fitting_moisture_percent is not None:
        return seasons.fitting_moisture_percent
    air = seasons.fitting or Air(humidity_percent=55.0)
    return equilibrium_moisture_percent(air.temperature_c, air.humidity_percent)


def _season(name: str, air: Air) -> Season:
    return Season(name=name, humidity_percent=air.humidity_percent, temperature_c=air.temperature_c)


def _joints(house: House) -> Iterable[SeasonJoint]:
    """Yield one joint for each kind that occurs, each at its square corner."""
    for head, leg in dict.fromkeys(
        (o.profiles.head, side)
        for o in house.openings
        if has_mitred_corners(o)
        for side in (o.profiles.left, o.profiles.right)
    ):
        name = head if head == leg else say("{head} on {leg}", head=head, leg=leg)
        boards = (_face(house.profile(head)), _face(house.profile(leg)))
        yield SeasonJoint(place=say("{name} mitres", name=name), boards=boards)
    if house.skirting_profile and (house.rooms or house.runs):
        profile = house.profile(house.skirting_profile)
        board = JointBoard(across_mm=profile.thickness_mm, species=_species(profile))
        yield SeasonJoint(
            place=say("{profile} scribed corners", profile=profile.name),
            kind=JointKind.SCRIBE,
            boards=(board, board),
        )


def _profiles(house: House) -> tuple[Profile, ...]:
    names = [
        *(name for o in house.openings for name in o.profiles.anticlockwise()),
        *([house.skirting_profile] if house.skirting_profile else []),
    ]
    return tuple(house.profile(name) for name in dict.fromkeys(names))


def _face(profile: Profile) -> JointBoard:
    return JointBoard(across_mm=profile.width_mm, species=_species(profile))


def _species(profile: Profile) -> Species:
    return species_of(profile.material) or ASSUMED_SPECIES

"""`longpoint learn`: what finished work says of the saw and the tape."""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

import click

from longpoint.cli.imagined import PLAIN_DRAWS, house_imagined
from longpoint.cli.learned_words import learned_text
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.errors import Finding, Severity, SurveyError
from longpoint.exchange.crew_files import CrewFile, load_or_begin, save_crew_file
from longpoint.exchange.house_files import load_house
from longpoint.forecast.built_frames import built_frames
from longpoint.forecast.kept_forecasts import kept_forecasts
from longpoint.forecast.learned_lines import dialled_out_deg
from longpoint.forecast.learning.advice import LEAST_ANGLE_DEG
from longpoint.forecast.learning.as_built import BuiltFrame
from longpoint.forecast.learning.setup import Beforehand, Learned, learn
from longpoint.pipeline import check_house
from longpoint.shape.fitted import Shapes
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import joined, say
from longpoint.survey.house import House

SIGN_MARK: Final = ", "
"""What stands before the sign of the readings in a frame's mark."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Finished:
    """A house of which something was written down once it was up."""

    house: House
    shapes: Shapes
    frames: tuple[BuiltFrame, ...]


@click.command(name="learn")
@click.argument(
    "houses",
    nargs=-1,
    required=True,
    metavar="HOUSE...",
    type=click.Path(path_type=Path, dir_okay=False),
)
@click.option(
    "--crew",
    "crew_path",
    type=click.Path(path_type=Path, dir_okay=False),
    required=True,
    help="File of the crew's own figures; made when it isn't there.",
)
@exits
def command(houses: tuple[Path, ...], crew_path: Path) -> Outcome:
    """Learn from the gaps and quirks written down in each HOUSE, and keep it in the crew file.

    A set learned twice is counted once, as it was read last. Sets of a house are those with
    as_built at their opening.
    """
    finished = [_finished(path) for path in houses]
    if not any(each.frames for each in finished):
        raise SurveyError(
            say(
                "No set of {finished} was read once it was up.",
                finished=joined(", ", (each.house.name for each in finished)),
            ),
            say("There is nothing to learn from."),
            say(
                "Read heel and toe of each joint before filling, and write them as "
                "as_built at the opening."
            ),
        )
    before = load_or_begin(crew_path)
    after, notes = before, [*before.findings]
    for each in finished:
        after, said = _learned_from(after, each)
        notes += said
    copy = save_crew_file(crew_path, before, after)
    speak(learned_text(before, after, notes))
    if copy is not None:
        speak(say("\nThe file as it was, with what couldn't be read of it: {copy}", copy=copy))
    speak(say("\nCrew's own figures: {crew_path}", crew_path=crew_path))
    return Outcome.DONE


def _finished(path: Path) -> _Finished:
    survey = load_house(path)
    shapes, _ = check_house(survey)
    return _Finished(house=survey.house, shapes=shapes, frames=built_frames(survey.house, shapes))


def _learned_from(crew: CrewFile, finished: _Finished) -> tuple[CrewFile, list[Finding]]:
    house = finished.house
    notes = [*_same_place_twice(crew.learned, finished), *_perhaps_dialled(finished)]
    kept = kept_forecasts(
        crew.forecasts,
        house,
        finished.shapes,
        crew.learned,
        house_imagined(PLAIN_DRAWS),
        linear_solver(),
    )
    beforehand = Beforehand(feeler_mm=house.crew.feeler_mm)
    learned, said = learn(finished.frames, crew.learned, beforehand)
    crew = replace(crew, learned=learned, forecasts=kept)
    return crew, [*notes, *said]


def _same_place_twice(learned: Learned, finished: _Finished) -> list[Finding]:
    """Return a note for each set that is known with other readings of its opening."""
    known = {seen.mark for term in learned.now() for seen in term.seen}
    notes = []
    for frame in finished.frames:
        place = frame.mark.rpartition(SIGN_MARK)[0]
        others = [mark for mark in known if mark.rpartition(SIGN_MARK)[0] == place]
        if others and frame.mark not in known:
            notes.append(
                Finding(
                    code="frame-learned-before",
                    severity=Severity.WARNING,
                    place=place,
                    read=say(
                        "A set of that house and mark was learned before: {others}.",
                        others=others[0],
                    ),
                    wrong=say("The readings of its opening were others, so both are counted."),
                    do=say("If it is the same set, take the old one out of the crew file."),
                )
            )
    return notes


def _perhaps_dialled(finished: _Finished) -> list[Finding]:
    """Return a note where the saw is known to be out, and nothing is written of dialling it out."""
    saw = finished.house.saw
    dialled = saw.dialled_left_deg or saw.dialled_right_deg
    if not finished.frames or dialled or abs(dialled_out_deg(saw)) < LEAST_ANGLE_DEG:
        return []
    return [
        Finding(
            code="dialled-unsaid",
            severity=Severity.NOTE,
            place=finished.house.name,
            read=say(
                "Saw {saw} was found to be out by {dialled_out_deg:.2f} degrees, "
                "and nothing is written of what was dialled off.",
                saw=saw.name,
                dialled_out_deg=dialled_out_deg(saw),
            ),
            wrong=say("The sets are taken as cut at the stop."),
            do=say(
                "If they were cut to the sheet's dial figures, write dialled = {{ "
                "left = {found_left_deg:.2f}, right = {found_right_deg:.2f} }} for "
                "the saw and learn again.",
                found_left_deg=45.0 - (saw.found_left_deg or 45.0),
                found_right_deg=45.0 - (saw.found_right_deg or 45.0),
            ),
        )
    ]

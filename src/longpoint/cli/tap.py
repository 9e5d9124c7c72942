"""`longpoint tap`: what to tap at a set that stands open."""

from pathlib import Path
from typing import Any, Final

import click

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paragraphs import paragraphs
from longpoint.cli.spoken import speak
from longpoint.cli.spots import at_corners, spots, whole_figures, with_spots
from longpoint.errors import Finding, QuantityError, held_places
from longpoint.exchange.house_files import load_house_document
from longpoint.forecast.on_the_wall import NO_STEPS, TapAdvice, tap_advice
from longpoint.forecast.tapping.remedies import RemedyKind
from longpoint.linear.simplex import SimplexSolver
from longpoint.pipeline import check_house
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.sheets.cautions import common_cautions
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house

UNREADABLE: Final = "as-built-unreadable"
CUTS: Final = frozenset({RemedyKind.RECUT_ANGLE, RemedyKind.SHORTEN, RemedyKind.REPLACE})


@click.command(name="tap")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.argument("mark")
@click.option("--face", type=click.Choice(["a", "b"]), default=None, help="Which of two faces.")
@click.option(
    "--gaps",
    default=None,
    metavar="TEXT",
    help='Heel and toe of each joint, instead of those of the file: "bl 0.35 0, br 0.45 0, '
    'tr 0.4 0, tl 0.4 0"; ? where none was read.',
)
@click.option(
    "--quirks",
    default=None,
    metavar="TEXT",
    help='Quirk along each side, instead of those of the file: "left 5 5.5 5, head 5 4.5".',
)
@click.option(
    "--steps",
    default=None,
    metavar="TEXT",
    help="How far inner edges miss each other: at bl the left leg's stands further out than the "
    "sill's, at br the sill's than the right leg's, at tr the right leg's than the head's, at tl "
    "the head's than the left leg's; minus the other way. \"tr 0.3, tl -0.2\".",
)
@exits
def command(
    house: Path,
    mark: str,
    face: str | None,
    gaps: str | None,
    quirks: str | None,
    steps: str | None,
) -> Outcome:
    """Say what to tap at the set of opening MARK of HOUSE, in which order, and what stays.

    Gaps are those read before filling, with the pieces tacked: under as_built in the house file,
    or given here in the house's unit.
    """
    document: dict[str, Any] = load_house_document(house)
    if gaps is not None:
        document = with_spots(document, mark, face or "", "gaps", spots(gaps))
    if quirks is not None:
        document = with_spots(document, mark, face or "", "quirks", whole_figures(spots(quirks)))
    survey = read_house(document, trim_tables())
    here = [f for f in survey.findings if f.place == mark and f.code == UNREADABLE]
    if here and (gaps is not None or quirks is not None):
        raise QuantityError(here[0].read, here[0].wrong, here[0].do)
    shapes, findings = check_house(survey)
    said = tap_advice(
        survey.house,
        shapes,
        mark,
        face or "",
        solver=linear_solver() or SimplexSolver(),
        sight_steps_mm=NO_STEPS if steps is None else at_corners(steps, survey.house.units),
    )
    speak(tap_text(said, survey.house, here, is_held=mark in held_places(findings)))
    return Outcome.DONE


def tap_text(said: TapAdvice, house: House, left_out: list[Finding], *, is_held: bool) -> str:
    """Return the advice as it stands on the screen."""
    words = said.words
    taps = [
        f"{number}. {_in_units(text, tap.move_mm, house.units)}"
        for number, (text, tap) in enumerate(zip(words.taps, said.taps.taps, strict=True), 1)
    ]
    face = say(", face {face}", face=said.face) if said.face else ""
    notes = [str(finding) for finding in left_out]
    if is_held:
        notes.append(
            say(
                "The readings of {mark} are in doubt, so what is said of lengths may be wrong.",
                mark=said.mark,
            )
        )
    parts = (
        (f"{said.mark}{face}, {house.name}", _units_line(house.units)),
        ("Mind", notes),
        (say("What is seen"), words.says),
        (say("Tap in this order"), taps),
        (say("What stays"), words.leaves),
        ("Then", words.then),
        (say("What can't be told"), words.blind),
        ("Caution", common_cautions() if said.remedy.kind in CUTS else ()),
    )
    return paragraphs(parts)


def _units_line(units: Units) -> tuple[str, ...]:
    if units is Units.MM:
        return (say("All figures in mm and degrees."),)
    return (
        say(
            "Figures in mm and degrees, taps in inches too; {mm_per_inch} mm are an inch.",
            mm_per_inch=MM_PER_INCH,
        ),
    )


def _in_units(text: str, move_mm: float, units: Units) -> str:
    if units is Units.MM:
        return text
    return say(
        "{text} mm ({move_mm:.3f} in).",
        text=text.removesuffix("."),
        move_mm=abs(move_mm) / MM_PER_INCH,
    )

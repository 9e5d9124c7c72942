"""`longpoint proof`: four offcuts, eight gaps, and what the saw's 45 really cuts."""

import json
import re
from collections.abc import Sequence
from typing import Final

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paragraphs import paragraphs
from longpoint.cli.spoken import speak
from longpoint.errors import QuantityError
from longpoint.forecast.saw_proof import CORNERS, SawProof, saw_proof
from longpoint.quantities.length import Units, parse_length
from longpoint.sheets.cautions import saw_cautions
from longpoint.speech.said import say

GAPS: Final = 2 * CORNERS
FEELER_MM: Final = 0.05

_BARE: Final = re.compile(r"[A-Za-z0-9_-]+")


@click.command(name="proof")
@click.argument("gaps", nargs=-1, metavar="[GAPS]...")
@click.option("--width", metavar="LENGTH", help="Face width of the offcuts. [mm]")
@click.option("--saw", default="S1", show_default=True, help="Name of the saw in the house file.")
@click.option(
    "--feeler",
    default=f"{FEELER_MM}",
    show_default=True,
    metavar="LENGTH",
    help="Step of the feelers. [mm]",
)
@exits
def command(gaps: tuple[str, ...], width: str | None, saw: str, feeler: str) -> Outcome:
    """Say what the eight GAPS of a frame of offcuts tell of the saw.

    Heel and toe of one corner after the other, noughts too. Without GAPS: how to make the frame.
    """
    if not gaps:
        speak(
            paragraphs(((say("Prove the saw"), _steps()), ("Caution", saw_cautions((), Units.MM))))
        )
        return Outcome.DONE
    if width is None:
        raise QuantityError(
            say(
                "{gaps} gaps were given without the face width of the offcuts.",
                gaps=len(gaps),
            ),
            say("The same gap on a wide face is a smaller angle."),
            say("Give it as --width 66."),
        )
    proof = saw_proof(_corners(gaps), parse_length(width, Units.MM), _step_mm(feeler))
    parts = (
        (say("What the frame says"), (proof.words(), *_unseen())),
        (say("For the house file"), _lines(proof, saw)),
    )
    speak(paragraphs(parts))
    return Outcome.DONE


def _corners(gaps: Sequence[str]) -> list[tuple[float, float]]:
    if len(gaps) != GAPS:
        raise QuantityError(
            say("{gaps} gaps were given.", gaps=len(gaps)),
            say(
                "A frame has four corners, each with a heel and a toe: {gaps} gaps.",
                gaps=GAPS,
            ),
            say(
                "Give heel and toe of one corner after the other, noughts too: 0.4 0 "
                "0.4 0 0.3 0 0.5 0."
            ),
        )
    read_mm = [parse_length(gap, Units.MM) for gap in gaps]
    return list(zip(read_mm[::2], read_mm[1::2], strict=True))


def _step_mm(feeler: str) -> float:
    step_mm = parse_length(feeler, Units.MM)
    if step_mm == 0.0:
        raise QuantityError(
            say("A feeler step of 0 was given."),
            say("No feelers read that finely, and the doubt would come out too small."),
            say("Give the thinnest leaf, as --feeler 0.05."),
        )
    return step_mm


def _steps() -> tuple[str, ...]:
    return (
        say(
            "1. Cut four offcuts of one moulding, two long and two short, every end at "
            "the 45 stop: left ends on one swing, right ends on the other. The two of "
            "a pair have to be as long as each other."
        ),
        say(
            "2. Push them together into a frame on the bench. No nails, no glue. "
            "However you push it, the sum of the gaps stays."
        ),
        say(
            "3. Read all eight gaps with feelers: at each corner the heel (inside), "
            "then the toe (outside). A shut one is 0."
        ),
        say(
            "4. Give the eight, corner by corner: longpoint proof --width 66 0.4 0 0.4 "
            "0 0.3 0 0.5 0"
        ),
    )


def _lines(proof: SawProof, saw: str) -> tuple[str, ...]:
    found_deg = f"{proof.found_deg:.2f}" if proof.is_worth_dialling else "45.0"
    name = saw if _BARE.fullmatch(saw) else json.dumps(saw, ensure_ascii=False)
    why = (
        say(
            "Written so, the sheets take it out at the dial. Once the stop is moved "
            "and proved, write what it gives then."
        )
        if proof.is_worth_dialling
        else say("Written so, the sheets know that the saw is proved.")
    )
    return (
        f"[saws.{name}]",
        say("found = {{ left = {found_deg}, right = {found_deg} }}", found_deg=found_deg),
        why,
    )


def _unseen() -> tuple[str, ...]:
    return (
        say(
            "It is the mean of both swings. A fence out of line, one swing steep and "
            "the other shallow, opens no corner: hold one cut of each swing against a "
            "square for that."
        ),
    )

"""`longpoint catalogue`: every kind of trim, and what it asks for."""

import click

from longpoint.catalogue.all_trims import CATALOGUE
from longpoint.catalogue.trim import TrimKind
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.errors import SurveyError
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.trouble import instead


@click.command(name="catalogue")
@click.argument("kind", required=False)
@exits
def command(kind: str | None) -> Outcome:
    """List the kinds of trim for [[trims]] of a house file, or what one KIND asks for."""
    if kind is None:
        widest = max(len(each.name) for each in CATALOGUE)
        for each in CATALOGUE:
            speak(f"{each.name:<{widest}}  {each.title}")
        return Outcome.DONE
    speak(_asked(_known(kind)))
    return Outcome.DONE


def _known(name: str) -> TrimKind:
    for kind in CATALOGUE:
        if kind.name == name:
            return kind
    raise SurveyError(
        say("The kind {name!r} is asked for.", name=name),
        say("The catalogue has no trim of that name."),
        instead(name, [kind.name for kind in CATALOGUE]),
    )


def _asked(kind: TrimKind) -> str:
    lines = [f"{kind.name}: {kind.title}", ""]
    needs = [
        what
        for what, is_needed in (
            ("profile", kind.needs_profile),
            ("room", kind.needs_room),
            ("openings", kind.needs_openings),
        )
        if is_needed
    ]
    if needs:
        lines += [f"Needs: {', '.join(needs)}.", ""]
    for key in kind.asks:
        left_out = (
            "needed"
            if key.required
            else say(
                "left out: {left_out}",
                left_out=key.left_out,
            )
        )
        lines.append(f"  {key.name}: {key.meaning} ({left_out})")
        for inner in key.table.keys if key.table else ():
            lines.append(f"      {inner.name}: {inner.meaning}")
    return joined("\n", lines)

"""A crew's own figures as a file: read, added to, and never made to lose what it held."""

import json
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from longpoint.errors import ExchangeError, Finding, Severity
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.safe_files import free_name, write_new_text, write_text_safely
from longpoint.forecast.budget.records import BudgetLine
from longpoint.forecast.kept_forecasts import KeptForecast, kept_entry, read_kept
from longpoint.forecast.learned_lines import learned_lines
from longpoint.forecast.learning.crew_file import learned_document, read_learned
from longpoint.forecast.learning.setup import Learned
from longpoint.speech.said import say, say_many
from longpoint.survey.house import House

FORECASTS: Final = "forecasts"


@dataclass(frozen=True, slots=True, kw_only=True)
class CrewFile:
    """What a crew file holds.

    Attributes:
        learned: What was learned of saws and tapes.
        forecasts: Forecasts made, and what came of them.
        findings: What of it couldn't be read.
        document: All of it as it stands in the file; empty for a new one.
    """

    learned: Learned = field(default_factory=Learned)
    forecasts: tuple[KeptForecast, ...] = ()
    findings: tuple[Finding, ...] = ()
    document: dict[str, Any] = field(default_factory=dict)

    def written(self) -> dict[str, Any]:
        """Return the document to write: keys that we don't know stay as they were."""
        return {
            **self.document,
            **learned_document(self.learned),
            FORECASTS: [kept_entry(each) for each in self.forecasts],
        }


def load_crew_file(path: Path) -> CrewFile:
    """Return what a crew file holds.

    Raises:
        ExchangeError: It isn't there, or is no such file.
    """
    document = load_house_document(path)
    learned, findings = read_learned({k: v for k, v in document.items() if k != FORECASTS})
    entries = document.get(FORECASTS, [])
    read = [read_kept(entry) for entry in (entries if isinstance(entries, list) else [entries])]
    forecasts = tuple(each for each in read if each is not None)
    if len(forecasts) < len(read):
        findings = (*findings, _forecasts_left_out(path, len(read) - len(forecasts)))
    return CrewFile(
        learned=learned, forecasts=forecasts, findings=findings, document=dict(document)
    )


def load_or_begin(path: Path) -> CrewFile:
    """Return what a crew file holds; nothing where there is none yet.

    Raises:
        ExchangeError: What is there is no such file.
    """
    return load_crew_file(path) if path.exists() or path.is_symlink() else CrewFile()


def save_crew_file(path: Path, before: CrewFile, after: CrewFile) -> Path | None:
    """Write a crew file; when that would lose anything it held, keep a copy of it first.

    Args:
        path: Where to.
        before: As it was read.
        after: What it is to hold.

    Returns:
        The copy that was kept; None where none was needed.

    Raises:
        ExchangeError: It can't be written; the file is then as it was.
    """
    copy = None
    if before.document and before.written() != {FORECASTS: [], **before.document}:
        copy = free_name(path)
        write_new_text(copy, _text(before.document))
    write_text_safely(path, _text(after.written()))
    return copy


def crew_lines(path: Path, house: House) -> tuple[tuple[BudgetLine, ...], tuple[Finding, ...]]:
    """Return what a crew file says for a house's forecast; a file that can't be read is a note.

    Args:
        path: The crew file.
        house: The house that is forecast.

    Returns:
        Lines in the place of ours, and what is to be said; no lines where ours stand.
    """
    try:
        crew = load_crew_file(path)
    except ExchangeError as error:
        return (), (_unreadable(house, error),)
    return learned_lines(crew.learned, house), crew.findings


def _unreadable(house: House, error: ExchangeError) -> Finding:
    return Finding(
        code="crew-file-unreadable",
        severity=Severity.NOTE,
        place=house.name,
        read=error.read,
        wrong=say(
            "{wrong} The forecast rests on our figures, no length on either.",
            wrong=error.wrong,
        ),
        do=error.do,
    )


def _forecasts_left_out(path: Path, count: int) -> Finding:
    return Finding(
        code="crew-figure-unreadable",
        severity=Severity.WARNING,
        place=say("crew figures"),
        read=say_many(
            "{path}, {forecasts}: {count} entry.",
            "{path}, {forecasts}: {count} entries.",
            path=path.name,
            forecasts=FORECASTS,
            count=count,
        ),
        wrong=say(
            "A mark, a house, a chance of 0 to 1 and whether it fitted are "
            "wanted. That part is left out."
        ),
        do=say("Mend it, or take it out."),
    )


def _text(document: dict[str, Any]) -> str:
    return json.dumps(document, ensure_ascii=False, indent=1, default=str) + "\n"

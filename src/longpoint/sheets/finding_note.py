"""A finding as it stands on a sheet."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.sheets.blocks import Note

TITLES: Final = {Severity.STOP: "STOP", Severity.WARNING: "LOOK", Severity.NOTE: "NOTE"}
"""The word in front of a finding: told apart by word as well as by shape and shade."""


def finding_note(finding: Finding, *, ask: str = "") -> Note:
    """Return a finding with its place and three sentences."""
    sentences = (finding.read, finding.wrong, finding.do)
    return Note(
        severity=finding.severity,
        title=f"{TITLES[finding.severity]} · {finding.place}",
        text=" ".join(sentence for sentence in sentences if sentence),
        ask=ask,
    )

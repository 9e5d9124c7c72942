"""Exit statuses, and errors turned into three lines on the screen."""

import sys
from collections.abc import Callable
from enum import IntEnum
from functools import wraps
from typing import ParamSpec

from longpoint.cli.spoken import speak
from longpoint.errors import Finding, LongpointError, Severity

P = ParamSpec("P")


class Outcome(IntEnum):
    """What the command returns to the shell."""

    DONE = 0
    HELD = 1
    UNUSABLE = 2


def outcome(findings: tuple[Finding, ...]) -> Outcome:
    """Return whether anything is held back."""
    is_held = any(f.severity is Severity.STOP for f in findings)
    return Outcome.HELD if is_held else Outcome.DONE


def exits(work: Callable[P, Outcome]) -> Callable[P, None]:
    """Make a subcommand end with its outcome, and say an error in its three sentences."""

    @wraps(work)
    def run(*args: P.args, **kwargs: P.kwargs) -> None:
        try:
            status = work(*args, **kwargs)
        except LongpointError as error:
            for sentence in (error.read, error.wrong, error.do):
                speak(sentence, err=True)
            status = Outcome.UNUSABLE
        sys.exit(int(status))

    return run

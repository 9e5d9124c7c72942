"""What is wrong with one key of a house file, told in three sentences."""

import difflib
from collections.abc import Iterable
from typing import Final

from longpoint.errors import Finding, Severity, SurveyError
from longpoint.speech.said import joined, say

LONGEST_SHOWN: Final = 40
UNREADABLE_CODE: Final = "unreadable-value"


class HouseFileTrouble(SurveyError):  # noqa: N818
    """Trouble with one key; it stays inside this package unless it spoils the whole file.

    Args:
        read: What was read.
        wrong: What is wrong with it.
        do: What to do about it.
        code: Code of the finding it becomes.
        key: Key of the table in which it stands; empty when it is none in particular.
        kept: What of the value can still be used where a bad part is left out; None: nothing.
    """

    def __init__(
        self,
        read: str,
        wrong: str,
        do: str,
        *,
        code: str = UNREADABLE_CODE,
        key: str = "",
        kept: object = None,
    ) -> None:
        super().__init__(read, wrong, do)
        self.code = code
        self.key = key
        self.kept = kept

    def finding(self, place: str, severity: Severity = Severity.STOP) -> Finding:
        """Return the trouble as a finding at a place."""
        return Finding(
            code=self.code,
            severity=severity,
            place=place,
            read=self.read,
            wrong=self.wrong,
            do=self.do,
        )


def shown(written: object) -> str:
    """Return a value as it stands in the file, shortened and safe to print.

    Example:
        >>> shown("11x7"), shown(True), shown([1, 2]), shown(10**40)
        ('"11x7"', 'true', 'a list of 2', 'a number of over 15 digits')
    """
    match written:
        case None:
            return "null"
        case bool():
            return "true" if written else "false"
        case int():
            return str(written) if abs(written) < 10**15 else say("a number of over 15 digits")
        case float():
            return f"{written:g}" if abs(written) < 1e15 else f"{written:.3e}"
        case str():
            return quoted(written)
        case dict():
            return say("a table")
        case list() | tuple():
            return say("a list of {written}", written=len(written))
        case _:
            return say("a date or another kind of value")


def quoted(text: str) -> str:
    """Return text in quotes, what can't be printed as a question mark, long text shortened."""
    head = text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 3] + "..."
    return '"' + "".join(sign if sign.isprintable() else "?" for sign in head) + '"'


def nearest(name: str, known: Iterable[str]) -> str:
    """Return the known name most like the one written; empty when none is alike.

    Example:
        >>> nearest("risng", ["top", "rising", "falling"])
        'rising'
    """
    by_folded = {each.casefold(): each for each in known}
    found = difflib.get_close_matches(name[:100].casefold(), by_folded, n=1, cutoff=0.5)
    return by_folded[found[0]] if found else ""


def instead(name: str, known: Iterable[str]) -> str:
    """Return the sentence that offers the nearest of the known names, or lists them."""
    names = list(known)
    alike = nearest(name, names)
    if alike:
        return say("Did you mean {alike}?", alike=quoted(alike))
    if not names:
        return say("None is described yet.")
    listed = joined(", ", (quoted(each) for each in names[:12]))
    return say(
        "Known here: {listed}{and_}.",
        listed=listed,
        and_=say(" and others") if len(names) > 12 else "",
    )

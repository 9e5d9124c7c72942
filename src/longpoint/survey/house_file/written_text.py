"""Read names, marks and days, which are printed on sheets and labels."""

import unicodedata
from datetime import date, datetime
from typing import Final, NoReturn

from longpoint.speech.said import say
from longpoint.survey.house_file.trouble import HouseFileTrouble, shown

LONGEST_TEXT: Final = 60
MARK_SIGNS: Final = frozenset(" ._-/+#")


def read_text(written: object, path: str) -> str:
    """Return a name or another short text.

    Raises:
        HouseFileTrouble: It isn't text, is empty or too long, or holds signs that can't be printed.
    """
    if not isinstance(written, str):
        refuse(path, written, say("That is not text."), say("Write it in quotes."))
    if len(written) > LONGEST_TEXT:
        refuse(
            path,
            written,
            say(
                "It is longer than {longest_text} signs, which no label holds.",
                longest_text=LONGEST_TEXT,
            ),
            say("Shorten it."),
        )
    text = unicodedata.normalize("NFC", written).strip()
    if not text:
        refuse(
            path,
            written,
            say("There is no text between the quotes."),
            say("Write it, or take it out."),
        )
    if not text.isprintable():
        refuse(
            path,
            written,
            say("It holds a line break or another sign that can't be printed."),
            say("Type it again by hand."),
        )
    return text


def read_mark(written: object, path: str) -> str:
    """Return a mark, which is printed on labels and spoken at the saw.

    Raises:
        HouseFileTrouble: As `read_text`, or it holds other signs than letters, digits and a few.
    """
    text = read_text(written, path)
    if not all(sign.isalnum() or sign in MARK_SIGNS for sign in text):
        refuse(
            path,
            written,
            say("A mark holds letters, digits, spaces and the signs . _ - / + # only."),
            say("Write it with these."),
        )
    return text


def read_date(written: object, path: str) -> date:
    """Return a day, written as TOML writes it, or the same as text.

    Raises:
        HouseFileTrouble: It is none.
    """
    if isinstance(written, date) and not isinstance(written, datetime):
        return written
    try:
        return date.fromisoformat(read_text(written, path))
    except ValueError:
        refuse(
            path, written, say("That is no day of the calendar."), say("Write it like 2026-03-01.")
        )


def refuse(path: str, written: object, wrong: str, do: str) -> NoReturn:
    """Raise the trouble with what is written behind a key."""
    raise HouseFileTrouble(
        say(
            "{path} is written as {shown}.",
            path=path,
            shown=shown(written),
        ),
        wrong,
        do,
    )

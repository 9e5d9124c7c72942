"""Collects what longpoint says, and brings each language up to date with it.

`python tools/words.py` writes the template `longpoint.pot` from the sources, merges it into every
.po beside it, and compiles each .po to the .mo that the program reads. With the code of a language
behind it, that language is begun.
"""

import io
import re
import sys
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from typing import Final

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

from longpoint.sheets.dialects import in_words, words_for
from longpoint.survey.house import Dialect

SOURCES: Final = Path(__file__).resolve().parent.parent / "src" / "longpoint"
WORDS: Final = SOURCES / "speech" / "words"
TEMPLATE: Final = WORDS / "longpoint.pot"
KEYWORDS: Final = {"say": None, "say_many": (1, 2)}
NAMED: Final = re.compile(r"\{(\w+)[^{}]*(?:\{\w+\}[^{}]*)?\}")
UNDATED: Final = datetime(2026, 1, 1, tzinfo=UTC)
LETTER: Final = re.compile(r"[^\W\d_]")
BRACES: Final = re.compile(r"(\{\{|\}\}|\{[^{}]*(?:\{\w+\}[^{}]*)?\})")
COUNTRIES: Final = {"en_GB": Dialect.UK, "en_US": Dialect.US, "en_CA": Dialect.CA}
"""Catalogues of English itself, as a country's trade speaks it."""
ALSO_SAID: Final = (("wall's lining", "drywall"), ("packer", "shim"), ("(?<!wall )reveal", "jamb"))
"""What North America says otherwise, beside the words that sheets print by themselves."""
SPELT: Final = (
    ("metre", "meter"),
    ("colour", "color"),
    ("centre", "center"),
    ("grey", "gray"),
    ("neighbour", "neighbor"),
    ("mould", "mold"),
)
"""American spelling of words that aren't the trade's."""


def collected() -> Catalog:
    """Return every message of the sources; one without a letter of its own is left out."""
    book = Catalog(project="longpoint", fuzzy=False)
    found = extract_from_dir(SOURCES, [("**.py", "python")], keywords=KEYWORDS)
    for file, _, message, _, _ in sorted(found, key=lambda each: (each[0], each[1])):
        if LETTER.search(NAMED.sub("", message if isinstance(message, str) else message[0])):
            book.add(message, locations=[(file, 1)])
    return book


def names_in(text: str) -> set[str]:
    """Return the values that a message names."""
    return set(NAMED.findall(text.replace("{{", "").replace("}}", "")))


def proposed(message: str, code: str) -> str:
    """Return a message word for word as a country says it, for a person to read and mend."""
    words = words_for(COUNTRIES[code])
    parts = BRACES.split(message)
    parts[::2] = (in_words(_told_there(part, code), words) for part in parts[::2])
    return "".join(parts)


def _told_there(text: str, code: str) -> str:
    pairs = {
        "en_GB": (),
        "en_CA": ALSO_SAID,
        "en_US": (*ALSO_SAID, *SPELT),
    }[code]
    for ours, theirs in pairs:
        text = re.sub(
            rf"\b{ours}",
            partial(_like, theirs),
            text,
            flags=re.IGNORECASE,
        )
    return text


def _like(theirs: str, ours: re.Match[str]) -> str:
    return theirs.capitalize() if ours[0][0].isupper() else theirs


def translations(path: Path) -> Catalog:
    """Return the catalogue in a .po file."""
    with path.open("rb") as file:
        return read_po(file, locale=path.stem)


def compiled(book: Catalog) -> bytes:
    """Return a catalogue as a .mo file; what has no translation isn't in it, nor is a date."""
    book.creation_date = book.revision_date = UNDATED
    out = io.BytesIO()
    write_mo(out, book)
    return out.getvalue()


def template_text(book: Catalog) -> bytes:
    """Return a catalogue as text that repeats: no dates, no line numbers."""
    out = io.BytesIO()
    write_po(out, book, width=100, omit_header=True, include_lineno=False, sort_output=True)
    return out.getvalue()


def brought_up_to_date(book: Catalog, now: Catalog) -> Catalog:
    """Return a language with the messages of today: new ones empty, old ones gone.

    A country has only the messages that it may say otherwise, and new ones as they are proposed.
    """
    told: dict[object, Message] = {each.id: each for each in book if each.id}
    fresh = Catalog(locale=book.locale, fuzzy=False, project="longpoint")
    country = str(book.locale) if str(book.locale) in COUNTRIES else None
    for message in now:
        if not message.id:
            continue
        old = told.get(message.id)
        new = _of_a_country(message.id, country) if country else None
        if new or not country:
            fresh.add(message.id, old.string if old else new, locations=message.locations)
    return fresh


def _of_a_country(
    message: str | list[str] | tuple[str, ...], code: str
) -> str | tuple[str, ...] | None:
    if isinstance(message, str):
        new = proposed(message, code)
        return new if new != message else None
    forms = tuple(proposed(form, code) for form in message)
    return forms if forms != tuple(message) else None


def po_text(book: Catalog) -> bytes:
    """Return a language as the text of its .po."""
    out = io.BytesIO()
    code = book.locale
    forms = "nplurals=2; plural=(n != 1);" if code is None else book.plural_forms
    head = (
        f'msgid ""\nmsgstr ""\n"Language: {code}\\n"\n"Plural-Forms: {forms}\\n"\n'
        '"MIME-Version: 1.0\\n"\n"Content-Type: text/plain; charset=utf-8\\n"\n'
        '"Content-Transfer-Encoding: 8bit\\n"\n\n'
    )
    write_po(out, book, width=100, omit_header=True, include_lineno=False, sort_output=True)
    return head.encode() + out.getvalue()


def main() -> None:
    """Write template, languages and what the program reads."""
    now = collected()
    WORDS.mkdir(exist_ok=True)
    TEMPLATE.write_bytes(template_text(now))
    for code in sys.argv[1:]:
        if not (WORDS / f"{code}.po").exists():
            (WORDS / f"{code}.po").write_bytes(po_text(Catalog(locale=code)))
    for path in sorted(WORDS.glob("*.po")):
        book = brought_up_to_date(translations(path), now)
        path.write_bytes(po_text(book))
        path.with_suffix(".mo").write_bytes(compiled(translations(path)))
        missing = sum(1 for each in book if each.id and not all(_strings(each)))
        print(f"{path.name}: {len(book)} messages, {missing} without a translation")  # noqa: T201


def _strings(message: Message) -> tuple[str, ...]:
    told = message.string
    return (told,) if isinstance(told, str) else tuple(map(str, told or ("",)))


if __name__ == "__main__":
    main()

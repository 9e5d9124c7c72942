"""Nothing reaches a reader but by a message: what no tongue could turn is found here.

Every sheet, drawing and text is written in a language whose every message has lost its letters.
What letters are left came in as values, so they must be what somebody typed, a code or a name.
"""

import io
import re
from html import unescape

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo

from longpoint.sheets.blocks import Drawing, Sheet
from longpoint.sheets.html import sheet_html
from longpoint.sheets.in_tongue import in_tongue
from longpoint.sheets.svg import drawing_svg
from longpoint.sheets.terminal import findings_text, pieces_text, plan_text
from longpoint.speech.said import Said
from longpoint.speech.tongue import Translated
from tests.spoken_houses import plans, spoken_things

pytestmark = pytest.mark.no_cover

WORD = re.compile(r"[^\W\d_]{2,}")
CODE = re.compile(r"\b[A-Z0-9]{6}\b|\b\w+(?:-\w+)+\b")
"""Codes of readings, and of findings, marks and files."""
NAMES = frozenset({"NHBC", "NSW", "Standards", "Guide", "Tolerances", "cl", "to", "and"})
"""Titles of published guides stay as they are published."""


class Letterless(Translated):
    """A language of which only the values can be read."""

    def _message(self, said: Said) -> str:
        message = super()._message(said)
        return re.sub(
            r"(\{\{?\w*[^{}]*(?:\{\w+\}[^{}]*)?\}\}?)|[^\W\d_]+",
            lambda found: found[1] or "·",
            message,
        )


@pytest.fixture(scope="module")
def letterless() -> Letterless:
    file = io.BytesIO()
    write_mo(file, Catalog(locale="de"))
    return Letterless("de", file.getvalue())


def written(thing: Sheet | Drawing | str, tongue: Letterless) -> str:
    if isinstance(thing, str):
        return tongue.text(thing)
    told = in_tongue(thing, tongue)
    page = sheet_html(told) if isinstance(told, Sheet) else drawing_svg(told)
    bare = re.sub(r"<style.*?</style>|<[^>]*>", " ", page, flags=re.DOTALL)
    return unescape(bare).replace("\N{ZERO WIDTH SPACE}", "")


def test_all_that_a_reader_sees_is_said(letterless: Letterless) -> None:
    texts = [(written(thing, letterless), typed) for thing, typed in spoken_things()]
    typed = texts[0][1]
    for plan in plans():
        texts.append((plan_text(plan, tongue=letterless), typed))
        texts.append((pieces_text(plan, tongue=letterless), typed))
        texts.append((findings_text(plan.house, plan.findings, tongue=letterless), typed))
    known = {*WORD.findall(typed), *NAMES}
    left = {word for text, _ in texts for word in WORD.findall(CODE.sub(" ", text))} - known
    assert not left


def test_a_message_that_is_not_said_is_found(letterless: Letterless) -> None:
    assert WORD.findall(letterless.text("nobody said this"))

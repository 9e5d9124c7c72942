from pathlib import Path

from longpoint.phone.typescript import typescript

MESSAGES = Path(__file__).resolve().parents[3] / "app/src/messages.ts"


def test_the_page_has_the_types_of_today() -> None:
    said = "run: python -m longpoint.phone.typescript > app/src/messages.ts"
    assert MESSAGES.read_text(encoding="utf-8") == typescript(), said


def test_a_union_of_texts_in_a_list_is_bracketed() -> None:
    assert "readonly texts: readonly string[];" in typescript()
    assert 'readonly scale: "length" | "proud";' in typescript()

from longpoint.sheets.text_width import text_width_mm


def test_a_longer_or_larger_text_is_wider() -> None:
    assert text_width_mm("W1 head", 3.0) > text_width_mm("W1", 3.0)
    assert text_width_mm("W1", 6.0) == 2 * text_width_mm("W1", 3.0)
    assert text_width_mm("", 3.0) == 0.0

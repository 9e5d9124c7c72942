"""Headed paragraphs are wrapped under their heading."""

from longpoint.cli.paragraphs import paragraphs


def test_a_long_sentence_is_wrapped_and_hangs_under_its_first_line() -> None:
    lines = paragraphs([("Then", ["word " * 30])], width=40).splitlines()
    assert lines[0] == "Then"
    assert all(len(line) <= 40 for line in lines)
    assert lines[1].startswith("  word")
    assert all(line.startswith("    word") for line in lines[2:])


def test_a_heading_without_sentences_is_left_out() -> None:
    assert paragraphs([("A", []), ("B", ["b"])]) == "B\n  b"

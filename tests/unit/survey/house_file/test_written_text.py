import pytest

from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_text import read_mark, read_text


def test_text_is_stripped_and_composed() -> None:
    assert read_text("  Anna's room ", "room") == "Anna's room"
    assert read_text("e\u0301", "room") == "\u00e9"


@pytest.mark.parametrize(
    "written",
    [7, None, ["a"], "", "   ", "a\nb", "a\x00b", "a\u202eb", "z" * 61],
)
def test_what_no_sheet_can_print_is_refused(written: object) -> None:
    with pytest.raises(HouseFileTrouble) as trouble:
        read_text(written, "room")

    assert trouble.value.read.startswith("room is written as ")


@pytest.mark.parametrize("mark", ["W1", "D 2a", "7.2-left", "Küche_1", "A/B", "#4"])
def test_a_mark_holds_letters_digits_and_a_few_signs(mark: str) -> None:
    assert read_mark(mark, "mark") == mark


@pytest.mark.parametrize("mark", ["<b>", "W1;", 'W"1', "W\\1", "W1, W2", "😀"])
def test_a_mark_holds_no_other_signs(mark: str) -> None:
    with pytest.raises(HouseFileTrouble):
        read_mark(mark, "mark")

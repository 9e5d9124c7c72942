import pytest

from longpoint.errors import SurveyError
from longpoint.survey.house_file import parsed_text
from longpoint.survey.house_file.parsed_text import parsed_house


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("a = " + "[" * 100 + "]" * 100, "over 20 deep"),
        ('{"a": ' + "[" * 100_000, "over 20 deep"),
        ("name = ", "line 1"),
        ('{"a": NaN}', "NaN"),
        ("a = [" + "1," * (parsed_text.MOST_ENTRIES + 1) + "]", "200000 values"),
        ("#" * (parsed_text.LARGEST_FILE_BYTES + 1), "over 8 MB"),
    ],
    ids=lambda value: value[:12],
)
def test_a_text_is_held_to_the_limits_of_a_file(text: str, told: str) -> None:
    with pytest.raises(SurveyError) as caught:
        parsed_house(text)
    assert told in str(caught.value)


def test_a_text_is_called_by_its_name() -> None:
    with pytest.raises(SurveyError) as caught:
        parsed_house("[", "The house that was opened")
    assert caught.value.read.startswith("The house that was opened was read up to line 1")

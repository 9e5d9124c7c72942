import json
import tomllib
from pathlib import Path

import pytest

from longpoint.errors import ExchangeError, SurveyError
from longpoint.exchange import house_files
from longpoint.exchange.house_files import load_house, load_house_document
from longpoint.survey.house_file import parsed_text, starter_house

STARTER = starter_house("Wren House")


def written(folder: Path, data: str | bytes, name: str = "house.toml") -> Path:
    path = folder / name
    path.write_bytes(data.encode() if isinstance(data, str) else data)
    return path


def refusal(path: Path) -> ExchangeError:
    with pytest.raises(ExchangeError) as caught:
        load_house_document(path)
    assert all((caught.value.read, caught.value.wrong, caught.value.do))
    return caught.value


def test_the_same_house_in_toml_and_json_reads_the_same(tmp_path: Path) -> None:
    toml = written(tmp_path, STARTER)
    as_json = written(tmp_path, json.dumps(tomllib.loads(STARTER)), "house.json")
    unnamed = written(tmp_path, "\n " + json.dumps(tomllib.loads(STARTER)), "house.txt")

    assert load_house(toml) == load_house(as_json) == load_house(unnamed)


@pytest.mark.parametrize("newline", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_a_byte_order_mark_and_other_line_ends_do_no_harm(
    tmp_path: Path, mark: str, newline: str
) -> None:
    path = written(tmp_path, mark + STARTER.replace("\n", newline))

    assert load_house(path).house.name == "Wren House"


@pytest.mark.parametrize(
    ("data", "told"),
    [
        ('format = "x"\nname = "Wren\n', "line 2, column"),
        ("a = 1\na = 2\n", "line 2"),
        ('{"a": 1,\n "b" 2}', "JSON"),
        ("a = " + "[" * 100 + "]" * 100, "over 20 deep"),
        ("a = " + "[" * 100_000, "over 20 deep"),
        ('{"a": ' + "[" * 100_000, "over 20 deep"),
        ("a." * 50 + "b = 1", "over 20 deep"),
        ("a = " + "9" * 5000, "digits"),
        ('{"a": ' + "9" * 5000 + "}", "digits"),
        ('{"a": NaN}', "NaN"),
        ('{"a": {"b": 1, "b": 2}}', '"b" twice'),
        ("a = 1\x00", "UTF-16"),
        ("a = 2024-13-45", "TOML"),
    ],
)
def test_a_file_that_breaks_the_rules_is_refused_with_the_place(
    tmp_path: Path, data: str, told: str
) -> None:
    assert told in str(refusal(written(tmp_path, data)))


def test_a_list_is_no_house(tmp_path: Path) -> None:
    assert "{ and }" in refusal(written(tmp_path, "[1]", "house.json")).do


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-32"])
def test_wide_text_is_told_to_be_saved_as_utf_8(tmp_path: Path, encoding: str) -> None:
    error = refusal(written(tmp_path, STARTER.encode(encoding)))

    assert "UTF-16" in error.wrong
    assert "UTF-8" in error.do


def test_latin_1_text_is_told_with_its_line(tmp_path: Path) -> None:
    error = refusal(written(tmp_path, 'format = "x"\nname = "Ñandú"\n'.encode("latin-1")))

    assert "line 2" in error.read
    assert "Latin-1" in error.wrong


def test_a_file_that_is_not_there_or_is_a_folder_is_told(tmp_path: Path) -> None:
    assert "no file of that name" in refusal(tmp_path / "none.toml").wrong
    assert "folder" in refusal(tmp_path).wrong
    assert "refuses" in refusal(tmp_path / "a\0b.toml").wrong


def test_a_file_over_the_limit_is_not_parsed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for module in (house_files, parsed_text):
        monkeypatch.setattr(module, "LARGEST_FILE_BYTES", 100)

    assert "over 8 MB" in refusal(written(tmp_path, STARTER)).read


def test_a_file_of_too_many_values_is_refused(tmp_path: Path) -> None:
    text = "a = [" + "1," * (parsed_text.MOST_ENTRIES + 1) + "]"

    assert "200000 values" in refusal(written(tmp_path, text)).read


def test_a_file_that_reads_but_is_no_house_is_a_survey_error(tmp_path: Path) -> None:
    with pytest.raises(SurveyError):
        load_house(written(tmp_path, "a = 1\n"))

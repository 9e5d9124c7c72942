"""Whatever is done to a good house file, it is refused or held in words, and the rest survives."""

import copy
import json
import math
import random
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from longpoint.errors import Finding, LongpointError, Severity
from longpoint.exchange.house_files import load_house
from longpoint.survey.house import SurveyResult
from longpoint.survey.house_file import house_schema, read_house

FOLDER = Path(__file__).resolve().parent / "good_houses"
TEXTS = {path.name: path.read_text(encoding="utf-8") for path in sorted(FOLDER.glob("*.toml"))}
HOUSES: dict[str, dict[str, Any]] = {name: tomllib.loads(text) for name, text in TEXTS.items()}
GOOD = {name: read_house(house).house for name, house in HOUSES.items()}
SCHEMA = jsonschema.Draft202012Validator(house_schema())
CHANGES_NO_LENGTH = {"crew-unreadable", "season-unreadable", "as-built-unreadable"}
"""Said as warnings: nothing has to be held for them."""
ENTRIES = ("openings", "rooms", "runs")

DEEP: Any = []
for _ in range(500):
    DEEP = [DEEP]

ODD: list[Any] = [
    None, True, False, 0, -1, -0.0, 1e-12, 0.5, 7, 1187, 99999, 10**18, 10**400, -(10**30),
    1e308, math.inf, -math.inf, math.nan, "", " ", "x", "W2", "W1", "T1", "S1", "NaN", "-5", "1187",
    "46 3/4", "3' 10\"", "1/0", "٣", "²", "½", "\u202eW1", "a\nb", "\x00", "é" * 59, "z" * 5000,
    "9" * 5000, "1" * 30 + "/" + "3" * 30,
    [], [[]], [1, 2], [None], ["a"], [1187] * 60, {}, {"x": 1},
    {"head": 5}, {"width": 900, "height": 900}, [{}], [{"mark": "W1"}], DEEP,
]  # fmt: skip
KEYS = ("top", "mark", "kind", "risng", "", "name", "width", "b", "corners", "tape", "é", "x" * 300)

Path_ = tuple[Any, ...]


def every_path(value: Any, path: Path_ = ()) -> list[Path_]:  # noqa: ANN401
    """Return the way to every value inside a document."""
    inner: list[tuple[Any, Any]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = list(enumerate(value))
    return [each for key, one in inner for each in [(*path, key), *every_path(one, (*path, key))]]


PATHS = {name: every_path(house) for name, house in HOUSES.items()}
ENTRY_PATHS = {
    name: [path for path in paths if path[0] in ENTRIES and len(path) > 1]
    for name, paths in PATHS.items()
}


@st.composite
def mangled(draw: st.DrawFn, *, inside_entries: bool) -> tuple[str, Path_, dict[str, Any]]:
    """Draw a good house with one thing in it broken: which house, where, and the document."""
    name = draw(st.sampled_from(sorted(HOUSES)))
    path = draw(st.sampled_from((ENTRY_PATHS if inside_entries else PATHS)[name]))
    document = copy.deepcopy(HOUSES[name])
    holder: Any = document
    for key in path[:-1]:
        holder = holder[key]
    last = path[-1]
    act = draw(st.sampled_from(("drop", "replace", "rename", "repeat", "add")))
    if act == "replace":
        holder[last] = draw(st.sampled_from(ODD))
    elif act == "drop":
        del holder[last]
    elif isinstance(holder, dict):
        new = draw(st.sampled_from(KEYS))
        value = holder.pop(last) if act == "rename" else holder[last]
        holder[new] = draw(st.sampled_from(ODD)) if act == "add" else value
    else:
        holder.insert(last, copy.deepcopy(holder[last]))
    return name, path, document


def read_or_refuse(document: dict[str, Any]) -> SurveyResult | None:
    """Return the house, or None for a refusal in three sentences."""
    return told_or_refused(lambda: read_house(document))


def told_or_refused(read: Callable[[], SurveyResult]) -> SurveyResult | None:
    """Return what is read, its findings checked, or None for a refusal in three sentences."""
    refusal: LongpointError | None = None
    result: SurveyResult | None = None
    try:
        result = read()
    except LongpointError as error:
        refusal = error
    if refusal is not None:
        assert all(each.strip()[-1:] in set(".?:!") for each in (refusal.wrong, refusal.do))
        assert refusal.read.strip()
        assert str(refusal).isprintable()
    if result is not None:
        assert_well_said(result)
    return result


def assert_well_said(result: SurveyResult) -> None:
    """Check that every finding has a place and three sentences, and every held entry a finding."""
    for finding in result.findings:
        assert_finding(finding)
    stopped = {f.place for f in result.findings if f.severity is Severity.STOP}
    for entry in result.house.held:
        assert any(place == entry.mark or place.startswith(f"{entry.mark} ") for place in stopped)


def assert_others_unchanged(name: str, path: Path_, result: SurveyResult) -> None:
    """Check that every entry but the one on the path is as in the good house."""
    touched = HOUSES[name][path[0]][path[1]]
    own_name = touched.get("mark", touched.get("name"))
    twice = {f.place for f in result.findings if f.code == "mark-twice"}
    for kind in ENTRIES:
        before = {getattr(e, "mark", getattr(e, "name", "")): e for e in getattr(GOOD[name], kind)}
        after = {getattr(e, "mark", getattr(e, "name", "")): e for e in getattr(result.house, kind)}
        for mark, entry in before.items():
            if (kind == path[0] and mark == own_name) or mark in twice:
                continue
            assert after.get(mark) == entry


def assert_finding(finding: Finding) -> None:
    sentences = (finding.read, finding.wrong, finding.do)
    assert finding.code
    assert finding.place.strip()
    assert all(sentence.strip()[-1] in ".?:!" for sentence in sentences), finding
    assert all(len(sentence) < 400 for sentence in sentences), finding
    assert str(finding).isprintable(), finding


def test_the_good_houses_are_good() -> None:
    assert len(HOUSES) == 2
    for name, house in HOUSES.items():
        result = read_house(house)
        assert result.house.held == (), name
        assert [f for f in result.findings if f.severity is not Severity.NOTE] == [], name
        assert len(result.house.openings) >= 4
        assert list(SCHEMA.iter_errors(house)) == []


@settings(max_examples=300)
@given(mangled(inside_entries=True))
def test_good_openings_rooms_and_runs_beside_a_bad_entry_survive_unchanged(
    drawn: tuple[str, Path_, dict[str, Any]],
) -> None:
    name, path, document = drawn

    result = read_or_refuse(document)

    assert result is not None, "trouble in one entry never refuses the house"
    assert_others_unchanged(name, path, result)


@pytest.mark.long
@pytest.mark.parametrize("name", sorted(HOUSES))
@pytest.mark.parametrize("odd", range(len(ODD)))
def test_every_value_of_a_good_house_may_be_swapped_for_any_odd_one(name: str, odd: int) -> None:
    for path in PATHS[name]:
        document: Any = {**HOUSES[name]}
        holder: Any = document
        for key in path[:-1]:
            holder[key] = copy.copy(holder[key])
            holder = holder[key]
        holder[path[-1]] = ODD[odd]

        result = read_or_refuse(document)

        if path in ENTRY_PATHS[name]:
            assert result is not None
            assert_others_unchanged(name, path, result)


@settings(max_examples=300)
@given(mangled(inside_entries=False))
def test_a_mangled_document_is_read_held_or_refused_in_words(
    drawn: tuple[str, Path_, dict[str, Any]],
) -> None:
    _, _, document = drawn

    read_or_refuse(document)


@settings(max_examples=150)
@given(mangled(inside_entries=False))
def test_what_the_schema_rejects_is_never_read_in_silence(
    drawn: tuple[str, Path_, dict[str, Any]],
) -> None:
    _, _, document = drawn
    if SCHEMA.is_valid(document):
        return

    result = read_or_refuse(document)

    assert result is None or any(
        f.severity is Severity.STOP or f.code in CHANGES_NO_LENGTH for f in result.findings
    )


def damage(text: str, random_: random.Random) -> bytes:
    """Return a text as a bad disk, a bad editor or a slip of the hand leaves it."""
    data = bytearray(text.encode())
    for _ in range(random_.choice((1, 1, 1, 2, 5))):
        at = random_.randrange(len(data))
        match random_.randrange(6):
            case 0:
                del data[at:]
            case 1:
                data[at] = random_.randrange(256)
            case 2:
                data[at:at] = random_.choice(
                    (b'"', b"[", b"]", b"{", b"=", b"\n", b"\x00", b"#", b"'")
                )
            case 3:
                del data[at : at + random_.randrange(1, 40)]
            case 4:
                data[at:at] = data[at : at + random_.randrange(1, 200)]
            case _:
                data[at:at] = b"[" * 2000
        if not data:
            break
    return bytes(data)


@settings(max_examples=200)
@given(st.sampled_from(sorted(TEXTS)), st.randoms(use_true_random=False), st.booleans())
@example("cabin.toml", random.Random(1), True)
def test_a_damaged_file_is_read_held_or_refused_in_words(
    tmp_path_factory: pytest.TempPathFactory, name: str, random_: random.Random, as_json: bool
) -> None:
    text = json.dumps(HOUSES[name], indent=1) if as_json else TEXTS[name]
    path = tmp_path_factory.getbasetemp() / ("mangled.json" if as_json else "mangled.toml")
    path.write_bytes(damage(text, random_))

    told_or_refused(lambda: load_house(path))

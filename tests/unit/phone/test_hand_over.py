import json
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
import zxingcpp
from segno.encoder import encode

from longpoint.errors import SurveyError
from longpoint.phone import Ports, answer
from longpoint.phone.fold import fold
from longpoint.phone.hand_over import (
    MOST_PARTS,
    PART_SIGNS,
    handed_over,
    joined,
    journal_text,
    parts_of,
)
from tests.counts_ahead import COUNTS_AHEAD, Ahead
from tests.phone_journals import Journal


def journal(openings: int = 3) -> Journal:
    made = Journal("phone-a")
    made.begin()
    for number in range(1, openings + 1):
        mark = f"W{number}"
        made.write("opening-added", opening=mark, room="Main", kind="window", trim="all-round")
        for line, text in (("left", "598"), ("top", f"11{number:02}"), ("right", "599")):
            made.read(line, text, mark, over=[])
    return made


def modules(text: str) -> list[bytearray]:
    rows = encode(text, error="m", micro=False, boost_error=False).matrix  # type: ignore[no-untyped-call]
    return list(rows)


def ask(what: str, **said: object) -> Any:  # noqa: ANN401
    return json.loads(answer(json.dumps({"ask": what, **said}), Ports(code_modules=modules)))


def test_parts_come_back_in_any_order_and_twice() -> None:
    text = journal_text(journal(40).entries)
    parts = parts_of(text)
    assert len(parts) > 2
    assert joined([*parts[::-1], parts[0]]).text == text


def test_what_is_missing_is_named() -> None:
    parts = parts_of(journal_text(journal(40).entries))
    found = joined([parts[-1]])
    assert found.missing == tuple(range(1, len(parts)))
    assert found.text == ""


def test_a_code_is_read_by_another_reader() -> None:
    """Drawn by segno, read by zxing-cpp: neither knows the other."""
    for part in parts_of(journal_text(journal(40).entries)):
        dark = np.array([list(row) for row in modules(part)], dtype=np.uint8)
        picture = np.kron(np.pad(1 - dark, 4, constant_values=1) * 255, np.ones((4, 4)))
        found = zxingcpp.read_barcodes(picture.astype(np.uint8))
        assert [each.text for each in found] == [part]


def test_a_journal_that_is_opened_gives_its_entries_and_the_house() -> None:
    entries = journal().entries
    handed = ask("hand-over", entries=entries)
    assert len(handed["pictures"]) == handed["count"]
    opened = ask("open", text=handed["text"], highest=0)
    assert (opened["name"], opened["openings"]) == ("Pipit", 3)
    assert fold(opened["entries"]) == fold(entries)


def test_a_large_house_goes_as_a_file() -> None:
    made = Journal("phone-a")
    made.begin()
    for number in range(3000):
        made.read("top", str(1000 + number * 7919 % 900), f"W{number * 31 % 997}", over=[])
    handed = handed_over(made.entries, modules)
    assert handed.count > MOST_PARTS
    assert handed.pictures == ()


@pytest.mark.parametrize(
    "parts",
    [
        ["https://example.org"],
        [*parts_of("one house"), *parts_of("another")],
        ["LPJ1.00000000.1.1.PDNAWNYEAAAOCAEJ"],
        ["LPJ1.E5FDD956.1.1.AAAAAAAA"],
    ],
    ids=["no part", "two houses", "another sum", "damaged"],
)
def test_what_is_no_whole_house_is_refused(parts: list[str]) -> None:
    with pytest.raises(SurveyError) as caught:
        joined(parts)
    assert caught.value.do


def test_a_changed_sign_never_passes() -> None:
    parts = list(parts_of(journal_text(journal(40).entries)))
    swapped = parts[0][:-2] + parts[0][-1] + parts[0][-2]
    assert swapped != parts[0]
    with pytest.raises(SurveyError):
        joined([swapped, *parts[1:]])


def test_parts_are_of_one_size() -> None:
    parts = parts_of(journal_text(journal(40).entries))
    sizes = [len(part.rsplit(".", 1)[1]) for part in parts]
    assert set(sizes[:-1]) == {PART_SIGNS}
    assert all(before >= after for before, after in pairwise(sizes))


@pytest.mark.parametrize("entries", [[], [{"device": "p"}], ["x"], 3])
def test_a_journal_that_is_none_is_refused(entries: object) -> None:
    text = json.dumps({"format": "longpoint-journal/1", "entries": entries})
    assert ask("open", text=text, highest=0)["kind"] == "refusal"


@pytest.mark.parametrize("ahead", COUNTS_AHEAD)
def test_a_journal_with_a_count_too_far_ahead_is_refused_as_a_whole(ahead: Ahead) -> None:
    entries = [*journal().entries]
    entries.append({**entries[-1], "device": "phone-b", "counter": ahead.counter})
    said = ask("open", text=journal_text(entries), highest=ahead.highest)
    assert (said["kind"] == "open") is ahead.is_taken
    if ahead.is_taken:
        assert len(said["entries"]) == len(entries)
    else:
        assert all(said[sentence] for sentence in ("read", "wrong", "do"))

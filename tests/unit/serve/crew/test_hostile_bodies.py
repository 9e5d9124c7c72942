"""Bodies that are too large, say a wrong length, unfold, or are no JSON."""

import gzip
import io
import zipfile
from typing import Final

import pytest

from longpoint.serve.crew.guard import LARGEST_BODY
from tests.crew_server import Laptop, Phone
from tests.unit.serve.crew.raw_requests import JSON, SHARE, sent


def test_a_large_body_is_refused_before_it_is_read(laptop: Laptop) -> None:
    headers = {**JSON, "Content-Length": str(LARGEST_BODY + 1)}
    parts = (b"x" * 1_000,) * 1_001
    (status, _, _), read = sent(laptop, "/crew/knock", method="POST", headers=headers, parts=parts)
    assert (status, read) == (413, 0)


@pytest.mark.parametrize("length", ["-1", "1e3", "9" * 5_000, "٣", "1, 1", ""])
def test_a_length_that_is_none_is_refused(laptop: Laptop, length: str) -> None:
    headers = {**JSON, "Content-Length": length}
    (status, _, _), read = sent(laptop, "/crew/knock", method="POST", headers=headers)
    assert (status, read) == (413, 0)


def test_a_body_that_hides_its_size_is_read_up_to_the_limit(laptop: Laptop) -> None:
    parts = (b"x" * 100_000,) * 100
    (status, _, _), read = sent(laptop, "/crew/knock", method="POST", headers=JSON, parts=parts)
    assert (status, read) == (413, LARGEST_BODY // 100_000 + 1)


def zip_bomb() -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as made:
        made.writestr("entries.json", b"0" * 20_000_000)
    return packed.getvalue()


LAUGHS: Final = (
    b'<?xml version="1.0"?><!DOCTYPE a [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">'
    b'<!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;">]><a>&c;</a>'
)


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("application/zip", zip_bomb()),
        ("application/xml", LAUGHS),
        ("text/xml", LAUGHS),
        ("image/svg+xml", LAUGHS),
        ("application/octet-stream", zip_bomb()),
    ],
)
def test_neither_archive_nor_xml_is_taken(phone: Phone, kind: str, body: bytes) -> None:
    answer = phone.ask("POST", SHARE, content=body, headers={"Content-Type": kind})
    assert answer.status_code == 415


@pytest.mark.parametrize(
    "body",
    [
        zip_bomb(),
        LAUGHS,
        gzip.compress(b'{"entries": [], "seen": {}}', mtime=0),
        b"[" * 500_000,
        b'{"entries": ' + b"[" * 100 + b"]" * 100 + b', "seen": {}}',
        b'{"entries": [], "seen": {}, "more": ' + b"9" * 5_000 + b"}",
        b"\xff\xfe{}",
        b"",
    ],
)
def test_what_unfolds_or_calls_itself_json_is_refused_unread(phone: Phone, body: bytes) -> None:
    headers = {**JSON, "Content-Encoding": "gzip"}
    assert phone.ask("POST", SHARE, content=body, headers=headers).status_code == 422

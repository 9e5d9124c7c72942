"""Look through a zipped file before anything in it is unpacked or parsed."""

import io
import re
import stat
import zipfile
import zlib
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import say

MOST_PARTS: Final = 500
LARGEST_PART: Final = 24_000_000
LARGEST_WHOLE: Final = 48_000_000
"""Unpacked. A house of 400 openings with six readings each comes to well under a megabyte."""
MOST_TIMES: Final = 200
"""A part may unpack to so many times its size; sheets of readings lie between 5 and 40."""
SMALL_PART: Final = 100_000
DEEPEST: Final = 64
"""Elements inside elements; sheets of a workbook go to about eight."""
CHUNK: Final = 65_536

_ENCODING: Final = re.compile(rb"<\?xml[^>]{0,200}?encoding\s*=\s*[\"']([^\"']{1,40})[\"']")
_TAG: Final = re.compile(rb"<(?P<close>/?)[A-Za-z_:][^<>]*?(?P<empty>/?)>")
_XML_ENDINGS: Final = (".xml", ".rels", ".vml")
_ACTIVE: Final = ("vbaproject", "externallinks/", "activex/", "embeddings/", "macrosheets/")


def check_zip(name: str, data: bytes) -> None:
    """Refuse a zipped workbook that is a trap or no workbook of readings.

    Every part is unpacked once, a chunk at a time, and thrown away, so nothing larger than a chunk
    is held.

    Args:
        name: Name of the file, for the sentences.
        data: All of it.

    Raises:
        ExchangeError: It is no sound zip; has too many parts or unpacks to too much; has a link,
            a locked part or a part outside its own folder; holds macros or other files; or its XML
            has a document type, another encoding than UTF-8, or elements nested too deep.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            parts = archive.infolist()
            _check_list(name, parts)
            whole = 0
            for part in parts:
                whole += _check_part(name, archive, part)
                if whole > LARGEST_WHOLE:
                    raise _bomb(
                        name,
                        say(
                            "over {largest_whole} MB",
                            largest_whole=LARGEST_WHOLE // 1000000,
                        ),
                    )
    except (
        zipfile.BadZipFile,
        zipfile.LargeZipFile,
        zlib.error,
        NotImplementedError,
        EOFError,
        OSError,
        RuntimeError,
        ValueError,
        OverflowError,
    ):
        raise ExchangeError(
            say("The workbook {name} was to be unpacked.", name=name),
            say("It is damaged, or it is packed or locked in a way that workbooks aren't."),
            say(
                "Open it in the spreadsheet program and save it again as .xlsx, without a password."
            ),
        ) from None


def _check_list(name: str, parts: list[zipfile.ZipInfo]) -> None:
    if len(parts) > MOST_PARTS:
        raise _bomb(name, say("over {most_parts} parts", most_parts=MOST_PARTS))
    seen: set[str] = set()
    for part in parts:
        inner = part.filename.replace("\\", "/")
        if stat.S_ISLNK(part.external_attr >> 16):
            raise _odd(name, say("One of its parts is a link to another place."))
        if inner.startswith("/") or ".." in inner.split("/") or ":" in inner or "\0" in inner:
            raise _odd(name, say("One of its parts points outside the workbook."))
        if part.flag_bits & 0x1:
            raise _odd(name, say("It is locked with a password."))
        if inner.casefold() in seen:
            raise _odd(
                name, say("Two of its parts have the same name, so which counts can't be told.")
            )
        seen.add(inner.casefold())
        if any(word in inner.casefold() for word in _ACTIVE):
            raise _odd(name, say("It holds macros, or links to other files, or files inside it."))


def _check_part(name: str, archive: zipfile.ZipFile, part: zipfile.ZipInfo) -> int:
    is_xml = part.filename.casefold().endswith(_XML_ENDINGS)
    most = min(LARGEST_PART, max(SMALL_PART, MOST_TIMES * part.compress_size))
    size, depth, tail = 0, 0, b""
    with archive.open(part) as file:
        while chunk := file.read(CHUNK):
            if is_xml:
                if size == 0:
                    _check_encoding(name, chunk)
                # Some of the last chunk goes before this one: a word may lie across the two.
                depth, tail = _check_xml(name, tail + chunk, depth)
            size += len(chunk)
            if size > most:
                raise _bomb(name, say("over {most} kB in one part", most=most // 1000))
    return size


def _check_encoding(name: str, start: bytes) -> None:
    found = _ENCODING.search(start[:400])
    encoding = found[1].decode("ascii", "replace").casefold() if found else "utf-8"
    is_wide = start.startswith((b"\xff\xfe", b"\xfe\xff")) or b"\0" in start[:200]
    if is_wide or encoding not in {"utf-8", "utf8", "us-ascii"}:
        raise _odd(name, say("Its XML is written in another encoding than UTF-8."))


def _check_xml(name: str, piece: bytes, depth: int) -> tuple[int, bytes]:
    if b"<!DOCTYPE" in piece or b"<!ENTITY" in piece:
        raise _odd(
            name, say("Its XML declares entities, which no workbook needs and which are a trap.")
        )
    last = 0
    for tag in _TAG.finditer(piece):
        last = tag.end()
        if tag["close"]:
            depth -= 1
        elif not tag["empty"]:
            depth += 1
        if depth > DEEPEST:
            raise _odd(name, say("Its XML is nested over {deepest} deep.", deepest=DEEPEST))
    # A tag is never longer than this in a workbook; what is longer is counted short, not over.
    return depth, piece[max(last, len(piece) - 4096) :]


def _bomb(name: str, size: str) -> ExchangeError:
    return ExchangeError(
        say(
            "The workbook {name} was unpacked a little way, to see how large it is.",
            name=name,
        ),
        say(
            "It unpacks to {size}, far more than readings of a house, so it was left alone.",
            size=size,
        ),
        say("Copy the tab with the readings into a new workbook and save that."),
    )


def _odd(name: str, wrong: str) -> ExchangeError:
    return ExchangeError(
        say("The parts of the workbook {name} were looked through.", name=name),
        wrong,
        say(
            "Copy the tab with the readings into a new workbook, values only, and save it as .xlsx."
        ),
    )

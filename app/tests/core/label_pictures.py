"""Draws labels' codes of a house: what a camera sees of one, and pictures of two others.

    python label_pictures.py HOUSE OUT

Writes to OUT `label.y4m` (a film of the label of W1's head, as a camera would show it), `old.png`
(the same piece, of other readings) and `other.png` (no label at all).
"""

import sys
from pathlib import Path

import segno

from longpoint.catalogue.all_trims import trim_tables
from longpoint.sheets.labels.piece_code import piece_code
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.parsed_text import parsed_house
from longpoint.survey.house_file.readings_code import readings_code

WIDE, HIGH, DOT = 640, 480, 8


def film(text: str) -> bytes:
    """Return a film of one frame, the code in its middle on grey paper: YUV4MPEG2, 4:2:0."""
    matrix = segno.make(text, error="m", micro=False).matrix
    side = len(matrix)
    left, top = (WIDE - side * DOT) // 2, (HIGH - side * DOT) // 2
    luma = bytearray([215]) * (WIDE * HIGH)
    for y in range(side * DOT):
        for x in range(side * DOT):
            if matrix[y // DOT][x // DOT]:
                luma[(top + y) * WIDE + left + x] = 40
    colour = bytes([128]) * (WIDE * HIGH // 2)
    head = f"YUV4MPEG2 W{WIDE} H{HIGH} F10:1 Ip A1:1 C420\n".encode()
    return head + b"FRAME\n" + bytes(luma) + colour


def main() -> None:
    """Write them."""
    house, out = Path(sys.argv[1]), Path(sys.argv[2])
    document = parsed_house(house.read_text(encoding="utf-8"))
    code = readings_code(read_house(document, trim_tables()).house)
    (out / "label.y4m").write_bytes(film(piece_code(code, "W1-head")))
    for name, text in (("old", piece_code("XXXXXX", "W1-head")), ("other", "two eggs")):
        segno.make(text, micro=False).save(str(out / f"{name}.png"), scale=8)


if __name__ == "__main__":
    main()

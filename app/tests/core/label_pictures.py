"""Printed labels as a phone meets them: a picture of one, and a film of another for the camera.

    python label_pictures.py LABELS.PDF OUT

Each label is laid on a grey bench, turned and small, as nobody holds a phone square to it. Written
are OUT/label.bmp of the first label and OUT/label.y4m of the second.
"""

import sys
from pathlib import Path

import numpy as np
import pypdfium2

WIDE, HIGH = 960, 720
TURNED_DEG = 8.0
BENCH = 150


def on_the_bench(page: pypdfium2.PdfPage) -> np.ndarray:
    """Return a picture of a label, grey, turned about its middle, with the noise of a lens."""
    label = page.render(scale=0.72 * WIDE / page.get_width(), grayscale=True).to_numpy()
    label = label.reshape(label.shape[:2])
    turn = np.radians(TURNED_DEG)
    y, x = np.mgrid[:HIGH, :WIDE]
    right, down = x - WIDE / 2, y - HIGH / 2
    at_x = np.rint(right * np.cos(turn) + down * np.sin(turn) + label.shape[1] / 2).astype(int)
    at_y = np.rint(down * np.cos(turn) - right * np.sin(turn) + label.shape[0] / 2).astype(int)
    on = (at_x >= 0) & (at_x < label.shape[1]) & (at_y >= 0) & (at_y < label.shape[0])
    picture = np.full((HIGH, WIDE), float(BENCH))
    picture[on] = 40 + 0.75 * label[at_y[on], at_x[on]]
    noise = np.random.default_rng(7).normal(0, 6, picture.shape)
    return np.clip(picture + noise, 0, 255).astype(np.uint8)


def bitmap(grey: np.ndarray) -> bytes:
    """Return a picture as a BMP of 256 greys."""
    high, wide = grey.shape
    greys = bytes(part for grey in range(256) for part in (grey, grey, grey, 0))
    start = 14 + 40 + len(greys)
    sizes = [(start + grey.size, 4), (0, 4), (start, 4)]
    head = [(40, 4), (wide, 4), (high, 4), (1, 2), (8, 2), *[(0, 4)] * 6]
    numbers = b"".join(number.to_bytes(size, "little") for number, size in [*sizes, *head])
    return b"BM" + numbers + greys + grey[::-1].tobytes()


def film(grey: np.ndarray) -> bytes:
    """Return two frames of a picture as raw video, without colour."""
    high, wide = grey.shape
    frame = b"FRAME\n" + grey.tobytes() + bytes([128]) * (grey.size // 2)
    return f"YUV4MPEG2 W{wide} H{high} F5:1 Ip A1:1 C420jpeg\n".encode() + 2 * frame


def main(labels: str, out: str) -> None:
    """Write the picture and the film."""
    first, second = (on_the_bench(page) for page in list(pypdfium2.PdfDocument(labels))[:2])
    Path(out, "label.bmp").write_bytes(bitmap(first))
    Path(out, "label.y4m").write_bytes(film(second))


if __name__ == "__main__":
    main(*sys.argv[1:])

"""A phone's journal, written as the page writes it."""

from itertools import count
from typing import Any


class Journal:
    """The entries of one phone; `seen` of another's were on it before the first."""

    def __init__(self, device: str = "p", seen: int = 0) -> None:
        self.device = device
        self.entries: list[dict[str, Any]] = []
        self.counter = count(seen + 1)

    def write(self, what: str, **said: object) -> dict[str, Any]:
        entry = {"device": self.device, "counter": next(self.counter), "at": "", "house": "h"}
        self.entries.append(entry | {"what": what} | said)
        return {"device": self.device, "counter": entry["counter"]}

    def begin(self) -> None:
        self.write("house-made", name="Pipit", units="mm", dialect="nz")

    def read(
        self,
        line: str,
        text: str,
        opening: str = "W3",
        *,
        again: bool = False,
        over: list[dict[str, Any]] | None = None,
    ) -> dict[str, Any]:
        said = {"opening": opening, "line": line, "value_text": text, "unit": "mm"}
        more = {} if over is None else {"over": over}
        return self.write("reading", **said, again=again, **more)

    def read_place(
        self, place: list[str], line: str, text: str, unit: str = "mm", *, again: bool = False
    ) -> dict[str, Any]:
        said = {"place": place, "line": line, "value_text": text, "unit": unit}
        return self.write("place-read", **said, again=again, over=[])

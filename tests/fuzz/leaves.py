"""Change values, not bytes, in the seeds of a target for so many seconds; by hand, as `run`.

    python -m tests.fuzz.leaves saw 60

Bytes thrown at a document mostly make no document of it. Here a seed is read, one to three of its
values, keys or entries become others, and it is written again: so what reads the values is reached
each time. What breaks it is left beside where it was run. The draw is seeded.
"""

import copy
import json
import random
import sys
import time
import tomllib
import traceback
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

from longpoint.errors import LongpointError
from longpoint.phone.house_text import house_text
from tests.fuzz.run import SEEDS
from tests.fuzz.targets import TARGETS

Way = tuple[Any, ...]

BEYOND: Final = "more than a number holds"
"""Written as 1e400, which JSON and TOML are read as infinite without a word."""

OTHERS: Final[tuple[Any, ...]] = (
    *(None, True, False, 0, -1, 3, 0.5, 1200, 57, 1e308, -1e308, 1e-308, 10**400),
    *("", "?", "W1", "S1", "mm", "in", "1/2", "5'", "nan", "1200", "-3", "1e5", "2026-03-01"),
    *(BEYOND, "inf", "1e400", "x" * 300, "window", "all-round"),
    *([], [1], ["?", 0.2], [[]], [{}], {}, {"a": 1}),
)
KEYS: Final = ("mark", "name", "kind", "count", "length", "faces", "gaps", "found", "a b", "", ".")


def ways_in(found: object, way: Way = ()) -> Iterator[Way]:
    """Return the way to every value of a document."""
    inside = found.items() if isinstance(found, dict) else ()
    for key, value in inside or (enumerate(found) if isinstance(found, list) else ()):
        yield (*way, key)
        yield from ways_in(value, (*way, key))


def at(document: Any, way: Way) -> Any:  # noqa: ANN401
    """Return what a way leads to."""
    for part in way:
        document = document[part]
    return document


def changed(document: object, rng: random.Random) -> object:
    """Return a document of which up to three values are others."""
    document = copy.deepcopy(document)
    for _ in range(rng.randrange(1, 4)):
        ways = list(ways_in(document))
        if not ways:
            break
        *above, last = rng.choice(ways)
        table = at(document, tuple(above))
        other = at(document, rng.choice(ways)) if rng.random() < 0.2 else rng.choice(OTHERS)
        other = copy.deepcopy(other)
        match rng.randrange(6):
            case 0 if isinstance(table, dict):
                del table[last]
            case 1 if isinstance(table, dict):
                table[rng.choice(KEYS)] = other
            case 1 if isinstance(table, list):
                table.append(other)
            case _:
                table[last] = other
    return document


def read_and_written(data: bytes, suffix: str, rng: random.Random) -> bytes | None:
    """Return a document with values changed; None where it is none, or can't be written so."""
    try:
        written = _written(data.decode(), suffix, rng)
    except (LongpointError, ValueError, TypeError, AttributeError, RecursionError):
        return None
    return written.replace(f'"{BEYOND}"', "1e400").encode()


def _written(text: str, suffix: str, rng: random.Random) -> str:
    if suffix == ".toml":
        return house_text(changed(tomllib.loads(text), rng))  # type: ignore[arg-type]
    if suffix == ".txt":
        entries = changed([json.loads(line) for line in text.splitlines()], rng)
        return "\n".join(map(json.dumps, entries))  # type: ignore[call-overload]
    return json.dumps(changed(json.loads(text), rng))


def sound_seeds(name: str) -> list[Path]:
    """Return the seeds of a target but those of what once broke it."""
    return [seed for seed in sorted((SEEDS / name).iterdir()) if not seed.name.startswith("bad-")]


def main() -> None:
    """Print what breaks a target, each place of it once."""
    name, seconds = sys.argv[1], float(sys.argv[2])
    rng, began = random.Random(name), time.process_time()
    seeds = sound_seeds(name)
    runs, is_read, broken = 0, 0, set[str]()
    while (spent := time.process_time() - began) < seconds:
        seed = rng.choice(seeds)
        data = read_and_written(seed.read_bytes(), seed.suffix, rng)
        if data is None:
            continue
        runs += 1
        try:
            is_read += TARGETS[name](data)
        except Exception as error:
            last = traceback.extract_tb(error.__traceback__)[-1]
            place = f"{Path(last.filename).name}:{last.lineno}: {error!r:.100}"
            if place not in broken:
                broken.add(place)
                Path(f"{name}-broken-{len(broken)}").write_bytes(data)
                print(place, flush=True)  # noqa: T201
    print(f"{name}: {runs} runs in {spent:.0f} s, {is_read} read, {len(broken)} broken")  # noqa: T201


if __name__ == "__main__":
    main()

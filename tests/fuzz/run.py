"""Throw bytes at one of the targets for so many seconds, by hand: never part of `make test`.

    pip install atheris
    python -m tests.fuzz.run table 600 [FOLDER]

Every other time it is values that become others, not bytes, where the target reads a document: of
what was found so far, or of a sound seed where that is no document any more. A reader without
branches is soon reached by a single byte, which is all that would be kept of it.
What reached new code is kept in FOLDER, so that a later run goes on where this one ended; without
it, nothing is kept. The seconds are the processor's from the first run on, so a busy machine only
takes longer. What breaks it is left beside where it was run; a mended case is kept in
tests/corpus/foreign.
"""

import os
import random
import sys
import tempfile
import time
from pathlib import Path

SEEDS = Path(__file__).parents[1] / "corpus" / "foreign"


def main() -> None:
    # Here, so that who only collects tests can do without it.
    import atheris

    with atheris.instrument_imports(include=["longpoint", "ezdxf"]):
        from tests.fuzz.leaves import read_and_written, sound_seeds
        from tests.fuzz.targets import TARGETS

    name, seconds = sys.argv[1], float(sys.argv[2])
    target, runs, began = TARGETS[name], 0, time.process_time()
    sound = [(seed.read_bytes(), seed.suffix) for seed in sound_seeds(name)]

    def counted(data: bytes) -> None:
        nonlocal runs
        runs += 1
        target(data)
        spent = time.process_time() - began
        if spent > seconds:
            print(f"{name}: {runs} runs in {spent:.0f} s", flush=True)  # noqa: T201
            # As the library does itself: it ends without unwinding.
            os._exit(0)

    def mutated(data: bytes, most: int, seed: int) -> bytes:
        rng = random.Random(seed)
        made = None
        if rng.random() < 0.5:
            seed_data, suffix = rng.choice(sound)
            made = read_and_written(data, suffix, rng) or read_and_written(seed_data, suffix, rng)
        if made is None or len(made) > most:
            return bytes(atheris.Mutate(data, most))
        return made

    with tempfile.TemporaryDirectory() as passing:
        grown = sys.argv[3] if sys.argv[3:] else passing
        options = [
            "-max_len=4096",
            # A smaller one that reaches the same is seldom a document.
            "-reduce_inputs=0",
            "-timeout=60",
            "-rss_limit_mb=2000",
            f"-artifact_prefix={name}-",
        ]
        atheris.Setup(
            [sys.argv[0], *options, grown, str(SEEDS / name)], counted, custom_mutator=mutated
        )
        atheris.Fuzz()


if __name__ == "__main__":
    main()

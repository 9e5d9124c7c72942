"""Work on somebody else's file in a process of its own, with a limit on memory and time.

What reads drawings and models is large, written by others, and partly in C: a file made to break
it, or only damaged, ends that process and not the work of whoever called.
"""

import contextlib
import json
import subprocess
import sys
from pathlib import Path
from typing import Any, Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import shown_name
from longpoint.speech.said import say

MOST_MEMORY: Final = 3_000_000_000
"""Address space in bytes; the libraries alone take about one gigabyte of it when loaded."""
MOST_SECONDS: Final = 60
MOST_ANSWER: Final = 20_000_000
MISSING: Final = 3
"""How a worker ends when the library that it needs isn't installed."""


def limited(
    module: str, path: Path, what: str, extra: str, most_seconds: int = MOST_SECONDS
) -> Any:  # noqa: ANN401
    """Return what a worker module answers about a file.

    Args:
        module: Name of the module; it is run with the file's path behind it, and writes JSON.
        path: The file; the caller has looked at its size.
        what: What it is to be ("a drawing"), to stand in a sentence.
        extra: Name of the extra that brings the library ("dxf").
        most_seconds: Processor time that it may take.

    Raises:
        ExchangeError: The library isn't installed, or the file is damaged, hostile or too much.
    """
    read = say(
        "The file {shown_name} was to be read as {what}.",
        shown_name=shown_name(path),
        what=what,
    )
    command = [sys.executable, "-I", "-c", _BOOT, module, str(most_seconds), str(path.resolve())]
    command[4:4] = [json.dumps(sys.path)]
    try:
        done = subprocess.run(
            command,
            check=False,
            stdin=subprocess.DEVNULL,
            capture_output=True,
            timeout=3 * most_seconds,
        )
    except subprocess.TimeoutExpired:
        raise ExchangeError(read, _TOO_MUCH, _SIMPLER) from None
    except OSError as error:
        raise ExchangeError(
            read,
            say(
                "No process could be started for it: {strerror}.",
                strerror=error.strerror or error,
            ),
            say("Close other programs and do it again."),
        ) from None
    if done.returncode == MISSING:
        raise missing_library(read, extra)
    if done.returncode == 0 and len(done.stdout) <= MOST_ANSWER:
        with contextlib.suppress(ValueError):
            return json.loads(done.stdout)
    wrong = _BROKEN if done.returncode == 1 else _TOO_MUCH
    raise ExchangeError(read, wrong, _SIMPLER)


def missing_library(read: str, extra: str) -> ExchangeError:
    """Return the refusal that says how to get the library of an extra."""
    return ExchangeError(
        read,
        say("The library that such files need isn't installed; it is large, so it comes apart."),
        say(
            "Install it beside longpoint: pip install 'longpoint[{extra}]', and do it again.",
            extra=extra,
        ),
    )


_BROKEN: Final = say(
    "It is damaged, or something else than its name says, so nothing of it was used."
)
_TOO_MUCH: Final = say(
    "Reading it takes more memory or time than any such file needs, so it was left alone."
)
_SIMPLER: Final = say("Save it again from the program that made it, with only what is wanted here.")

# The limits come first, then the paths of this process, then the worker.
_BOOT: Final = f"""
import json, sys
paths, module, seconds, path = sys.argv[1:5]
try:
    import resource
    resource.setrlimit(resource.RLIMIT_AS, ({MOST_MEMORY}, {MOST_MEMORY}))
    resource.setrlimit(resource.RLIMIT_CPU, (int(seconds), int(seconds) + 2))
    resource.setrlimit(resource.RLIMIT_FSIZE, ({MOST_ANSWER}, {MOST_ANSWER}))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
except (ImportError, ValueError, OSError):
    pass
sys.path[:] = json.loads(paths)
import importlib
try:
    worker = importlib.import_module(module)
    work = worker.load()
except ImportError:
    sys.exit({MISSING})
try:
    answer = json.dumps(work(path))
except MemoryError:
    sys.exit(4)
except Exception:
    sys.exit(1)
sys.stdout.write(answer)
"""

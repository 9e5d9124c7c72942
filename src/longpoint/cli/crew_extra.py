"""What sharing with a crew needs beyond the rest: said in plain words where it isn't there."""

import importlib.util
from collections.abc import Sequence
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import joined, say

NEEDED: Final = ("starlette", "uvicorn", "cryptography")


def refuse_without_extra(needed: Sequence[str] = NEEDED) -> None:
    """Refuse where the extra isn't installed.

    Raises:
        ExchangeError: Something of it is missing.
    """
    missing = [name for name in needed if importlib.util.find_spec(name) is None]
    if missing:
        raise ExchangeError(
            say("The crew's phones are to share with this laptop."),
            say(
                "What that needs is not installed: {missing}.",
                missing=joined(", ", missing),
            ),
            say('Install it with `pip install "longpoint[crew]"`.'),
        )

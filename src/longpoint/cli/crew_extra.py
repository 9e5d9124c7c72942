"""What sharing with a crew needs beyond the rest: said in plain words where it isn't there."""

import importlib.util
from collections.abc import Sequence
from typing import Final

from longpoint.errors import ExchangeError

NEEDED: Final = ("starlette", "uvicorn", "cryptography")


def refuse_without_extra(needed: Sequence[str] = NEEDED) -> None:
    """Refuse where the extra isn't installed.

    Raises:
        ExchangeError: Something of it is missing.
    """
    missing = [name for name in needed if importlib.util.find_spec(name) is None]
    if missing:
        raise ExchangeError(
            "The crew's phones are to share with this laptop.",
            f"What that needs is not installed: {', '.join(missing)}.",
            'Install it with `pip install "longpoint[crew]"`.',
        )

"""Secrets that are handed out once, and what is kept of them: a sum."""

import hashlib
import hmac
import secrets
from collections.abc import Callable
from typing import Final

Draw = Callable[[], str]
"""Gives a new secret."""

SECRET_BYTES: Final = 32
"""256 bits: nobody guesses one, so a plain sum is enough and no slow one is needed."""


def draw_secret() -> str:
    """Return a secret of 256 bits, as text that a cookie or an address can hold."""
    return secrets.token_urlsafe(SECRET_BYTES)


def sum_of(secret: str) -> str:
    """Return what is kept of a secret.

    Example:
        >>> len(sum_of("x"))
        64
    """
    return hashlib.sha256(secret.encode()).hexdigest()


def is_sum_of(secret: str, kept: str) -> bool:
    """Tell whether a secret is the one that a sum was made of, in a time that tells nothing."""
    return hmac.compare_digest(sum_of(secret), kept)

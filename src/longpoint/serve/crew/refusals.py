"""What a request is answered when it is not done: a status and the three sentences."""

import math
from collections.abc import Mapping

from starlette.responses import JSONResponse

from longpoint.errors import LongpointError

ANSWER_HEADERS: Mapping[str, str] = {
    "Cache-Control": "no-store",
    "Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
}
"""On every answer of the crew's: it is for this origin's own page, and nothing in it is run."""


class Refused(LongpointError):  # noqa: N818
    """A request that is not done.

    Args:
        status: HTTP status.
        read: What was asked.
        wrong: Why it isn't done.
        do: What to do.
        after_s: When to ask again, at the earliest. [s]
    """

    def __init__(self, status: int, read: str, wrong: str, do: str, after_s: int = 0) -> None:
        super().__init__(read, wrong, do)
        self.status, self.after_s = status, after_s

    def response(self) -> JSONResponse:
        """Return it as an answer."""
        headers = dict(ANSWER_HEADERS)
        if self.after_s:
            headers["Retry-After"] = str(self.after_s)
        said = {"read": self.read, "wrong": self.wrong, "do": self.do}
        return JSONResponse(said, self.status, headers)


def refused_by_store(trouble: LongpointError) -> Refused:
    """Return what a phone is told when the store refuses."""
    return Refused(503, trouble.read, trouble.wrong, trouble.do, after_s=30)


def slow_down(wait_s: float) -> None:
    """Refuse what comes too often.

    Args:
        wait_s: Until when to wait; 0: it may go on. [s]

    Raises:
        Refused: It is to wait.
    """
    if wait_s > 0:
        raise Refused(
            429,
            "Too much was asked in a short time.",
            "This laptop answers everybody in turn.",
            "Wait a little; the app asks again by itself.",
            after_s=math.ceil(wait_s),
        )


def no_session() -> Refused:
    """Return what somebody is told who was not let in, or not any more."""
    return Refused(
        401,
        "Something was asked of the crew's laptop.",
        "This phone isn't let in, or not any more.",
        "Show it the code on the laptop again; what is on the phone stays there.",
    )

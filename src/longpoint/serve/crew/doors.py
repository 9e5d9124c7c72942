"""The door: a code on the screen lets a phone knock, and somebody at the laptop lets it in."""

import secrets
import threading
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from longpoint.serve.crew.secrets_of import Draw, draw_secret, is_sum_of, sum_of

TOKEN_S: Final = 120.0
"""How long a code can be knocked with: as long as it takes to hold up a phone. Our choice."""
ANSWER_S: Final = 120.0
"""How long a knock waits for an answer. Our choice."""
MOST_WAITING: Final = 5
"""More that wait at once are no crew."""


class Answered(StrEnum):
    """What became of a knock."""

    WAITING = "waiting"
    LET_IN = "let in"
    REFUSED = "refused"
    GONE = "gone"
    """It is not known, or it waited too long."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Knock:
    """A phone at the door.

    Attributes:
        ticket_sum: Sum of what the phone asks with.
        name: As it calls itself.
        device: Name under which its journal is written.
        check: Four figures that stand on both screens.
        at_s: When it knocked, by the door's clock. [s]
        answered: What became of it.
    """

    ticket_sum: str
    name: str
    device: str
    check: str
    at_s: float
    answered: Answered = Answered.WAITING


def draw_check() -> str:
    """Return four figures to be compared by eye."""
    return f"{secrets.randbelow(10_000):04d}"


class Doors:
    """Who may knock, and who did; the server and whoever sits at the laptop share it.

    Args:
        clock: Seconds, never going back.
        draw: Gives tokens and tickets.
        check: Gives the figures to be compared.
    """

    def __init__(
        self, clock: Callable[[], float], draw: Draw = draw_secret, check: Draw = draw_check
    ) -> None:
        self._clock, self._draw, self._check = clock, draw, check
        self._lock = threading.Lock()
        self._token_sum, self._token_until = "", 0.0
        self._knocks: dict[str, Knock] = {}

    def new_token(self) -> str:
        """Return a new token to show; the one before it opens nothing any more."""
        token = self._draw()
        with self._lock:
            self._token_sum, self._token_until = sum_of(token), self._clock() + TOKEN_S
        return token

    def is_open(self) -> bool:
        """Return whether the token shown last can still be knocked with."""
        with self._lock:
            return self._token_sum != "" and self._clock() < self._token_until

    def knock(self, token: str, name: str, device: str) -> tuple[str, Knock] | None:
        """Return a ticket and the knock; None where the token is wrong, used up or too old."""
        with self._lock:
            self._forget_old()
            now = self._clock()
            is_good = is_sum_of(token, self._token_sum) and now < self._token_until
            if not is_good or len(self._knocks) >= MOST_WAITING:
                return None
            self._token_sum = ""
            ticket = self._draw()
            knock = Knock(
                ticket_sum=sum_of(ticket), name=name, device=device, check=self._check(), at_s=now
            )
            self._knocks[knock.ticket_sum] = knock
            return ticket, knock

    def waiting(self) -> tuple[Knock, ...]:
        """Return who stands at the door, the first first."""
        with self._lock:
            self._forget_old()
            return tuple(k for k in self._knocks.values() if k.answered is Answered.WAITING)

    def answer(self, knock: Knock, *, let_in: bool) -> None:
        """Let somebody in, or not; without effect once they have gone."""
        with self._lock:
            if knock.ticket_sum in self._knocks:
                answered = Answered.LET_IN if let_in else Answered.REFUSED
                self._knocks[knock.ticket_sum] = replace(knock, answered=answered)

    def ask(self, ticket: str) -> tuple[Answered, Knock | None]:
        """Return what became of a knock; whoever was let in or refused is told so once."""
        with self._lock:
            self._forget_old()
            knock = self._knocks.get(sum_of(ticket))
            if knock is None:
                return Answered.GONE, None
            if knock.answered is not Answered.WAITING:
                del self._knocks[knock.ticket_sum]
            return knock.answered, knock

    def _forget_old(self) -> None:
        oldest = self._clock() - ANSWER_S
        self._knocks = {k: v for k, v in self._knocks.items() if v.at_s > oldest}

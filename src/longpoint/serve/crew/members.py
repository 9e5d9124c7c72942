"""Who was let in: devices, and what is kept of the secrets that they show."""

import threading
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any, Final

from longpoint.serve.crew.secrets_of import Draw, draw_secret, is_sum_of, sum_of

SESSION_S: Final = 30 * 24 * 3600.0
"""A phone knocks again after a month. Our choice."""
SHARED_EVERY_S: Final = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """A device that was let in.

    Attributes:
        device: Name under which its journal is written.
        name: As it called itself.
        session_sum: Sum of the secret in its cookie.
        page_sum: Sum of the secret that its page keeps: the cookie alone opens nothing.
        since_s: When it was let in. [s since 1970, UTC]
        until_s: When it has to knock again.
        shared_s: When it last shared; 0 if never.
        is_out: Whether it was put out.
    """

    device: str
    name: str
    session_sum: str
    page_sum: str
    since_s: float
    until_s: float
    shared_s: float = 0.0
    is_out: bool = False


def member_table(member: Member) -> dict[str, Any]:
    """Return a member as it is written down; no secret is in it."""
    return asdict(member)


class Members:
    """The devices that were let in, written down whenever they change.

    Args:
        load: Reads them as they are written down now: another process may put one out.
        save: Writes all of them down.
        clock: Seconds since 1970, UTC.
        draw: Gives secrets.
    """

    def __init__(
        self,
        load: Callable[[], Sequence[Member]],
        save: Callable[[Sequence[Member]], None],
        clock: Callable[[], float],
        draw: Draw = draw_secret,
    ) -> None:
        self._load, self._save, self._clock, self._draw = load, save, clock, draw
        self._lock = threading.Lock()

    def all(self) -> tuple[Member, ...]:
        """Return everyone, those put out too."""
        return tuple(self._load())

    def let_in(self, device: str, name: str) -> tuple[str, str, Member]:
        """Return the cookie's secret, the page's, and the new member; older sessions of it end."""
        session, page = self._draw(), self._draw()
        now = self._clock()
        member = Member(
            device=device,
            name=name,
            session_sum=sum_of(session),
            page_sum=sum_of(page),
            since_s=now,
            until_s=now + SESSION_S,
        )
        with self._lock:
            others = [each for each in self._load() if each.device != device]
            self._save([*others, member])
        return session, page, member

    def find(self, session: str) -> Member | None:
        """Return whose session a cookie's secret is; None for nobody's, ended or put out."""
        found = sum_of(session)
        for each in self._load():
            if each.session_sum == found and not each.is_out and self._clock() < each.until_s:
                return each
        return None

    def is_page_of(self, member: Member, page: str) -> bool:
        """Tell whether the page's secret belongs to a member."""
        return is_sum_of(page, member.page_sum)

    def shared(self, member: Member) -> None:
        """Write down that a member shared just now; once a minute will do."""
        now = self._clock()
        if now - member.shared_s > SHARED_EVERY_S:
            self._change(member.device, shared_s=now)

    def put_out(self, device: str) -> bool:
        """Put a device out at once; False if there is none of that name."""
        return self._change(device, is_out=True)

    def _change(self, device: str, **changes: Any) -> bool:  # noqa: ANN401
        with self._lock:
            there = list(self._load())
            after = [replace(m, **changes) if m.device == device else m for m in there]
            if after == there:
                return any(m.device == device for m in there)
            self._save(after)
            return True

"""`longpoint serve`: the phones of a crew share houses with this laptop."""

import io
import queue
import signal
import socket
import sys
import threading
import time
from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from longpoint.cli.crew_extra import refuse_without_extra
from longpoint.cli.data_folder import new_name
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import store_option
from longpoint.cli.store_places import StorePlace, open_store
from longpoint.errors import ExchangeError
from longpoint.exchange.safe_files import write_text_safely
from longpoint.serve.app_files import app_folder
from longpoint.speech.said import say

if TYPE_CHECKING:
    from longpoint.serve.crew import Doors, Knock

PORT: Final = 8621
PICTURE: Final = "code.svg"
LOOK_EVERY_S: Final = 0.2


@click.command(name="serve")
@store_option
@click.option("--lan", is_flag=True, help="Let phones on this private network in, over https only.")
@click.option(
    "--port",
    type=click.IntRange(1, 65535),
    default=PORT,
    show_default=True,
    help="Where it is served.",
)
@click.option(
    "--idle-minutes",
    type=click.FloatRange(0.01, 24 * 60),
    default=120.0,
    show_default=True,
    help="Stop when nobody has asked for so long.",
)
@exits
def command(store: StorePlace, lan: bool, port: int, idle_minutes: float) -> Outcome:
    """Share the houses of the store with the crew's phones, until Ctrl-C.

    Without --lan only this machine is answered. A phone scans the code that is shown; you compare
    four figures and let it in.
    """
    refuse_without_extra()
    # Heavy, and missing where the extra is: not before it is known to be there.
    from longpoint.cli.crew_folder import AuditLog, LoadedMembers, crew_folder, save_members
    from longpoint.serve.authority import tls_files
    from longpoint.serve.crew import Crew, Doors, Guard, Keeper, Members, crew_app
    from longpoint.serve.crew.running import LOOPBACK, LastAsked, listening, private_addresses
    from longpoint.serve.crew.running import running as served

    folder = crew_folder(store)
    addresses = private_addresses() if lan else (LOOPBACK,)
    if not addresses:
        raise ExchangeError(
            say("The crew is to be served on this network."),
            say("This machine has no address in a private network."),
            say("Join the hotspot or the site's network first, or leave --lan out."),
        )
    with ExitStack() as stack:
        sockets: list[socket.socket] = []
        for address in dict.fromkeys((LOOPBACK, *addresses)):
            sockets.append(stack.enter_context(listening(address, port)))
        tls = tls_files(folder.path, [LOOPBACK, *addresses], datetime.now(UTC)) if lan else None
        keeper = Keeper(lambda: open_store(store, new_name()))
        stack.callback(keeper.close)
        doors, last = Doors(time.monotonic), LastAsked(time.monotonic())
        members = Members(
            LoadedMembers(folder), lambda all_of: save_members(folder, all_of), time.time
        )
        names = (*addresses, LOOPBACK, "localhost")
        crew = Crew(keeper, doors, members, AuditLog(folder), is_secure=lan, clock=time.monotonic)
        app = crew_app(
            crew,
            app_folder(),
            lambda inner: Guard(
                inner,
                hosts=frozenset(f"{name}:{port}" for name in names),
                is_secure=lan,
                clock=time.monotonic,
                seen=last.now,
            ),
        )
        stack.enter_context(served(app, sockets, tls))
        scheme = "https" if lan else "http"
        links = [f"{scheme}://{address}:{port}/" for address in addresses]
        for link in links:
            speak(say("The crew's houses: {link}", link=link))
        if tls is not None:
            speak(say("Phones trust it by {authority}", authority=tls.authority))
            speak(
                say(
                    "  whose fingerprint is {fingerprint}",
                    fingerprint=tls.fingerprint,
                )
            )
            if tls.lost_on is not None:
                speak(
                    say(
                        "authority.key is lost: this is served until {lost_on}, at these addresses "
                        "alone. Then every phone has to trust anew.",
                        lost_on=tls.lost_on.isoformat(),
                    )
                )
                speak(
                    say(
                        "Bring it back from a copy of {folder}, or see `longpoint crew authority "
                        "--help`.",
                        folder=folder.path,
                    )
                )
        speak(say("Ctrl-C ends it; Enter shows a new code."))
        picture = folder.path / PICTURE
        stack.callback(picture.unlink, missing_ok=True)
        speak(say("The code as a picture: {picture}", picture=picture))
        porch = Porch(doors=doors, link=links[0], lines=_typed(), picture=picture)
        signal.signal(signal.SIGTERM, signal.default_int_handler)
        is_idle = porch.stand(lambda: last.idle_s() > idle_minutes * 60.0)
    speak(say("Nobody has asked for a while: stopped.") if is_idle else "Stopped.")
    return Outcome.DONE


@dataclass
class Porch:
    """Whoever sits at the laptop: shows the code, sees who knocks, answers.

    Attributes:
        doors: Of the server.
        link: Address of the server, to which the token is added.
        lines: Lines typed at the laptop.
        picture: File of the code, for a screen that can't draw it in letters; in a folder that is
            its owner's alone.
    """

    doors: "Doors"
    link: str
    lines: "queue.SimpleQueue[str]"
    picture: Path
    has_said: bool = field(default=False, init=False)
    """Whether it was said that the code has run out."""

    def stand(self, is_over: Callable[[], bool]) -> bool:
        """Show codes and answer who knocks; True once it is over, False after Ctrl-C."""
        self.show()
        asked: Knock | None = None
        try:
            while not is_over():
                waiting = self.doors.waiting()
                if asked not in waiting:
                    if asked is not None:
                        speak(
                            say(
                                "{plain} waited too long, and has gone.",
                                plain=_plain(asked.name),
                            )
                        )
                    asked = waiting[0] if waiting else None
                    if asked is not None:
                        self._forget_typed()
                        speak(_question(asked))
                if asked is None:
                    self._say_once_run_out()
                line = self._line()
                if line is None:
                    continue
                if asked is not None:
                    self.answer(asked, line)
                    asked = None
                self.show()
        except KeyboardInterrupt:
            return False
        return True

    def show(self) -> None:
        """Show a new code; the one before it opens nothing any more."""
        import segno

        self.has_said = False
        link = f"{self.link}#crew={self.doors.new_token()}"
        code = segno.make(link, error="l", micro=False)
        if sys.stdout.isatty():
            code.terminal(out=sys.stdout, compact=True)
        drawn = io.BytesIO()
        code.save(drawn, kind="svg", scale=10, light="white")
        self.picture.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        write_text_safely(self.picture, drawn.getvalue().decode("utf-8"))
        speak(say("For one phone, two minutes: {link}", link=link))

    def answer(self, knock: "Knock", line: str) -> None:
        """Let somebody in or not, as was typed."""
        is_yes = line.strip().lower() in ("y", "yes")
        self.doors.answer(knock, let_in=is_yes)
        speak(say("{plain} is let in.", plain=_plain(knock.name)) if is_yes else say("Not let in."))

    def _say_once_run_out(self) -> None:
        if not self.has_said and not self.doors.is_open():
            self.has_said = True
            speak(say("That code opens nothing any more; Enter shows a new one."))

    def _forget_typed(self) -> None:
        """What was typed before somebody knocked is no answer to it."""
        while not self.lines.empty():
            self.lines.get()

    def _line(self) -> str | None:
        try:
            return self.lines.get(timeout=LOOK_EVERY_S)
        except queue.Empty:
            return None


def _question(knock: "Knock") -> str:
    return say(
        "A phone that calls itself {plain} shows {check}. Let it in? [y/N]",
        plain=_plain(knock.name),
        check=knock.check,
    )


def _plain(name: str) -> str:
    """Return a stranger's name so that it does nothing to a terminal."""
    return "".join(sign if sign.isprintable() else "?" for sign in name)


def _typed() -> "queue.SimpleQueue[str]":
    """Return a queue of what is typed, filled by a thread: phones don't wait for it."""
    lines: queue.SimpleQueue[str] = queue.SimpleQueue()

    def read() -> None:
        for line in sys.stdin:
            lines.put(line)

    threading.Thread(target=read, daemon=True).start()
    return lines

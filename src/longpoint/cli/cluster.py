"""Tasks sent to the machines of a Dask cluster, answered as `workers` answers from its processes.

Dask runs whatever it is sent, and reads answers in a form that can run code as well: everybody who
reaches a scheduler can run programs on its machines and on ours. So it is for a network of one's
own, and TLS is passed through for whoever has certificates.
"""

import contextlib
import importlib
from collections import deque
from collections.abc import Callable, Generator, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, TypeVar
from uuid import uuid4

from longpoint.cli.workers import Done
from longpoint.errors import ExchangeError
from longpoint.exchange.limited_work import missing_library
from longpoint.speech.said import say

T = TypeVar("T")
R = TypeVar("R")

EXTRA: Final = "cluster"
PATIENCE_S: Final = 20
"""How long a scheduler, and its first worker, get to answer."""
MOST_UNDER_WAY: Final = 256
"""Tasks that are sent and not yet fetched: their answers wait in the workers' memory."""


@dataclass(frozen=True, slots=True)
class Certificates:
    """Files for TLS: the authority that both sides trust, our certificate, and its key."""

    authority: Path
    certificate: Path
    key: Path


@contextlib.contextmanager
def cluster(address: str, certificates: Certificates | None) -> Iterator[Any]:
    """Give a client of the scheduler at an address, once a worker is there.

    Args:
        address: As Dask writes it: "tcp://10.0.0.5:8786", or "tls://..." with certificates.
        certificates: For TLS; None: nothing on the way is encrypted.

    Raises:
        ExchangeError: The library isn't installed, nobody answers, or there is no worker.
    """
    read = say("A cluster was to be reached at {address}.", address=address)
    try:
        distributed = importlib.import_module("distributed")
    except ImportError:
        raise missing_library(read, EXTRA) from None
    try:
        client = distributed.Client(
            address,
            timeout=PATIENCE_S,
            set_as_default=False,
            security=_security(distributed, certificates),
        )
    except (OSError, ValueError, TypeError, RuntimeError) as error:
        raise ExchangeError(
            read,
            say("No scheduler answers there: {error}.", error=str(error).rstrip(".")),
            say(
                "Check the address, that the scheduler runs, and that both speak TLS or neither; "
                "or plan on this machine, without --scheduler."
            ),
        ) from None
    with client:
        try:
            client.wait_for_workers(1, timeout=PATIENCE_S)
        except (OSError, TimeoutError):
            raise ExchangeError(
                read,
                say("The scheduler answers, but no worker has come to it."),
                say("Start workers on the machines that are to plan, and call the same again."),
            ) from None
        yield client


def sent_out(
    client: Any,  # noqa: ANN401
    tasks: Sequence[T],
    work: Callable[[T], R],
) -> Generator[Done[R], None, None]:
    """Yield what came of each task, as soon as it is there.

    A task whose worker dies is given to another by the scheduler, as often as that is set to allow
    (three times, unless told else); so is one whose answer died with its worker.

    Args:
        client: As from `cluster`.
        tasks: The tasks; they and the answers go over the network.
        work: A function of a module that the workers have too. It must not raise.
    """
    finished = importlib.import_module("distributed").as_completed(loop=client.loop)
    street = uuid4().hex
    waiting = deque(range(len(tasks)))
    under_way: dict[str, int] = {}
    futures: dict[str, Any] = {}

    def send() -> None:
        place = waiting.popleft()
        key = f"longpoint-{street}-{place}"
        under_way[key] = place
        futures[key] = client.submit(work, tasks[place], key=key)
        finished.add(futures[key])

    try:
        while waiting and len(under_way) < MOST_UNDER_WAY:
            send()
        while under_way:
            future = next(finished)
            place = under_way.pop(future.key)
            answer = _answer(future)
            del futures[future.key]
            if waiting:
                send()
            yield Done(place, answer, lost=0 if answer is not None else 1)
    finally:
        # Where the scheduler is gone, so is the work.
        with contextlib.suppress(Exception):
            client.cancel(list(futures.values()), force=True)


def _answer(future: Any) -> Any:  # noqa: ANN401
    # Whatever it was, the work itself doesn't raise: the worker died, lacks the program, or is cut
    # off. A task without an answer is told as lost.
    try:
        return future.result()
    except Exception:
        return None


def _security(distributed: Any, certificates: Certificates | None) -> Any:  # noqa: ANN401
    if certificates is None:
        return None
    return distributed.security.Security(
        tls_ca_file=str(certificates.authority),
        tls_client_cert=str(certificates.certificate),
        tls_client_key=str(certificates.key),
        require_encryption=True,
    )

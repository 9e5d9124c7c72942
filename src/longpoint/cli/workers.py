"""Tasks shared out to a few processes; one that is killed is told, and its task tried once more.

A pool of the standard library breaks as a whole when one process of it is killed, and doesn't say
which task that was at. Here every process has one task and a pipe of its own.

On Linux a server process imports the program once and the workers are forked from it, so each is
there in a hundredth of a second; it has one thread and none of the caller's state. Elsewhere every
worker is started anew.
"""

import contextlib
import gc
import multiprocessing
import os
import signal
import sys
from collections import deque
from collections.abc import Callable, Generator, Mapping, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from typing import Final, Generic, TypeVar

from longpoint.solvers.one_thread import hold_to_one_thread

T = TypeVar("T")
R = TypeVar("R")

MOST_TRIES: Final = 2
_PATIENCE_S: Final = 5.0
"""How long a process gets to end by itself before it is ended."""
_LATE_IMPORTS: Final = ("numpy", "highspy")
"""Engines that a plan imports when it comes to them; where one isn't installed it is passed over.
"""


@dataclass(frozen=True, slots=True)
class Done(Generic[R]):
    """What came of a task.

    Attributes:
        place: Which task, as they were given.
        answer: What the work returned; None: its process was killed, and no try is left.
        lost: How often its process was killed.
        is_last: False where a process was killed and the task is tried again.
    """

    place: int
    answer: R | None
    lost: int = 0
    is_last: bool = True


@dataclass(slots=True)
class _Worker:
    process: BaseProcess
    link: Connection
    place: int


def shared_out(
    tasks: Sequence[T], work: Callable[[T], R], at_once: int
) -> Generator[Done[R], None, None]:
    """Yield what came of each task, as soon as it is there.

    Every process has one thread for linear algebra, and the environment as it is now. Closing the
    iterator, or an interrupt, ends the processes.

    Args:
        tasks: The tasks; they and the answers go through a pipe.
        work: A function of a module, called in the process with a task. It must not raise.
        at_once: Most processes at a time. > 0.
    """
    waiting = deque(range(len(tasks)))
    lost = [0] * len(tasks)
    workers: list[_Worker] = []
    hold_to_one_thread()
    try:
        while len(workers) < min(at_once, len(tasks)):
            workers.append(_started(work, tasks, waiting.popleft()))
        while workers:
            ready = wait([worker.link for worker in workers])
            for worker in [each for each in workers if each.link in ready]:
                place = worker.place
                try:
                    answer: R = worker.link.recv()
                except (EOFError, OSError):
                    _end(worker)
                    workers.remove(worker)
                    lost[place] += 1
                    again = lost[place] < MOST_TRIES
                    if again:
                        waiting.append(place)
                    if waiting:
                        workers.append(_started(work, tasks, waiting.popleft()))
                    yield Done(place, None, lost[place], is_last=not again)
                    continue
                if waiting:
                    worker.place = waiting.popleft()
                    _hand(worker, tasks)
                else:
                    _let_go(worker)
                    workers.remove(worker)
                yield Done(place, answer, lost[place])
    finally:
        for worker in workers:
            worker.process.terminate()
        for worker in workers:
            _end(worker)


def _started(work: Callable[[T], R], tasks: Sequence[T], place: int) -> _Worker:
    ours, theirs = multiprocessing.Pipe()
    process = _process(work, theirs)
    process.start()
    # Held by the process alone, so that its death closes the pipe.
    theirs.close()
    worker = _Worker(process, ours, place)
    _hand(worker, tasks)
    return worker


def _process(work: Callable[[T], R], link: Connection) -> BaseProcess:
    args = (link, work, {**os.environ})
    if sys.platform == "linux":
        context = multiprocessing.get_context("forkserver")
        context.set_forkserver_preload(["__main__", work.__module__, *_LATE_IMPORTS])
    else:
        context = multiprocessing.get_context("spawn")
    return context.Process(target=_serve, args=args, daemon=True)


def _hand(worker: _Worker, tasks: Sequence[T]) -> None:
    # A process that died in between is found out by the closed pipe, at the next look.
    with contextlib.suppress(OSError):
        worker.link.send(tasks[worker.place])


def _let_go(worker: _Worker) -> None:
    with contextlib.suppress(OSError):
        worker.link.send(None)
    _end(worker)


def _end(worker: _Worker) -> None:
    worker.process.join(_PATIENCE_S)
    if worker.process.is_alive():
        worker.process.kill()
        worker.process.join()
    worker.process.close()
    worker.link.close()


def _serve(link: Connection, work: Callable[[T], R], around: Mapping[str, str]) -> None:
    """Answer tasks until there are none; an interrupt at the keyboard is for the starter."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    os.environ.update(around)
    # What was imported stays; looking through it for garbage again and again costs 3 % of a plan.
    gc.freeze()
    with contextlib.suppress(EOFError, OSError):
        while (task := link.recv()) is not None:
            link.send(work(task))

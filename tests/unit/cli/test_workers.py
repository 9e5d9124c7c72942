import os
import signal
from contextlib import closing
from pathlib import Path

import pytest

from longpoint.cli.workers import Done, shared_out

pytestmark = pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="no such signal here")


def work(task: str) -> str:
    """End this process from outside, wait for ever, or answer with the number of the process."""
    word, _, flag = task.partition(" ")
    if word == "always" or (word == "once" and not Path(flag).exists()):
        if flag:
            Path(flag).touch()
        os.kill(os.getpid(), signal.SIGKILL)
    if word == "slow":
        signal.pause()
    return str(os.getpid())


def test_a_killed_process_is_told_and_its_task_tried_once_more(tmp_path: Path) -> None:
    told = list(shared_out([f"once {tmp_path / 'flag'}", "always", "good"], work, 2))

    first, second, third = ([done for done in told if done.place == place] for place in range(3))
    assert [(done.lost, done.is_last) for done in first] == [(1, False), (1, True)]
    assert first[-1].answer is not None
    assert second == [Done(1, None, 1, is_last=False), Done(1, None, 2)]
    assert [(done.lost, done.answer is None) for done in third] == [(0, False)]


def test_processes_end_when_the_work_is_broken_off() -> None:
    with closing(shared_out(["quick", "slow"], work, 1)) as answers:
        process = int(str(next(answers).answer))

    with pytest.raises(ProcessLookupError):
        os.kill(process, 0)

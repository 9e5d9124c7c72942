import importlib
import os

import pytest

from longpoint.cli.imagined import PLAIN_DRAWS, house_imagined
from longpoint.forecast.plain_lines import PlainLines
from longpoint.solvers import one_thread
from longpoint.solvers.installed import linear_solver


def test_a_choice_of_threads_that_was_made_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("OPENBLAS_NUM_THREADS", "3")
    monkeypatch.delenv("OMP_NUM_THREADS", raising=False)
    assert one_thread.numpy_in_one_thread() is importlib.import_module("numpy")
    assert os.environ["OPENBLAS_NUM_THREADS"] == "3"
    assert os.environ["OMP_NUM_THREADS"] == "1"


def test_a_broken_numpy_leaves_the_plain_ways(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(name: str) -> object:
        raise ImportError(name)

    monkeypatch.setattr("longpoint.solvers.one_thread.importlib.import_module", broken)
    assert linear_solver() is None
    imagined = house_imagined()
    assert isinstance(imagined.engine, PlainLines)
    assert imagined.draws == PLAIN_DRAWS

"""numpy, held to one thread: our matrices are small, and threads that wait for a core cost more."""

import importlib
import os
from types import ModuleType
from typing import Final

THREAD_SETTINGS: Final = ("OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS", "OMP_NUM_THREADS")


def hold_to_one_thread() -> None:
    """Have numpy start on one thread, here and in processes started from here, unless told else."""
    for setting in THREAD_SETTINGS:
        os.environ.setdefault(setting, "1")


def numpy_in_one_thread() -> ModuleType:
    """Return numpy; where it wasn't imported before and nobody chose otherwise, on one thread."""
    hold_to_one_thread()
    return importlib.import_module("numpy")

"""Runs test files with pytest inside a phone's Python, and records what came of each."""

import json
import os
import sys
import time
import zlib
from collections import defaultdict
from collections.abc import Sequence
from typing import Any

import pytest

OPTIONS = ("-q", "--assert=plain", "-p", "no:cacheprovider", "--continue-on-collection-errors")


class Recorder:
    """Remembers, file by file, what passed, what failed, and why a file can't be read."""

    def __init__(self, one_in: int) -> None:
        self.one_in = one_in
        self.now = ""
        self.files: dict[str, dict[str, Any]] = defaultdict(
            lambda: {"passed": 0, "skipped": 0, "failed": {}, "left_out": "", "seconds": 0.0}
        )

    @pytest.hookimpl(hookwrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Any:  # noqa: ANN401
        """Name the file that can't be read here; what it had loaded is loaded anew for the next."""
        outcome = yield
        report = outcome.get_result()
        if not report.failed:
            return
        said = str(report.longrepr).strip().splitlines()[-1]
        self.files[report.nodeid]["left_out"] = said.removeprefix("E").strip()
        for name in [name for name in sys.modules if name.partition(".")[0] == "tests"]:
            if name != "tests.golden_files":
                del sys.modules[name]

    def pytest_runtest_logstart(self, nodeid: str) -> None:
        """Say which file is begun, for when Python itself stops in it."""
        name = nodeid.partition("::")[0]
        if name != self.now:
            self.now = name
            sys.stderr.write(f"{name}\n")

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Count one test."""
        file = self.files[report.nodeid.partition("::")[0]]
        file["seconds"] += report.duration
        if report.failed:
            file["failed"][report.nodeid] = str(report.longrepr)[-3000:]
        elif report.skipped:
            file["skipped"] += 1
        elif report.when == "call":
            file["passed"] += 1

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Keep a fixed share of the tests, and of every file its first one."""
        seen: set[str] = set()
        kept = []
        for item in items:
            name = item.nodeid.partition("::")[0]
            if name not in seen or zlib.crc32(item.nodeid.encode()) % self.one_in == 0:
                kept.append(item)
            seen.add(name)
        items[:] = kept


def run(files: Sequence[str], one_in: int) -> str:
    """Return what came of each file, as JSON."""
    os.environ["HYPOTHESIS_PROFILE"] = "ci" if one_in == 1 else "few"
    recorder = Recorder(one_in)
    began = time.perf_counter()
    pytest.main([*OPTIONS, *files], plugins=[recorder])
    told = {"files": recorder.files, "seconds": time.perf_counter() - began}
    return json.dumps(told)

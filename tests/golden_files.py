"""Golden files: the text of each sheet as a person last approved it.

A test calls `golden(name, text)`. The text must equal the file of that name under
`golden/expected`; `GOLDEN_ACCEPT=1` (`make sheets-accept`) writes the file instead. When the whole
folder ran and passed, a file that no test asked for is a failure too, or is removed when accepting.
"""

import difflib
import os
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any, TypeAlias

import pytest

FOLDER = Path(__file__).resolve().parent / "golden"
EXPECTED = FOLDER / "expected"
SHOWN_LINES = 80

Golden: TypeAlias = Callable[[str, str], None]


def difference(name: str, text: str, *, expected: Path, accept: bool = False) -> str:
    """Return what to tell about a text that is not as approved; empty when it is."""
    file = expected / name
    if not file.resolve().is_relative_to(expected.resolve()):
        return f"{name}: a golden file's name stays inside its folder."
    if accept:
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="")
        return ""
    if not file.is_file():
        return f"{name} has never been approved. Run `make sheets-accept` and read what it wrote."
    approved = file.read_bytes().decode("utf-8")
    if approved == text:
        return ""
    lines = list(
        difflib.unified_diff(
            _visible_lines(approved), _visible_lines(text), "approved", "now", n=2, lineterm=""
        )
    )
    left_off = len(lines) - SHOWN_LINES
    return "\n".join(
        [
            f"{name} is not as approved. Right as it is now? Then run `make sheets-accept`.",
            *lines[:SHOWN_LINES],
            *([f"... and {left_off} more lines of difference"] if left_off > 0 else []),
        ]
    )


def unowned(names: Iterable[str], *, expected: Path) -> list[str]:
    """Return the files under `expected` that are in none of the names, sorted."""
    files = {f.relative_to(expected).as_posix() for f in expected.rglob("*") if f.is_file()}
    return sorted(files - set(names) - {".gitkeep"})


def _visible_lines(text: str) -> list[str]:
    """Return the lines; line ends other than a plain newline, or a missing last one, are shown."""
    lines = text.replace("\r", "\N{SYMBOL FOR CARRIAGE RETURN}").split("\n")
    return lines[:-1] if lines[-1] == "" else [*lines[:-1], f"{lines[-1]}  (no newline at the end)"]


class _Ledger:
    """Which names were asked for in this run, and whether the run was whole."""

    def __init__(self) -> None:
        self.names: set[str] = set()
        self.whole = True
        self.told: list[str] = []

    def check(self, session: pytest.Session) -> None:
        owned_by_none = unowned(self.names, expected=EXPECTED)
        if not owned_by_none:
            return
        if _accepting():
            for name in owned_by_none:
                (EXPECTED / name).unlink()
            self.told = [f"removed {name}: no test asks for it" for name in owned_by_none]
        else:
            self.told = [f"{name}: no test asks for it; delete it" for name in owned_by_none]
            session.exitstatus = pytest.ExitCode.TESTS_FAILED


_LEDGER = pytest.StashKey[_Ledger]()


def _accepting() -> bool:
    return os.environ.get("GOLDEN_ACCEPT") == "1"


def _covers_the_folder(config: pytest.Config) -> bool:
    """Tell whether the folders named on the command line hold all golden tests."""
    asked = [config.invocation_params.dir / argument for argument in config.args]
    return not config.getoption("lf", default=False) and any(
        FOLDER.is_relative_to(path.resolve()) for path in asked
    )


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Golden:
    """Return a function (name, text) that fails unless the text is as approved."""
    ledger = request.config.stash[_LEDGER]

    def compare(name: str, text: str) -> None:
        ledger.names.add(name)
        told = difference(name, text, expected=EXPECTED, accept=_accepting())
        if told:
            pytest.fail(told, pytrace=False)

    return compare


def pytest_configure(config: pytest.Config) -> None:
    config.stash[_LEDGER] = _Ledger()


def pytest_deselected(items: list[pytest.Item]) -> None:
    for item in items:
        if item.path.is_relative_to(FOLDER):
            item.config.stash[_LEDGER].whole = False


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Any:  # noqa: ANN401
    report = yield
    if not report.passed and item.path.is_relative_to(FOLDER):
        item.config.stash[_LEDGER].whole = False
    return report


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: Any) -> None:  # noqa: ANN401
    """Gather, in the process that hands out the tests, what its workers did."""
    ledger: _Ledger = node.config.stash[_LEDGER]
    did: Mapping[str, Any] = getattr(node, "workeroutput", {})
    ledger.names.update(did.get("golden_names", ()))
    ledger.whole = ledger.whole and did.get("golden_whole", False)


def pytest_sessionfinish(session: pytest.Session) -> None:
    ledger = session.config.stash[_LEDGER]
    output: dict[str, Any] | None = getattr(session.config, "workeroutput", None)
    if output is not None:
        output.update(golden_names=sorted(ledger.names), golden_whole=ledger.whole)
    elif ledger.whole and session.exitstatus == 0 and _covers_the_folder(session.config):
        ledger.check(session)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    told = terminalreporter.config.stash[_LEDGER].told
    if told:
        terminalreporter.section("golden files")
        for line in told:
            terminalreporter.write_line(line)

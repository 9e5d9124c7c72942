"""Asks whether anything is known against the versions that the locks pin.

`make audit` fails on a finding that nobody has looked at. `make test` only tells it: the same
commit gives the same result today and tomorrow, whatever was published meanwhile, and a service
that doesn't answer is no fault of the tree. What is not known to the service is told, never counted
as sound.
"""

import argparse
import json
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any, Final

ROOT: Final = Path(__file__).parents[1]
LOCKS: Final = ("requirements-run.txt", "requirements-dev.txt")
LOOKED_AT: Final = ROOT / "tests" / "audit.toml"
MOST_S: Final = 300


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """A finding that somebody looked at.

    Attributes:
        advisory: Its name, or one of its other names.
        why: Why it does no harm here.
        until: The day on which it counts anew.
    """

    advisory: str
    why: str
    until: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Audit:
    """What came of an audit.

    Attributes:
        findings: What is known against a version, and was not looked at.
        looked_at: How many findings were.
        asked: How many packages the service knows.
        unknown: Packages that it doesn't know.
    """

    findings: tuple[str, ...]
    looked_at: int
    asked: int
    unknown: tuple[str, ...]


def looked_at(text: str) -> tuple[Looked, ...]:
    """Return the findings that were looked at."""
    return tuple(Looked(**each) for each in tomllib.loads(text).get("looked_at", ()))


def read_report(report: Mapping[str, Any], looked: Iterable[Looked], today: date) -> Audit:
    """Return what a report of pip-audit says."""
    known = {each.advisory for each in looked if each.until > today}
    packages = [each for each in report["dependencies"] if "skip_reason" not in each]
    found = [
        (package, fault, {fault["id"], *fault.get("aliases", ())})
        for package in packages
        for fault in package["vulns"]
    ]
    return Audit(
        findings=tuple(
            f"{package['name']} {package['version']}: {fault['id']}, mended in "
            f"{', '.join(fault['fix_versions']) or 'no version yet'}"
            for package, fault, names in found
            if not names & known
        ),
        looked_at=sum(bool(names & known) for *_, names in found),
        asked=len(packages),
        unknown=tuple(e["name"] for e in report["dependencies"] if "skip_reason" in e),
    )


def report_on(lock: Path) -> Mapping[str, Any] | None:
    """Return the report on a lock; None where the service can't be asked."""
    command = [sys.executable, "-m", "pip_audit", "--disable-pip", "--require-hashes"]
    more = ["--progress-spinner", "off", "--format", "json", "--timeout", "10"]
    try:
        done = subprocess.run(
            [*command, *more, "-r", str(lock)],
            check=False,
            capture_output=True,
            text=True,
            timeout=MOST_S,
        )
        found: Mapping[str, Any] = json.loads(done.stdout)
    except (ValueError, subprocess.TimeoutExpired):
        return None
    return found


def pins_in(text: str) -> Iterator[str]:
    """Yield each pin of a lock with its sums."""
    lines: list[str] = []
    for line in text.splitlines():
        lines.append(line)
        if not line.endswith("\\"):
            yield "\n".join(lines) + "\n"
            lines = []


def answers(pin: str) -> bool:
    """Tell whether the service answers at all, by one package: asking for all takes minutes."""
    with tempfile.TemporaryDirectory() as name:
        one = Path(name) / "one.txt"
        one.write_text(pin, encoding="utf-8")
        report = report_on(one)
    return report is not None and any("skip_reason" not in each for each in report["dependencies"])


def main(words: Sequence[str] | None = None) -> int:
    """Audit the locks; returns 1 where something is found that nobody has looked at."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--tell", action="store_true", help="tell what is found, and go on")
    only_tell = asked.parse_args(words).tell
    looked = looked_at(LOOKED_AT.read_text(encoding="utf-8"))
    is_bad = False
    for name in LOCKS:
        pins = list(pins_in((ROOT / name).read_text(encoding="utf-8")))
        report = report_on(ROOT / name) if answers(pins[0]) else None
        if report is None:
            print(f"LEFT OUT: {name} was not audited; nobody answers here.")  # noqa: T201
            is_bad = True
            continue
        audit = read_report(report, looked, datetime.now(UTC).date())
        is_bad = is_bad or bool(audit.findings)
        for line in audit.findings:
            print(f"KNOWN FAULT: {line}")  # noqa: T201
        print(  # noqa: T201
            f"{name}: {audit.asked} packages asked for, {len(audit.findings)} known faults, "
            f"{audit.looked_at} looked at before, {len(audit.unknown)} packages not known there."
        )
    return 1 if is_bad and not only_tell else 0


if __name__ == "__main__":
    sys.exit(main())

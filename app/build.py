"""Builds the app: its packages as they are locked, then the page and the core for it."""

import importlib.util
import os
import subprocess
import sys
from pathlib import Path

from app.node import say, with_node

APP = Path(__file__).resolve().parent


def main() -> int:
    """Build the app. `--or-leave` goes without where its packages can't be had, but not in CI."""
    may_leave = "--or-leave" in sys.argv and os.environ.get("CI") != "true"
    try:
        env = with_node()
        _get_packages(env)
    except OSError as trouble:
        say(f"LEFT OUT: the phone app and its tests. {trouble}")
        return 0 if may_leave else 1
    say("Building the app ...")
    env["LONGPOINT_SEGNO"] = str(_segno())
    built = subprocess.run(["npm", "run", "--silent", "build"], cwd=APP, env=env, check=False)
    return built.returncode


def _segno() -> Path:
    """Return the folder of the package that draws codes: the page takes it along."""
    found = importlib.util.find_spec("segno")
    if found is None or found.origin is None:
        raise OSError("segno is missing from the environment: `make app` sets it up.")
    return Path(found.origin).parent


def _get_packages(env: dict[str, str]) -> None:
    """Install the packages as they are locked, where that isn't done."""
    lock, stamp = APP / "package-lock.json", APP / "node_modules/.package-lock.json"
    if stamp.exists() and stamp.stat().st_mtime >= lock.stat().st_mtime:
        return
    say("Getting what the app is built from ...")
    command = ["npm", "ci", "--silent", "--no-audit", "--no-fund"]
    if subprocess.run(command, cwd=APP, env=env, check=False).returncode:
        raise OSError("npm can't get its packages: look at the network, then `make app`.")


if __name__ == "__main__":
    sys.exit(main())

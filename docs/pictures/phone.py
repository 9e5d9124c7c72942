"""Takes a picture of every screen of the built phone app; `make pictures` runs it."""

import subprocess
import sys
from pathlib import Path

from app.node import with_node

HERE = Path(__file__).resolve().parent
APP = HERE.parents[1] / "app"


def main() -> int:
    """Write the pictures, at a phone's and a laptop's width."""
    command = ["node", str(APP / "pictures.mjs"), str(HERE / "phone")]
    return subprocess.run(command, env=with_node(), check=False).returncode


if __name__ == "__main__":
    sys.exit(main())

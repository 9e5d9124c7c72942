"""The built app, and a copy of it for a web host."""

import shutil
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import say

BUILT: Final = Path(__file__).parent / "app"


def app_folder(folder: Path = BUILT) -> Path:
    """Return the folder that holds the built app.

    Raises:
        ExchangeError: It wasn't built.
    """
    if not (folder / "index.html").is_file():
        raise ExchangeError(
            say("The app for the phone was asked for."),
            say("It is not in this installation: it is built apart from the rest."),
            say("Run `make app` in a checkout, or install a wheel that carries it."),
        )
    return folder


def copy_app(out: Path, folder: Path = BUILT) -> Path:
    """Copy the built app, as any https host serves it; returns the folder.

    Args:
        out: Where to; files of the same names are written over.
        folder: The built app.

    Raises:
        ExchangeError: It wasn't built, or the copy can't be written.
    """
    source = app_folder(folder)
    try:
        shutil.copytree(source, out, dirs_exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("The app is to go to {out}.", out=out),
            say("It can't be written there: {error}.", error=error),
            say("Name another folder with --out."),
        ) from error
    return out

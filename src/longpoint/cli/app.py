"""`longpoint app`: the phone app, from this machine or as a folder for a web host."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.serve.app_files import app_folder, copy_app
from longpoint.serve.loopback import PORT, app_server
from longpoint.speech.said import say


@click.command(name="app")
@click.option(
    "--port",
    type=click.IntRange(1, 65535),
    default=PORT,
    show_default=True,
    help="Where it is served on this machine.",
)
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=None,
    help="Copy the app to this folder, for any https host, and serve nothing.",
)
@exits
def command(port: int, out: Path | None) -> Outcome:
    """Serve the phone app to a browser on this machine, until Ctrl-C.

    Readings stay in the browser they are typed into. A phone takes the app from an https host:
    give that host the folder of --out.
    """
    if out is not None:
        speak(say("The app: {copy_app}", copy_app=copy_app(out)))
        return Outcome.DONE
    with app_server(app_folder(), port) as server:
        speak(say("The app: http://localhost:{port}/ (Ctrl-C ends it)", port=port))
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            speak("")
    return Outcome.DONE

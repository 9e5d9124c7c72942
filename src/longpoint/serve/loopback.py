"""The app over loopback: nobody but this machine is answered."""

from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import say

HOST: Final = "127.0.0.1"
NAMES: Final = frozenset({HOST, "localhost"})
PORT: Final = 8620


class AppFiles(SimpleHTTPRequestHandler):
    """Answers with files of one folder, and with nothing else."""

    extensions_map = {  # noqa: RUF012
        **SimpleHTTPRequestHandler.extensions_map,
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
    }

    def send_head(self):  # type: ignore[no-untyped-def]  # noqa: ANN201
        """Refuse whoever asks by another name: a page elsewhere could have given it this address.

        A folder is never listed.
        """
        name = (self.headers.get("Host") or "").rsplit(":", 1)[0]
        if name not in NAMES:
            self.send_error(421, say("Only this machine is answered"))
            return None
        if Path(self.translate_path(self.path)).is_dir() and self.path.split("?")[0] != "/":
            self.send_error(404)
            return None
        return super().send_head()

    def end_headers(self) -> None:
        """Let the browser ask again each time: the app keeps its own copy."""
        self.send_header("Cache-Control", "no-cache")
        self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing: what is asked for is the app's own business."""


def app_server(folder: Path, port: int = PORT) -> ThreadingHTTPServer:
    """Return a server of a folder, listening; `serve_forever` starts it.

    Args:
        folder: The built app.
        port: On loopback; 0: any that is free.

    Raises:
        ExchangeError: The port is taken.
    """
    try:
        return ThreadingHTTPServer((HOST, port), partial(AppFiles, directory=str(folder)))
    except OSError as error:
        raise ExchangeError(
            say("The app is to be served at port {port}.", port=port),
            say("That port can't be had: {strerror}.", strerror=error.strerror or error),
            say("Name another one with --port, or end what uses it."),
        ) from error

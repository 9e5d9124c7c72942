"""Where the cutting stands, as a file beside the sheets."""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError, StockError
from longpoint.exchange.safe_files import write_text_safely
from longpoint.speech.said import say
from longpoint.sticks.news.at_the_saw import AtTheSaw
from longpoint.sticks.news.changed_pieces import PieceShape
from longpoint.sticks.news.saw_document import FORMAT as FORMAT
from longpoint.sticks.news.saw_document import KeptSaw, kept_saw, saw_document

LARGEST_BYTES: Final = 20_000_000


def save_at_the_saw(
    path: Path, state: AtTheSaw, readings_code: str, shapes: Mapping[str, PieceShape]
) -> None:
    """Write where the cutting stands, the whole file or nothing.

    Args:
        path: Where to.
        state: The state.
        readings_code: Code of the readings that its pieces were made from.
        shapes: What is cut of each piece, by mark.

    Raises:
        ExchangeError: It can't be written.
    """
    document = saw_document(state, readings_code, shapes)
    write_text_safely(path, json.dumps(document, indent=1, ensure_ascii=False) + "\n")


def load_at_the_saw(path: Path) -> KeptSaw:
    """Return where the cutting stands, and what its pieces were.

    Raises:
        ExchangeError: The file can't be read, or is something else.
    """
    try:
        if path.stat().st_size > LARGEST_BYTES:
            raise _refused(path, say("It is larger than any house's."))
        return kept_saw(json.loads(path.read_text(encoding="utf-8")))
    except OSError as error:
        raise _refused(
            path,
            say(
                "It can't be read: {strerror}.",
                strerror=error.strerror or error,
            ),
        ) from None
    except StockError as error:
        raise _refused(path, error.wrong) from None
    except (ValueError, RecursionError):
        raise _refused(path, say("What stands in it isn't what was written.")) from None


def _refused(path: Path, wrong: str) -> ExchangeError:
    return ExchangeError(
        say("The file {path} tells where the cutting stands.", path=path.name),
        wrong,
        say("Take it away to begin again from the plan; tick off by hand what is cut already."),
    )

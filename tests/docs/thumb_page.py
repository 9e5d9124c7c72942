"""What docs/explanation/rules-of-thumb.md shows, worked out anew."""

from typing import Final

from longpoint.sheets.thumb_words import NO_SOURCE, ThumbText, figures_line, thumb_texts
from longpoint.trims.thumb_figures import ThumbFigures

_COMMANDS: Final = """\
```sh
.venv/bin/longpoint thumb --face 66 --quirk 5 --size 1180
.venv/bin/longpoint thumb --units in --face 2-1/2 --quirk 3/16 --size "46 1/2" --height "24 3/8"
```
"""

_HEAD: Final = (
    "# Rules of thumb, and where they break\n",
    "A rule of thumb is right for the piece it was found on. On the next one it may be out by more "
    "than a joint forgives, and nothing about the rule tells you so. Here is what eight of them "
    "come to, what is so, and from where to where each is good enough. All eight are common "
    "practice, no source: crews go by them, and we know of no text to name.\n",
    "For your own figures, in mm or inches:\n",
    _COMMANDS,
    "`longpoint plan` works every hook reading, mitre and bevel out of the shape that was read. "
    "Where you have it cut at the 45 stop, its forecast counts what that does to the joints.\n",
)


def thumb_page() -> str:
    """Return the page, with the figures of its example."""
    figures = ThumbFigures()
    texts = thumb_texts(figures)
    rows = "\n".join(f"| {text.short} | {text.here} | {text.holds} |" for text in texts)
    parts = (
        *_HEAD,
        f"## All eight\n\n{figures_line(figures)}\n",
        f"| rule | with these figures | good enough |\n| --- | --- | --- |\n{rows}\n",
        *(_section(text) for text in texts),
    )
    return "\n".join(parts)


def _section(text: ThumbText) -> str:
    return f'## "{text.rule}"\n\n{NO_SOURCE} {text.truth}\n'

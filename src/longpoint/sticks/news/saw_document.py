"""Where the cutting stands, as plain values that can be kept and read back."""

import math
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any, Final

from longpoint.errors import StockError
from longpoint.pieces.piece import CutKind, EndCut
from longpoint.speech.said import say
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.changed_pieces import PieceShape
from longpoint.sticks.news.remains import Remains
from longpoint.sticks.plan import Laid, StickSource

FORMAT: Final = "longpoint-saw/1"
_STEEPEST_DEG: Final = 90.0


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSaw:
    """What is kept of the work at the saw.

    Attributes:
        state: Where the cutting stands.
        readings_code: Code of the readings that its pieces were made from.
        shapes: Those pieces, by mark.
    """

    state: AtTheSaw
    readings_code: str
    shapes: Mapping[str, PieceShape]


def saw_document(
    state: AtTheSaw, readings_code: str, shapes: Mapping[str, PieceShape]
) -> dict[str, Any]:
    """Return where the cutting stands as plain values, ready for JSON.

    Args:
        state: The state.
        readings_code: Code of the readings that its pieces were made from.
        shapes: Its pieces as they are or were cut, by mark.
    """
    return {
        "format": FORMAT,
        "readings_code": readings_code,
        "sticks": [asdict(stick) for stick in state.sticks],
        "loose": list(state.loose),
        "pieces": {mark: list(shape) for mark, shape in shapes.items()},
    }


def kept_saw(document: object) -> KeptSaw:
    """Return where the cutting stands, and what its pieces were.

    Raises:
        StockError: The document is something else, or tells of what can't be.
    """
    if not isinstance(document, dict) or document.get("format") != FORMAT:
        raise _refused(say("It isn't of the format {format}.", format=FORMAT))
    try:
        sticks = tuple(_stick(each) for each in document["sticks"])
        loose = tuple(str(mark) for mark in document["loose"])
        state = AtTheSaw(sticks=sticks, loose=loose)
        _check_sense(state)
        return KeptSaw(
            state=state,
            readings_code=str(document["readings_code"]),
            shapes={str(mark): _shape(each) for mark, each in document["pieces"].items()},
        )
    except (ArithmeticError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise _refused(say("What stands in it isn't what was written.")) from None


def _check_sense(state: AtTheSaw) -> None:
    """Refuse a state that no news could have led to."""
    names = [stick.name for stick in state.sticks]
    laid = [each for stick in state.sticks for each in (*stick.done, *stick.next)]
    marks = [*(each.piece for each in laid), *state.loose]
    figures = [x for stick in state.sticks for x in (stick.length_mm, stick.spent_mm)]
    figures += [x for each in laid for x in (each.start_mm, each.end_mm)]
    figures += [x for s in state.sticks for x in (s.listed_mm, s.rest.length_mm if s.rest else 0.0)]
    figures += [x for s in state.sticks for zone in s.bad for x in zone]
    if not all(map(math.isfinite, figures)) or min(figures, default=0.0) < 0.0:
        raise _refused(say("A length in it is no length."))
    if len(set(names)) < len(names) or len(set(marks)) < len(marks):
        raise _refused(say("A stick or a piece stands in it twice."))
    for stick in state.sticks:
        ends = [(each.start_mm, each.end_mm) for each in (*stick.done, *stick.next)]
        is_in_order = all(start < end for start, end in ends) and ends == sorted(ends)
        reach_mm = max((stick.spent_mm, *(end for _, end in ends)))
        if not is_in_order or reach_mm > stick.length_mm + 1e-6:
            raise _refused(say("What it says of stick {stick} can't be.", stick=stick.name))


def _stick(entry: dict[str, Any]) -> StickAtSaw:
    return StickAtSaw(
        name=str(entry["name"]),
        profile=str(entry["profile"]),
        length_mm=float(entry["length_mm"]),
        source=StickSource(entry["source"]),
        done=tuple(_laid(each) for each in entry["done"]),
        next=tuple(_laid(each) for each in entry["next"]),
        spent_mm=float(entry["spent_mm"]),
        bad=tuple((float(from_mm), float(to_mm)) for from_mm, to_mm in entry["bad"]),
        label=str(entry.get("label", "")),
        listed_mm=float(entry.get("listed_mm", 0.0)),
        rest=_rest(entry["rest"]) if entry.get("rest") else None,
    )


def _rest(entry: dict[str, Any]) -> Remains:
    return Remains(
        of=str(entry["of"]),
        length_mm=float(entry["length_mm"]),
        left=_cut(entry["left"]) if entry["left"] else None,
        right=_cut(entry["right"]) if entry["right"] else None,
    )


def _cut(entry: dict[str, Any]) -> EndCut:
    mitre_deg, bevel_deg = float(entry["mitre_deg"]), float(entry["bevel_deg"])
    if max(abs(mitre_deg), abs(bevel_deg)) >= _STEEPEST_DEG:
        raise ValueError(mitre_deg, bevel_deg)
    return EndCut(kind=CutKind(entry["kind"]), mitre_deg=mitre_deg, bevel_deg=bevel_deg)


def _shape(entry: list[Any]) -> PieceShape:
    profile, *figures = entry
    return PieceShape(str(profile), *map(float, figures))


def _laid(entry: dict[str, Any]) -> Laid:
    return Laid(
        piece=str(entry["piece"]),
        turned=bool(entry["turned"]),
        start_mm=float(entry["start_mm"]),
        end_mm=float(entry["end_mm"]),
    )


def _refused(wrong: str) -> StockError:
    return StockError(
        say("It was kept where the cutting stands."),
        wrong,
        say("Begin again from the plan; tick off by hand what is cut already."),
    )

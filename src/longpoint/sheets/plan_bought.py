"""What a plan file says is to be bought, so that an order is that of the printed sheet."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from longpoint.errors import SheetError
from longpoint.sheets.blocks import SheetState
from longpoint.sheets.plan_json import PLAN_FORMAT
from longpoint.sticks.plan import StickSource

SOME_STICKS = 1_000_000
"""No house takes more of one length: more is a damaged file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanBuys:
    """What a plan buys.

    Attributes:
        readings_code: Code of the readings it was made from.
        needed: How many new sticks it cuts up, by profile and length [mm].
        spares: How many it wants on top, by profile and length [mm].
    """

    readings_code: str
    needed: Mapping[tuple[str, float], int]
    spares: Mapping[tuple[str, float], int]


def bought_in(document: Mapping[str, Any]) -> PlanBuys:
    """Return what the plan of a plan file buys.

    Args:
        document: The parsed `plan.json`.

    Raises:
        SheetError: It is no plan file, is damaged, or was voided.
    """
    if document.get("format") != PLAN_FORMAT:
        raise _refused("It is no plan file of this program.")
    if document.get("state") != SheetState.CURRENT.value:
        raise SheetError(
            "The plan file says that its sheets are VOID.",
            "Its readings have changed since, so its sticks may be the wrong ones.",
            "Plan the house again with `longpoint plan`, then order.",
        )
    try:
        needed = Counter(
            (str(stick["profile"]), _length(stick["length_mm"]))
            for stick in document["sticks"]
            if stick["source"] == StickSource.STOCK.value
        )
        spares = Counter(dict(_spares(document.get("spares", ()))))
        code = document["readings_code"]
    except (KeyError, TypeError, ValueError, AttributeError):
        raise _refused("A part of it is missing or can't be read.") from None
    return PlanBuys(readings_code=str(code), needed=dict(needed), spares=dict(spares))


def _spares(entries: Iterable[Mapping[str, Any]]) -> Iterable[tuple[tuple[str, float], int]]:
    for entry in entries:
        for buy in entry["buy"]:
            count = buy["count"]
            if not isinstance(count, int) or not 0 <= count <= SOME_STICKS:
                raise ValueError(count)
            yield (str(entry["profile"]), _length(buy["length_mm"])), count


def _length(written: object) -> float:
    length_mm = float(str(written))
    if not 0.0 < length_mm < 1e6:
        raise ValueError(written)
    return length_mm


def _refused(wrong: str) -> SheetError:
    return SheetError(
        "The plan file of the sheets was read.",
        wrong,
        "Plan the house again with `longpoint plan`, into the same folder.",
    )

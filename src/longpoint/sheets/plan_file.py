"""What a plan file says, so that orders and labels are those of the printed sheets."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from longpoint.errors import SheetError
from longpoint.sheets.blocks import SheetState
from longpoint.sheets.plan_json import PLAN_FORMAT
from longpoint.sticks.plan import CutStick, Laid, StickSource

SOME_STICKS = 1_000_000
"""No house takes more of one length: more is a damaged file."""
_DAMAGED: Final = (KeyError, TypeError, ValueError, AttributeError, ArithmeticError)


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
    _check_current(document)
    try:
        needed = Counter(
            (str(stick["profile"]), _length(stick["length_mm"]))
            for stick in document["sticks"]
            if stick["source"] == StickSource.STOCK.value
        )
        spares = Counter(dict(_spares(document.get("spares", ()))))
        code = document["readings_code"]
    except _DAMAGED:
        raise _refused("A part of it is missing or can't be read.") from None
    return PlanBuys(readings_code=str(code), needed=dict(needed), spares=dict(spares))


def sticks_in(document: Mapping[str, Any]) -> tuple[CutStick, ...]:
    """Return the sticks of a plan file, as they stand on the printed sheets.

    Args:
        document: The parsed `plan.json`.

    Raises:
        SheetError: It is no plan file, is damaged, or was voided.
    """
    _check_current(document)
    try:
        return tuple(_stick(stick) for stick in document["sticks"])
    except _DAMAGED:
        raise _refused("A part of it is missing or can't be read.") from None


def _stick(stick: Mapping[str, Any]) -> CutStick:
    return CutStick(
        name=str(stick["name"]),
        profile=str(stick["profile"]),
        length_mm=_length(stick["length_mm"]),
        source=StickSource(stick["source"]),
        laid=tuple(
            Laid(
                piece=str(laid["piece"]),
                turned=laid["turned"] is True,
                start_mm=_along(laid["start_mm"]),
                end_mm=_along(laid["end_mm"]),
            )
            for laid in stick["laid"]
        ),
        used_mm=_along(stick["used_mm"]),
        left_mm=_along(stick["left_mm"]),
        label=str(stick.get("label") or ""),
    )


def _check_current(document: Mapping[str, Any]) -> None:
    if document.get("format") != PLAN_FORMAT:
        raise _refused("It is no plan file of this program.")
    if document.get("state") != SheetState.CURRENT.value:
        raise SheetError(
            "The plan file says that its sheets are VOID.",
            "Its readings have changed since, so its pieces and sticks may be the wrong ones.",
            "Plan the house again with `longpoint plan`, then go on from there.",
        )


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


def _along(written: object) -> float:
    along_mm = float(str(written))
    # Rounded as printed, nothing left may stand there as a hair less.
    if not -1.0 < along_mm < 1e6:
        raise ValueError(written)
    return along_mm


def _refused(wrong: str) -> SheetError:
    return SheetError(
        "The plan file of the sheets was read.",
        wrong,
        "Plan the house again with `longpoint plan`, into the same folder.",
    )

"""A street's summary as plain values, out and in."""

from collections.abc import Mapping, Sequence
from typing import Any

from longpoint.quantities.length import Units
from longpoint.sheets.plan_json import stick_document
from longpoint.sheets.street_rows import (
    STREET_FORMAT,
    Document,
    HouseRow,
    HouseState,
    ProfileRow,
    longest_first,
    profile_totals,
)
from longpoint.sticks.joint_buying import Joint


def street_document(
    name: str, code: str, houses: Sequence[HouseRow], joint: Sequence[Joint] = ()
) -> Document:
    """Return the summary of a street, ready for JSON.

    Args:
        name: The street's name.
        code: Code of all that was planned.
        houses: Its houses, in their order.
        joint: What buying together comes to, delivery by delivery.
    """
    return {
        "format": STREET_FORMAT,
        "street": name,
        "code": code,
        "states": {state.value: sum(h.state is state for h in houses) for state in HouseState},
        "profiles": [_profile(row) for row in profile_totals(houses)],
        "houses": [row_document(row) for row in houses],
        "together": [_joint(each) for each in joint],
    }


def row_document(row: HouseRow) -> Document:
    """Return what is said of one house as plain values."""
    return {
        "file": row.file,
        "folder": row.folder,
        "house": row.house,
        "state": row.state.value,
        "units": row.units.value,
        "readings_code": row.readings_code,
        "pieces": row.pieces,
        "held": list(row.held),
        "profiles": [_profile(each) for each in row.profiles],
        "all_fit": row.all_fit,
        "refusal": list(row.refusal),
    }


def row_in(document: Mapping[str, Any]) -> HouseRow:
    """Return what a document says of one house.

    Raises:
        KeyError, TypeError, ValueError: It is damaged.
    """
    return HouseRow(
        file=str(document["file"]),
        folder=str(document["folder"]),
        house=str(document["house"]),
        state=HouseState(document["state"]),
        units=Units(document["units"]),
        readings_code=str(document["readings_code"]),
        pieces=int(document["pieces"]),
        held=tuple(str(place) for place in document["held"]),
        profiles=tuple(_profile_in(each) for each in document["profiles"]),
        all_fit=None if document["all_fit"] is None else float(document["all_fit"]),
        refusal=tuple(str(each) for each in document["refusal"]),
    )


def _joint(joint: Joint) -> Document:
    return {
        "profile": joint.profile,
        "houses": list(joint.names),
        "pieces": joint.pieces,
        "unit": joint.unit,
        "apart": {"cost": round(joint.apart, 2), "buy": _buy(longest_first(joint.buys_apart))},
        "together": {"cost": round(joint.together, 2), "buy": _buy(longest_first(joint.buys))},
        "saves": round(joint.saves, 2),
        "lower_bound": round(joint.lower_bound, 2),
        "proved": joint.is_proved,
        "left_out": joint.left_out or None,
        "sticks": [stick_document(stick) for stick in joint.sticks],
    }


def _buy(buys: Sequence[tuple[float, int]]) -> list[Document]:
    return [{"length_mm": length_mm, "count": count} for length_mm, count in buys]


def _profile(row: ProfileRow) -> Document:
    return {
        "profile": row.profile,
        "unit": row.unit,
        "pieces": row.pieces,
        "buy": _buy(row.buys),
        "offcuts": row.offcuts,
        "cost": row.cost,
        "lower_bound": row.lower_bound,
        "houses": row.houses,
        "proved": row.proved,
    }


def _profile_in(document: Mapping[str, Any]) -> ProfileRow:
    return ProfileRow(
        profile=str(document["profile"]),
        unit=str(document["unit"]),
        pieces=int(document["pieces"]),
        buys=tuple((float(each["length_mm"]), int(each["count"])) for each in document["buy"]),
        offcuts=int(document["offcuts"]),
        cost=float(document["cost"]),
        lower_bound=float(document["lower_bound"]),
        houses=int(document["houses"]),
        proved=int(document["proved"]),
    )

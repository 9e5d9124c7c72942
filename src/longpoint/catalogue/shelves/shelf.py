"""Shelves between the cheeks of an alcove, each end cut at its own angle."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from longpoint.catalogue.shelves.alcove import (
    Alcove,
    AlcoveReadings,
    ShelfCut,
    Split,
    fit_alcove,
    fit_shelf,
    headroom_mm,
)
from longpoint.catalogue.shelves.shelf_keys import SHELF_KEYS, USUAL_GAP_MM
from longpoint.catalogue.shelves.shelf_sketch import shelf_sketch
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import (
    format_angle,
    format_length,
    format_tenth,
    format_with_unit,
)
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import joined, say

SHELF_SPLIT_ASSUMED: Final = "shelf-split-assumed"
SHELF_LOCKED: Final = "shelf-locked"

_SQUARE_DEG: Final = 0.001
"""An end nearer to square than this is square; on the deepest board it moves no hundredth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """One shelf, fitted.

    Attributes:
        name: What it is called: "shelf 1 at 450".
        number: Its number in the house file.
        alcove: The alcove at its height.
        cut: The shelf.
        u_mm: Standard uncertainty of its front edge.
    """

    name: str
    number: int
    alcove: Alcove
    cut: ShelfCut
    u_mm: float


def plan_shelves(asked: Asked) -> TrimPlan:
    """Return one board for each height, its ends cut to the alcove's cheeks.

    Raises:
        PieceError: The readings of a shelf describe no alcove, or its board is too deep.
    """
    shelves = [
        _shelf(asked, number, read) for number, read in enumerate(asked.get("shelves"), start=1)
    ]
    findings = [finding for shelf in shelves for finding in _findings(asked, shelf)]
    return TrimPlan(
        pieces=tuple(_piece(asked, shelf) for shelf in shelves),
        findings=tuple(findings),
        sketches=tuple(
            shelf_sketch(asked, shelf.name, shelf.alcove, shelf.cut) for shelf in shelves
        ),
        lines=_lines(asked),
    )


def _shelf(asked: Asked, number: int, read: Mapping[str, Any]) -> Shelf:
    tape = asked.house.tape(asked.entry.tape)
    u_mm = combine((tape.private_u_mm(), tape.shared_u_mm(read["front"])))
    alcove = fit_alcove(
        AlcoveReadings(
            back_mm=read["back"],
            front_mm=read["front"],
            depth_mm=_depth_mm(asked),
            left_corner_deg=read.get("left_corner"),
            right_corner_deg=read.get("right_corner"),
            from_back_left_mm=read.get("from_back_left"),
            from_back_right_mm=read.get("from_back_right"),
            u_mm=u_mm,
            units=asked.units,
        )
    )
    height_mm = read.get("height")
    at = (
        ""
        if height_mm is None
        else say(
            " at {height}",
            height=format_length(height_mm, asked.units),
        )
    )
    return Shelf(
        name=f"shelf {number}{at}",
        number=number,
        alcove=alcove,
        cut=fit_shelf(alcove, asked.profile.width_mm, _gap_mm(asked), asked.units),
        u_mm=u_mm,
    )


def _depth_mm(asked: Asked) -> float:
    depth_mm: float = asked.get("depth", asked.profile.width_mm)
    return depth_mm


def _gap_mm(asked: Asked) -> float:
    gap_mm: float = asked.get("gap", USUAL_GAP_MM)
    return gap_mm


def _piece(asked: Asked, shelf: Shelf) -> Piece:
    cut = shelf.cut
    return asked.piece(
        str(shelf.number),
        Role.SHELF,
        cut.front_mm,
        outer_mm=cut.back_mm,
        left=_end(cut.left_deg),
        right=_end(cut.right_deg),
        u_mm=shelf.u_mm,
        hand_sum=_sum(asked, shelf),
        notes=(say("{shelf}; its front edge is the one towards you", shelf=shelf.name),),
    )


def _end(mitre_deg: float) -> EndCut:
    if abs(mitre_deg) < _SQUARE_DEG:
        return SQUARE_CUT
    return EndCut(kind=CutKind.MITRE, mitre_deg=mitre_deg)


def _sum(asked: Asked, shelf: Shelf) -> str:
    units, alcove, gap_mm = asked.units, shelf.alcove, _gap_mm(asked)
    board_mm = asked.profile.width_mm
    sums = []
    if board_mm < alcove.depth_mm:
        sums.append(
            say(
                "alcove {width} wide {board} from the back",
                width=format_tenth(alcove.width_mm(board_mm), units),
                board=format_tenth(board_mm, units),
            )
        )
    sums += [
        run_sum("front", [alcove.width_mm(board_mm), -gap_mm, -gap_mm], units),
        run_sum("back", [alcove.back_mm, -gap_mm, -gap_mm], units),
        say("left cheek {out}", out=_out(asked, alcove.left_out_mm, alcove)),
        say("right cheek {out}", out=_out(asked, alcove.right_out_mm, alcove)),
    ]
    return joined("; ", sums)


def _out(asked: Asked, out_mm: float, alcove: Alcove) -> str:
    out = format_tenth(abs(out_mm), asked.units)
    if out == "0":
        return "square"
    angle = format_angle(math.degrees(math.atan2(abs(out_mm), alcove.depth_mm)))
    way = say("outwards") if out_mm > 0 else say("inwards")
    return say(
        "{out} {way} in {depth} = {angle} off square",
        out=out,
        way=way,
        depth=format_tenth(alcove.depth_mm, asked.units),
        angle=angle,
    )


def _findings(asked: Asked, shelf: Shelf) -> list[Finding]:
    findings = []
    if shelf.alcove.split is Split.EVENLY:
        findings.append(_split_assumed(asked, shelf))
    cut = shelf.cut
    # What has to pass is its longest edge; where, the narrowest place before its own.
    narrowest_mm = min(shelf.alcove.width_mm(shelf.alcove.depth_mm), shelf.alcove.back_mm)
    if cut.back_mm > narrowest_mm:
        findings.append(_locked(asked, shelf, narrowest_mm))
    return findings


def _split_assumed(asked: Asked, shelf: Shelf) -> Finding:
    units, alcove = asked.units, shelf.alcove
    both_mm = alcove.left_out_mm + alcove.right_out_mm
    differs = (
        say(
            "Front and back of {shelf} differ by {both}",
            shelf=shelf.name,
            both=format_with_unit(abs(both_mm), units),
        )
        if abs(both_mm) >= 0.5
        else say("Front and back of {shelf} are alike", shelf=shelf.name)
    )
    # Out of place by half the difference at the front: that is what opens if one cheek has it all.
    wedge_mm = abs(both_mm) / 2.0 * asked.profile.width_mm / alcove.depth_mm
    wrong = (
        say(
            "Nothing read says which cheek that comes from, so half was given to each: "
            "if one has it all, the front corners are {wedge} out, one open and one "
            "too tight.",
            wedge=format_with_unit(wedge_mm, units),
        )
        if abs(both_mm) >= 0.5
        else say(
            "Nothing read says whether both cheeks lean the same way, so both were taken as square."
        )
    )
    return Finding(
        code=SHELF_SPLIT_ASSUMED,
        severity=Severity.NOTE,
        place=asked.mark,
        read=say("{differs}.", differs=differs),
        wrong=wrong,
        do=say(
            "Read one diagonal of the alcove at that height, or the corner with a "
            "bevel gauge, before you cut."
        ),
    )


def _locked(asked: Asked, shelf: Shelf, narrowest_mm: float) -> Finding:
    units = asked.units
    room_mm = headroom_mm(shelf.cut.back_mm, narrowest_mm, asked.profile.thickness_mm)
    tipped = (
        say(
            "Tip it in, one end first: that takes {room} of height above or below its place.",
            room=format_with_unit(room_mm, units),
        )
        if room_mm is not None
        else say("Make it of two boards.")
    )
    return Finding(
        code=SHELF_LOCKED,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "The back edge of {shelf} is {back}; at the front the alcove is {narrowest} wide.",
            shelf=shelf.name,
            back=format_with_unit(shelf.cut.back_mm, units),
            narrowest=format_with_unit(narrowest_mm, units),
        ),
        wrong=say("It does not go in level."),
        do=tipped,
    )


def _lines(asked: Asked) -> tuple[str, ...]:
    gap = format_with_unit(_gap_mm(asked), asked.units)
    return (
        say(
            "Each shelf lies on the saw underside down, its back edge away from you: "
            "left is left as you stand before the alcove."
        ),
        say("{gap} is left open at each end, along the shelf.", gap=gap),
        say("The back edge is straight: a back wall that bows is scribed."),
    )


TRIM: Final = TrimKind(
    name="shelf",
    title=say("shelves in an alcove"),
    asks=SHELF_KEYS,
    plan=plan_shelves,
)

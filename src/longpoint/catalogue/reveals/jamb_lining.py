"""A whole lining for a rough opening: legs, head and sill piece, with room for packers."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from longpoint.catalogue.reveals.extension_keys import CORNERS
from longpoint.catalogue.reveals.jamb_keys import ASKS, PACKING_MM
from longpoint.catalogue.reveals.reveal_pictures import lining_elevation, rip_picture
from longpoint.catalogue.reveals.reveals import SIDE_NAMES, check_width, rip_note, ripped
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.piece import Piece, Role
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import say

SPREAD_MM: Final = 10.0
"""A rough opening that differs by more along a side is told; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lining:
    """A lining in its hole.

    Attributes:
        between_mm: Between the legs.
        leg_mm: Of a leg between head and floor or sill piece, without what is let in.
        packing_mm: Left at each side of the lining where the hole is tightest.
        over_mm: Left over the head where the hole is lowest.
        depths_mm: Through the wall at bottom left, bottom right, top right, top left.
    """

    between_mm: float
    leg_mm: float
    packing_mm: float
    over_mm: float
    depths_mm: tuple[float, ...]


def plan_jambs(asked: Asked) -> TrimPlan:
    """Return the pieces of one lining.

    Args:
        asked: The entry.

    Returns:
        Left leg, head, right leg and, where one is wanted, the sill piece.

    Raises:
        PieceError: The lining doesn't go into its hole, or the profile is too narrow or too thin.
    """
    lining = _lining(asked)
    has_sill = asked.get("sill", False)
    sides = (3, 2, 1, 0) if has_sill else (3, 2, 1)
    at_right_mm, at_left_mm = lining.depths_mm[2], lining.depths_mm[3]
    return TrimPlan(
        pieces=tuple(_piece(asked, lining, side) for side in sides),
        findings=tuple(_findings(asked)),
        sketches=(
            lining_elevation(
                lining.between_mm,
                lining.leg_mm,
                asked.profile.thickness_mm,
                lining.packing_mm,
                asked.units,
            ),
            rip_picture(
                lining.between_mm,
                at_left_mm,
                at_right_mm,
                "head",
                asked.units,
                edges=(say("planed edge: to this room"), say("ripped edge: to the other side")),
            ),
        ),
        lines=tuple(_lines(asked, lining)),
    )


def _lining(asked: Asked) -> _Lining:
    thick_mm, lean_mm = asked.profile.thickness_mm, asked.get("lean", 0.0)
    housing_mm, cover_mm = asked.get("housing", 0.0), asked.get("floor_cover", 0.0)
    depths_mm = tuple(asked.get("depths")[corner] for corner in CORNERS)
    check_width(
        asked,
        max(depths_mm),
        format_with_unit(max(depths_mm), asked.units),
        format_with_unit(asked.profile.width_mm, asked.units),
    )
    if housing_mm >= thick_mm:
        raise PieceError(
            say(
                "{mark} lets its legs {housing} into a head {thick} thick.",
                mark=asked.mark,
                housing=format_with_unit(housing_mm, asked.units),
                thick=format_with_unit(thick_mm, asked.units),
            ),
            say("Nothing of the head is left over them."),
            say("Write a smaller housing, or use thicker stuff."),
        )
    hole_mm = min(asked.get("rough_widths")) - lean_mm - 2.0 * thick_mm
    between_mm = asked.get("between", hole_mm - 2.0 * PACKING_MM)
    packing_mm = (hole_mm - between_mm) / 2.0
    _check_room(asked, between_mm, 2.0 * packing_mm, say("between the legs"), "wide")
    flat_mm = 2.0 if asked.get("sill", False) else 1.0
    high_mm = min(asked.get("rough_heights")) - flat_mm * thick_mm
    wanted_mm = asked.get("under_head")
    leg_mm = high_mm - PACKING_MM if wanted_mm is None else wanted_mm + cover_mm
    _check_room(asked, leg_mm, high_mm - leg_mm, say("under the head"), "high")
    return _Lining(
        between_mm=between_mm,
        leg_mm=leg_mm,
        packing_mm=packing_mm,
        over_mm=high_mm - leg_mm,
        depths_mm=depths_mm,
    )


def _check_room(asked: Asked, wanted_mm: float, left_mm: float, where: str, how: str) -> None:
    if left_mm >= -1e-9 and wanted_mm > 0:
        return
    wanted, over = (format_with_unit(mm, asked.units) for mm in (wanted_mm, abs(left_mm)))
    raise PieceError(
        say(
            "{mark} is to have {wanted} {where}.",
            mark=asked.mark,
            wanted=wanted,
            where=where,
        ),
        say(
            "With its own thickness, and the hole's lean, it is {over} too {how} for the hole.",
            over=over,
            how=how,
        )
        if left_mm < 0
        else say("The hole leaves nothing for it."),
        say("Cut the hole, use thinner stuff, or write a smaller size."),
    )


def _piece(asked: Asked, lining: _Lining, side: int) -> Piece:
    thick_mm, housing_mm = asked.profile.thickness_mm, asked.get("housing", 0.0)
    horn_mm = asked.get("horn", 0.0)
    if side in (0, 2):
        over_mm = horn_mm if side == 2 else 0.0
        start, terms = "between", [lining.between_mm, thick_mm, thick_mm, over_mm, over_mm]
    else:
        let_in = 2 if asked.get("sill", False) else 1
        start, terms = say("under head"), [lining.leg_mm, *[housing_mm] * let_in]
    at_right_mm, at_left_mm = lining.depths_mm[side], lining.depths_mm[(side + 1) % 4]
    notes = [rip_note(at_left_mm, at_right_mm, say("the other side of the wall"), asked.units)]
    if side in (0, 2) and housing_mm:
        notes.append(_housing_note(asked, lining, horn_mm if side == 2 else 0.0))
    piece = asked.piece(
        SIDE_NAMES[side],
        Role.LINING,
        math.fsum(terms),
        hand_sum=run_sum(start, terms, asked.units),
        notes=tuple(notes),
    )
    return ripped(piece, max(at_left_mm, at_right_mm))


def _housing_note(asked: Asked, lining: _Lining, past_mm: float) -> str:
    """Return where the housings stand, from the left end."""
    thick_mm = asked.profile.thickness_mm
    first, last = (past_mm, past_mm + thick_mm + lining.between_mm)
    spots = [format_length(mm, asked.units) for mm in (first, first + thick_mm, last)]
    end = format_length(last + thick_mm, asked.units)
    deep = format_length(asked.get("housing"), asked.units)
    return say(
        "house {deep} deep from {spots} to {spots_2} and from {spots_3} to {end}",
        deep=deep,
        spots=spots[0],
        spots_2=spots[1],
        spots_3=spots[2],
        end=end,
    )


def _findings(asked: Asked) -> Iterator[Finding]:
    for key, what in (("rough_widths", "wide"), ("rough_heights", "high")):
        read = asked.get(key)
        if len(read) == 1:
            yield Finding(
                code="jamb-read-once",
                severity=Severity.WARNING,
                place=asked.mark,
                read=say(
                    "{mark}: how {what} the hole is was read in one place.",
                    mark=asked.mark,
                    what=what,
                ),
                wrong=say("Its tightest place decides, and that isn't known."),
                do=say("Read it at both ends and in the middle."),
            )
        elif max(read) - min(read) > SPREAD_MM:
            least, most = (format_length(mm, asked.units) for mm in (min(read), max(read)))
            yield Finding(
                code="jamb-spread",
                severity=Severity.WARNING,
                place=asked.mark,
                read=say(
                    "{mark}: the hole is {least} to {most} {what}.",
                    mark=asked.mark,
                    least=least,
                    most=most,
                    what=what,
                ),
                wrong=say("The packers differ by as much."),
                do=say("Read it again; if it is so, pack with pairs of wedges."),
            )


def _lines(asked: Asked, lining: _Lining) -> Iterator[str]:
    units = asked.units
    between, under = (format_with_unit(mm, units) for mm in (lining.between_mm, lining.leg_mm))
    side, over = (format_with_unit(mm, units) for mm in (lining.packing_mm, lining.over_mm))
    yield (
        say(
            "{between} between the legs, {under} from what they stand on to the head: "
            "{side} to pack at each side where the hole is tightest, {over} over the "
            "head.",
            between=between,
            under=under,
            side=side,
            over=over,
        )
    )
    if asked.get("between") is None or asked.get("under_head") is None:
        packing = format_with_unit(PACKING_MM, units)
        yield (
            say(
                "Where no size is asked for, {packing} is left for packers (common "
                "practice, no source).",
                packing=packing,
            )
        )
    if not asked.get("lean"):
        yield say("The sides of the hole are taken as plumb: their lean wasn't read.")
    yield (
        say(
            "All ends are square. Cut them first, off the planed edge, which goes "
            "flush with the room you read from; then rip the other edge. Left and "
            "right legs are a pair."
        )
    )
    yield say(
        "Set the legs plumb and in one plane before any packer is nailed; then read the opening."
    )


TRIM: Final = TrimKind(
    name="jamb-lining",
    title=say("a jamb lining"),
    asks=ASKS,
    plan=plan_jambs,
)

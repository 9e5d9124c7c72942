"""The one way that an opening's proud or shy lining is met, put into its pieces."""

import math
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.face_trim import FaceTrim, is_true_frame
from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.pieces.packers import packer_lines, packers, spared, spared_line, wedge_pieces
from longpoint.pieces.piece import CutKind, EndCut, HookEnd, Piece, Role
from longpoint.pieces.proud_remedies import (
    CORNER_NAMES,
    SAID_FROM_MM,
    ProudCorner,
    face_plane,
    is_mitred,
    packing,
    proud_corners,
)
from longpoint.quantities.formatting import format_angle, format_gap, format_length, format_unit
from longpoint.shape.fitted import FittedOpening
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Flush, Method, Opening
from longpoint.survey.readings import Plane
from longpoint.trims.tilt import ClosingCut

LINING_PACKED: Final = "lining-packed"
LINING_BACK_BEVELLED: Final = "lining-back-bevelled"
LINING_RE_SET: Final = "lining-re-set"
LINING_LEFT: Final = "lining-left"

NOT_READ: Final = say("No plane was read here.")

_CUT_PLAIN: Final = say("with a packer and plain cuts they would stand open twice as far.")
_CUT_FOR_TILT: Final = say("the pieces lie on the proud linings, and the cuts are for that tilt.")

_SIDE_OF: Final = {Role.SILL: 0, Role.RIGHT_LEG: 1, Role.HEAD: 2, Role.LEFT_LEG: 3}

Made = tuple[tuple[Piece, ...], tuple[Finding, ...]]
_Cuts = dict[int, tuple[ClosingCut, ClosingCut]]


def flush_pieces(
    house: House,
    opening: Opening,
    fitted: FittedOpening,
    trim: FaceTrim,
    pieces: tuple[Piece, ...],
) -> Made:
    """Return a face's pieces as its opening's `flush` wants them, and what it asks of the crew.

    Exactly one thing is done: nothing; compound ends at the proud corners (back-bevel); compound
    ends and packers (pack); or nothing but to say how far the reveal is to be set back (re-set).

    Args:
        house: Gives profiles and units.
        opening: Its plane readings and settings.
        fitted: The shape of this face.
        trim: Inner and outer lines of its architraves.
        pieces: Its pieces, cut to lie flat.

    Returns:
        The pieces, wedges behind the others; and findings.

    Raises:
        PieceError: Trim would tilt more than it is ever nailed on.

    References:
        The inner edges of the backs keep their lines, and with them the quirk; what a face's edges
        run past them comes from `closing_cuts`.
    """
    if opening.flush is Flush.LEAVE:
        return pieces, ()
    is_second = fitted.face == "b"
    plane = face_plane(opening, is_second=is_second)
    if plane is None:
        return pieces, _left(opening, NOT_READ, is_second=is_second)
    if all(abs(mm) < SAID_FROM_MM for mm in plane.corners_mm()):
        return pieces, ()
    reason = _why_not(opening)
    if reason:
        return pieces, _left(opening, reason, is_second=is_second)
    corners = proud_corners(house, opening, plane, _corner_deg(trim), is_second=is_second)
    work = _Work(
        house=house, opening=opening, fitted=fitted, trim=trim, plane=plane, corners=corners
    )
    match opening.flush:
        case Flush.RE_SET:
            return pieces, work.re_set()
        case Flush.BACK_BEVEL:
            return work.back_bevelled(pieces)
        case Flush.PACK:
            return work.packed(pieces)


def _why_not(opening: Opening) -> str:
    """Return why a lining off the wall isn't met here, empty where it is."""
    if opening.flush is Flush.RE_SET:
        return ""
    if not is_mitred(opening):
        return say("The corners aren't those of four mitred sides.")
    if opening.method is Method.BENCH:
        return say("A frame joined on the bench keeps its joints, however it lies.")
    return ""


def _left(opening: Opening, reason: str, *, is_second: bool) -> tuple[Finding, ...]:
    return (
        Finding(
            code=LINING_LEFT,
            severity=Severity.NOTE,
            place=opening.mark,
            read=say(
                "The {second} asks for flush {flush}.",
                second=say("second face") if is_second else say("opening"),
                flush=opening.flush.value,
            ),
            wrong=say("{reason} Its pieces are cut to lie flat.", reason=reason),
            do=say("Read the plane at the corners, if it is to be met at the saw.")
            if reason == NOT_READ
            else say("Plane or re-set the reveal, or pack behind the outer edges as they go up."),
        ),
    )


def _corner_deg(trim: FaceTrim) -> tuple[float, ...]:
    """Return the corners that the mitres were cut for: what both saw angles leave of 180."""
    edges = [trim.outline.edges(side) for side in range(4)]
    return tuple(180.0 - edges[side - 1].end_deg - edges[side].start_deg for side in range(4))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Work:
    """One face while its lining is met."""

    house: House
    opening: Opening
    fitted: FittedOpening
    trim: FaceTrim
    plane: Plane
    corners: tuple[ProudCorner, ...]

    @property
    def is_second(self) -> bool:
        """Tell whether it is the second face, seen from its own side."""
        return self.fitted.face == "b"

    @property
    def proud(self) -> tuple[ProudCorner, ...]:
        """The mitred corners that stand proud; a shy one is bridged or packed, never cut for."""
        return tuple(each for each in self.corners if each.proud_mm > 0.0)

    def re_set(self) -> tuple[Finding, ...]:
        """Return what the lengths suppose of a reveal that is to be set right first."""
        return (
            self._finding(
                Severity.WARNING,
                say(
                    "The lengths suppose the reveal set flush first: {moves}.",
                    moves=self._moves(),
                ),
                say("Set it, then read the opening again: a jamb that is moved is another shape."),
                code=LINING_RE_SET,
            ),
        )

    def back_bevelled(self, pieces: tuple[Piece, ...]) -> Made:
        """Return the pieces with relieved backs at the proud corners."""
        if not self.proud:
            return pieces, self._nothing_to_cut()
        cuts = {each.corner: each.back_bevels() for each in self.proud}
        step_mm = max(each.step_mm() for each in self.proud)
        units = self.house.units
        alone = format_gap(max(each.step_alone_mm() for each in self.proud), units)
        left = (
            say(
                " Their widths differ, and the faces still step by {step} at the heel.",
                step=format_gap(step_mm, units),
            )
            if step_mm >= 0.05
            else ""
        )
        finding = self._finding(
            Severity.NOTE,
            say(
                "The ends at the proud corners have relieved backs, bevels up to "
                "{most} degrees, for pieces that both lie on the proud "
                "lining.{left}{twist}",
                most=self._most(cuts),
                left=left,
                twist=self._twist(),
            ),
            say(
                "Nail each down on lining and wall, without packers. Where only one of "
                "the two linings is proud the faces step by up to {alone} at the heel: "
                "pack there, and choose flush pack before cutting.",
                alone=alone,
            ),
            code=LINING_BACK_BEVELLED,
        )
        return self._cut(pieces, cuts), (finding,)

    def packed(self, pieces: tuple[Piece, ...]) -> Made:
        """Return the pieces for one tilt at each proud corner, and the wedges for it."""
        packings = {each.corner: packing(each) for each in self.proud}
        cuts = {corner: found.cuts for corner, found in packings.items() if found is not None}
        needed = packers(
            self.house,
            self.opening,
            self.plane,
            self.corners,
            is_second=self.is_second,
        )
        if not needed and not cuts:
            return pieces, self._nothing_to_cut()
        wedges = wedge_pieces(self.house, self.opening, self.fitted, self.trim, needed)
        what = (
            say(
                "The ends at the proud corners are cut for both pieces at one tilt, "
                "bevels up to {most} degrees: {cut_plain}{twist}",
                most=self._most(cuts),
                cut_plain=_CUT_PLAIN if needed else _CUT_FOR_TILT,
                twist=self._twist(),
            )
            if cuts
            else say("The trim is cut to lie flat on the wall and on packers.")
        )
        lines = (
            packer_lines(self.house, self.opening, self.trim, needed, are_cut=bool(wedges))
            if needed
            else say("Nail each piece down on lining and wall.")
        )
        none = spared_line(spared(self.plane, self.corners, needed))
        lines = joined(" ", (none, lines)) if none else lines
        finding = self._finding(Severity.NOTE, what, lines, code=LINING_PACKED)
        return (*self._cut(pieces, cuts), *wedges), (finding,)

    def _cut(self, pieces: tuple[Piece, ...], cuts: _Cuts) -> tuple[Piece, ...]:
        return tuple(
            self._side(piece, _SIDE_OF[piece.role], cuts) if piece.role in _SIDE_OF else piece
            for piece in pieces
        )

    def _side(self, piece: Piece, side: int, cuts: _Cuts) -> Piece:
        """Return the piece of a side, its ends compound at those of its corners that are cut."""
        after = (side + 1) % 4
        left = cuts[after][0] if after in cuts else None
        right = cuts[side][1] if side in cuts else None
        if left is None and right is None:
            return piece
        longer_mm = sum(cut.longer_mm for cut in (left, right) if cut is not None)
        made = replace(
            piece,
            inner_mm=piece.inner_mm + longer_mm,
            left=piece.left if left is None else _end(left),
            right=piece.right if right is None else _end(right),
        )
        runs_mm = [
            made.width_mm * math.tan(math.radians(end.mitre_deg)) for end in (made.left, made.right)
        ]
        back_outer_mm = piece.inner_mm + sum(runs_mm)
        made = replace(
            made,
            outer_mm=made.inner_mm + sum(runs_mm),
            back_mm=max(piece.inner_mm, back_outer_mm),
        )
        return replace(made, hand_sum=self._hand_sum(side, made, longer_mm))

    def _hand_sum(self, side: int, piece: Piece, longer_mm: float) -> str:
        quirks = tuple(
            self.trim.quirks_mm[end]
            for end in ((side - 1) % 4, (side + 1) % 4)
            if not (self.trim.has_bare_bottom and end == 0)
        )
        is_leg_on_floor = len(quirks) == 1
        has_plinth = self.opening.plinth and is_leg_on_floor and self.opening.stands_on_floor
        plinth = (Term(-self.opening.plinth_height_mm, "plinth"),) if has_plinth else ()
        hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
        return hand_sum(
            self.fitted.side_mm[side],
            quirks,
            piece.inner_mm,
            piece.width_mm,
            hooked[piece.hook_from].mitre_deg if piece.hook_from else None,
            cover_mm=self.opening.floor_cover_mm if is_leg_on_floor else 0.0,
            terms=(*plinth, Term(longer_mm, "tilt")),
            is_shared=is_true_frame(self.opening),
            units=self.house.units,
        )

    def _twist(self) -> str:
        """Say what is done where a lining is more proud at one end of a piece than at the other."""
        figures = self.plane.corners_mm()
        twisted = any(
            abs(figures[side] - figures[(side + 1) % 4]) >= SAID_FROM_MM
            for side in range(4)
            if self.trim.sides[side].width_mm > 0.0
        )
        return say(" Each end is cut for the lining at its own corner.") if twisted else ""

    def _nothing_to_cut(self) -> tuple[Finding, ...]:
        reason = say("No mitre stands on a lining that can be met so.")
        return _left(self.opening, reason, is_second=self.is_second)

    def _moves(self) -> str:
        return joined(
            ", ",
            (
                say(
                    "{back} {mm} at the {name}",
                    back=say("back") if mm > 0.0 else say("forward"),
                    mm=format_length(abs(mm), self.house.units),
                    name=name,
                )
                for mm, name in zip(self.plane.corners_mm(), CORNER_NAMES, strict=True)
                if abs(mm) >= SAID_FROM_MM
            ),
        )

    def _most(self, cuts: _Cuts) -> str:
        return format_angle(max(abs(cut.bevel_deg) for pair in cuts.values() for cut in pair))

    def _finding(self, severity: Severity, wrong: str, do: str, *, code: str) -> Finding:
        figures = self.plane.corners_mm()
        reveal = say("On the second face the reveal") if self.is_second else say("The reveal")
        read = joined(
            ", ",
            (
                say(
                    "{mm} {proud} at the {name}",
                    mm=format_length(abs(mm), self.house.units),
                    proud=say("proud") if mm > 0.0 else say("shy"),
                    name=name,
                )
                for mm, name in zip(figures, CORNER_NAMES, strict=True)
                if abs(mm) >= SAID_FROM_MM
            ),
        )
        return Finding(
            code=code,
            severity=severity,
            place=self.opening.mark,
            read=say(
                "{reveal} stands {read} ({units}), and you chose flush {flush}.",
                reveal=reveal,
                read=read,
                units=format_unit(self.house.units),
                flush=self.opening.flush.value,
            ),
            wrong=wrong,
            do=do,
        )


def _end(cut: ClosingCut) -> EndCut:
    return EndCut(kind=CutKind.COMPOUND, mitre_deg=cut.mitre_deg, bevel_deg=cut.bevel_deg)

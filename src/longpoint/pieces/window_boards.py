"""The window board between its linings, and the apron below it."""

from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import PieceError
from longpoint.pieces.boards import Side
from longpoint.pieces.face_set import FaceSet
from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.pieces.piece import Piece, Role
from longpoint.pieces.returns import RETURN_CUT, return_piece
from longpoint.quantities.formatting import format_length
from longpoint.shape.point import Point, direction
from longpoint.speech.said import say
from longpoint.survey.openings import ApronEnds, BoardFit, Layout
from longpoint.survey.profiles import Profile
from longpoint.trims.set_rings import BOTTOM, LEFT, RIGHT

PRINTED_MM: Final = 0.5
"""Sheets print to this, so what differs by less is not worth a rip."""

APRON: Final = Role.APRON.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Notch:
    """What is cut out of one end of a window board, so that it goes between the linings.

    Attributes:
        along_mm: Along the board, from its end to the lining's face.
        depth_mm: Across it at the lining, from its back edge at the sash to the wall's face.
        end_depth_mm: The same at the board's end, on the line of the wall's face carried on.
        rip_mm: Width of the board at its end: that depth and the nosing.
    """

    along_mm: float
    depth_mm: float
    end_depth_mm: float
    rip_mm: float


def below_pieces(face: FaceSet) -> tuple[Piece, ...]:
    """Return the apron with its returns, and the board when its profile is known.

    Raises:
        PieceError: The board leaves no horn to notch.
    """
    if face.opening.layout is not Layout.BOARD_AND_APRON:
        return ()
    apron = _apron(face)
    if not face.opening.board:
        return apron
    return (*apron, _board(face))


def notches(face: FaceSet, fit: BoardFit) -> tuple[Notch, Notch]:
    """Return the notches of the left and the right end.

    The board reaches from horn to horn; the linings stand where the opening's bottom corners were
    fitted, and the wall's face runs on straight from one depth to the other. Where the linings at
    the board were read by themselves, the two ends share what that differs.

    Raises:
        PieceError: An end has nothing to be notched.
    """
    start, end = face.rings.foot
    bottom_left, bottom_right = face.fitted.corners[:2]
    slack_mm = 0.0
    if fit.inside_mm is not None:
        slack_mm = (face.fitted.side_mm[BOTTOM] - fit.inside_mm) / 2.0
    ux, uy = direction(start, end)

    left_mm, right_mm = fit.depth_left_mm, fit.depth_right_mm
    if face.fitted.face == "b":
        left_mm, right_mm = right_mm, left_mm
    between_mm = fit.inside_mm or face.fitted.side_mm[BOTTOM]
    deeper = (right_mm - left_mm) / between_mm

    def notch(outer: Point, lining: Point, sign: float, depth_mm: float) -> Notch:
        past_mm = sign * ((lining.x_mm - outer.x_mm) * ux + (lining.y_mm - outer.y_mm) * uy)
        along_mm = past_mm + face.opening.horn_mm + slack_mm
        if along_mm <= 0.0:
            raise PieceError(
                say(
                    "The window board of {mark} was laid between its linings.",
                    mark=face.opening.mark,
                ),
                say("It doesn't reach past them, so there is nothing to notch."),
                say("Read board_fit.inside and the bottom of the opening again."),
            )
        end_mm = depth_mm - sign * deeper * along_mm
        return Notch(
            along_mm=along_mm,
            depth_mm=depth_mm,
            end_depth_mm=end_mm,
            rip_mm=end_mm + fit.nosing_mm,
        )

    return (notch(start, bottom_left, 1.0, left_mm), notch(end, bottom_right, -1.0, right_mm))


def _apron(face: FaceSet) -> tuple[Piece, ...]:
    profile = face.house.profile(face.opening.profiles.bottom)
    length_mm = outer_mm(face)
    apron = face.square_piece(
        APRON,
        Role.APRON,
        profile,
        length_mm,
        u_mm=face.fitted.side_u_mm[BOTTOM],
        hand_sum=_outer_sum(face, length_mm, ()),
    )
    if face.opening.apron_ends is ApronEnds.SQUARE:
        return (apron,)
    back_mm = length_mm - 2.0 * profile.thickness_mm
    if back_mm <= 0.0:
        raise PieceError(
            say(
                "The apron of {mark} is {length_mm:.0f} mm long.",
                mark=face.opening.mark,
                length_mm=length_mm,
            ),
            say("Its two returns meet before its middle."),
            say("Cut its ends square."),
        )
    mitred = replace(apron, back_mm=back_mm, left=RETURN_CUT, right=RETURN_CUT)
    return (mitred, *(return_piece(mitred, mitred.mark, side) for side in Side))


def _board(face: FaceSet) -> Piece:
    profile = face.house.profile(face.opening.board)
    horn_mm = face.opening.horn_mm
    length_mm = outer_mm(face) + 2.0 * horn_mm
    fit = face.opening.board_fit
    return face.square_piece(
        Role.BOARD.value,
        Role.BOARD,
        profile,
        length_mm,
        u_mm=face.fitted.side_u_mm[BOTTOM],
        hand_sum=_outer_sum(face, length_mm, (Term(horn_mm, say("horns"), 2),)),
        notes=_board_notes(face, fit, profile) if fit is not None else (),
    )


def outer_mm(face: FaceSet) -> float:
    """Return how long the set is along its bottom, from outer edge to outer edge."""
    start, end = face.rings.foot
    return start.distance_mm(end)


def _outer_sum(face: FaceSet, length_mm: float, more: tuple[Term, ...]) -> str:
    """Return the sum of a piece that lies below the whole set, from outer edge to outer edge."""
    left_mm, right_mm = (face.trim.sides[side].width_mm for side in (LEFT, RIGHT))
    legs = (
        (Term(left_mm, say("legs"), 2),)
        if left_mm == right_mm
        else (Term(left_mm, say("left leg")), Term(right_mm, say("right leg")))
    )
    band = (Term(face.shape.band_mm, say("back bands"), 2),) if face.shape.band_mm else ()
    quirks = (face.trim.quirks_mm[LEFT], face.trim.quirks_mm[RIGHT])
    return hand_sum(
        face.fitted.side_mm[BOTTOM],
        quirks,
        length_mm,
        0.0,
        None,
        terms=(*legs, *band, *more),
        units=face.house.units,
    )


def _board_notes(face: FaceSet, fit: BoardFit, profile: Profile) -> tuple[str, ...]:
    left, right = notches(face, fit)

    def shown(length_mm: float) -> str:
        return format_length(length_mm, face.house.units)

    notes = [say("lies with its back edge, to the sash, away from you")]
    widest_mm = max(left.rip_mm, right.rip_mm)
    spare_mm = profile.width_mm - widest_mm
    if spare_mm >= -PRINTED_MM:
        if abs(left.rip_mm - right.rip_mm) >= PRINTED_MM:
            notes.append(
                say(
                    "rip to {shown} at the left, {shown_2} at the right",
                    shown=shown(left.rip_mm),
                    shown_2=shown(right.rip_mm),
                )
            )
        elif spare_mm >= PRINTED_MM:
            notes.append(say("rip to {shown}", shown=shown(widest_mm)))
    cuts = []
    for notch in (left, right):
        cut = say(
            "{shown} x {shown_2}",
            shown=shown(notch.along_mm),
            shown_2=shown(notch.depth_mm),
        )
        if abs(notch.end_depth_mm - notch.depth_mm) >= PRINTED_MM:
            cut += say(" ({shown} at its end)", shown=shown(notch.end_depth_mm))
        cuts.append(cut)
    if cuts[0] == cuts[1]:
        notes.append(
            say(
                "notch {cuts} at both ends, along x back from the sash",
                cuts=cuts[0],
            )
        )
    else:
        notes.append(
            say(
                "notch {cuts} at the left end, {cuts_2} at the right",
                cuts=cuts[0],
                cuts_2=cuts[1],
            )
        )
    return tuple(notes)

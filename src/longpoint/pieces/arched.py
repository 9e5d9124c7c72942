"""The pieces round an opening with an arched head: legs, sill piece, and the arch's segments."""

import math
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, PieceError
from longpoint.pieces.arch_findings import ArchFace, arch_findings, board_wanting, steep_cuts
from longpoint.pieces.face_set import FaceSet, end_cut, face_set
from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.pieces.piece import SQUARE_CUT, EndCut, HookEnd, Piece, Role
from longpoint.pieces.plinths import plinth_findings, plinth_pieces
from longpoint.pieces.window_board_findings import below_findings
from longpoint.pieces.window_boards import below_pieces
from longpoint.quantities.formatting import format_length, format_tenth
from longpoint.shape.fitted import FittedOpening
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Joint, Method, Mitres, Opening
from longpoint.survey.profiles import Profile
from longpoint.trims.arch import arch_radius_mm, arch_trim
from longpoint.trims.arch_segments import Segment, arch_segments, fewest_segments
from longpoint.trims.rings import Ring, mitred_ring
from longpoint.trims.set_rings import BOTTOM, HEAD, LEFT, RIGHT

RISE_U_MM: Final = 1.0
"""What a rise is read to, off a straight edge: assumed, no source."""

_ROLES: Final = {BOTTOM: Role.SILL, RIGHT: Role.RIGHT_LEG, LEFT: Role.LEFT_LEG}


def arch_pieces(
    house: House, opening: Opening, fitted: FittedOpening
) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    """Return the pieces of one face of an opening with an arched head, and what is said of them.

    A segment is cut on the saw as a blank with straight edges, and then sawn to the curve.

    Args:
        house: Gives profiles and units.
        opening: Its settings; its arch is given.
        fitted: Its shape: bottom, legs up to the springing, and the line between the springings.

    Returns:
        Left leg, segments from left to right, right leg, sill piece, plinths, apron and board; no
        segment while there is no board to cut them from, which a finding then says.

    Raises:
        PieceError: There is no such arch, or the set is to be put together in a way that no arch
            can be.
    """
    face = arched_face(house, opening, fitted)
    pieces = [
        _leg(face, LEFT),
        *_segments(face),
        _leg(face, RIGHT),
        *([] if face.set.trim.has_bare_bottom else [_sill(face)]),
        *plinth_pieces(face.set),
        *below_pieces(face.set),
    ]
    said = (*arch_findings(face), *steep_cuts(opening.mark, pieces))
    return tuple(pieces), (*said, *plinth_findings(face.set), *below_findings(face.set))


def arched_face(house: House, opening: Opening, fitted: FittedOpening) -> ArchFace:
    """Return the face of an arched opening before its pieces are made.

    Raises:
        PieceError: There is no such arch, or it can't be put together so.
    """
    arch = opening.arch
    if arch is None:
        raise PieceError(
            say("{mark} has a straight head.", mark=opening.mark),
            say("Its pieces are no arch's."),
            say("Give its rise as arch.rise if it has one."),
        )
    _refuse_joints(opening)
    # A frame of true 45s is a rectangle; an arched set is always cut to its own corners.
    as_read = replace(opening, method=_own_corners(opening.method), mitres=Mitres.AS_READ)
    made = face_set(house, as_read, fitted)
    rise_mm = arch.rise_mm if fitted.rise_mm is None else fitted.rise_mm
    trim = arch_trim(made.trim.corners, rise_mm, made.trim.sides)
    blank = house.profile(arch.blank) if arch.blank else None
    count = arch.segments
    if count is None and blank is not None:
        count = fewest_segments(trim, blank.width_mm)
    return ArchFace(set=made, written=opening, rise_mm=rise_mm, trim=trim, blank=blank, count=count)


def _own_corners(method: Method) -> Method:
    return Method.BATCH if method is Method.BENCH else method


def _refuse_joints(opening: Opening) -> None:
    if opening.joint is not Joint.MITRE:
        raise PieceError(
            say(
                '{mark} has an arched head and joint = "{joint}".',
                mark=opening.mark,
                joint=opening.joint.value,
            ),
            say(
                "The arch springs from its legs at a joint of its own, so no head runs "
                "over them and no block stands on a corner."
            ),
            say('Write joint = "mitre" at this opening.'),
        )
    if opening.back_band:
        raise PieceError(
            say(
                "{mark} has an arched head and the back band {back_band}.",
                mark=opening.mark,
                back_band=opening.back_band,
            ),
            say("A band cut in straight pieces doesn't follow the curve."),
            say('Write back_band = "" at this opening, and bend or saw the band by hand.'),
        )


def _leg(face: ArchFace, side: int) -> Piece:
    ring = leg_ring(face, side)
    edges = ring.edges()
    is_right = side == RIGHT
    joint = face.trim.right if is_right else face.trim.left
    top = end_cut(joint.leg_deg, is_mitre=False)
    foot = _foot(face.set, side, edges.start_deg if is_right else edges.end_deg)
    piece = face.set.piece(
        _ROLES[side].value,
        _ROLES[side],
        face.set.trim.profiles[side],
        edges,
        left=foot if not is_right else top,
        right=top if not is_right else foot,
        u_mm=face.set.fitted.side_u_mm[side],
    )
    terms = [Term(joint.past_mm, say("to the springing joint"))]
    if side in face.set.rings.plinths:
        terms.append(Term(-face.set.shape.plinth_height_mm, "plinth"))
    quirks = () if face.set.trim.has_bare_bottom else (face.set.trim.quirks_mm[BOTTOM],)
    return replace(piece, hand_sum=_sum(face.set, side, piece, quirks, tuple(terms)))


def leg_ring(face: ArchFace, side: int) -> Ring:
    """Return where a leg lies: its foot as in any set, its head end at the springing joint."""
    straight = face.set.rings.sides[side]
    if side == RIGHT:
        joint = face.trim.right
        return replace(straight, inner_end=joint.inner, outer_end=joint.outer)
    joint = face.trim.left
    return replace(straight, inner_start=joint.inner, outer_start=joint.outer)


def _foot(made: FaceSet, side: int, saw_deg: float) -> EndCut:
    if side in made.rings.plinths:
        return SQUARE_CUT
    return end_cut(saw_deg, is_mitre=not made.trim.has_bare_bottom)


def _sill(face: ArchFace) -> Piece:
    edges = mitred_ring(face.set.trim.outline, BOTTOM).edges()
    piece = face.set.piece(
        Role.SILL.value,
        Role.SILL,
        face.set.trim.profiles[BOTTOM],
        edges,
        left=end_cut(edges.end_deg, is_mitre=True),
        right=end_cut(edges.start_deg, is_mitre=True),
        u_mm=face.set.fitted.side_u_mm[BOTTOM],
    )
    quirks = (face.set.trim.quirks_mm[LEFT], face.set.trim.quirks_mm[RIGHT])
    return replace(piece, hand_sum=_sum(face.set, BOTTOM, piece, quirks, ()))


def _sum(
    made: FaceSet, side: int, piece: Piece, quirks: tuple[float, ...], terms: tuple[Term, ...]
) -> str:
    hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
    return hand_sum(
        made.fitted.side_mm[side],
        quirks,
        piece.inner_mm,
        piece.width_mm,
        hooked[piece.hook_from].mitre_deg if piece.hook_from else None,
        cover_mm=made.opening.floor_cover_mm if not quirks else 0.0,
        terms=terms,
        units=made.house.units,
    )


def _segments(face: ArchFace) -> tuple[Piece, ...]:
    if face.blank is None or face.count is None or board_wanting(face) is not None:
        return ()
    u_mm = _chord_u_mm(face, face.count)
    return tuple(
        _segment(face, face.blank, index, segment, u_mm)
        for index, segment in enumerate(arch_segments(face.trim, face.count))
    )


def _segment(face: ArchFace, board: Profile, index: int, segment: Segment, u_mm: float) -> Piece:
    ring = segment.blank(board.width_mm)
    edges = ring.edges()
    piece = face.set.piece(
        f"{Role.SEGMENT.value}-{index + 1}",
        Role.SEGMENT,
        board,
        edges,
        left=end_cut(edges.end_deg, is_mitre=True),
        right=end_cut(edges.start_deg, is_mitre=True),
        u_mm=u_mm,
        notes=_notes(face, index, segment, ring),
    )
    hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
    built = hand_sum(
        edges.inner_mm,
        (),
        edges.inner_mm,
        board.width_mm,
        hooked[piece.hook_from].mitre_deg if piece.hook_from else None,
        units=face.units,
    )
    return replace(
        piece,
        hand_sum=say(
            "{edge} {built}",
            edge=_edge_words(face, index),
            built=built,
        ),
    )


def _edge_words(face: ArchFace, index: int) -> str:
    """Return where a segment's inner edge comes from; at an end it runs to the springing joint."""
    assert face.count is not None
    radius = format_tenth(face.trim.inner_mm, face.units)
    share_deg = face.trim.circle.half_deg / face.count
    edge = say(
        "inner edge, 2 x inner radius {radius} x sin {share_deg:.2f}",
        radius=radius,
        share_deg=share_deg,
    )
    return say(
        "{edge}{and_}:",
        edge=edge,
        and_=say(" and on to the leg") if index in (0, face.count - 1) else "",
    )


def _notes(face: ArchFace, index: int, segment: Segment, ring: Ring) -> tuple[str, ...]:
    assert face.count is not None
    left = ring.inner_end
    along_mm = (segment.centre.x_mm - left.x_mm) * segment.way[1] - (
        segment.centre.y_mm - left.y_mm
    ) * segment.way[0]
    inner, outer, low, along = (
        format_length(length_mm, face.units)
        for length_mm in (face.trim.inner_mm, face.trim.outer_mm, segment.low_mm, along_mm)
    )
    ends = [
        side
        for side, is_there in (("left", index == 0), ("right", index == face.count - 1))
        if is_there
    ]
    legs = say("{ends} end to the {ends} leg", ends=joined(say(" and "), ends)) if ends else ""
    return (
        say(
            "then saw to the template: inner radius {inner}, outer radius {outer}",
            inner=inner,
            outer=outer,
        ),
        say(
            "trammel point {low} below the inner edge, {along} along it from its left corner",
            low=low,
            along=along,
        ),
        *([legs] if legs else []),
    )


def _chord_u_mm(face: ArchFace, count: int) -> float:
    """Return the standard uncertainty of a segment's inner edge, by span and rise."""
    circle = face.trim.circle
    span_mm = circle.left.distance_mm(circle.right)

    def chord_mm(span_mm: float, rise_mm: float) -> float:
        radius_mm = arch_radius_mm(span_mm, rise_mm)
        half = math.atan2(span_mm / 2.0, radius_mm - rise_mm)
        return 2.0 * (radius_mm + face.trim.inner_mm - circle.radius_mm) * math.sin(half / count)

    plain_mm = chord_mm(span_mm, face.rise_mm)
    by_span = chord_mm(span_mm + 1.0, face.rise_mm) - plain_mm
    by_rise = chord_mm(span_mm, face.rise_mm + 1.0) - plain_mm
    return math.hypot(by_span * face.set.fitted.side_u_mm[HEAD], by_rise * RISE_U_MM)

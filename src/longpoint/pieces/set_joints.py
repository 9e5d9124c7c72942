"""Legs, head and sill piece of a set, by the way their corners are joined."""

from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.face_set import LEAST_FOOT_DEG, FaceSet, end_cut
from longpoint.pieces.face_trim import is_true_frame
from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.pieces.piece import SQUARE_CUT, EndCut, HookEnd, Piece, Role
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.openings import Joint
from longpoint.trims.corner_blocks import gap_at_block_mm
from longpoint.trims.rings import Ring
from longpoint.trims.set_rings import BOTTOM, HEAD, LEFT, RIGHT

BUTT_FLUSH: Final = "butt-flush"
BUTT_OFF_SQUARE: Final = "butt-off-square"

CORNER_WORDS: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))

SIDE_ROLES: Final = (Role.SILL, Role.RIGHT_LEG, Role.HEAD, Role.LEFT_LEG)

LEGS: Final = (LEFT, RIGHT)


def side_pieces(face: FaceSet) -> tuple[Piece, ...]:
    """Return left leg, head, right leg, and the sill piece where the set goes all round."""
    return tuple(
        _side(face, side) for side in (LEFT, HEAD, RIGHT, BOTTOM) if side in face.rings.sides
    )


def butt_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Return what is to be said of butt joints: a flush face shows every step, a lean a gap."""
    if face.opening.joint is not Joint.BUTT:
        return ()
    return (*_flush_findings(face), *_lean_findings(face))


def side_ring(face: FaceSet, side: int) -> Ring:
    """Return where the piece along a side lies, its ends square where its blocks take them so."""
    return face.rings.sides[side].squared(
        at_start=_is_squared_to_block(face, side, side),
        at_end=_is_squared_to_block(face, side, (side + 1) % 4),
    )


def _side(face: FaceSet, side: int) -> Piece:
    after = (side + 1) % 4
    edges = side_ring(face, side).edges()
    left, right = _cut(face, side, after, edges.end_deg), _cut(face, side, side, edges.start_deg)
    role = SIDE_ROLES[side]
    piece = face.piece(
        role.value,
        role,
        face.trim.profiles[side],
        edges,
        left=left,
        right=right,
        u_mm=face.fitted.side_u_mm[side],
    )
    return replace(piece, hand_sum=_hand_sum(face, side, piece))


def _cut(face: FaceSet, side: int, corner: int, saw_deg: float) -> EndCut:
    is_foot = face.trim.has_bare_bottom and corner in (0, 1)
    if is_foot and side in face.rings.plinths:
        return SQUARE_CUT
    return end_cut(saw_deg, is_mitre=not is_foot and face.opening.joint is Joint.MITRE)


def _is_squared_to_block(face: FaceSet, side: int, corner: int) -> bool:
    """Tell whether an end is cut square at its block: the wedge left open there is allowed."""
    block = face.rings.block_at(corner)
    if block is None:
        return False
    gap_mm = gap_at_block_mm(face.trim.sides[side].width_mm, block.off_deg)
    return gap_mm <= face.opening.max_gap_mm


def _hand_sum(face: FaceSet, side: int, piece: Piece) -> str:
    ends = ((side - 1) % 4, (side + 1) % 4)
    quirks = tuple(
        face.trim.quirks_mm[end]
        for end in ends
        if not (face.trim.has_bare_bottom and end == BOTTOM)
    )
    hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
    return hand_sum(
        face.fitted.side_mm[side],
        quirks,
        piece.inner_mm,
        piece.width_mm,
        hooked[piece.hook_from].mitre_deg if piece.hook_from else None,
        cover_mm=face.opening.floor_cover_mm if len(quirks) == 1 else 0.0,
        terms=_terms(face, side),
        is_shared=is_true_frame(face.opening),
        units=face.house.units,
    )


def _terms(face: FaceSet, side: int) -> tuple[Term, ...]:
    """Return what the joints add to a side between its quirks, or take off it."""
    neighbours = [n for n in ((side - 1) % 4, (side + 1) % 4) if face.trim.sides[n].width_mm > 0.0]
    widths_mm = [face.trim.sides[n].width_mm for n in neighbours]
    terms: list[Term] = []
    match face.opening.joint:
        case Joint.BUTT if side in (HEAD, BOTTOM):
            terms += _paired(widths_mm, say("legs"), (say("right leg"), say("left leg")))
            if side == HEAD:
                terms += _paired([face.shape.horn_mm] * 2, say("horns"), (say("horn"), say("horn")))
        case Joint.BLOCKS:
            over_mm = [-(face.shape.block_mm - width_mm) / 2.0 for width_mm in widths_mm]
            terms += _paired(over_mm, say("blocks"), (say("block"), say("block")))
        case _:
            pass
    if side in face.rings.plinths:
        terms.append(Term(-face.shape.plinth_height_mm, say("plinth")))
    return tuple(terms)


def _paired(lengths_mm: list[float], both: str, each: tuple[str, str]) -> list[Term]:
    """Return one term for two equal lengths, else one for each."""
    if len(lengths_mm) == 2 and lengths_mm[0] == lengths_mm[1]:
        return [Term(lengths_mm[0], both, 2)]
    return [Term(length_mm, name) for length_mm, name in zip(lengths_mm, each, strict=False)]


def _flush_findings(face: FaceSet) -> tuple[Finding, ...]:
    through = [side for side in (HEAD, BOTTOM) if side in face.rings.sides]
    leg_mm = max(face.trim.profiles[side].thickness_mm for side in LEGS)
    flat = [s for s in through if face.trim.profiles[s].thickness_mm <= leg_mm]
    if not flat:
        return ()
    names = joined(say(" and "), ({HEAD: "head", BOTTOM: say("sill piece")}[side] for side in flat))
    thinnest_mm = min(face.trim.profiles[side].thickness_mm for side in flat)
    units = face.house.units
    return (
        Finding(
            code=BUTT_FLUSH,
            severity=Severity.NOTE,
            place=face.opening.mark,
            read=say(
                "The {names} {is_} {thinnest} thick, the legs {leg}.",
                names=names,
                is_=say("is") if len(flat) == 1 else say("are"),
                thinnest=format_with_unit(thinnest_mm, units),
                leg=format_with_unit(leg_mm, units),
            ),
            wrong=say(
                "Butted together, every step between the faces shows, and more "
                "so when the timber moves."
            ),
            do=say(
                "Take a head thicker than the legs, which hides it (common "
                "practice, no source), or flush the faces once they are up."
            ),
        ),
    )


def _lean_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Say once how far the worst leg would stand open at its head or sill if cut square."""
    if is_true_frame(face.opening):
        return ()
    legs = [
        (face.trim.profiles[side].width_mm, off_deg, corner)
        for side in LEGS
        for corner, off_deg in _butted_ends(face, side)
    ]
    gaps = [(gap_at_block_mm(width_mm, off), off, corner) for width_mm, off, corner in legs]
    gap_mm, off_deg, corner = max(gaps, key=lambda each: each[0])
    if gap_mm <= face.opening.max_gap_mm or abs(off_deg) < LEAST_FOOT_DEG:
        return ()
    return (
        Finding(
            code=BUTT_OFF_SQUARE,
            severity=Severity.NOTE,
            place=face.opening.mark,
            read=say(
                "The {corner_words} corner is {off} degrees.",
                corner_words=CORNER_WORDS[corner],
                off=format_angle(90.0 - off_deg),
            ),
            wrong=say(
                "A leg cut square would stand open about {gap_mm:.1f} mm against "
                "the piece that runs over it.",
                gap_mm=gap_mm,
            ),
            do=say(
                "The sheet cuts each leg to its own corner, and the piece over it "
                "to the legs' outer lines (square where it has horns); keep left "
                "and right apart."
            ),
        ),
    )


def _butted_ends(face: FaceSet, side: int) -> tuple[tuple[int, float], ...]:
    """Return the corners at which a leg is butted, with its saw angle there."""
    edges = face.rings.sides[side].edges()
    ends = ((side, edges.start_deg), ((side + 1) % 4, edges.end_deg))
    return tuple(
        (corner, off)
        for corner, off in ends
        if not (face.trim.has_bare_bottom and corner in (0, 1))
    )

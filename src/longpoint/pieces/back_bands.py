"""A back band round the outer edges of a set."""

from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.face_set import FaceSet, end_cut
from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.pieces.piece import SQUARE_CUT, EndCut, HookEnd, Piece, Role
from longpoint.pieces.set_joints import SIDE_ROLES
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.openings import Joint, Opening
from longpoint.trims.set_rings import BOTTOM, HEAD, LEFT, RIGHT

BAND_THIN: Final = "band-thin"
BAND_OVERHANGS: Final = "band-overhangs"


def refuse_band(opening: Opening) -> None:
    """Refuse a back band round a set whose outer edges don't run straight from corner to corner.

    Raises:
        PieceError: The set has horns or corner blocks.
    """
    if not opening.back_band:
        return
    if opening.joint is Joint.BLOCKS:
        what, key = (
            say("corner blocks, which stand past its outer edges"),
            say("back_band or the blocks"),
        )
    elif opening.joint is Joint.BUTT and opening.head_horn_mm > 0.0:
        what, key = say("a head with horns, which run past the legs"), say("back_band or head_horn")
    else:
        return
    raise PieceError(
        say(
            "{mark} is to have the back band {back_band}.",
            mark=opening.mark,
            back_band=opening.back_band,
        ),
        say("Its set has {what}, so no band goes round it in straight pieces.", what=what),
        say("Take {key} out.", key=key),
    )


def band_pieces(face: FaceSet) -> tuple[Piece, ...]:
    """Return the back band: mitred at its own width, its inner edges on the set's outer edges."""
    if not face.rings.band:
        return ()
    return tuple(
        _band(face, side) for side in (LEFT, HEAD, RIGHT, BOTTOM) if side in face.rings.band
    )


def band_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Return what is to be said of a back band: its thickness, and whether a plinth carries it."""
    if not face.rings.band:
        return ()
    band = face.house.profile(face.opening.back_band)
    units = face.house.units
    thickest_mm = max(face.trim.profiles[side].thickness_mm for side in face.rings.sides)
    findings = []
    if band.thickness_mm <= thickest_mm:
        findings.append(
            Finding(
                code=BAND_THIN,
                severity=Severity.NOTE,
                place=face.opening.mark,
                read=say(
                    "The back band {band} is {thickness} thick, the architrave {thickest}.",
                    band=band.name,
                    thickness=format_with_unit(band.thickness_mm, units),
                    thickest=format_with_unit(thickest_mm, units),
                ),
                wrong=say(
                    "It doesn't stand past the architrave's face, so the joint between them shows."
                ),
                do=say("Take a band thicker than the architrave (common practice, no source)."),
            )
        )
    carried_mm = face.shape.plinth_mm - max(
        face.trim.sides[side].width_mm for side in (LEFT, RIGHT)
    )
    if face.rings.plinths and 0.0 < carried_mm < band.width_mm:
        findings.append(
            Finding(
                code=BAND_OVERHANGS,
                severity=Severity.WARNING,
                place=face.opening.mark,
                read=say(
                    "The plinth block stands {carried} past the leg, the back "
                    "band is {width} wide.",
                    carried=format_with_unit(carried_mm, units),
                    width=format_with_unit(band.width_mm, units),
                ),
                wrong=say("The band ends on the block's top and hangs over its outer edge."),
                do=say("Take a block as wide as leg and band together."),
            )
        )
    return tuple(findings)


def _band(face: FaceSet, side: int) -> Piece:
    edges = face.rings.band[side].edges()
    after = (side + 1) % 4
    piece = face.piece(
        f"band-{SIDE_ROLES[side].value}",
        Role.BACK_BAND,
        face.house.profile(face.opening.back_band),
        edges,
        left=_cut(face, side, after, edges.end_deg),
        right=_cut(face, side, side, edges.start_deg),
        u_mm=face.fitted.side_u_mm[side],
    )
    return replace(piece, hand_sum=_hand_sum(face, side, piece))


def _cut(face: FaceSet, side: int, corner: int, saw_deg: float) -> EndCut:
    is_foot = face.trim.has_bare_bottom and corner in (0, 1)
    if is_foot and _stands_on_plinth(face, side):
        return SQUARE_CUT
    return end_cut(saw_deg, is_mitre=not is_foot)


def _stands_on_plinth(face: FaceSet, side: int) -> bool:
    return side in face.rings.plinths and face.shape.plinth_mm > face.trim.sides[side].width_mm


def _hand_sum(face: FaceSet, side: int, piece: Piece) -> str:
    outline = face.trim.outline
    hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
    terms = (Term(-face.shape.plinth_height_mm, "plinth"),) if _stands_on_plinth(face, side) else ()
    built = hand_sum(
        outline.outer[side].distance_mm(outline.outer[(side + 1) % 4]),
        (),
        piece.inner_mm,
        piece.width_mm,
        hooked[piece.hook_from].mitre_deg if piece.hook_from else None,
        terms=terms,
        units=face.house.units,
    )
    return say("outer edge {built}", built=built)

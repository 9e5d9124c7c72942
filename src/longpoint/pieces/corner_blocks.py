"""The square blocks at the corners of a set, and how far a corner makes them stand out of line."""

import math
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.face_set import FaceSet
from longpoint.pieces.piece import Piece, Role
from longpoint.pieces.set_joints import CORNER_WORDS
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.trims.corner_blocks import CornerBlock, gap_at_block_mm

BLOCK_NARROW: Final = "block-narrow"
BLOCK_THIN: Final = "block-thin"
BLOCK_OFF_SQUARE: Final = "block-off-square"


def corner_blocks(face: FaceSet) -> tuple[Piece, ...]:
    """Return a square block for every corner that has one, clockwise from the bottom left."""
    if not face.rings.blocks:
        return ()
    profile = face.house.profile(face.opening.corner_block)
    blocks = sorted(face.rings.blocks, key=lambda block: -block.corner % 4)
    return tuple(
        face.square_piece(
            block_name(block.corner),
            Role.CORNER_BLOCK,
            profile,
            profile.width_mm,
        )
        for block in blocks
    )


def block_name(corner: int) -> str:
    """Return what stands behind the opening's mark in a block's own, by the corner's number."""
    return f"{CORNER_WORDS[corner].replace(' ', '-')}-block"


def block_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Return what is to be said of corner blocks: their size beside the trim, and the corners."""
    if not face.rings.blocks:
        return ()
    return (*_size_findings(face), *_corner_findings(face))


def _size_findings(face: FaceSet) -> tuple[Finding, ...]:
    block = face.house.profile(face.opening.corner_block)
    beside = [face.trim.profiles[side] for side in face.rings.sides]
    width_mm = max(profile.width_mm for profile in beside)
    thickness_mm = max(profile.thickness_mm for profile in beside)
    units = face.house.units
    findings = []
    if block.width_mm <= width_mm:
        findings.append(
            Finding(
                code=BLOCK_NARROW,
                severity=Severity.WARNING,
                place=face.opening.mark,
                read=say(
                    "The corner block {block} is {width} wide, the trim beside it {width_2}.",
                    block=block.name,
                    width=format_with_unit(block.width_mm, units),
                    width_2=format_with_unit(width_mm, units),
                ),
                wrong=say(
                    "It doesn't stand proud of the trim's edges, so nothing hides where they meet."
                ),
                do=say(
                    "Take a block {a_few} wider than the trim (common practice, no source).",
                    a_few=_a_few(units),
                ),
            )
        )
    if block.thickness_mm <= thickness_mm:
        findings.append(
            Finding(
                code=BLOCK_THIN,
                severity=Severity.NOTE,
                place=face.opening.mark,
                read=say(
                    "The corner block {block} is {thickness} thick, the trim "
                    "beside it {thickness_2}.",
                    block=block.name,
                    thickness=format_with_unit(block.thickness_mm, units),
                    thickness_2=format_with_unit(thickness_mm, units),
                ),
                wrong=say("The trim's ends show beside a block that isn't the thicker."),
                do=say(
                    "Take a thicker block (common practice, no source), or ease the trim's ends."
                ),
            )
        )
    return tuple(findings)


def _a_few(units: Units) -> str:
    return say("3 to 6 mm") if units is Units.MM else say("1/8 to 1/4 in")


def _corner_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Say once which corners are too far off square for square ends, and what closes them."""
    off = [block for block in face.rings.blocks if _gap_mm(face, block) > face.opening.max_gap_mm]
    if not off:
        return ()
    worst = max(off, key=lambda block: _gap_mm(face, block))
    corners = joined(
        ", ",
        (
            say(
                "{corner_words} {off}",
                corner_words=CORNER_WORDS[block.corner],
                off=format_angle(90.0 - 2.0 * block.off_deg),
            )
            for block in off
        ),
    )
    crooked_mm = face.shape.block_mm * math.sin(math.radians(abs(worst.off_deg)))
    return (
        Finding(
            code=BLOCK_OFF_SQUARE,
            severity=Severity.NOTE,
            place=face.opening.mark,
            read=say(
                "Blocks are square, corners here aren't: {corners} degrees.",
                corners=corners,
            ),
            wrong=say(
                "The {corner_words} block, set to share that, stands "
                "{crooked_mm:.1f} mm out of line over its own length, and ends "
                "cut square would stand open about {gap_mm:.1f} mm there at the "
                "{longer_edge} edge.",
                corner_words=CORNER_WORDS[worst.corner],
                crooked_mm=crooked_mm,
                gap_mm=_gap_mm(face, worst),
                longer_edge=_longer_edge(worst),
            ),
            do=say(
                "The sheet cuts such ends to their block: {cuts}. Set each block so "
                "that neither neighbour has more of the lean.",
                cuts=_cuts(off),
            ),
        ),
    )


def _gap_mm(face: FaceSet, block: CornerBlock) -> float:
    """Return the wider of the two wedges that square ends leave at a block."""
    beside = ((block.corner - 1) % 4, block.corner)
    width_mm = max(face.trim.sides[side].width_mm for side in beside)
    return gap_at_block_mm(width_mm, block.off_deg)


def _longer_edge(block: CornerBlock) -> str:
    return say("inner") if block.off_deg < 0 else say("outer")


def _cuts(blocks: list[CornerBlock]) -> str:
    return joined(
        ", ",
        (
            say(
                "{corner_words} {off} off square, {longer_edge} edge the longer",
                corner_words=CORNER_WORDS[block.corner],
                off=format_angle(abs(block.off_deg)),
                longer_edge=_longer_edge(block),
            )
            for block in blocks
        ),
    )

"""Every piece of a set where it lies on the wall, whatever way the set is put together."""

from dataclasses import dataclass

from longpoint.errors import PieceError, ShapeError
from longpoint.shape.point import Point, line_crossing
from longpoint.speech.said import say
from longpoint.trims.butts import butted_ring
from longpoint.trims.corner_blocks import CornerBlock, corner_block, ring_between_blocks
from longpoint.trims.outline import TrimOutline, TrimSide, trim_outline
from longpoint.trims.plinths import OnPlinth, on_plinth
from longpoint.trims.rings import Ring, mitred_ring

BOTTOM = 0
RIGHT = 1
HEAD = 2
LEFT = 3
"""The sides of an opening with four."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetShape:
    """How a set round four sides is put together, in sizes alone; 0 means there is none.

    Attributes:
        is_butted: True when head and sill piece run through over the legs.
        horn_mm: How far a butted head runs past the legs at each end.
        block_mm: Face of the corner blocks.
        plinth_mm: Face width of the plinth blocks.
        plinth_height_mm: Their height.
        band_mm: Face width of the back band round the outer edges.
    """

    is_butted: bool = False
    horn_mm: float = 0.0
    block_mm: float = 0.0
    plinth_mm: float = 0.0
    plinth_height_mm: float = 0.0
    band_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SetRings:
    """Where the pieces of a set lie.

    Attributes:
        sides: Piece along each side that has one, by side.
        blocks: Corner blocks.
        plinths: Plinth block under each leg, by the leg's side.
        band: Piece of the back band along each side that has one, by side.
        foot: Where the set ends at the left and at the right along a bare bottom, and along the
            lower edge where the bottom has a piece.
    """

    sides: dict[int, Ring]
    blocks: tuple[CornerBlock, ...]
    plinths: dict[int, Ring]
    band: dict[int, Ring]
    foot: tuple[Point, Point]

    def block_at(self, corner: int) -> CornerBlock | None:
        """Return the block on a corner."""
        return next((block for block in self.blocks if block.corner == corner), None)


def set_rings(corners: tuple[Point, ...], sides: tuple[TrimSide, ...], shape: SetShape) -> SetRings:
    """Return where every piece of a set round four sides lies.

    Args:
        corners: Bottom left, bottom right, top right, top left. [mm]
        sides: What stands along bottom, right, head and left; a bare bottom has no width.
        shape: How the set is put together.

    Raises:
        PieceError: A piece would have no length.
    """
    outline = trim_outline(corners, sides)
    try:
        rings, blocks = _side_rings(outline, sides, shape)
        plinths: dict[int, Ring] = {}
        if shape.plinth_mm > 0.0 and sides[BOTTOM].width_mm == 0.0:
            for side in (RIGHT, LEFT):
                if side not in rings:
                    continue
                rings[side], plinths[side] = _on_plinth(rings[side], side, shape)
        band, around = _band(outline, sides, shape, plinths)
        _refuse_turned(outline, (*rings.items(), *band.items()))
    except ShapeError as error:
        raise PieceError(error.read, error.wrong, error.do) from error
    return SetRings(
        sides=rings,
        blocks=blocks,
        plinths=plinths,
        band=band,
        foot=(around.outer[0], around.outer[1]),
    )


def _side_rings(
    outline: TrimOutline, sides: tuple[TrimSide, ...], shape: SetShape
) -> tuple[dict[int, Ring], tuple[CornerBlock, ...]]:
    trimmed = [side for side in range(4) if sides[side].width_mm > 0.0]
    if shape.is_butted:
        through, horns_mm = frozenset({BOTTOM, HEAD}), {HEAD: shape.horn_mm}
        return {s: butted_ring(outline, sides, s, through, horns_mm) for s in trimmed}, ()
    if shape.block_mm > 0.0:
        blocks = {
            corner: corner_block(outline, sides, corner, shape.block_mm)
            for corner in trimmed
            if (corner - 1) % 4 in trimmed
        }
        rings = {
            side: ring_between_blocks(outline, side, blocks.get(side), blocks.get((side + 1) % 4))
            for side in trimmed
        }
        return rings, tuple(blocks.values())
    return {side: mitred_ring(outline, side) for side in trimmed}, ()


def _on_plinth(leg: Ring, side: int, shape: SetShape) -> OnPlinth:
    return on_plinth(
        leg,
        foot_at_start=side == RIGHT,
        face_mm=shape.plinth_mm,
        height_mm=shape.plinth_height_mm,
    )


def _band(
    outline: TrimOutline, sides: tuple[TrimSide, ...], shape: SetShape, plinths: dict[int, Ring]
) -> tuple[dict[int, Ring], TrimOutline]:
    """Return the back band, and the lines between which the whole set lies."""
    if shape.band_mm == 0.0:
        return {}, outline
    around = trim_outline(
        outline.outer,
        tuple(
            TrimSide(inner_mm=0.0, width_mm=shape.band_mm if side.width_mm > 0.0 else 0.0)
            for side in sides
        ),
    )
    band = {side: mitred_ring(around, side) for side in range(4) if sides[side].width_mm > 0.0}
    for side, plinth in plinths.items():
        if shape.plinth_mm > sides[side].width_mm:
            band[side] = _on_top(band[side], plinth, at_start=side == RIGHT)
    return band, around


def _on_top(ring: Ring, plinth: Ring, *, at_start: bool) -> Ring:
    """Return a band whose foot stands on a plinth block instead of the floor."""
    top = (
        (plinth.inner_end, plinth.outer_end)
        if at_start
        else (
            plinth.inner_start,
            plinth.outer_start,
        )
    )
    inner = line_crossing(ring.inner_start, ring.inner_end, *top)
    outer = line_crossing(ring.outer_start, ring.outer_end, *top)
    if at_start:
        return Ring(
            inner_start=inner,
            inner_end=ring.inner_end,
            outer_start=outer,
            outer_end=ring.outer_end,
        )
    return Ring(
        inner_start=ring.inner_start,
        inner_end=inner,
        outer_start=ring.outer_start,
        outer_end=outer,
    )


def _refuse_turned(outline: TrimOutline, rings: tuple[tuple[int, Ring], ...]) -> None:
    """Refuse a piece whose edges have no length left, or run backwards."""
    for side, ring in rings:
        was = mitred_ring(outline, side).along
        for start, end in (
            (ring.inner_start, ring.inner_end),
            (ring.outer_start, ring.outer_end),
        ):
            along_mm = (end.x_mm - start.x_mm) * was[0] + (end.y_mm - start.y_mm) * was[1]
            if along_mm <= 0.0:
                raise PieceError(
                    say("The set was laid round the opening."),
                    say("One of its pieces has no length left."),
                    say(
                        "Look at the size of its blocks, plinths and trim; read the opening again."
                    ),
                )

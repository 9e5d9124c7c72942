"""One opening whose lining is extended: how deep at each corner, and along which sides."""

from dataclasses import dataclass
from typing import Final

from longpoint.catalogue.reveals.extension_keys import CORNERS
from longpoint.catalogue.reveals.reveals import Reveal, check_width, reveal_of
from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.trims.splays import RevealJoint, RevealSide

NO_DEPTH_MM: Final = 0.5
"""A lining nearer to the wall's face than this is left alone."""

CORNER_NAMES: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))
"""In the order of CORNERS."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Extended:
    """One opening with the depth at each of its corners (bl, br, tr, tl) and what lines it."""

    reveal: Reveal
    depths_mm: tuple[float, ...]
    sides: tuple[RevealSide, ...]
    joint: RevealJoint
    step_mm: float

    @property
    def mark(self) -> str:
        """Mark of the opening."""
        return self.reveal.opening.mark

    def is_lined(self, side: int) -> bool:
        """Tell whether a board goes along a side."""
        return self.sides[side].thickness_mm > 0

    def ends_mm(self, side: int) -> tuple[float, float]:
        """Return the depth at a side's first and second corner."""
        return self.depths_mm[side], self.depths_mm[(side + 1) % 4]


def extended_opening(asked: Asked, mark: str) -> Extended:
    """Return an opening with the depths to be filled and the boards that fill them.

    Args:
        asked: The entry.
        mark: Mark of the opening.

    Raises:
        PieceError: No depth is known, the lining stands proud or level, the profile is too narrow,
            or the architrave would cover nothing of the new edge.
    """
    reveal = reveal_of(asked, mark, asked.get("face", "a"))
    depths_mm = _depths_mm(asked, reveal)
    thickness_mm = asked.profile.thickness_mm
    step_mm = asked.get("step", 0.0)
    sides = []
    for side in range(4):
        deep_mm = max(depths_mm[side], depths_mm[(side + 1) % 4])
        is_there = deep_mm >= NO_DEPTH_MM and (side != 0 or reveal.has_sill)
        sides.append(
            RevealSide(thickness_mm=thickness_mm if is_there else 0.0, runs_over=side in (0, 2))
        )
    if not any(side.thickness_mm for side in sides):
        raise PieceError(
            say("The lining of {mark} is level with the wall's face.", mark=mark),
            say("There is nothing to extend."),
            say(
                "Take {mark} out of {mark_2}, or read its depths again.",
                mark=mark,
                mark_2=asked.mark,
            ),
        )
    lined = [depths_mm[i] for i in range(4) if _is_lined_corner(sides, i)]
    check_width(
        asked,
        max(lined),
        say("{lined} at {mark}", lined=format_with_unit(max(lined), asked.units), mark=mark),
        format_with_unit(asked.profile.width_mm, asked.units),
    )
    for side, lining in enumerate(sides):
        if lining.thickness_mm:
            _check_quirk(asked, reveal, side, step_mm)
    return Extended(
        reveal=reveal,
        depths_mm=depths_mm,
        sides=tuple(sides),
        joint=RevealJoint(asked.get("joint", "butt")),
        step_mm=step_mm,
    )


def _is_lined_corner(sides: list[RevealSide], corner: int) -> bool:
    return sides[corner].thickness_mm > 0 or sides[corner - 1].thickness_mm > 0


def _depths_mm(asked: Asked, reveal: Reveal) -> tuple[float, ...]:
    """Return the depth to be filled at bottom left, bottom right, top right, top left."""
    written, plane = asked.get("depths"), reveal.plane
    mark, set_back_mm = reveal.opening.mark, asked.get("set_back", 0.0)
    if written:
        read = tuple(written[corner] for corner in CORNERS)
    elif plane is not None:
        read = tuple(-mm + 0.0 for mm in plane.corners_mm())
    else:
        raise PieceError(
            say("{mark} is to extend the lining of {mark_2}.", mark=asked.mark, mark_2=mark),
            say("Neither its depths nor the plane of the reveal were read."),
            say(
                "Write depths at {mark}, or the plane at {mark_2}.",
                mark=asked.mark,
                mark_2=mark,
            ),
        )
    proud_mm = -min(read)
    if proud_mm >= NO_DEPTH_MM:
        raise PieceError(
            say(
                "The lining of {mark} stands {proud} proud of the wall at the {corner_names}.",
                mark=mark,
                proud=format_with_unit(proud_mm, asked.units),
                corner_names=CORNER_NAMES[read.index(min(read))],
            ),
            say("A board can't bring it back, and one beside it would run out to nothing."),
            say("Plane the lining level there, or reset it, then read the corners again."),
        )
    return tuple(max(0.0, mm - set_back_mm) for mm in read)


def _check_quirk(asked: Asked, reveal: Reveal, side: int, step_mm: float) -> None:
    quirk_mm = reveal.opening.quirk_mm.anticlockwise()[side]
    seen_mm = quirk_mm - step_mm
    if 0.0 <= seen_mm < asked.profile.thickness_mm:
        return
    edge = format_with_unit(asked.profile.thickness_mm, asked.units)
    raise PieceError(
        say(
            "{mark} has a quirk of {quirk}, {mark_2} a step of {step} and an edge of {edge}.",
            mark=reveal.opening.mark,
            quirk=format_with_unit(quirk_mm, asked.units),
            mark_2=asked.mark,
            step=format_with_unit(step_mm, asked.units),
            edge=edge,
        ),
        say("The architrave would stand out past the new face.")
        if seen_mm < 0
        else say("The architrave would not reach the new edge."),
        say("Change the step, the quirk or the profile."),
    )

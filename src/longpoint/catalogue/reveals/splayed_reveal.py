"""A splayed reveal as written down: its corners at the wall and the splay of every side."""

import math
from dataclasses import dataclass

from longpoint.catalogue.reveals.reveals import Reveal, reveal_of
from longpoint.catalogue.reveals.splayed_keys import MOST_SPLAY_DEG
from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.quantities.formatting import format_angle
from longpoint.shape.point import Point
from longpoint.speech.said import say
from longpoint.trims.splays import (
    RevealBoard,
    RevealJoint,
    RevealSide,
    reveal_board,
    splay_between_deg,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Splayed:
    """A splayed reveal: its corners at the wall and what lines it, by side."""

    corners: tuple[Point, ...]
    sides: tuple[RevealSide, ...]
    depth_mm: float
    joint: RevealJoint
    reveal: Reveal | None

    def board(self, side: int) -> RevealBoard:
        """Return the board along a side."""
        return reveal_board(self.corners, self.sides, self.depth_mm, side, self.joint)


def splayed_reveal(asked: Asked) -> Splayed:
    """Return the splayed reveal that an entry describes.

    Args:
        asked: The entry.

    Raises:
        PieceError: Its size or its splays aren't known, or it is narrower at the room.
    """
    marks = asked.entry.openings
    if len(marks) > 1:
        raise PieceError(
            say("{mark} names {marks} openings.", mark=asked.mark, marks=len(marks)),
            say("Every splayed reveal has splays and a depth of its own."),
            say("Write one entry for each."),
        )
    reveal = reveal_of(asked, marks[0]) if marks else None
    corners = _corners(asked, reveal)
    depth_mm = asked.get("depth")
    left_deg, right_deg = _side_splays(asked, corners, depth_mm)
    head_deg = _head_splay(asked, corners, depth_mm)
    thick_mm = asked.profile.thickness_mm
    has_sill = asked.get("sill", False)
    return Splayed(
        corners=corners,
        sides=(
            RevealSide(
                splay_deg=asked.get("splay_sill", 0.0),
                thickness_mm=thick_mm if has_sill else 0.0,
                runs_over=True,
            ),
            RevealSide(splay_deg=right_deg, thickness_mm=thick_mm),
            RevealSide(splay_deg=head_deg, thickness_mm=thick_mm, runs_over=True),
            RevealSide(splay_deg=left_deg, thickness_mm=thick_mm),
        ),
        depth_mm=depth_mm,
        joint=RevealJoint(asked.get("joint", "mitre")),
        reveal=reveal,
    )


def _corners(asked: Asked, reveal: Reveal | None) -> tuple[Point, ...]:
    if reveal is not None:
        if asked.get("width") is not None or asked.get("height") is not None:
            raise PieceError(
                say(
                    "{mark} names {mark_2} and a width or height of its own.",
                    mark=asked.mark,
                    mark_2=reveal.opening.mark,
                ),
                say("The size at the wall can only come from one of them."),
                say("Take one out."),
            )
        return reveal.faces(0.0)
    width_mm, height_mm = asked.get("width"), asked.get("height")
    if width_mm is None or height_mm is None:
        raise PieceError(
            say("{mark} names no opening.", mark=asked.mark),
            say("Then its width and its height at the wall are both needed."),
            say("Write them, or name the opening."),
        )
    return (Point(0, 0), Point(width_mm, 0), Point(width_mm, height_mm), Point(0, height_mm))


def _side_splays(asked: Asked, corners: tuple[Point, ...], depth_mm: float) -> tuple[float, float]:
    """Return the splays of the left and of the right board, from angles, widths or both."""
    left_deg, right_deg = asked.get("splay_left"), asked.get("splay_right")
    front_mm, back_mm = corners[0].distance_mm(corners[1]), asked.get("back_width")
    if left_deg is not None and right_deg is not None:
        return left_deg, right_deg
    if back_mm is None:
        raise PieceError(
            say("{mark} is written without the splay of both its sides.", mark=asked.mark),
            say("Without its width at the frame the missing one can't be worked out."),
            say("Read both splays, or back_width."),
        )
    if left_deg is None and right_deg is None:
        both_deg = _wider(asked, splay_between_deg(front_mm, back_mm, depth_mm))
        return both_deg, both_deg
    known_deg = right_deg if left_deg is None else left_deg
    rest_mm = front_mm - depth_mm * math.tan(math.radians(known_deg))
    other_deg = _wider(asked, splay_between_deg(rest_mm, back_mm, depth_mm, sides=1))
    return (other_deg, known_deg) if left_deg is None else (known_deg, other_deg)


def _head_splay(asked: Asked, corners: tuple[Point, ...], depth_mm: float) -> float:
    written_deg, back_mm = asked.get("splay_head"), asked.get("back_height")
    if written_deg is not None:
        return float(written_deg)
    if back_mm is None:
        return 0.0
    sill = math.radians(asked.get("splay_sill", 0.0))
    front_mm = height_mm(corners) - depth_mm * math.tan(sill)
    return _wider(asked, splay_between_deg(front_mm, back_mm, depth_mm, sides=1))


def height_mm(corners: tuple[Point, ...]) -> float:
    """Return the mean height of a four-sided shape. [mm]"""
    return (corners[0].distance_mm(corners[3]) + corners[1].distance_mm(corners[2])) / 2.0


def _wider(asked: Asked, splay_deg: float) -> float:
    if -0.5 < splay_deg <= MOST_SPLAY_DEG:
        return max(0.0, splay_deg)
    raise PieceError(
        say(
            "{mark}: the sizes at the wall and at the frame give a splay of {splay}°.",
            mark=asked.mark,
            splay=format_angle(splay_deg),
        ),
        say("The reveal would be narrower at the room than at the frame.")
        if splay_deg < 0
        else say(
            "More than {most_splay}° is no reveal.",
            most_splay=format_angle(MOST_SPLAY_DEG),
        ),
        say("Read both sizes and the depth again."),
    )

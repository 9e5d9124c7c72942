"""Trim that goes round a window bay: board, head, apron, and covers of its corners."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.catalogue.bays.bay_findings import bay_findings
from longpoint.catalogue.bays.bay_lights import ASKS, Light, read_lights
from longpoint.catalogue.bays.bay_pictures import bay_plan, corner_section
from longpoint.catalogue.reveals.reveals import end_cut, ripped
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import PieceError
from longpoint.pieces.piece import EndCut, Piece, Role
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.profiles import Profile
from longpoint.trims.joint_plane import SawAngles

_TRIMS: Final = ("board", "head", "apron", "cover")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bay:
    """A bay with the profiles of what goes round it."""

    lights: tuple[Light, ...]
    profiles: dict[str, Profile]
    board_mm: float
    reveal_mm: float


def plan_bay(asked: Asked) -> TrimPlan:
    """Return what goes round a bay, piece by piece from left to right.

    The legs of its openings belong to the openings.

    Args:
        asked: The entry.

    Returns:
        Board, head and apron, one piece a light, and the covers of the corners.

    Raises:
        PieceError: A corner that can't be mitred, no profile or reading for what is wanted, or a
            piece that has no length left.
    """
    bay = _bay(asked)
    pieces: list[Piece] = []
    for light in bay.lights:
        if "board" in bay.profiles:
            pieces.append(_board(asked, bay, light))
        pieces += [
            _run(asked, bay, light, what) for what in ("head", "apron") if what in bay.profiles
        ]
    if "cover" in bay.profiles:
        pieces += [
            piece
            for left in bay.lights[:-1]
            for piece in _covers(asked, bay.profiles["cover"], left)
        ]
    sharpest = min(bay.lights[:-1], key=lambda light: light.right.angle_deg)
    thick_mm = max(
        (bay.profiles[what].thickness_mm for what in ("head", "apron") if what in bay.profiles),
        default=0.0,
    )
    sketches = [bay_plan(bay.lights, bay.board_mm, asked.units)]
    if thick_mm:
        sketches.append(corner_section(sharpest.right.angle_deg, thick_mm))
    return TrimPlan(
        pieces=tuple(pieces),
        findings=tuple(bay_findings(asked, bay.lights, bay.reveal_mm, tuple(bay.profiles))),
        sketches=tuple(sketches),
        lines=tuple(_lines(asked, bay)),
    )


def _bay(asked: Asked) -> _Bay:
    lights = read_lights(asked)
    profiles = {
        what: asked.house.profile(asked.get(what)) for what in _TRIMS if asked.get(what) is not None
    }
    if not profiles:
        raise _lacks(
            asked, say("a board, a head, an apron or a cover"), say("One of them has a profile.")
        )
    needs_wall = "head" in profiles or "apron" in profiles
    if needs_wall and asked.get("reveal") is None:
        raise _lacks(
            asked, say("its reveal"), say("Head and apron lie on the wall's face, so it is needed.")
        )
    if "cover" in profiles and not asked.get("cover_height"):
        raise _lacks(asked, "cover_height", say("The corner covers are cut to it."))
    return _Bay(
        lights=lights,
        profiles=profiles,
        board_mm=_board_mm(asked, profiles),
        reveal_mm=asked.get("reveal", 0.0),
    )


def _lacks(asked: Asked, what: str, why: str) -> PieceError:
    return PieceError(
        say("{mark} is written without {what}.", mark=asked.mark, what=what),
        why,
        say("Write it at the bay."),
    )


def _board_mm(asked: Asked, profiles: dict[str, Profile]) -> float:
    if "board" not in profiles:
        return float(asked.get("reveal", 0.0))
    board = profiles["board"]
    depth_mm = float(asked.get("board_depth", board.width_mm))
    if depth_mm > board.width_mm + 0.05:
        needed, had = (format_with_unit(mm, asked.units) for mm in (depth_mm, board.width_mm))
        raise PieceError(
            say(
                "{mark} has a board {needed} deep, cut from {board}, {had} wide.",
                mark=asked.mark,
                needed=needed,
                board=board.name,
                had=had,
            ),
            say("The profile is too narrow."),
            say("Choose a wider one."),
        )
    return depth_mm


def _board(asked: Asked, bay: _Bay, light: Light) -> Piece:
    """Return a light's board: its outer edge lies at the frame, its inner edge is the front."""
    short_mm = [-end.short_mm(bay.board_mm) for end in (light.left, light.right)]
    front_mm = light.line_mm + math.fsum(short_mm)
    _check_left(asked, light, front_mm, say("front edge of its board"))
    profile = bay.profiles["board"]
    depth = format_length(bay.board_mm, asked.units)
    is_ripped = bay.board_mm < profile.width_mm - 0.05
    piece = asked.piece(
        f"board-{light.number}",
        Role.BOARD,
        front_mm,
        outer_mm=light.line_mm,
        left=end_cut(SawAngles(light.left.saw_deg, 0.0)),
        right=end_cut(SawAngles(light.right.saw_deg, 0.0)),
        profile=profile,
        hand_sum=run_sum(say("frame"), [light.line_mm, *short_mm], asked.units),
        notes=(say("rip to {depth} first, off the edge at the frame", depth=depth),)
        if is_ripped
        else (),
    )
    return ripped(piece, bay.board_mm)


def _run(asked: Asked, bay: _Bay, light: Light, what: str) -> Piece:
    """Return a light's head or apron, cut through its thickness like skirting in a corner."""
    profile = bay.profiles[what]
    past_mm = _past_mm(asked, bay, light)
    to_wall_mm = [-end.short_mm(bay.reveal_mm) for end in (light.left, light.right)]
    back_mm = light.line_mm + math.fsum((*to_wall_mm, *past_mm))
    to_face_mm = [
        -end.short_mm(profile.thickness_mm) if end.is_corner else 0.0
        for end in (light.left, light.right)
    ]
    face_mm = back_mm + math.fsum(to_face_mm)
    _check_left(asked, light, face_mm, what)
    return asked.piece(
        f"{what}-{light.number}",
        Role.HEAD if what == "head" else Role.APRON,
        face_mm,
        back_mm=max(back_mm, face_mm),
        left=_through(light.left.saw_deg if light.left.is_corner else 0.0),
        right=_through(light.right.saw_deg if light.right.is_corner else 0.0),
        profile=profile,
        hand_sum=run_sum(
            say("frame"), [light.line_mm, *to_wall_mm, *past_mm, *to_face_mm], asked.units
        ),
    )


def _through(bevel_deg: float) -> EndCut:
    return end_cut(SawAngles(0.0, bevel_deg))


def _past_mm(asked: Asked, bay: _Bay, light: Light) -> tuple[float, float]:
    left_mm = asked.get("left_past", 0.0) if light is bay.lights[0] else 0.0
    right_mm = asked.get("right_past", 0.0) if light is bay.lights[-1] else 0.0
    return left_mm, right_mm


def _check_left(asked: Asked, light: Light, length_mm: float, what: str) -> None:
    if length_mm > 0:
        return
    raise PieceError(
        say(
            "{mark}: {light} is {line} along the frame.",
            mark=asked.mark,
            light=light.name,
            line=format_with_unit(light.line_mm, asked.units),
        ),
        say("Between its two corners no {what} is left.", what=what),
        say("Read the light and its corners again, or make it less deep."),
    )


def _covers(asked: Asked, profile: Profile, light: Light) -> Iterator[Piece]:
    """Return what covers the corner at a light's right."""
    height_mm, tilt_deg = asked.get("cover_height"), light.right.saw_deg
    if asked.get("cover_kind", "pair") == "strip":
        note = _strip_note(asked, profile, light.right.angle_deg)
        yield asked.piece(
            f"cover-{light.number}", Role.BEAD, height_mm, profile=profile, notes=(note,)
        )
        return
    face_mm = profile.width_mm - profile.thickness_mm * math.tan(math.radians(tilt_deg))
    if face_mm <= 0:
        raise _no_face(asked, profile, light.right.angle_deg)
    note = say(
        "rip the outer edge at {tilt}°: {width} on the back, {face} on the face",
        tilt=format_angle(tilt_deg),
        width=format_length(profile.width_mm, asked.units),
        face=format_length(face_mm, asked.units),
    )
    for side in ("left", "right"):
        yield asked.piece(
            f"cover-{light.number}-{side}",
            Role.BEAD,
            height_mm,
            profile=profile,
            notes=(note,) if tilt_deg else (),
        )


def _strip_note(asked: Asked, profile: Profile, corner_deg: float) -> str:
    """Return how one strip across a corner is ripped to lie on both walls."""
    half_deg = corner_deg / 2.0
    back_mm = profile.width_mm - 2.0 * profile.thickness_mm * math.tan(math.radians(half_deg))
    if half_deg >= 90.0 or back_mm <= 0:
        raise _no_face(asked, profile, corner_deg)
    return say(
        "rip both edges {half}° off square (stood on edge: {half_2}°): {width} on "
        "the face, {back} on the back",
        half=format_angle(half_deg),
        half_2=format_angle(90.0 - half_deg),
        width=format_length(profile.width_mm, asked.units),
        back=format_length(back_mm, asked.units),
    )


def _no_face(asked: Asked, profile: Profile, corner_deg: float) -> PieceError:
    size = say("{width} x ", width=format_length(profile.width_mm, asked.units))
    size += format_with_unit(profile.thickness_mm, asked.units)
    return PieceError(
        say(
            "{mark} covers a corner of {corner}° with {profile}, {size}.",
            mark=asked.mark,
            corner=format_angle(corner_deg),
            profile=profile.name,
            size=size,
        ),
        say("Ripped to lie in that corner, nothing is left of it."),
        say("Choose a wider or thinner profile, or another way to cover the corner."),
    )


def _lines(asked: Asked, bay: _Bay) -> Iterator[str]:
    corners: Sequence[str] = [
        format_angle(light.right.angle_deg) + "°" for light in bay.lights[:-1]
    ]
    yield (
        say(
            "Corners are read on the room's side ({corners}); each piece takes 90 less "
            "half its corner. Lights are numbered from the left as you stand in the "
            "room.",
            corners=joined(", ", corners),
        )
    )
    if "board" in bay.profiles:
        yield (
            say(
                "The boards lie face up, their edge at the frame away from you "
                "(outer): mitred across the face, the frame edge the longer. Join them "
                "from below before they go in."
            )
        )
    if "head" in bay.profiles or "apron" in bay.profiles:
        yield (
            say(
                "Head and apron are cut through the thickness like skirting in a "
                "corner: the back on the wall is the longer (bevel +). Their outer "
                "ends are square."
            )
        )
    if asked.get("end_corners") is None and "board" in bay.profiles:
        yield say(
            "The board's two ends are taken as square to the frame line: their angle wasn't read."
        )
    if "cover" in bay.profiles:
        yield say("Corner covers go up last, between board and head, over the legs' outer edges.")
    yield say("The legs belong to each opening's own set.")


TRIM: Final = TrimKind(
    name="bay",
    title=say("trim round a bay"),
    asks=ASKS,
    plan=plan_bay,
    needs_profile=False,
)

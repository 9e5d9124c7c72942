"""How the ends of a cornice's runs are cut, and joints that no cut closes."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.catalogue.cornice.cornice_keys import Corners, OpenEnds
from longpoint.catalogue.cornice.cornice_refusals import climbing_return, refused
from longpoint.catalogue.cornice.cornice_runs import CorniceRun, Meets, RunStop
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding
from longpoint.pieces.boards import Side
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut
from longpoint.quantities.formatting import format_angle
from longpoint.speech.said import say
from longpoint.survey.profiles import Profile
from longpoint.trims.cornice import (
    EndReach,
    JointCuts,
    SprungRun,
    break_along_mm,
    corner_cuts,
    corner_misfit,
    drop_mm,
    end_reach,
    halving_cuts,
    plumb_cut,
    projection_mm,
    wall_cut,
)
from longpoint.trims.joint_plane import SawAngles

UNSEEN_MM: Final = 0.3
"""Runs all but alike (slopes worked out from two rises) are joined where they stand no farther
apart than this: our limit, no source."""

STILL_SQUARE_DEG: Final = 0.05
"""Less than this is printed as square."""

RETURN_CORNER_DEG: Final = 270.0

NO_REACH: Final = EndReach(0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class CorniceEnd:
    """One end of a run, cut.

    Attributes:
        cut: The cut, for the piece on its back.
        at_mm: Where the bottom edge of the back ends, along the wall from its left corner, level.
        reach: How far the other edges run past that.
        words: What the end does, for the hand sum; may be empty.
        closing: The cut of the return that closes it; None where it has none.
    """

    cut: EndCut
    at_mm: float
    reach: EndReach = NO_REACH
    words: str = ""
    closing: SawAngles | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CutRun:
    """A run with both its ends cut."""

    run: CorniceRun
    left: CorniceEnd
    right: CorniceEnd

    @property
    def back_bottom_mm(self) -> float:
        """Length of the bottom edge of the back, along the run."""
        level_mm = self.right.at_mm - self.left.at_mm
        return level_mm / math.cos(math.radians(self.run.sprung.slope_deg))


def overall_mm(profile: Profile, spring_deg: float) -> float:
    """Return how far a moulding reaches off the wall, the thickness of its ceiling edge counted."""
    face_mm = profile.thickness_mm * math.cos(math.radians(spring_deg))
    return projection_mm(profile.width_mm, spring_deg) + face_mm


def cut_runs(
    asked: Asked, runs: Sequence[CorniceRun]
) -> tuple[tuple[CutRun, ...], tuple[Finding, ...]]:
    """Return the runs with their ends cut.

    Args:
        asked: The entry.
        runs: Its runs.

    Returns:
        The runs, and one stop for every joint that can't be made; then no run at all.
    """
    cut: list[CutRun] = []
    stops: list[Finding] = []
    for index, run in enumerate(runs):
        left = _end(asked, runs, index, Side.LEFT)
        right = _end(asked, runs, index, Side.RIGHT)
        # Both runs of a joint refuse it in the same words.
        stops += [end for end in (left, right) if isinstance(end, Finding) and end not in stops]
        if isinstance(left, CorniceEnd) and isinstance(right, CorniceEnd):
            cut.append(CutRun(run=run, left=left, right=right))
    return ((), tuple(stops)) if stops else (tuple(cut), ())


def joint_cuts(
    profile: Profile, corner_deg: float, left: SprungRun, right: SprungRun
) -> JointCuts | None:
    """Return the cuts of a joint; None where it would stand open."""
    cuts = corner_cuts(corner_deg, left, right)
    if cuts is not None:
        return cuts
    apart = corner_misfit(corner_deg, left, right, profile.width_mm, profile.thickness_mm)
    return halving_cuts(corner_deg, left, right) if apart.halved_mm <= UNSEEN_MM else None


def runs_through(runs: Sequence[CorniceRun], index: int, other: int) -> bool:
    """Tell whether a run goes up before its neighbour: the longer one does."""
    mine, its = runs[index].level_mm, runs[other].level_mm
    return mine > its or (mine == its and index < other)


def _end(asked: Asked, runs: Sequence[CorniceRun], index: int, side: Side) -> CorniceEnd | Finding:
    run = runs[index]
    stop = run.left if side is Side.LEFT else run.right
    if stop.other is not None:
        return _joined_end(asked, runs, index, side, stop.other)
    is_left = side is Side.LEFT
    ends = OpenEnds(asked.get("ends", OpenEnds.SQUARE))
    match stop.meets:
        case Meets.OPEN if ends is OpenEnds.RETURN:
            return _returned_end(asked, run, side)
        case Meets.OPEN:
            angles = plumb_cut(run.sprung, at_left=is_left)
            return _cut_end(asked, run, side, angles, CutKind.COMPOUND, "")
        case Meets.WALL | Meets.CORNER | Meets.BREAK:
            angles = wall_cut(stop.corner_deg, run.sprung, at_left=is_left)
            words = say(
                "{side} end dies against the wall, corner {corner}",
                side=side,
                corner=format_angle(stop.corner_deg),
            )
            return _cut_end(asked, run, side, angles, CutKind.COMPOUND, words)


def _returned_end(asked: Asked, run: CorniceRun, side: Side) -> CorniceEnd | Finding:
    """Return an end that stops short by what its return reaches off the wall."""
    level, is_left = SprungRun(spring_deg=run.sprung.spring_deg), side is Side.LEFT
    pair = (level, run.sprung) if is_left else (run.sprung, level)
    cuts = corner_cuts(RETURN_CORNER_DEG, *pair)
    if cuts is None:
        return climbing_return(asked, run, side)
    mine, its = (cuts.right_run, cuts.left_run) if is_left else (cuts.left_run, cuts.right_run)
    short_mm = overall_mm(asked.profile, run.sprung.spring_deg)
    words = say("{side} end mitred to its return", side=side)
    end = _cut_end(asked, run, side, mine, CutKind.COMPOUND, words, short_mm)
    return replace(end, closing=its)


def _joined_end(
    asked: Asked, runs: Sequence[CorniceRun], index: int, side: Side, other: int
) -> CorniceEnd | Finding:
    run, is_left = runs[index], side is Side.LEFT
    stop = run.left if is_left else run.right
    left, right = (runs[other], run) if is_left else (run, runs[other])
    cuts = joint_cuts(asked.profile, stop.corner_deg, left.sprung, right.sprung)
    if cuts is None:
        reach_mm = overall_mm(asked.profile, run.sprung.spring_deg)
        return refused(asked, left, right, reach_mm)
    angles = cuts.right_run if is_left else cuts.left_run
    its = f"{asked.mark}-{runs[other].what}"
    if stop.meets is Meets.BREAK:
        drop = drop_mm(asked.profile.width_mm, run.sprung.spring_deg)
        past_mm = break_along_mm(drop, left.sprung.slope_deg, right.sprung.slope_deg)
        words, short_mm = (
            say("{side} end mitred to {its}", side=side, its=its),
            past_mm if is_left else -past_mm,
        )
        return _cut_end(asked, run, side, angles, CutKind.COMPOUND, words, short_mm)
    corner = format_angle(stop.corner_deg)
    corners = Corners(asked.get("corners", Corners.SCRIBE))
    if not stop.is_internal or corners is Corners.MITRE:
        words = say(
            "{side} end mitred to {its}, corner {corner} in the room",
            side=side,
            its=its,
            corner=corner,
        )
        return _cut_end(asked, run, side, angles, CutKind.COMPOUND, words)
    if runs_through(runs, index, other):
        return _through_end(asked, run, side, stop)
    words = say(
        "{side} end scribed over {its}, corner {corner}",
        side=side,
        its=its,
        corner=corner,
    )
    return _cut_end(asked, run, side, angles, CutKind.SCRIBE, words)


def _through_end(asked: Asked, run: CorniceRun, side: Side, stop: RunStop) -> CorniceEnd:
    """Return the end of a run that goes to the wall and is scribed over.

    A square end is kept where the gap it leaves at the wall stays well behind the next run.

    References:
        A square end has to stop short by the reach off the wall over tan(corner); what is seen of
        it begins at the bottom edge of the face, t cos(spring) / tan(corner / 2) from the corner.
    """
    profile, spring_deg = asked.profile, run.sprung.spring_deg
    corner = math.radians(stop.corner_deg)
    short_mm = max(0.0, overall_mm(profile, spring_deg) / math.tan(corner))
    face_mm = profile.thickness_mm * math.cos(math.radians(spring_deg))
    words = say("{side} end runs through", side=side)
    if run.sprung.slope_deg == 0.0 and short_mm <= face_mm / math.tan(corner / 2.0) / 4.0:
        return _cut_end(asked, run, side, SawAngles(0.0, 0.0), CutKind.SQUARE, words, short_mm)
    angles = wall_cut(stop.corner_deg, run.sprung, at_left=side is Side.LEFT)
    return _cut_end(
        asked,
        run,
        side,
        angles,
        CutKind.COMPOUND,
        say(
            "{words}, cut to the wall",
            words=words,
        ),
    )


def _cut_end(
    asked: Asked,
    run: CorniceRun,
    side: Side,
    angles: SawAngles,
    kind: CutKind,
    words: str,
    short_mm: float = 0.0,
) -> CorniceEnd:
    at_mm = run.start_mm + short_mm if side is Side.LEFT else run.end_mm - short_mm
    if kind is not CutKind.SCRIBE and max(map(abs, angles)) < STILL_SQUARE_DEG:
        return CorniceEnd(cut=SQUARE_CUT, at_mm=at_mm, words=words)
    return CorniceEnd(
        cut=EndCut(kind=kind, mitre_deg=angles.mitre_deg, bevel_deg=angles.bevel_deg),
        at_mm=at_mm,
        reach=end_reach(angles, asked.profile.width_mm, asked.profile.thickness_mm),
        words=words,
    )

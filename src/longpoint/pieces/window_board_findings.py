"""What is to be said of a window board and its apron."""

import math
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.face_set import FaceSet
from longpoint.pieces.returns import return_caution
from longpoint.pieces.window_boards import APRON, PRINTED_MM, notches, outer_mm
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.openings import ApronEnds, BoardFit, Layout
from longpoint.survey.profiles import Profile
from longpoint.trims.set_rings import BOTTOM, LEFT, RIGHT

BOARD_NARROW: Final = "board-narrow"
BOARD_NOSING: Final = "board-nosing"
BOARD_INSIDE: Final = "board-inside"
BOARD_UNNAMED: Final = "board-unnamed"
BOARD_NOT_LEVEL: Final = "board-not-level"

INSIDE_LIMIT_MM: Final = 5.0
"""The linings at the board and the opening's bottom differ by no more than this: our limit."""

LEVEL_LIMIT_MM: Final = 3.0
"""A board falls by no more than this from end to end: our limit, no source."""


def below_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Return what is to be said of the board and the apron.

    Raises:
        PieceError: The board leaves no horn to notch.
    """
    if face.opening.layout is not Layout.BOARD_AND_APRON:
        return ()
    findings: list[Finding] = []
    if face.opening.apron_ends is ApronEnds.RETURN:
        profile = face.house.profile(face.opening.profiles.bottom)
        mark, units = face.mark(APRON), face.house.units
        findings.append(return_caution(face.opening.mark, mark, profile.thickness_mm, 2, units))
    fit = face.opening.board_fit
    if fit is not None:
        findings += _fit_findings(face, fit)
    return (*findings, *_level_findings(face))


def _fit_findings(face: FaceSet, fit: BoardFit) -> tuple[Finding, ...]:
    mark, units = face.opening.mark, face.house.units
    if not face.opening.board:
        return (
            Finding(
                code=BOARD_UNNAMED,
                severity=Severity.NOTE,
                place=mark,
                read=say("{mark} gives board_fit.", mark=mark),
                wrong=say("No board is named, so none is cut and no notch is printed."),
                do=say("Name the board's profile as board, or take board_fit out."),
            ),
        )
    profile = face.house.profile(face.opening.board)
    widest_mm = max(notch.rip_mm for notch in notches(face, fit))
    findings = []
    if widest_mm - profile.width_mm > PRINTED_MM:
        findings.append(_narrow(face, fit, profile, widest_mm))
    leg_mm = max(face.trim.profiles[side].thickness_mm for side in (LEFT, RIGHT))
    if fit.nosing_mm < leg_mm:
        findings.append(_nosing(face, fit, leg_mm))
    bottom_mm = face.fitted.side_mm[BOTTOM]
    if fit.inside_mm is not None and abs(fit.inside_mm - bottom_mm) > INSIDE_LIMIT_MM:
        findings.append(
            Finding(
                code=BOARD_INSIDE,
                severity=Severity.WARNING,
                place=mark,
                read=say(
                    "Between the linings at the board {inside} was read; the "
                    "opening's bottom is {bottom}.",
                    inside=format_with_unit(fit.inside_mm, units),
                    bottom=format_with_unit(bottom_mm, units),
                ),
                wrong=say(
                    "They should be within {inside_limit} (our limit, no "
                    "source); the notches go by the first.",
                    inside_limit=format_with_unit(INSIDE_LIMIT_MM, units),
                ),
                do=say("Read both again before the notches are cut."),
            )
        )
    return tuple(findings)


def _narrow(face: FaceSet, fit: BoardFit, profile: Profile, widest_mm: float) -> Finding:
    units = face.house.units
    deepest_mm = max(fit.depth_left_mm, fit.depth_right_mm)
    return Finding(
        code=BOARD_NARROW,
        severity=Severity.STOP,
        place=face.opening.mark,
        read=say(
            "The board {profile} is {width} wide; from the sash to the wall's "
            "face is {deepest}, the nosing {nosing}.",
            profile=profile.name,
            width=format_with_unit(profile.width_mm, units),
            deepest=format_with_unit(deepest_mm, units),
            nosing=format_with_unit(fit.nosing_mm, units),
        ),
        wrong=say("It would have to be {widest}.", widest=format_with_unit(widest_mm, units)),
        do=say("Name a wider board, or a smaller nosing."),
    )


def _nosing(face: FaceSet, fit: BoardFit, leg_mm: float) -> Finding:
    units = face.house.units
    is_bare = fit.nosing_mm <= 0.0
    return Finding(
        code=BOARD_NOSING,
        severity=Severity.STOP if is_bare else Severity.WARNING,
        place=face.opening.mark,
        read=say(
            "The board stands {nosing} past the wall's face; the legs on it are {leg} thick.",
            nosing=format_with_unit(fit.nosing_mm, units),
            leg=format_with_unit(leg_mm, units),
        ),
        wrong=say("The notches would take its ends off whole, so it could have no horns.")
        if is_bare
        else say("The legs' faces would hang over its front edge."),
        do=say("Give board_fit.nosing, more than the legs' thickness."),
    )


def _level_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Say how far the board falls where its opening was read with a level."""
    level_deg = face.fitted.level_deg
    if level_deg is None or not face.opening.board:
        return ()
    fall_mm = outer_mm(face) * math.sin(math.radians(abs(level_deg)))
    if fall_mm <= LEVEL_LIMIT_MM:
        return ()
    units = face.house.units
    low = say("left") if level_deg > 0 else say("right")
    return (
        Finding(
            code=BOARD_NOT_LEVEL,
            severity=Severity.WARNING,
            place=face.opening.mark,
            read=say("The bottom of {mark} was read off level.", mark=face.opening.mark),
            wrong=say(
                "A board along it falls {fall} to the {low}.",
                fall=format_with_unit(fall_mm, units),
                low=low,
            ),
            do=say("Pack the board level before the legs are cut, and read the two sides from it."),
        ),
    )

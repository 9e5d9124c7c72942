"""How often a list of lines calls a fit where no shift of the pieces gives one."""

from typing import Final

from longpoint.forecast.face_lines import FaceLines
from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import SLOTS, Slot, frame_rows
from longpoint.forecast.fitup.lines import ratio_by
from longpoint.forecast.planned_face import PlannedFace
from longpoint.forecast.stream import draw
from longpoint.forecast.terms import FrameErrors
from longpoint.linear.port import LinearSolver

TIGHT_MM: Final = 1.25
"""With less room than this for a quirk the lists miss more than one draw in two hundred."""

UNEVEN_MM: Final = 0.5
"""So do they where a quirk may go further one way than the other by more than this."""

DRAWS: Final = 300
STREAM: Final = 7
"""Apart from the streams of the forecast itself."""


def misses(
    found: FaceLines, errors: FrameErrors, solver: LinearSolver, *, seed: int, draws: int = DRAWS
) -> float:
    """Return the share of fits by the lists that an exact programme doesn't confirm.

    The lists are learned for room on both sides of a quirk; where there is little, or a known lean
    has used it up, exact programmes are solved for some draws, and the forecast is lowered by what
    they find. Elsewhere the share is taken as nothing.

    Args:
        found: The face, with its lines.
        errors: What its frame may be out by.
        solver: Solves the programmes.
        seed: Of the draws.
        draws: How many.

    Returns:
        Share of the draws that fit by the list, 0 to 1.
    """
    if not _is_tight(found.face, errors):
        return 0.0
    rows = frame_rows(found.face.frame, found.face.limits)
    fitting = failing = 0
    for index in range(draws):
        drawn = _drawn(errors, seed, index)
        if ratio_by(found.lines[-1], drawn) > 1.0:
            continue
        fitting += 1
        failing += best_fit_up(rows, drawn, solver).ratio > 1.0
    return failing / fitting if fitting else 0.0


def _is_tight(face: PlannedFace, errors: FrameErrors) -> bool:
    """Tell whether what is known leaves a quirk little room, or more one way than the other."""
    for index, side in enumerate(face.frame.sides):
        for slot in (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END):
            off_mm = errors.known[SLOTS * index + slot]
            in_mm, out_mm = side.quirk_in_mm - off_mm, side.quirk_out_mm + off_mm
            if min(in_mm, out_mm) < TIGHT_MM or abs(in_mm - out_mm) > UNEVEN_MM:
                return True
    return False


def _drawn(errors: FrameErrors, seed: int, index: int) -> tuple[float, ...]:
    total = list(errors.known)
    for number, term in enumerate(errors.terms):
        size = draw(seed, STREAM, index, number, term.spread)
        for slot, effect in enumerate(term.effect):
            if effect:
                total[slot] += size * effect
    return tuple(total)

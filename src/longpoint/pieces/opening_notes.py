"""What a shape out of square means for the joints and the quirk, by way of fixing."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.bench_frame import bench_frame
from longpoint.pieces.face_trim import has_mitred_corners, is_true_frame
from longpoint.quantities.formatting import (
    format_angle,
    format_gap,
    format_unit,
    format_with_unit,
)
from longpoint.shape.fitted import FittedOpening
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Method, Opening
from longpoint.trims.joints import gap_of_plain_mitres_mm

WORTH_SAYING_DEG: Final = 0.3
"""A mitred corner this far off square is worth a sentence; under it a 45 closes by tapping."""

_CORNER_WORDS: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))


def square_notes(house: House, opening: Opening, fitted: FittedOpening) -> tuple[Finding, ...]:
    """Return what is to be said about an opening out of square, naming the way of fixing."""
    on_floor = opening.layout is not Layout.ALL_ROUND
    mitred = (2, 3) if on_floor else (0, 1, 2, 3)
    worst = max(mitred, key=lambda corner: abs(fitted.corner_deg[corner] - 90.0))
    off_deg = abs(fitted.corner_deg[worst] - 90.0)
    frame = bench_frame(fitted, on_floor=on_floor)
    sides = opening.quirk_mm.anticlockwise()[1 if on_floor else 0 :]
    least_mm = min(sides) + frame.least_off_mm
    most_mm = max(sides) + frame.most_off_mm
    band_least_mm, band_most_mm = opening.quirk_band_mm
    is_within = band_least_mm - 0.25 <= least_mm and most_mm <= band_most_mm + 0.25
    read = say(
        "The {corner_words} corner is {corner} degrees.",
        corner_words=_CORNER_WORDS[worst],
        corner=format_angle(fitted.corner_deg[worst]),
    )
    quirks = say(
        "quirks from {least} to {most}",
        least=format_with_unit(least_mm, house.units),
        most=format_with_unit(most_mm, house.units),
    )
    if is_true_frame(opening):
        if is_within:
            return ()
        frame_words = (
            say("A frame of 45s") if has_mitred_corners(opening) else say("A square frame")
        )
        made = (
            say("joined on the bench") if opening.method is Method.BENCH else say("cut at the stop")
        )
        return (
            Finding(
                code="quirk-band",
                severity=Severity.WARNING,
                place=opening.mark,
                read=read,
                wrong=say(
                    "{frame_words}, {made}, leaves {quirks}, outside what you accept.",
                    frame_words=frame_words,
                    made=made,
                    quirks=quirks,
                ),
                do=say(
                    "Cut this one to its own corners (method batch, mitres "
                    "as-read), or re-set the reveal."
                ),
            ),
        )
    if off_deg < WORTH_SAYING_DEG or opening.raked or opening.outline is not None:
        return ()
    gap_mm = gap_of_plain_mitres_mm(
        house.profile(opening.profiles.head).width_mm, fitted.corner_deg[worst]
    )
    shared = (
        say("stays within what you accept") if is_within else say("goes outside what you accept")
    )
    return (
        Finding(
            code="out-of-square",
            severity=Severity.NOTE,
            place=opening.mark,
            read=read,
            wrong=say(
                "With 45s all round, nailed parallel to the reveal, that joint "
                "would stand open about {gap} {units}; a square frame tapped to "
                "share closes and leaves {quirks}, which {shared}.",
                gap=format_gap(gap_mm, house.units),
                units=format_unit(house.units),
                quirks=quirks,
                shared=shared,
            ),
            do=say(
                "The saw angles on the sheet close each corner as it is; or cut 45s "
                "and share, as you choose."
            ),
        ),
    )

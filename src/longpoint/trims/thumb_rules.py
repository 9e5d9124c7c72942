"""Rules of thumb beside what is so: what each gives, how far it is off, and where it breaks.

All eight rules are common practice, no source. The truth beside each is geometry; beside the last
it is counted on openings that are drawn at random.
"""

import math
from collections.abc import Callable

from longpoint.trims.joints import gap_of_plain_mitres_mm, mitre_pair, slant_mm
from longpoint.trims.long_residual import share_of_long_residuals
from longpoint.trims.thumb_figures import Compared, Rule, Span, ThumbFigures
from longpoint.trims.tilt import Lie, closing_cuts, plain_cuts_open


def thumb_rules(figures: ThumbFigures) -> tuple[Compared, ...]:
    """Return every rule of thumb beside the truth, for a crew's own figures.

    Example:
        >>> add_on = thumb_rules(ThumbFigures())[0]
        >>> round(add_on.by_rule[0], 2), round(add_on.true[0], 2), round(add_on.off_mm, 2)
        (1257.0, 1257.73, 0.73)
    """
    return (
        add_on(figures),
        tape_along(figures),
        half_corner(figures),
        plain_45s(figures),
        scribe_45(figures),
        diagonals(figures),
        pack(figures),
        long_residual(figures),
    )


def add_on(figures: ThumbFigures) -> Compared:
    """Compare the rule that adds one fixed figure for the slant.

    References:
        The slant adds s = hypot(P, w) - P, so P = (w^2 - s^2) / (2 s): it is s at one P alone.
    """
    by_rule_mm = figures.along_mm + figures.add_mm
    true_mm = figures.along_mm + slant_mm(figures.along_mm, figures.face_mm)
    return Compared(
        rule=Rule.ADD_ON,
        by_rule=(by_rule_mm,),
        true=(true_mm,),
        off_mm=true_mm - by_rule_mm,
        good=Span(
            _size_of_slant_mm(figures, figures.add_mm + figures.limit_mm),
            _size_of_slant_mm(figures, figures.add_mm - figures.limit_mm),
        ),
    )


def tape_along(figures: ThumbFigures) -> Compared:
    """Compare the rule that adds nothing for the slant."""
    slant = slant_mm(figures.along_mm, figures.face_mm)
    return Compared(
        rule=Rule.TAPE_ALONG,
        by_rule=(figures.along_mm,),
        true=(figures.along_mm + slant,),
        off_mm=slant,
        good=Span(_size_of_slant_mm(figures, figures.limit_mm), None),
    )


def exact_size_mm(figures: ThumbFigures) -> float | None:
    """Return the one clear size at which the add-on rule is right to the hair.

    Example:
        >>> exact_size_mm(ThumbFigures(face_mm=66, quirk_mm=5, add_mm=1))
        2101.5

    References:
        (66^2 - 1) / 2 = 2177.5 along the piece, less 2 x 5 and 66.
    """
    return _size_of_slant_mm(figures, figures.add_mm)


def _size_of_slant_mm(figures: ThumbFigures, slant: float) -> float | None:
    """Return the clear size whose slant adds so much; None where it never comes down to it."""
    if slant <= 0.0:
        return None
    along_mm = (figures.face_mm**2 - slant**2) / (2.0 * slant)
    return max(0.0, along_mm - 2.0 * figures.quirk_mm - figures.face_mm)


def half_corner(figures: ThumbFigures) -> Compared:
    """Compare the rule that sets the saw to half the corner, not to 90 less half of it."""
    half_deg = figures.corner_deg / 2.0

    def gap_mm(off_deg: float) -> float:
        return gap_of_half_corner_mm(figures.face_mm, 90.0 + off_deg)

    return Compared(
        rule=Rule.HALF_CORNER,
        by_rule=(half_deg,),
        true=(90.0 - half_deg,),
        off_mm=gap_mm(figures.corner_deg - 90.0),
        good=Span(
            90.0 - _reaches(lambda off_deg: gap_mm(-off_deg), figures.limit_mm, 45.0),
            90.0 + _reaches(gap_mm, figures.limit_mm, 45.0),
        ),
    )


def gap_of_half_corner_mm(face_mm: float, corner_deg: float) -> float:
    """Return how far a mitre stands open, both pieces cut to half the corner.

    Example:
        A 91 corner cut at 45.5 on 66: 2 degrees over a mitre of 94.2.

        >>> round(gap_of_half_corner_mm(66.0, 91.0), 2)
        3.29

    References:
        Each end is (corner - 90) off; the wedge between has twice that angle and two sides as long
        as the cut, face / cos(corner / 2).
    """
    cut_mm = face_mm / math.cos(math.radians(corner_deg / 2.0))
    return 2.0 * cut_mm * math.sin(math.radians(abs(corner_deg - 90.0)))


def plain_45s(figures: ThumbFigures) -> Compared:
    """Compare 45s on two widths at a square corner with what lets them meet point to point.

    References:
        Two 45s lie on one line; their lengths, width x root 2 each, differ.
    """
    pair = mitre_pair(90.0, figures.face_mm, figures.neighbour_mm)
    spare_mm = figures.limit_mm / math.sqrt(2.0)
    return Compared(
        rule=Rule.PLAIN_45S,
        by_rule=(45.0, 45.0),
        true=(pair.first_deg, pair.second_deg),
        off_mm=math.sqrt(2.0) * abs(figures.face_mm - figures.neighbour_mm),
        good=Span(max(0.0, figures.face_mm - spare_mm), figures.face_mm + spare_mm),
    )


def scribe_45(figures: ThumbFigures) -> Compared:
    """Compare 45 for exposing a scribe with 90 less half the corner.

    References:
        Exposed at 45 a point of the section that lies deeper by t is cut t further back; over the
        neighbour it should be t x cot(corner / 2).
    """
    half = math.radians(figures.corner_deg / 2.0)
    share = figures.limit_mm / figures.depth_mm
    most_deg = 2.0 * math.degrees(math.atan2(1.0, 1.0 - share))
    return Compared(
        rule=Rule.SCRIBE_45,
        by_rule=(45.0,),
        true=(90.0 - figures.corner_deg / 2.0,),
        off_mm=figures.depth_mm * abs(1.0 - 1.0 / math.tan(half)),
        good=Span(2.0 * math.degrees(math.atan2(1.0, 1.0 + share)), min(most_deg, 180.0)),
    )


def diagonals(figures: ThumbFigures) -> Compared:
    """Compare "the diagonals are alike, so it is square" with the corner that is left.

    References:
        Opposite sides alike: sin(out) = (e^2 - p^2) / (4 W H), and e^2 + p^2 = 2 (W^2 + H^2). The
        limit is met where 45s held parallel to the reveal open by it: out = limit / (face root 2).
    """
    squared_mm2 = figures.size_mm**2 + figures.height_mm**2
    four_areas_mm2 = 4.0 * figures.size_mm * figures.height_mm

    apart_mm = figures.apart_mm
    sine = apart_mm * math.sqrt(4.0 * squared_mm2 - apart_mm**2) / four_areas_mm2
    out_deg = math.degrees(math.asin(min(1.0, sine)))
    most_out = min(math.pi / 2.0, figures.limit_mm / (figures.face_mm * math.sqrt(2.0)))
    product_mm2 = four_areas_mm2 * math.sin(most_out)
    root_mm2 = math.sqrt(max(0.0, 4.0 * squared_mm2**2 - product_mm2**2))
    return Compared(
        rule=Rule.DIAGONALS,
        by_rule=(90.0,),
        true=(90.0 + out_deg, 90.0 - out_deg),
        off_mm=gap_of_plain_mitres_mm(figures.face_mm, 90.0 + out_deg),
        good=Span(0.0, math.sqrt(2.0 * squared_mm2 - root_mm2)),
    )


def pack(figures: ThumbFigures) -> Compared:
    """Compare plain 45s on a piece tilted by a proud lining and a neighbour packed to match.

    Returns:
        The settings that close it, mitre and bevel for both pieces; `off_mm` is what plain 45s
        leave open at the heel, twice what they do beside a neighbour that lies flat.
    """
    tilted = _tilted(figures, figures.proud_mm)
    cut, _ = closing_cuts(90.0, tilted, tilted)

    def packed_gap_mm(proud_mm: float) -> float:
        lie = _tilted(figures, proud_mm)
        return plain_cuts_open(90.0, lie, lie).heel_mm

    most_mm = _reaches(packed_gap_mm, figures.limit_mm, figures.most_proud_mm)
    return Compared(
        rule=Rule.PACK,
        by_rule=(45.0, 0.0),
        true=(cut.mitre_deg, cut.bevel_deg),
        off_mm=packed_gap_mm(figures.proud_mm),
        good=Span(0.0, most_mm),
    )


def gap_beside_flat_mm(figures: ThumbFigures, proud_mm: float) -> float:
    """Return how far a plain 45 opens at the heel, one piece tilted and its neighbour flat.

    Example:
        3 proud under 19 thick, bearing on 57 of its 57:

        >>> figures = ThumbFigures(face_mm=57, quirk_mm=5, lining_mm=5, thickness_mm=19)
        >>> round(gap_beside_flat_mm(figures, 3.0), 2)
        0.76
    """
    flat = Lie(width_mm=figures.face_mm, thickness_mm=figures.thickness_mm)
    return plain_cuts_open(90.0, _tilted(figures, proud_mm), flat).heel_mm


def _tilted(figures: ThumbFigures, proud_mm: float) -> Lie:
    tilt_deg = math.degrees(math.asin(proud_mm / figures.bearing_mm))
    return Lie(width_mm=figures.face_mm, thickness_mm=figures.thickness_mm, tilt_deg=tilt_deg)


def long_residual(figures: ThumbFigures) -> Compared:
    """Return how often the reading furthest off the fit is the one that is wrong.

    Returns:
        `by_rule` 1 and `true` the share of drawn openings where it is right; good nowhere.
    """
    share = share_of_long_residuals(figures.size_mm, figures.height_mm)
    return Compared(
        rule=Rule.LONG_RESIDUAL, by_rule=(1.0,), true=(share,), off_mm=1.0 - share, good=None
    )


def _reaches(off_mm: Callable[[float], float], limit_mm: float, most: float) -> float:
    """Return the value up to which something that grows stays within a limit, `most` at most."""
    if off_mm(most) <= limit_mm:
        return most
    least = 0.0
    for _ in range(60):
        middle = (least + most) / 2.0
        if off_mm(middle) <= limit_mm:
            least = middle
        else:
            most = middle
    return least

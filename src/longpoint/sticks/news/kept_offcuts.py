"""What of a house's sticks goes back on the rack, and what of the rack was used."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from longpoint.pieces.piece import EndCut, Piece
from longpoint.quantities.formatting import format_angle
from longpoint.speech.said import joined, say
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.remains import UNLIKE
from longpoint.sticks.news.stick_parts import Part, usable_parts, widest_cuts
from longpoint.sticks.plan import CutPlan, Laid, StickSource
from longpoint.survey.house import House

ROUGH = "rough"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptOffcut:
    """One offcut of a house that is cut.

    Attributes:
        origin: The stick it is left of, e.g. "OG57-3"; with a number behind it where there are
            several.
        profile: Name of its profile.
        length_mm: Length that can be used, square across; a kerf is lost at each end.
        left: What its left end is, face up, outer edge away from you.
        right: What its right end is.
    """

    origin: str
    profile: str
    length_mm: float
    left: str = ROUGH
    right: str = ROUGH


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterCutting:
    """What a house leaves.

    Attributes:
        kept: Offcuts, of whatever length.
        used: Labels of offcuts that something was cut from, or that turned out otherwise.
        missing: Labels of offcuts that weren't there.
    """

    kept: tuple[KeptOffcut, ...]
    used: tuple[str, ...]
    missing: tuple[str, ...] = ()


def after_plan(plan: CutPlan, pieces: Sequence[Piece]) -> AfterCutting:
    """Return what a house leaves when everything is cut as planned."""
    by_mark = {piece.mark: piece for piece in pieces}
    return AfterCutting(
        kept=tuple(
            KeptOffcut(
                origin=stick.name,
                profile=stick.profile,
                length_mm=stick.left_mm,
                left=_end_behind(stick.laid[-1], by_mark),
            )
            for stick in plan.sticks
            if stick.left_mm > 0.0
        ),
        used=tuple(stick.label for stick in plan.sticks if stick.label),
    )


def after_saw(state: AtTheSaw, pieces: Sequence[Piece], house: House) -> AfterCutting:
    """Return what a house leaves when what still waits is cut as it lies now.

    A new stick that nothing is cut from is no offcut. One from the rack that nothing is cut from
    stays there.

    Args:
        state: Where the cutting stands.
        pieces: All pieces of the house.
        house: Its saw and profiles.
    """
    by_mark, widest = {piece.mark: piece for piece in pieces}, widest_cuts(pieces)
    kept: list[KeptOffcut] = []
    used: list[str] = []
    missing: list[str] = []
    for stick in state.sticks:
        is_gone = stick.length_mm <= 0.0
        is_touched = bool(stick.is_begun or stick.next or stick.bad or stick.listed_mm)
        if stick.label and is_touched:
            (missing if is_gone else used).append(stick.label)
        if is_touched or stick.rest is not None:
            kept += _kept(stick, usable_parts(stick, house, widest), by_mark, house)
    return AfterCutting(kept=tuple(kept), used=tuple(used), missing=tuple(missing))


def _kept(
    stick: StickAtSaw, parts: Sequence[Part], by_mark: Mapping[str, Piece], house: House
) -> list[KeptOffcut]:
    stays = (*stick.done, *stick.next)
    last_mm = max((stick.spent_mm, *(laid.end_mm for laid in stays)))
    if stick.source is StickSource.STOCK and last_mm == 0.0 and not stick.bad:
        return []
    found = []
    for number, part in enumerate(parts, start=1):
        length_mm, left, right = part.length_mm, ROUGH, ROUGH
        is_behind = number == 1 and last_mm > 0.0
        if is_behind:
            # The cut behind the last piece is made by now; as an offcut it loses a kerf again.
            length_mm -= 2.0 * house.saw.kerf_mm
            if stays and stays[-1].end_mm == last_mm:
                left = _end_behind(stays[-1], by_mark)
        elif stick.rest is not None and len(parts) == 1:
            left = end_words(stick.rest.left)
            right = end_words(stick.rest.right)
        if length_mm > 0.0:
            origin = (
                stick.name
                if number == 1
                else say(
                    "{stick} part {number}",
                    stick=stick.name,
                    number=number,
                )
            )
            found.append(
                KeptOffcut(
                    origin=origin,
                    profile=stick.profile,
                    length_mm=length_mm,
                    left=left,
                    right=right,
                )
            )
    return found


def end_words(cut: EndCut | None) -> str:
    """Return what an end is, in words that a label holds.

    Example:
        >>> from longpoint.pieces.piece import SQUARE_CUT
        >>> end_words(None), end_words(SQUARE_CUT)
        ('rough', 'square')
    """
    if cut is None or cut.kind in UNLIKE:
        return ROUGH
    angles = (("mitre", cut.mitre_deg), ("bevel", cut.bevel_deg))
    written = [(name, format_angle(angle_deg)) for name, angle_deg in angles]
    said = [
        say("{name} {figure}", name=name, figure=figure)
        for name, figure in written
        if figure != "0.0"
    ]
    return joined(" ", said) or "square"


def _end_behind(laid: Laid, by_mark: Mapping[str, Piece]) -> str:
    """The end that a piece leaves behind it: its own cut, seen from the other side.

    Where the piece's outer edge is the longer, the offcut's is the shorter; a piece that lies
    turned has its outer edge where the offcut has its inner one.
    """
    piece = by_mark.get(laid.piece)
    if piece is None:
        return ROUGH
    cut = piece.left if laid.turned else piece.right
    mitre_deg = cut.mitre_deg if laid.turned else -cut.mitre_deg
    if cut.kind in UNLIKE:
        return ROUGH
    return end_words(EndCut(kind=cut.kind, mitre_deg=mitre_deg, bevel_deg=-cut.bevel_deg))

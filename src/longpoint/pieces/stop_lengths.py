"""One setting of the saw's stop for pieces of several bench-made frames.

A frame of 45s joined on the bench shares its opening's error in the quirk. What is left of the
quirk's band can be spent: a frame a little larger or smaller than the opening asks for still lies
within it, so that openings nearly alike get pieces of one length and the stop is set less often.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.bench_frame import bench_frame
from longpoint.pieces.face_trim import has_mitred_corners, is_true_frame
from longpoint.pieces.piece import EndCut, Piece, Role
from longpoint.shape.fitted import FittedOpening
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening

ACROSS: Final = frozenset({Role.HEAD, Role.SILL})
LEGS: Final = frozenset({Role.LEFT_LEG, Role.RIGHT_LEG})
SETTING_DECIMALS: Final = 1
"""Of an angle at the saw."""
ALIKE_MM: Final = 0.05
"""Pieces of one frame nearer than this are a pair: both stand at one setting."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StopWish:
    """Pieces of one frame that are cut alike, and between which lengths they may lie.

    Attributes:
        marks: Of the pieces.
        place: Mark of the opening, with its house in front where there are several.
        profile: What they are cut from.
        cuts: Of both ends, the squarer first, whichever hand.
        long_mm: Over the long points, as the opening asks.
        least_mm: Shortest that keeps the quirk in its band. <= long_mm.
        most_mm: Longest. >= long_mm.
        ends: How many sides share a change of length: 2 where both ends move, 1 on a floor.
        quirk_mm: The quirk there, as asked.
    """

    marks: tuple[str, ...]
    place: str
    profile: str
    cuts: tuple[EndCut, EndCut]
    long_mm: float
    least_mm: float
    most_mm: float
    ends: int
    quirk_mm: float

    def quirk_at_mm(self, length_mm: float) -> float:
        """Return the quirk that a piece of another length leaves. [mm]"""
        return self.quirk_mm + (length_mm - self.long_mm) / self.ends


@dataclass(frozen=True, slots=True, kw_only=True)
class SawStop:
    """One setting of the stop.

    Attributes:
        length_mm: Over the long points.
        wishes: What is cut there.
    """

    length_mm: float
    wishes: tuple[StopWish, ...]

    @property
    def count(self) -> int:
        """How many pieces are cut there."""
        return sum(len(wish.marks) for wish in self.wishes)


def saw_stops(wishes: Iterable[StopWish], step_mm: float = 0.5) -> tuple[SawStop, ...]:
    """Return the fewest settings at which every wish can be cut, the longest first.

    Each setting lies in the middle of what its wishes allow, on a whole step where one lies within.

    Args:
        wishes: Of one house or of many.
        step_mm: What the tape shows. > 0. [mm]

    References:
        The fewest points that meet all intervals: always take the end of the interval that ends
        first; checked against all partitions in the tests.
    """
    alike: dict[tuple[str, tuple[EndCut, EndCut]], list[StopWish]] = {}
    for wish in wishes:
        alike.setdefault((wish.profile, wish.cuts), []).append(wish)
    stops = [
        SawStop(length_mm=_length_mm(group, step_mm), wishes=tuple(group))
        for each in alike.values()
        for group in _groups(each)
    ]
    return tuple(sorted(stops, key=lambda s: (s.wishes[0].profile, -s.length_mm)))


def stop_wishes(
    house: House,
    fitted: Iterable[FittedOpening],
    pieces: Sequence[Piece],
    *,
    prefix: str = "",
) -> tuple[StopWish, ...]:
    """Return what a house's bench-made frames ask of the stop.

    Only mitred sets cut at 45 are among them: of any other the length belongs to the joint.

    Args:
        house: The house.
        fitted: Its openings' shapes.
        pieces: Its pieces.
        prefix: In front of its marks.
    """
    openings = {opening.mark: opening for opening in house.openings}
    own: dict[tuple[str, str], list[Piece]] = {}
    for piece in pieces:
        if piece.opening is not None:
            own.setdefault((piece.opening, piece.face), []).append(piece)
    found: list[StopWish] = []
    for shape in fitted:
        opening = openings.get(shape.mark)
        if opening and is_true_frame(opening) and has_mitred_corners(opening):
            found += _of_frame(opening, shape, own, prefix)
    return tuple(found)


def _of_frame(
    opening: Opening,
    shape: FittedOpening,
    own: Mapping[tuple[str, str], Sequence[Piece]],
    prefix: str,
) -> Iterable[StopWish]:
    on_floor = opening.layout is not Layout.ALL_ROUND
    frame = bench_frame(shape, on_floor=on_floor)
    bottom, right, head, left = opening.quirk_mm.anticlockwise()
    up = (head,) if on_floor else (head, bottom)
    pieces = own.get((shape.mark, shape.face)) or own.get((shape.mark, "")) or ()
    for roles, quirks_mm in ((ACROSS, (left, right)), (LEGS, up)):
        alike = [piece for piece in pieces if piece.role in roles]
        lengths_mm = [piece.long_mm for piece in alike]
        # On a floor that falls the legs are no pair: their own figures keep the head level.
        is_pair = len({(piece.profile, _cuts(piece)) for piece in alike}) == 1
        if not is_pair or max(lengths_mm) - min(lengths_mm) > ALIKE_MM:
            continue
        least_mm, most_mm = opening.quirk_band_mm
        ends = len(quirks_mm)
        shorter_mm = ends * min(0.0, max(least_mm - q - frame.least_off_mm for q in quirks_mm))
        longer_mm = ends * max(0.0, min(most_mm - q - frame.most_off_mm for q in quirks_mm))
        yield StopWish(
            marks=tuple(f"{prefix}{piece.mark}" for piece in alike),
            place=f"{prefix}{shape.mark}",
            profile=alike[0].profile,
            cuts=_cuts(alike[0]),
            long_mm=max(lengths_mm),
            least_mm=max(lengths_mm) + shorter_mm,
            most_mm=max(lengths_mm) + longer_mm,
            ends=ends,
            quirk_mm=quirks_mm[0],
        )


def _cuts(piece: Piece) -> tuple[EndCut, EndCut]:
    """Return both cuts, the squarer first: a left and a right leg stand at one stop."""
    first, second = sorted(
        (
            replace(
                cut,
                mitre_deg=round(cut.mitre_deg, SETTING_DECIMALS),
                bevel_deg=round(cut.bevel_deg, SETTING_DECIMALS),
            )
            for cut in (piece.left, piece.right)
        ),
        key=lambda cut: (cut.mitre_deg, cut.bevel_deg),
    )
    return first, second


def _groups(wishes: Sequence[StopWish]) -> list[list[StopWish]]:
    groups: list[list[StopWish]] = []
    end_mm = float("-inf")
    for wish in sorted(wishes, key=lambda w: (w.most_mm, w.least_mm, w.marks)):
        if wish.least_mm > end_mm:
            groups.append([])
            end_mm = wish.most_mm
        groups[-1].append(wish)
    return groups


def _length_mm(group: Sequence[StopWish], step_mm: float) -> float:
    least_mm = max(wish.least_mm for wish in group)
    most_mm = min(wish.most_mm for wish in group)
    middle_mm = (least_mm + most_mm) / 2.0
    step = round(middle_mm / step_mm) * step_mm
    return step if least_mm <= step <= most_mm else middle_mm

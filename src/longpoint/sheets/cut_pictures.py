"""The cuts of a stick one by one: how each leans, what is kept, and where the saw's width falls."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.sheets.blocks import Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.saw_settings import setting_figure
from longpoint.sheets.stick_pictures import PAPER_MM
from longpoint.sheets.text_width import text_width_mm
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.order.saw_setting import Side
from longpoint.sticks.order.stick_cuts import StickCut
from longpoint.sticks.plan import CutPlan, CutStick

FACE_MM: Final = 5.0
"""Height of the piece of stick that is drawn at a cut."""
HALF_MM: Final = 5.2
"""Half its length."""
KERF_MM: Final = 0.9
"""The saw's width, drawn broader than it is so that its side can be seen."""
LEAST_MM: Final = 13.2
"""Two cuts are drawn no nearer to each other than this."""
STEEPEST_DEG: Final = 50.0
LEADER_MM: Final = 1.8
NUMBER_MM: Final = 2.9
FIGURE_MM: Final = 2.5


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where a cut is on its stick, and where it is drawn. [mm on paper]"""

    cut: StickCut
    at_mm: float
    drawn_mm: float


def cuts_picture(stick: CutStick, cuts: Sequence[StickCut], scale: float) -> Drawing:
    """Return the cuts of a stick side by side, each under its place on the stick.

    What is kept is filled; the black strip is what the saw takes, and lies on the side of the
    mark that is not kept. A diamond stands where the saw is set anew.

    Args:
        stick: The stick.
        cuts: Its cuts from left to right.
        scale: Millimetres on paper for each millimetre of the stick, as above.
    """
    rows = _rows(_places(stick, cuts, scale))
    marks: list[Mark] = []
    lines = max((len(_figure_lines(cut)) for cut in cuts), default=1)
    row_mm = LEADER_MM + FACE_MM + NUMBER_MM + lines * (FIGURE_MM + 0.3) + 1.3
    for index, row in enumerate(rows):
        for spot in row:
            marks += _drawn(spot, index * row_mm)
    return Drawing(
        width_mm=PAPER_MM,
        height_mm=max(1, len(rows)) * row_mm,
        marks=tuple(marks),
        described=_described(cuts),
    )


def with_cuts(upper: Drawing, lower: Drawing) -> Drawing:
    """Return a stick's picture with that of its cuts close below it."""
    shift_mm = upper.height_mm
    moved = (
        replace(mark, y_mm=mark.y_mm + shift_mm)
        if isinstance(mark, Word)
        else replace(mark, points=tuple((x, y + shift_mm) for x, y in mark.points))
        for mark in lower.marks
    )
    return replace(
        upper,
        height_mm=upper.height_mm + lower.height_mm,
        marks=(*upper.marks, *moved),
        described=say(
            "{described}. {described_2}",
            described=upper.described,
            described_2=lower.described,
        ),
    )


def changes_words(plan: CutPlan, cuts: Mapping[str, Sequence[StickCut]]) -> str:
    """Return how often the saw is set anew for each profile, and how many cuts serve two pieces."""
    by_profile: dict[str, list[StickCut]] = {}
    for stick in plan.sticks:
        by_profile.setdefault(stick.profile, []).extend(cuts.get(stick.name, ()))
    said = []
    for profile, ours in by_profile.items():
        anew = sum(cut.is_set_anew for cut in ours)
        shared = sum(cut.is_shared for cut in ours)
        of = say(
            "{counted}, {shared} of them shared",
            counted=say_many("{count} cut", "{count} cuts", count=len(ours)),
            shared=shared,
        )
        said.append(say("{profile} {anew} times in {of}", profile=profile, anew=anew, of=of))
    every = [cut for ours in by_profile.values() for cut in ours]
    total = (
        say("; in all {every} times", every=sum(cut.is_set_anew for cut in every))
        if len(said) > 1
        else ""
    )
    return say("The saw is set anew: {said}{total}.", said=joined("; ", said), total=total)


def _places(
    stick: CutStick, cuts: Sequence[StickCut], scale: float
) -> list[tuple[StickCut, float, float]]:
    """Return where each cut is on the stick, and where it would best be drawn.

    Two cuts in one gap are drawn to either side of it.
    """
    starts = {laid.piece: laid.start_mm for laid in stick.laid}
    ends = {laid.piece: laid.end_mm for laid in stick.laid}
    found = []
    for place, cut in enumerate(cuts):
        sides = [ends[cut.left]] if cut.left is not None else []
        sides += [starts[cut.right]] if cut.right is not None else []
        at_mm = sum(sides) / len(sides) * scale
        is_inside = 0 < place < len(cuts) - 1 and not cut.is_shared
        aside_mm = (-LEAST_MM / 2 if cut.left is not None else LEAST_MM / 2) if is_inside else 0.0
        found.append((cut, at_mm, at_mm + aside_mm))
    return found


def _rows(places: Sequence[tuple[StickCut, float, float]]) -> list[list[_Spot]]:
    """Return the cuts spread out so that none covers another, in as many rows as that takes."""
    most = int((PAPER_MM - 2 * HALF_MM) // LEAST_MM) + 1
    rows = []
    for start in range(0, len(places), most):
        row = places[start : start + most]
        drawn: list[float] = []
        for _, _, best_mm in row:
            least_mm = drawn[-1] + LEAST_MM if drawn else HALF_MM
            drawn.append(max(best_mm, least_mm))
        limit_mm = PAPER_MM - HALF_MM
        for place in reversed(range(len(drawn))):
            drawn[place] = min(drawn[place], limit_mm)
            limit_mm = drawn[place] - LEAST_MM
        rows.append(
            [_Spot(cut, at_mm, x_mm) for (cut, at_mm, _), x_mm in zip(row, drawn, strict=True)]
        )
    return rows


def _drawn(spot: _Spot, top_mm: float) -> list[Mark]:
    cut, x_mm = spot.cut, spot.drawn_mm
    top, bottom = top_mm + LEADER_MM, top_mm + LEADER_MM + FACE_MM
    lean_mm = _lean_mm(cut)
    far, near = x_mm + lean_mm / 2, x_mm - lean_mm / 2
    marks: list[Mark] = []
    if top_mm == 0.0:
        leader = ((spot.at_mm, 0.0), (x_mm, top - 0.3))
        marks.append(Outline(points=leader, ink=Ink.MARK, closed=False))
    # The saw's width lies off the piece that is kept; between two it belongs to neither.
    way = 0.0 if cut.is_shared else 1.0 if cut.left is not None else -1.0
    first = -KERF_MM / 2 if cut.is_shared else min(0.0, way * KERF_MM)
    edges = (first, first + KERF_MM)
    strip = (
        (far + edges[0], top),
        (far + edges[1], top),
        (near + edges[1], bottom),
        (near + edges[0], bottom),
    )
    if cut.left is not None:
        kept = ((x_mm - HALF_MM, top), strip[0], strip[3], (x_mm - HALF_MM, bottom))
        marks.append(Outline(points=kept, ink=Ink.PIECE))
    if cut.right is not None:
        kept = (strip[1], (x_mm + HALF_MM, top), (x_mm + HALF_MM, bottom), strip[2])
        marks.append(Outline(points=kept, ink=Ink.PIECE))
    marks.append(Outline(points=strip, ink=Ink.HOOK))
    if cut.setting.tilt is not Side.SQUARE:
        marks += _tilted(cut, (far, near), (top, bottom))
    number_y = bottom + NUMBER_MM + 0.1
    marks.append(Word(x_mm=x_mm, y_mm=number_y, text=str(cut.number), size_mm=NUMBER_MM, bold=True))
    if cut.is_set_anew:
        marks.append(_diamond(x_mm - 3.4, number_y - NUMBER_MM * 0.38))
    for line, figure in enumerate(_figure_lines(cut), 1):
        size_mm = min(FIGURE_MM, FIGURE_MM * LEAST_MM / text_width_mm(figure, FIGURE_MM))
        y_mm = number_y + line * (FIGURE_MM + 0.3)
        marks.append(Word(x_mm=x_mm, y_mm=y_mm, text=figure, size_mm=size_mm))
    return marks


def _figure_lines(cut: StickCut) -> list[str]:
    """A swing and a tilt together stand one below the other, so that both can be read."""
    return setting_figure(cut.setting).replace("\N{NO-BREAK SPACE}", " ").split(" + ")


def _lean_mm(cut: StickCut) -> float:
    """How far the edge at the fence lies to the right of the near one; swung left leans so."""
    lean_deg = min(cut.setting.swing_deg, STEEPEST_DEG)
    lean_mm = FACE_MM * math.tan(math.radians(lean_deg))
    match cut.setting.swing:
        case Side.LEFT:
            return lean_mm
        case Side.RIGHT:
            return -lean_mm
        case Side.SQUARE:
            return 0.0


def _tilted(cut: StickCut, edge: tuple[float, float], down: tuple[float, float]) -> list[Mark]:
    """The lower edge of a tilted cut, dotted, on the side to which the blade comes out below."""
    way = 1.0 if cut.setting.tilt is Side.LEFT else -1.0
    below_mm = way * 2.2
    line = ((edge[0] + below_mm, down[0]), (edge[1] + below_mm, down[1]))
    return [Outline(points=line, ink=Ink.TRUE, closed=False)]


def _diamond(x_mm: float, y_mm: float) -> Outline:
    size = 1.0
    points = ((x_mm, y_mm - size), (x_mm + size, y_mm), (x_mm, y_mm + size), (x_mm - size, y_mm))
    return Outline(points=points, ink=Ink.HOOK)


def _described(cuts: Sequence[StickCut]) -> str:
    said = []
    for cut in cuts:
        figure = setting_figure(cut.setting).replace("\N{NO-BREAK SPACE}", " ")
        anew = say(", set anew") if cut.is_set_anew else ""
        between = joined(say(" and "), (mark for mark in (cut.left, cut.right) if mark))
        said.append(
            say(
                "cut {number} {figure}{anew} for {between}",
                number=cut.number,
                figure=figure,
                anew=anew,
                between=between,
            )
        )
    return joined("; ", said)

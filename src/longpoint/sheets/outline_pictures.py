"""The echo of an opening that hasn't four straight sides: its pieces round it, as it stands."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.arch_findings import ArchFace
from longpoint.pieces.arched import arched_face, leg_ring
from longpoint.pieces.outlined_face import OutlinedFace, outlined_face
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedOpening, FittedOutline
from longpoint.shape.point import Point
from longpoint.sheets.blocks import Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.dialects import Words
from longpoint.sheets.opening_pictures import SMALL_MM, WIDTH_MM, Echo
from longpoint.sheets.opening_stance import as_it_stands, lean_words, level_words, true_rectangle
from longpoint.sheets.outline_marks import Named, Page, corner_angles, piece_names, side_reading
from longpoint.sheets.text_width import text_width_mm
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place
from longpoint.trims.arch_segments import Segment, arch_segments
from longpoint.trims.rings import Ring, mitred_ring
from longpoint.trims.set_rings import BOTTOM, LEFT, RIGHT

ARC_STEPS: Final = 24
"""Straight bits that an arc is drawn with."""


def arch_echo(
    house: House,
    opening: Opening,
    fitted: FittedOpening,
    readings: OpeningReadings,
    words: Words,
) -> Echo:
    """Return the picture of one face of an arched opening with its pieces named in place.

    Args:
        house: Gives profiles and units.
        opening: Its settings.
        fitted: Its shape below the springing line, with the rise.
        readings: What was read of this face.
        words: The crew's words.

    Raises:
        PieceError: The trim doesn't go round it.
    """
    units = house.units
    face = arched_face(house, opening, fitted)
    standing = _Standing.of(fitted.corners, as_it_stands(opening, fitted))
    corners = standing.all(fitted.corners)
    named = _arched_pieces(face, standing)
    page = Page.holding([p for _, ring in named for p in ring])
    middle = page.middle
    marks: list[Mark] = [Outline(points=page.put(ring), ink=Ink.PIECE) for _, ring in named]
    marks.append(Outline(points=page.put(true_rectangle(_four(corners))), ink=Ink.TRUE))
    marks.append(Outline(points=page.put(_arched_hole(face, standing)), ink=Ink.OPENING))
    marks += _rise_mark(face, standing, page, units)
    marks += piece_names(named, page, words)
    sides = ((Place.BOTTOM, 0), (Place.RIGHT, 1), (Place.TOP, 2), (Place.LEFT, 3))
    for place, side in sides:
        value_mm = readings.side_mm(place)
        if value_mm is not None:
            ends = (corners[side], corners[(side + 1) % 4])
            marks += side_reading(page, ends, middle, format_length(value_mm, units))
    marks += corner_angles(page, corners[:2], fitted.corner_deg[:2], corners)
    bottom = say("floor") if opening.stands_on_floor else say("bottom")
    crown = standing.one(face.trim.circle.at(0.0, face.trim.circle.radius_mm))
    above = format_with_unit(crown.y_mm - (corners[0].y_mm + corners[1].y_mm) / 2.0, units)
    question = say(
        "Below the springing: {lean} The crown stands {above} above the {bottom}, "
        "over the middle of the springing line.",
        lean=lean_words(corners, units, bottom=bottom),
        above=above,
        bottom=bottom,
    )
    left, right = (format_angle(angle) for angle in fitted.corner_deg[:2])
    said = say(
        "Bottom corners {left} and {right} degrees. {level}",
        left=left,
        right=right,
        level=level_words(opening, fitted),
    ).rstrip()
    return _echo(opening.mark, page, marks, question, said, say("dotted: true square"))


def outline_echo(house: House, opening: Opening, fitted: FittedOutline, words: Words) -> Echo:
    """Return the picture of one face of an opening with three, five or more sides.

    Args:
        house: Gives profiles and units.
        opening: Its settings.
        fitted: Its shape.
        words: The crew's words.

    Raises:
        PieceError: The trim doesn't go round it.
    """
    units = house.units
    face = outlined_face(house, opening, fitted)
    turn = math.radians(fitted.level_deg or 0.0)
    standing = _Standing(cos=math.cos(turn), sin=math.sin(turn))
    corners = standing.all(fitted.corners)
    named = _outlined_pieces(face, standing)
    page = Page.holding([p for _, ring in named for p in ring])
    marks: list[Mark] = [Outline(points=page.put(ring), ink=Ink.PIECE) for _, ring in named]
    marks.append(Outline(points=page.put(corners), ink=Ink.OPENING))
    marks += piece_names(named, page, words)
    for side, side_mm in enumerate(_sides_read(opening, fitted)):
        ends = (corners[side], corners[(side + 1) % len(corners)])
        marks += side_reading(page, ends, page.middle, format_length(side_mm, units))
    marks += corner_angles(page, corners, fitted.corner_deg, corners)
    level = (
        "" if fitted.level_deg is not None else say("Not read with a level: drawn on its bottom.")
    )
    worst = max(fitted.corner_u_deg)
    figures = joined(", ", (format_angle(angle) for angle in fitted.corner_deg))
    doubt = say("± {worst:.{value}f} at most", worst=worst, value=1 if worst >= 0.1 else 2)
    said = say(
        "Corners anticlockwise from bottom left: {figures} degrees, {doubt}. {level}",
        figures=figures,
        doubt=doubt,
        level=level,
    ).rstrip()
    return _echo(opening.mark, page, marks, _stands(corners, units), said, "")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Standing:
    """How a shape fitted along x is turned to stand as the opening does."""

    cos: float
    sin: float

    @classmethod
    def of(cls, fitted: Sequence[Point], stood: Sequence[Point]) -> "_Standing":
        before = math.atan2(fitted[1].y_mm - fitted[0].y_mm, fitted[1].x_mm - fitted[0].x_mm)
        after = math.atan2(stood[1].y_mm - stood[0].y_mm, stood[1].x_mm - stood[0].x_mm)
        return cls(cos=math.cos(after - before), sin=math.sin(after - before))

    def one(self, p: Point) -> Point:
        return Point(self.cos * p.x_mm - self.sin * p.y_mm, self.sin * p.x_mm + self.cos * p.y_mm)

    def all(self, points: Sequence[Point]) -> tuple[Point, ...]:
        return tuple(self.one(p) for p in points)


def _arched_pieces(face: ArchFace, standing: _Standing) -> list[Named]:
    named: list[Named] = [
        ("left-leg", standing.all(leg_ring(face, LEFT).corners)),
        ("right-leg", standing.all(leg_ring(face, RIGHT).corners)),
    ]
    if not face.set.trim.has_bare_bottom:
        named.append(
            (say("sill"), standing.all(mitred_ring(face.set.trim.outline, BOTTOM).corners))
        )
    for index, segment in enumerate(arch_segments(face.trim, face.count or 1)):
        named.append((say("segment-{index}", index=index + 1), standing.all(_sawn(face, segment))))
    return named + _below(face.set.rings.plinths, standing)


def _outlined_pieces(face: OutlinedFace, standing: _Standing) -> list[Named]:
    named = [
        (say("side-{number}", number=face.number(side)), standing.all(face.rings[side].corners))
        for side in face.clockwise
    ]
    named += [("", standing.all(ring.corners)) for ring in face.band.values()]
    return named + _below(face.set.rings.plinths, standing)


def _below(plinths: dict[int, Ring], standing: _Standing) -> list[Named]:
    return [("", standing.all(ring.corners)) for ring in plinths.values()]


def _sawn(face: ArchFace, segment: Segment) -> tuple[Point, ...]:
    """Return a segment once it is sawn to the curve, its arcs as many short lines."""
    circle = face.trim.circle
    inner = [circle.angle_deg(p) for p in segment.inner]
    outer = [circle.angle_deg(p) for p in segment.outer]
    return (
        *(circle.at(a, face.trim.inner_mm) for a in _steps(*inner)),
        *(circle.at(a, face.trim.outer_mm) for a in reversed(_steps(*outer))),
    )


def _steps(start_deg: float, end_deg: float) -> tuple[float, ...]:
    return tuple(start_deg + (end_deg - start_deg) * k / ARC_STEPS for k in range(ARC_STEPS + 1))


def _arched_hole(face: ArchFace, standing: _Standing) -> tuple[Point, ...]:
    circle = face.trim.circle
    arc = (circle.at(a, circle.radius_mm) for a in _steps(circle.half_deg, -circle.half_deg))
    return standing.all((*face.set.trim.corners[:2], *arc))


def _rise_mark(face: ArchFace, standing: _Standing, page: Page, units: Units) -> list[Mark]:
    circle = face.trim.circle
    middle = Point(
        (circle.left.x_mm + circle.right.x_mm) / 2, (circle.left.y_mm + circle.right.y_mm) / 2
    )
    crown = circle.at(0.0, circle.radius_mm)
    ends = page.put(standing.all((middle, crown)))
    chord = page.put(standing.all((circle.left, circle.right)))
    (x1, y1), (x2, y2) = ends
    text = say("rise {rise}", rise=format_length(face.rise_mm, units))
    if text_width_mm(text, SMALL_MM) > abs(y2 - y1):
        text = format_length(face.rise_mm, units)
    return [
        Outline(points=chord, ink=Ink.MARK, closed=False),
        Outline(points=ends, ink=Ink.MARK, closed=False),
        Word(
            x_mm=(x1 + x2) / 2 - 1.0,
            y_mm=(y1 + y2) / 2,
            text=text,
            size_mm=SMALL_MM,
            turn_deg=-90.0,
        ),
    ]


def _sides_read(opening: Opening, fitted: FittedOutline) -> tuple[float, ...]:
    """Return what was read of each side; as fitted where the corners were read instead."""
    outline = opening.outline
    if outline is None or not outline.sides_mm or fitted.face == "b":
        return fitted.side_mm
    return outline.sides_mm


def _stands(corners: Sequence[Point], units: Units) -> str:
    low_x = min(p.x_mm for p in corners)
    wide = format_with_unit(max(p.x_mm for p in corners) - low_x, units)
    high = format_with_unit(max(p.y_mm for p in corners) - min(p.y_mm for p in corners), units)
    top = max(corners, key=lambda p: (round(p.y_mm, 1), -p.x_mm))
    across = format_with_unit(top.x_mm - low_x, units)
    return say(
        "It is {wide} wide and {high} high; its highest corner stands {across} in "
        "from its leftmost.",
        wide=wide,
        high=high,
        across=across,
    )


def _echo(
    mark: str, page: Page, marks: Sequence[Mark], question: str, said: str, dotted: str
) -> Echo:
    drawn = say("; {dotted}", dotted=dotted) if dotted else ""
    caption = (
        say(
            "Seen from inside the room; drawn as crooked as it is{drawn}. Sizes 1 : "
            "{scale:.0f}. {said}",
            drawn=drawn,
            scale=1 / page.scale,
            said=said,
        )
    ).rstrip()
    return Echo(
        drawing=Drawing(
            width_mm=WIDTH_MM,
            height_mm=page.height_mm,
            marks=tuple(marks),
            caption=caption,
            described=say(
                "{mark} seen from inside the room. {question}",
                mark=mark,
                question=question,
            ),
        ),
        times=1,
        question=question,
    )


def _four(corners: Sequence[Point]) -> tuple[Point, Point, Point, Point]:
    bl, br, tr, tl = corners
    return (bl, br, tr, tl)

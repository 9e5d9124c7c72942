"""Openings drawn at random, and read by a hand that shakes: what the alarms are measured on.

Every spread is assumed (`docs/explanation/alarms.md` lists them); none was measured in a house.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from random import Random

from longpoint.quantities.length import Units
from longpoint.shape.point import Point, side_lengths_mm
from longpoint.survey.house import Dialect, House
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Layout, Nominal, Opening, OpeningKind, PerSide
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import OpeningReadings, Place, Plane, Reading

Corners = tuple[Point, Point, Point, Point]

PLACES = (Place.BOTTOM, Place.RIGHT, Place.TOP, Place.LEFT, Place.RISING, Place.FALLING)

TAPER_SD_MM = 1.0
FLOOR_SD_MM = 3.0
NEW_LEAN_SD_MM = 1.5
OLD_LEAN_SD_MM = 4.0

CAREFUL_SD_MM = 0.5
HURRIED_SD_MM = 0.8


def house_of(
    *openings: Opening, name: str = "Drawn House", units: Units = Units.MM, tape: Tape | None = None
) -> House:
    """Return a house that holds these openings and what they need."""
    return House(
        name=name,
        units=units,
        dialect=Dialect.UK,
        profiles=(Profile(name="AR57", width_mm=57.0, thickness_mm=19.0),),
        tapes=(tape or Tape(name="T1"),),
        saw=Saw(name="S1"),
        openings=openings,
    )


def opening_of(
    mark: str,
    readings: OpeningReadings | None = None,
    *,
    kind: OpeningKind = OpeningKind.WINDOW,
    room: str = "",
    batch: str = "",
    nominal: Nominal | None = None,
    **lengths_mm: float | tuple[float, ...],
) -> Opening:
    """Return an opening with these readings, given as a record or by place (`top=1187`)."""
    is_window = kind is OpeningKind.WINDOW
    return Opening(
        mark=mark,
        room=room,
        kind=kind,
        layout=Layout.ALL_ROUND if is_window else Layout.LEGS_AND_HEAD,
        readings=readings or readings_of(**lengths_mm),
        quirk_mm=PerSide(head=5.0, right=5.0, bottom=5.0, left=5.0),
        profiles=PerSide(head="AR57", right="AR57", bottom="AR57", left="AR57"),
        batch=batch,
        nominal=nominal,
    )


def readings_of(**lengths_mm: float | tuple[float, ...]) -> OpeningReadings:
    """Return readings by place; a tuple is one place read several times."""
    return OpeningReadings(
        lengths=tuple(
            Reading(
                place=Place(name.replace("_", " ")), value_mm=float(value), written=f"{value:g}"
            )
            for name, values in lengths_mm.items()
            for value in (values if isinstance(values, tuple) else (values,))
        ),
        tape="T1",
    )


def exact_mm(corners: Corners) -> dict[Place, float]:
    """Return what a perfect tape shows on four corners: bl, br, tr, tl."""
    bottom, right, top, left = side_lengths_mm(corners)
    bl, br, tr, tl = corners
    lengths = (bottom, right, top, left, bl.distance_mm(tr), tl.distance_mm(br))
    return dict(zip(PLACES, lengths, strict=True))


def read(
    corners: Corners,
    rng: Random,
    sd_mm: float = CAREFUL_SD_MM,
    *,
    step_mm: float = 1.0,
    over_mm: float = 0.0,
) -> OpeningReadings:
    """Return six readings of an opening, each with noise and rounded to the tape's step.

    Args:
        corners: The opening.
        rng: Source of chance.
        sd_mm: Spread of one reading.
        step_mm: To what the tape is read.
        over_mm: What the tape reads too much.
    """
    lengths = []
    for place, true_mm in exact_mm(corners).items():
        value_mm = round((true_mm + over_mm + rng.gauss(0.0, sd_mm)) / step_mm) * step_mm
        lengths.append(Reading(place=place, value_mm=value_mm, written=f"{value_mm:g}"))
    plane = Plane(**{f"{c}_mm": float(rng.choice(_PLANE_MM)) for c in ("tl", "tr", "br", "bl")})
    return OpeningReadings(lengths=tuple(lengths), plane=plane, tape="T1")


_PLANE_MM = (-1, 0, 0, 0, 0, 0, 1)


def drawn_window(rng: Random, lean_sd_mm: float) -> Corners:
    """Return the corners of a window of any size."""
    return quadrilateral(
        width_mm=rng.uniform(400.0, 2400.0),
        height_mm=rng.uniform(400.0, 1500.0),
        lean_mm=rng.gauss(0.0, lean_sd_mm),
        width_taper_mm=rng.gauss(0.0, TAPER_SD_MM),
        height_taper_mm=rng.gauss(0.0, TAPER_SD_MM),
    )


def drawn_door(rng: Random, lean_sd_mm: float) -> Corners:
    """Return the corners of a door whose floor falls."""
    return quadrilateral(
        width_mm=rng.uniform(700.0, 900.0),
        height_mm=rng.uniform(1950.0, 2100.0),
        lean_mm=rng.gauss(0.0, lean_sd_mm),
        width_taper_mm=rng.gauss(0.0, TAPER_SD_MM),
        floor_rise_mm=rng.gauss(0.0, FLOOR_SD_MM),
    )


def quadrilateral(
    *,
    width_mm: float,
    height_mm: float,
    lean_mm: float = 0.0,
    width_taper_mm: float = 0.0,
    height_taper_mm: float = 0.0,
    floor_rise_mm: float = 0.0,
) -> Corners:
    """Return the corners of an opening that leans, tapers and stands on a floor that rises."""
    bl = Point(0.0, 0.0)
    br = Point(width_mm, floor_rise_mm)
    tl = Point(lean_mm, height_mm)
    tr = Point(lean_mm + width_mm + width_taper_mm, height_mm + height_taper_mm)
    return (bl, br, tr, tl)


def drawn_opening(
    rng: Random, mark: str, kind: OpeningKind, lean_sd_mm: float, sd_mm: float = CAREFUL_SD_MM
) -> Opening:
    """Return an opening of any size, read once."""
    draw = drawn_window if kind is OpeningKind.WINDOW else drawn_door
    return opening_of(mark, read(draw(rng, lean_sd_mm), rng, sd_mm), kind=kind)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slipped:
    """An opening with one reading changed, and what it was before."""

    opening: Opening
    place: Place
    meant_mm: float


def with_slip(opening: Opening, place: Place, value_mm: float) -> Slipped:
    """Return the opening with another figure written at a place."""
    meant_mm = opening.readings.mean_mm(place)
    assert meant_mm is not None
    slip = Reading(place=place, value_mm=value_mm, written=f"{value_mm:g}")
    lengths = tuple(slip if r.place is place else r for r in opening.readings.lengths)
    readings = replace(opening.readings, lengths=lengths)
    return Slipped(opening=replace(opening, readings=readings), place=place, meant_mm=meant_mm)


def swapped_digits(value_mm: float, rng: Random) -> float | None:
    """Return a whole figure with two different neighbouring digits swapped, None if it has none."""
    digits = f"{math.floor(value_mm)}"
    where = [i for i in range(len(digits) - 1) if digits[i] != digits[i + 1]]
    where = [i for i in where if not (i == 0 and digits[1] == "0")]
    if not where:
        return None
    i = rng.choice(where)
    return float(digits[:i] + digits[i + 1] + digits[i] + digits[i + 2 :])


def batch_openings(
    rng: Random,
    units: int = 12,
    *,
    sd_mm: float = CAREFUL_SD_MM,
    shifts_mm: dict[int, float] | None = None,
    leans_mm_per_m: dict[int, float] | None = None,
) -> Iterable[Opening]:
    """Yield the openings of units made alike: three windows and two doors each, by drawing.

    Args:
        rng: Source of chance.
        units: How many.
        sd_mm: Spread of one reading.
        shifts_mm: What the tape reads over in a unit, by its number from 1.
        leans_mm_per_m: How far the windows of a unit lean, beside their spread.
    """
    drawn = (("W1", 1194, 894), ("W2", 594, 1094), ("W3", 894, 594), ("D1", 822, 2041))
    for unit in range(1, units + 1):
        shift_mm = (shifts_mm or {}).get(unit, 0.0)
        lean = (leans_mm_per_m or {}).get(unit, 0.0)
        for name, width_mm, height_mm in (*drawn, ("D2", 722, 2041)):
            is_window = name.startswith("W")
            corners = quadrilateral(
                width_mm=width_mm + rng.gauss(0.0, 1.0),
                height_mm=height_mm + rng.gauss(0.0, 1.0),
                lean_mm=height_mm / 1000.0 * (rng.gauss(0.0, 1.5) + lean * is_window),
                width_taper_mm=rng.gauss(0.0, TAPER_SD_MM),
                height_taper_mm=rng.gauss(0.0, TAPER_SD_MM),
            )
            yield opening_of(
                f"{unit}-{name}",
                read(corners, rng, sd_mm, step_mm=0.5, over_mm=shift_mm),
                kind=OpeningKind.WINDOW if is_window else OpeningKind.DOOR,
                room=f"Unit {unit}",
                batch=name,
                nominal=Nominal(width_mm=width_mm, height_mm=height_mm),
            )

"""Houses drawn with their true openings and crews, read by a hand that errs, and built.

The truth is worked out piece by piece, from the figures on the sheet to the wood on the wall, with
nothing of the forecast's own sums: only the limits of a frame are its.
"""

import cmath
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import SLOTS, Slot, frame_rows
from longpoint.forecast.planned_face import PlannedFace
from longpoint.linear.port import LinearSolver
from longpoint.pieces.pairs import printed_lengths_mm
from longpoint.pieces.piece import EndCut, HookEnd, Piece, Role
from tests import house_documents

FACES_MM: Final = (45, 57, 70, 82, 95)
QUIRKS_MM: Final = (2.5, 3.0, 4.0, 6.0)
GAPS_MM: Final = (0.5, 0.8)
WINDOWS_MM: Final = (
    (460, 460),
    (600, 900),
    (910, 610),
    (1200, 1050),
    (1190, 460),
    (1500, 1200),
    (1810, 1200),
    (900, 1350),
)
DOORS_MM: Final = ((764, 2032), (838, 2040), (930, 2100))
NOMINAL_SD_MM: Final = 3.0
"""How far openings differ from the drawing."""

DOORS: Final = 4
ENDS: Final = {
    "bottom": (0, 1),
    "right": (1, 2),
    "top": (2, 3),
    "left": (3, 0),
    "rising": (0, 2),
    "falling": (3, 1),
    # One width stands for the bottom, one height for the left side.
    "width": (0, 1),
    "height": (3, 0),
}
SIX: Final = ("top", "bottom", "left", "right", "rising", "falling")
ONE_EACH: Final = ("width", "height")

PARALLAX_MM: Final = 0.47
LIMIT: Final = math.sqrt(3.0)
"""From a limit to a standard deviation."""

TAPE_SLOPE_MM_PER_M: Final = {"I": 0.1, "II": 0.2, "III": 0.4}

_SIDE_OF: Final = {Role.SILL: 0, Role.RIGHT_LEG: 1, Role.HEAD: 2, Role.LEFT_LEG: 3}

Reads = Mapping[str, Mapping[str, Any]]
"""For each mark the reading keys of its entry in the house file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """What true houses and crews are like; as it stands, what the forecast supposes.

    Attributes:
        saw_times: Saws are out so many times as much as supposed.
        hook_mm: A bent hook, on every inside reading.
        reveal_bow_mm: Standard deviation of the bow of a reveal's side.
        tapes: 2: another tape marks at the saw.
        true_class: Class that the tapes really are of; the file says II.
        quirk_feels_bow: True when a piece's own bow changes its quirk at mid length.
        stop_block: True when pairs are cut against a stop block.
        faces_mm: Face widths to choose from.
        quirks_mm: Quirks.
        gaps_mm: Widest joints let pass.
        windows_mm: Sizes of windows on the drawing.
        doors_mm: Of doors.
    """

    saw_times: float = 1.0
    hook_mm: float = 0.0
    reveal_bow_mm: float = 0.4
    tapes: int = 1
    true_class: str = "II"
    quirk_feels_bow: bool = False
    stop_block: bool = False
    faces_mm: tuple[int, ...] = FACES_MM
    quirks_mm: tuple[float, ...] = QUIRKS_MM
    gaps_mm: tuple[float, ...] = GAPS_MM
    windows_mm: tuple[tuple[int, int], ...] = WINDOWS_MM
    doors_mm: tuple[tuple[int, int], ...] = DOORS_MM


@dataclass(frozen=True, slots=True, kw_only=True)
class TrueOpening:
    """One opening as it really is; corners bl, br, tr, tl, across + i up. [mm]"""

    mark: str
    is_door: bool
    nominal_mm: tuple[int, int]
    corners: tuple[complex, ...]
    bow_mm: tuple[float, ...]
    face_mm: int
    quirk_mm: float
    gap_mm: float

    @property
    def room_mm(self) -> float:
        """How far the quirk may go either way: what the eye lets pass of a small one is less."""
        return round(min(2.0, 0.4 * self.quirk_mm), 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class TrueCrew:
    """What is out all through the house, and how much single acts differ (standard deviations).

    Attributes:
        scale_deg: Every cut is so far past its setting.
        fence_deg: Left ends are so far past it besides, right ends short of it.
        reading_mm: Every inside reading shows so much too much.
        mark_mm: Every mark makes its piece so much too long.
        read_mm_per_m: The reading tape shows so much too much per metre.
        saw_mm_per_m: The saw's tape does.
    """

    scale_deg: float
    fence_deg: float
    reading_mm: float
    mark_mm: float
    read_mm_per_m: float = 0.0
    saw_mm_per_m: float = 0.0
    stop_cut_deg: float = 0.05
    set_cut_deg: float = 0.10
    cut_mm: float = 0.35
    width_mm: float = 0.15
    edge_bow_mm: float = 0.15


@dataclass(frozen=True, slots=True, kw_only=True)
class TrueHouse:
    """One house as it really is, and how it is read and cut."""

    number: int
    seed: int
    walls: str
    is_proved: bool
    mitres: str
    places: tuple[str, ...]
    openings: tuple[TrueOpening, ...]
    crew: TrueCrew
    world: World = field(default_factory=World)

    def opening(self, mark: str) -> TrueOpening:
        return next(o for o in self.openings if o.mark == mark)

    def stream(self, purpose: int) -> np.random.Generator:
        """A stream of its own for each purpose, so that one change leaves the others' draws."""
        return np.random.default_rng((self.seed, self.number, purpose))


READING, BUILDING = 2, 3


def draw_house(seed: int, number: int, world: World | None = None, count: int = 12) -> TrueHouse:
    """Draw a house of windows and doors, its crew, and how it is read and cut."""
    world = world or World()
    rng = np.random.default_rng((seed, number, 1))
    is_proved, is_old, is_stop, is_six = (bool(x) for x in rng.random(4) < 0.5)
    openings = tuple(_opening(rng, i, is_old, world) for i in range(count))
    return TrueHouse(
        number=number,
        seed=seed,
        walls="old" if is_old else "new",
        is_proved=is_proved,
        mitres="at-stop" if is_stop else "as-read",
        places=SIX if is_six else ONE_EACH,
        openings=openings,
        crew=_crew(rng, is_proved, world),
        world=world,
    )


def _crew(rng: np.random.Generator, is_proved: bool, world: World) -> TrueCrew:
    saw_deg = world.saw_times * (0.03 if is_proved else 0.10)
    slope = TAPE_SLOPE_MM_PER_M[world.true_class]
    read, saw = rng.uniform(-slope, slope, 2)
    return TrueCrew(
        scale_deg=saw_deg * rng.standard_normal(),
        fence_deg=saw_deg * rng.standard_normal(),
        reading_mm=0.20 * LIMIT * rng.uniform(-1.0, 1.0) + world.hook_mm,
        mark_mm=0.20 * rng.standard_normal(),
        read_mm_per_m=read,
        saw_mm_per_m=read if world.tapes == 1 else saw,
        cut_mm=0.15 if world.stop_block else 0.35,
    )


def _opening(rng: np.random.Generator, index: int, is_old: bool, world: World) -> TrueOpening:
    is_door = index < DOORS
    sizes_mm = world.doors_mm if is_door else world.windows_mm
    nominal_mm = sizes_mm[rng.integers(len(sizes_mm))]
    width_mm, height_mm = (mm + NOMINAL_SD_MM * rng.standard_normal() for mm in nominal_mm)
    lean_mm = (4.0 if is_old else 1.5) * rng.standard_normal()
    return TrueOpening(
        mark=f"{'D' if is_door else 'W'}{index + 1}",
        is_door=is_door,
        nominal_mm=nominal_mm,
        corners=true_corners(width_mm, height_mm, lean_mm, *rng.standard_normal(2)),
        bow_mm=tuple(world.reveal_bow_mm * rng.standard_normal(4)),
        face_mm=int(rng.choice(world.faces_mm)),
        quirk_mm=float(rng.choice(world.quirks_mm)),
        gap_mm=float(rng.choice(world.gaps_mm)),
    )


def true_corners(
    width_mm: float, height_mm: float, lean_mm: float, taper_mm: float, fall_mm: float
) -> tuple[complex, ...]:
    """Corners of an opening by its bottom and left side.

    Args:
        width_mm: Of the bottom.
        height_mm: Of the left side.
        lean_mm: Over the height, by what the diagonals differ.
        taper_mm: Head less bottom.
        fall_mm: Right side less left.
    """
    top_mm, right_mm = width_mm + taper_mm, height_mm + fall_mm
    wanted_mm = 2.0 * width_mm * lean_mm / math.hypot(width_mm, height_mm)
    br = complex(width_mm, 0.0)
    turn = step = 0.0
    corners: tuple[complex, ...] = ()
    for _ in range(30):
        turn += step
        tl = cmath.rect(height_mm, math.pi / 2.0 - turn)
        tr = _crossing(br, right_mm, tl, top_mm)
        corners = (0j, br, tr, tl)
        off_mm = wanted_mm - (abs(tr) - abs(tl - br))
        # Diagonals differ by 2 W H / D per radian.
        step = off_mm * math.hypot(width_mm, height_mm) / (2.0 * width_mm * height_mm)
    return corners


def _crossing(one: complex, one_mm: float, other: complex, other_mm: float) -> complex:
    """The point at two distances from two points, on the right of one to other."""
    apart = other - one
    along = (abs(apart) ** 2 + one_mm**2 - other_mm**2) / (2.0 * abs(apart))
    across = math.sqrt(one_mm**2 - along**2)
    return one + apart / abs(apart) * complex(along, -across)


def tape_shows(house: TrueHouse, mark: str, place: str, rng: np.random.Generator) -> int:
    """What the tape shows at one place, read to the millimetre."""
    start, end = ENDS[place]
    corners = house.opening(mark).corners
    true_mm = abs(corners[end] - corners[start])
    shown_mm = true_mm * (1.0 + house.crew.read_mm_per_m / 1000.0) + house.crew.reading_mm
    return round(shown_mm + PARALLAX_MM * rng.standard_normal())


def first_readings(house: TrueHouse) -> dict[str, dict[str, Any]]:
    """What was read of every opening in the first place."""
    rng = house.stream(READING)
    return {
        o.mark: {place: tape_shows(house, o.mark, place, rng) for place in house.places}
        for o in house.openings
    }


def document(house: TrueHouse, reads: Reads, **crew: object) -> dict[str, Any]:
    """The house file that the carpenter writes."""
    sides = {"top": None, "bottom": None, "left": None, "right": None}
    bare: dict[str, Any] = {**sides, "rising": None, "falling": None}
    openings = []
    for o in house.openings:
        own = {
            "mark": o.mark,
            "architrave": f"A{o.face_mm}",
            "quirk": o.quirk_mm,
            "quirk_band": [o.quirk_mm - o.room_mm, o.quirk_mm + o.room_mm],
            "max_gap": o.gap_mm,
            **bare,
            "mitres": house.mitres,
            **reads[o.mark],
        }
        openings.append((house_documents.door if o.is_door else house_documents.window)(**own))
    saw: dict[str, Any] = {"kerf": 2.4, "end_trim": 10}
    if house.is_proved:
        saw["found"] = {"left": 45.0, "right": 45.0}
    made = house_documents.house(
        name=f"Simulated House {house.number}",
        openings=openings,
        saws={"S1": saw},
        tapes={f"T{i + 1}": {"class": "II"} for i in range(house.world.tapes)},
        profiles={f"A{mm}": {"face": mm, "thickness": 18} for mm in FACES_MM}
        | {"SK95": {"face": 95, "thickness": 16}},
        crew={
            "walls": house.walls,
            "refit": 12,
            "batch_saves": 1.2,
            "stop_block": house.world.stop_block,
            **crew,
        },
    )
    del made["defaults"]["quirk_band"]
    made["defaults"]["architrave"] = "A57"
    if house.world.tapes > 1:
        made["defaults"]["saw_tape"] = "T2"
    return made


def built_errors(
    house: TrueHouse, face: PlannedFace, pieces: Sequence[Piece], rng: np.random.Generator
) -> tuple[float, ...]:
    """What the set of one face is out by once it is cut, over the slots of its frame.

    Args:
        house: The truth.
        face: As planned; gives what the pieces were meant to be.
        pieces: Pieces of the opening, as on the sheet.
        rng: Of the single cuts and marks.
    """
    slots = [0.0] * (SLOTS * len(face.side_index))
    true = house.opening(face.opening.mark)
    of_side = {_SIDE_OF[p.role]: p for p in pieces if p.role in _SIDE_OF}
    for index, side in enumerate(face.side_index):
        piece, at = of_side[side], SLOTS * index
        left_deg, right_deg, inner_mm, wider_mm = _cut(house.crew, piece, pieces, rng)
        frame_side = face.frame.sides[index]
        planned_mm = frame_side.start.distance_mm(frame_side.end)
        mitred = [s for s, cut in _ends(piece) if cut.mitre_deg > 1.0]
        for slot in mitred:
            slots[at + slot] = (inner_mm - planned_mm) / len(mitred)
        sag_mm = house.crew.edge_bow_mm * (inner_mm / 1000.0) ** 2 * rng.standard_normal()
        tangent = 4.0 * sag_mm / inner_mm
        slots[at + Slot.TURN_END] = math.radians(left_deg - piece.left.mitre_deg) + tangent
        slots[at + Slot.TURN_START] = math.radians(right_deg - piece.right.mitre_deg) + tangent
        slots[at + Slot.WIDTH] = wider_mm
        start_mm, middle_mm, end_mm = _reveal_off_mm(true, face, index, side)
        if house.world.quirk_feels_bow:
            middle_mm -= sag_mm
        slots[at + Slot.REVEAL_START] = start_mm
        slots[at + Slot.REVEAL_MIDDLE] = middle_mm
        slots[at + Slot.REVEAL_END] = end_mm
    return tuple(slots)


def _ends(piece: Piece) -> tuple[tuple[Slot, EndCut], ...]:
    # Outer edge away from you, the left end is where the side ends going anticlockwise.
    return ((Slot.LENGTH_END, piece.left), (Slot.LENGTH_START, piece.right))


def _cut(
    crew: TrueCrew, piece: Piece, pieces: Sequence[Piece], rng: np.random.Generator
) -> tuple[float, float, float, float]:
    """Cut one piece by the figures on the sheet: angles, inner edge and how much wider it is."""
    wider_mm = crew.width_mm * rng.standard_normal()
    left_deg = _swung(crew, piece.left, crew.fence_deg, rng)
    right_deg = _swung(crew, piece.right, -crew.fence_deg, rng)
    hooked_deg = left_deg if piece.hook_from is HookEnd.LEFT else right_deg
    hook_mm = printed_lengths_mm(piece, tuple(pieces))["hook"]
    assert hook_mm is not None
    shown_mm = math.floor(2.0 * hook_mm + 0.5) / 2.0
    slant_mm = shown_mm / (1.0 + crew.saw_mm_per_m / 1000.0)
    width_mm = piece.width_mm + wider_mm
    # Hooked on the long point, the tape runs slantwise to the mark on the inner edge.
    along_mm = math.sqrt(slant_mm**2 - width_mm**2)
    inner_mm = along_mm - width_mm * math.tan(math.radians(hooked_deg))
    inner_mm += crew.mark_mm + crew.cut_mm * rng.standard_normal()
    return left_deg, right_deg, inner_mm, wider_mm


def _swung(crew: TrueCrew, cut: EndCut, fence_deg: float, rng: np.random.Generator) -> float:
    """The angle that comes out at one end."""
    setting_deg = round(cut.mitre_deg, 1)
    own_deg = crew.stop_cut_deg if setting_deg == 45.0 else crew.set_cut_deg
    return setting_deg + crew.scale_deg + fence_deg + own_deg * float(rng.standard_normal())


def _reveal_off_mm(
    true: TrueOpening, face: PlannedFace, index: int, side: int
) -> tuple[float, float, float]:
    """How far outside the line it was laid to a reveal's side is: at start, middle and end."""
    laid = np.array([complex(p.x_mm, p.y_mm) for p in face.trim.corners])
    corners = np.array(true.corners)
    from_middle = corners - corners.mean()
    turn = np.vdot(from_middle, laid - laid.mean())
    placed = laid.mean() + from_middle * turn / abs(turn)
    along = laid[(side + 1) % 4] - laid[side]
    along /= abs(along)
    # Along the side, and outwards from it.
    here, there = ((placed[i % 4] - laid[side]) / along for i in (side, side + 1))
    piece = face.frame.sides[index]
    spots = [
        ((complex(p.x_mm, p.y_mm) - laid[side]) / along).real for p in (piece.start, piece.end)
    ]
    slope = (there.imag - here.imag) / (there.real - here.real)
    start, end = (-(here.imag + slope * (spot - here.real)) for spot in spots)
    return start, (start + end) / 2.0 + true.bow_mm[side], end


def fit_ratio(face: PlannedFace, errors: Sequence[float], solver: LinearSolver) -> float:
    """The least fit ratio that any tapping reaches, by an exact programme."""
    return best_fit_up(frame_rows(face.frame, face.limits), errors, solver).ratio

"""How often the alarms ring wrongly, and how often they ring when they should.

`python -m tests.alarm_counts` prints the tables of `docs/explanation/alarms.md`; with `--write` it
puts them there.
"""

import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from random import Random

from longpoint.errors import Finding, Severity
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.opening_fit import fit_openings
from longpoint.shape.proposals import propose
from longpoint.shape.slips import HOLD_AT, check_closure
from longpoint.survey.checks import check_survey
from longpoint.survey.checks.opposite_sides import MENDED_MM, STEEPEST_FLOOR, mending
from longpoint.survey.house import House
from longpoint.survey.openings import Opening, OpeningKind
from longpoint.survey.readings import Place
from tests.drawn_openings import (
    CAREFUL_SD_MM,
    HURRIED_SD_MM,
    NEW_LEAN_SD_MM,
    OLD_LEAN_SD_MM,
    Slipped,
    batch_openings,
    drawn_opening,
    house_of,
    swapped_digits,
    with_slip,
)

PAGE = Path(__file__).parents[1] / "docs" / "explanation" / "alarms.md"
BEGIN, END = "<!-- tables: begin -->", "<!-- tables: end -->"

OPENINGS_PER_HOUSE = 12
CLEAN_OPENINGS = 10_000
SLIPS_PER_CELL = 1_000
BATCH_HOUSES = 300

ABOUT_THE_WORK = frozenset({"proud", "shy", "shy-all-round", "twisted", "floor-falls"})
"""Findings that tell what the opening is like, not that a reading is wrong."""


def findings_of(house: House) -> tuple[Finding, ...]:
    """Return what is said of a house before its pieces are made."""
    fitted, said = fit_openings(house)
    return (*check_survey(house), *said, *check_closure(house, fitted))


@dataclass(frozen=True, slots=True, kw_only=True)
class FalseAlarms:
    """What was said of clean openings.

    Attributes:
        openings: How many there were.
        by_code: Openings at which each code was said as a warning or a stop.
        loud: Openings with any warning or stop.
        held: Openings with any stop.
    """

    openings: int
    by_code: Counter[str]
    loud: int
    held: int


def false_alarms(
    openings: int, lean_sd_mm: float, sd_mm: float = CAREFUL_SD_MM, seed: str = "clean"
) -> FalseAlarms:
    """Return what is said of clean openings, in houses of twelve: seven windows, five doors."""
    rng = Random(f"{seed} {lean_sd_mm} {sd_mm}")
    by_code: Counter[str] = Counter()
    loud = held = count = 0
    while count < openings:
        kinds = [OpeningKind.WINDOW] * 7 + [OpeningKind.DOOR] * 5
        house = house_of(
            *(drawn_opening(rng, f"O{i}", k, lean_sd_mm, sd_mm) for i, k in enumerate(kinds))
        )
        count += OPENINGS_PER_HOUSE
        said = findings_of(house)
        rung = [f for f in said if f.severity is not Severity.NOTE]
        by_code.update(code for code, _ in {(f.code, f.place) for f in rung})
        loud += len({f.place for f in rung})
        held += len({f.place for f in rung if f.severity is Severity.STOP})
    return FalseAlarms(openings=count, by_code=by_code, loud=loud, held=held)


@dataclass(frozen=True, slots=True, kw_only=True)
class Detection:
    """What became of one kind of slip at one kind of place, as shares of all.

    Attributes:
        held: The opening was stopped.
        told: Anything was said of its readings, a note included.
        first: The right reading with its right figure was the first proposal.
    """

    held: float
    told: float
    first: float


TARGETS: dict[str, tuple[OpeningKind, tuple[Place, ...]]] = {
    "window, long side": (OpeningKind.WINDOW, (Place.TOP, Place.BOTTOM, Place.LEFT, Place.RIGHT)),
    "window, short side": (OpeningKind.WINDOW, (Place.TOP, Place.BOTTOM, Place.LEFT, Place.RIGHT)),
    "window, diagonal": (OpeningKind.WINDOW, (Place.RISING, Place.FALLING)),
    "door, height": (OpeningKind.DOOR, (Place.LEFT, Place.RIGHT)),
    "door, width": (OpeningKind.DOOR, (Place.TOP, Place.BOTTOM)),
    "door, diagonal": (OpeningKind.DOOR, (Place.RISING, Place.FALLING)),
}

SLIPS: tuple[str, ...] = ("3", "5", "9", "10", "18", "27", "50", "90", "100", "digits swapped")


def detection(target: str, slip: str, count: int, seed: str = "slips") -> Detection:
    """Return how often a slip is found, in openings of a new house that have no siblings."""
    rng = Random(f"{seed} {target} {slip}")
    held = told = first = 0
    for _ in range(count):
        slipped = _draw_slip(rng, target, slip)
        house = house_of(slipped.opening)
        fitted, said_fit = fit_openings(house)
        said = (*check_survey(house), *said_fit, *check_closure(house, fitted))
        said = tuple(f for f in said if f.code not in ABOUT_THE_WORK)
        held += any(f.severity is Severity.STOP for f in said)
        told += bool(said)
        first += _is_first(house, slipped, fitted)
    return Detection(held=held / count, told=told / count, first=first / count)


def _draw_slip(rng: Random, target: str, slip: str) -> Slipped:
    kind, places = TARGETS[target]
    while True:
        opening = drawn_opening(rng, "O1", kind, NEW_LEAN_SD_MM)
        place = rng.choice(_narrowed(opening, target, places))
        read_mm = opening.readings.mean_mm(place) or 0.0
        if slip == "digits swapped":
            written_mm = swapped_digits(read_mm, rng)
        else:
            written_mm = read_mm + float(slip) * rng.choice((-1.0, 1.0))
        if written_mm is not None and written_mm > 0:
            return with_slip(opening, place, written_mm)


def _narrowed(opening: Opening, target: str, places: Sequence[Place]) -> Sequence[Place]:
    if target not in ("window, long side", "window, short side"):
        return places
    is_wide = (opening.readings.side_mm(Place.TOP) or 0.0) > (
        opening.readings.side_mm(Place.LEFT) or 0.0
    )
    wants_widths = is_wide == (target == "window, long side")
    return (Place.TOP, Place.BOTTOM) if wants_widths else (Place.LEFT, Place.RIGHT)


def _is_first(house: House, slipped: Slipped, fitted: tuple[FittedOpening, ...]) -> bool:
    """Tell whether the first proposal made is the right one, of closure or else of the sides."""
    for place, value_mm in _first_proposals(house, slipped.opening, fitted):
        return place is slipped.place and abs(value_mm - slipped.meant_mm) < 0.01
    return False


def _first_proposals(
    house: House, opening: Opening, fitted: tuple[FittedOpening, ...]
) -> Iterator[tuple[Place, float]]:
    readings = opening.readings
    misclosure = fitted[0].misclosure if fitted else None
    if misclosure is None or misclosure.normalised > HOLD_AT:
        for proposal in propose(house, opening, readings):
            yield proposal.reading.place, proposal.slip.value_mm
    said = {f.code for f in check_survey(house) if f.severity is Severity.STOP}
    if "sides-apart" in said:
        for pair in ((Place.TOP, Place.BOTTOM), (Place.LEFT, Place.RIGHT)):
            for reading, slip in mending(house, readings, pair, MENDED_MM):
                yield reading.place, slip.value_mm
    if "floor-slope" in said:
        limit_mm = STEEPEST_FLOOR * (readings.side_mm(Place.BOTTOM) or 0.0)
        for reading, slip in mending(house, readings, (Place.LEFT, Place.RIGHT), limit_mm):
            yield reading.place, slip.value_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchCount:
    """What was said of batches of twelve units, sixty openings.

    Attributes:
        name: What was done to them.
        openings_off: Share of openings held or warned of as unlike their siblings.
        tape_right: Share of batches where the shifted unit, and no other, was said to be shifted.
        tape_wrong: Share of batches where an unshifted unit was.
        lean: Share of batches with a step in the lean.
        lean_near: Share of those that name a unit within one of the right one.
    """

    name: str
    openings_off: float
    tape_right: float
    tape_wrong: float
    lean: float
    lean_near: float


def batch_count(
    name: str,
    houses: int,
    *,
    shift_mm: float = 0.0,
    lean_mm_per_m: float = 0.0,
    by_marks: bool = False,
) -> BatchCount:
    """Return what is said of batches: unit 4 read long, and windows that lean from unit 10 on.

    Args:
        name: What is done to them; it seeds the draws.
        houses: How many batches.
        shift_mm: What the tape reads over in unit 4.
        lean_mm_per_m: How far the windows lean from unit 10 on.
        by_marks: True: neither batch, drawing nor room is written, so the marks alone tell.
    """
    rng = Random(f"batch {name}")
    off = right = wrong = lean = near = 0
    for _ in range(houses):
        openings = batch_openings(
            rng, shifts_mm={4: shift_mm}, leans_mm_per_m=dict.fromkeys((10, 11, 12), lean_mm_per_m)
        )
        if by_marks:
            openings = (replace(o, room="", batch="", nominal=None) for o in openings)
        said = check_survey(house_of(*openings))
        shifted = {f.place for f in said if f.code == "tape-shift"}
        off += sum(f.code in ("off-siblings", "off-nominal", "rows-swapped") for f in said)
        right += shifted == {"Unit 4"}
        wrong += bool(shifted - ({"Unit 4"} if shift_mm else set()))
        steps = [f for f in said if f.code == "lean-step"]
        lean += bool(steps)
        near += any(f"Unit {u} " in f.read for f in steps for u in (9, 10, 11))
    return BatchCount(
        name=name,
        openings_off=off / houses / 60,
        tape_right=right / houses,
        tape_wrong=wrong / houses,
        lean=lean / houses,
        lean_near=near / lean if lean else 0.0,
    )


BATCHES: dict[str, dict[str, float]] = {
    "clean": {},
    "unit 4 read 1 long": {"shift_mm": 1.0},
    "unit 4 read 2 long": {"shift_mm": 2.0},
    "unit 4 read 3 long": {"shift_mm": 3.0},
    "windows lean 2 in a metre from unit 10": {"lean_mm_per_m": 2.0},
    "windows lean 3 in a metre from unit 10": {"lean_mm_per_m": 3.0},
    "windows lean 4 in a metre from unit 10": {"lean_mm_per_m": 4.0},
}

HANDS = {
    "new house, careful hand": (NEW_LEAN_SD_MM, CAREFUL_SD_MM),
    "old house, careful hand": (OLD_LEAN_SD_MM, CAREFUL_SD_MM),
    "new house, hurried hand": (NEW_LEAN_SD_MM, HURRIED_SD_MM),
}


def tables(share: float = 1.0) -> str:
    """Return every table of the page, from the full counts or a share of them."""
    return "\n\n".join(
        (
            _false_alarm_table(int(CLEAN_OPENINGS * share)),
            *_detection_tables(int(SLIPS_PER_CELL * share)),
            _batch_table(int(BATCH_HOUSES * share)),
        )
    )


def _percent(share: float) -> str:
    return f"{100.0 * share:.2f} %" if share < 0.095 else f"{100.0 * share:.0f} %"


def _false_alarm_table(openings: int) -> str:
    counts = {name: false_alarms(openings, *spreads) for name, spreads in HANDS.items()}
    codes = sorted({code for c in counts.values() for code in c.by_code})
    lines = [
        f"**False alarms.** Shares of {openings} clean openings for each column.",
        "",
        f"| | {' | '.join(counts)} |",
        "| --- |" + " --- |" * len(counts),
    ]
    found = counts.values()
    rows = [
        ("any warning or stop", [c.loud for c in found]),
        ("held (a stop)", [c.held for c in found]),
        *((f"`{code}`", [c.by_code[code] for c in found]) for code in codes),
    ]
    for name, numbers in rows:
        shares = [_percent(n / c.openings) for n, c in zip(numbers, found, strict=True)]
        lines.append(f"| {name} | {' | '.join(shares)} |")
    return "\n".join(lines)


def _detection_tables(count: int) -> Iterator[str]:
    found = {(t, s): detection(t, s, count) for s in SLIPS for t in TARGETS}
    yield _slip_table(
        f"**Held.** Share of openings stopped, {count} draws for each figure; in brackets the "
        "share of which anything at all was said.",
        {key: _held_and_told(d) for key, d in found.items()},
        SLIPS,
    )
    yield _slip_table(
        "**Right reading and right figure proposed first.** Share of all openings with that slip; "
        "other slips are of no known kind and can't be proposed.",
        {key: f"{100 * d.first:.0f} %" for key, d in found.items()},
        ("10", "100", "digits swapped"),
    )


def _held_and_told(found: Detection) -> str:
    held, told = f"{100 * found.held:.0f} %", f"{100 * found.told:.0f} %"
    return held if held == told else f"{held} ({told})"


def _slip_table(title: str, cells: dict[tuple[str, str], str], slips: Sequence[str]) -> str:
    lines = [
        title,
        "",
        f"| slip, mm | {' | '.join(TARGETS)} |",
        "| --- |" + " --- |" * len(TARGETS),
    ]
    lines += [f"| {s} | {' | '.join(cells[t, s] for t in TARGETS)} |" for s in slips]
    return "\n".join(lines)


def _batch_table(houses: int) -> str:
    lines = [
        f"**Batches.** {houses} batches of twelve units for each row, five openings a unit.",
        "",
        "| batch | openings off their siblings | tape said, of the right unit | of another unit "
        "| lean said to step | of these within a unit |",
        "| --- | --- | --- | --- | --- | --- |",
    ]
    for name, what in BATCHES.items():
        c = batch_count(
            name,
            houses,
            shift_mm=what.get("shift_mm", 0.0),
            lean_mm_per_m=what.get("lean_mm_per_m", 0.0),
        )
        cells = (
            _percent(c.openings_off),
            _percent(c.tape_right),
            _percent(c.tape_wrong),
            _percent(c.lean),
            _percent(c.lean_near) if c.lean else "-",
        )
        lines.append(f"| {name} | {' | '.join(cells)} |")
    return "\n".join(lines)


def main(words: Sequence[str]) -> None:
    """Print the tables, or write them into the page."""
    made = tables()
    if "--write" not in words:
        print(made)  # noqa: T201
        return
    text = PAGE.read_text(encoding="utf-8")
    before, after = text.split(BEGIN)[0], text.split(END)[1]
    PAGE.write_text(f"{before}{BEGIN}\n{made}\n{END}{after}", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])

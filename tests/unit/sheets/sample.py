"""A small house of our own, planned by hand: what the sheets' tests are shown.

The figures come from the plain geometry of a square opening, with a lean put in by hand; nothing
here asks the fit or the nester, so that the sheets' tests fail for the sheets alone.
"""

import math
from dataclasses import replace
from decimal import Decimal

from longpoint.errors import Finding, Severity
from longpoint.forecast.recut_counts import RecutCount
from longpoint.house_plan import HousePlan, Spares
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedOpening, Four, Misclosure, Residual, Shapes
from longpoint.shape.point import Point, interior_angles_deg, side_lengths_mm
from longpoint.sticks.laid_code import plan_code
from longpoint.sticks.plan import CutPlan, CutStick, Goal, Laid, Proof, Reached, Saved, StickSource
from longpoint.sticks.spare_sticks import SpareSticks
from longpoint.survey.house import Dialect, EntryKind, HeldEntry, House
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Layout, Method, Opening, OpeningKind, PerSide
from longpoint.survey.profiles import Offcut, Profile, Stock
from longpoint.survey.readings import OpeningReadings, Place, Plane, Reading
from longpoint.survey.rooms import Run, RunEnd
from tests.unit.sheets.outlook_sample import outlook_of, unproved_outlook

ARCHITRAVE = Profile(name="OG57", width_mm=57.0, thickness_mm=18.0, material="radiata pine")
SKIRTING = Profile(name="SK95", width_mm=95.0, thickness_mm=18.0, material="radiata pine")
QUIRK_MM = 5.0
KERF_MM = 2.4
FACE = ARCHITRAVE.width_mm

SAW = Saw(name="S1", kerf_mm=KERF_MM, found_left_deg=45.1, found_right_deg=44.9)

CORNERS = {
    "W1": (Point(0, 0), Point(1186, 0), Point(1190, 462), Point(3, 462.5)),
    "W2": (Point(0, 0), Point(886, 0), Point(886, 1010.5), Point(0, 1011)),
    "D1": (Point(0, 0), Point(819, 0), Point(814, 2031), Point(-5, 2034)),
}


def readings(
    top: float,
    bottom: float,
    left: float,
    right: float,
    up: float,
    down: float,
    plane: Plane | None = None,
) -> OpeningReadings:
    values = zip(
        (Place.TOP, Place.BOTTOM, Place.LEFT, Place.RIGHT, Place.RISING, Place.FALLING),
        (top, bottom, left, right, up, down),
        strict=True,
    )
    return OpeningReadings(
        lengths=tuple(Reading(place=p, value_mm=v, written=f"{v:g}") for p, v in values),
        plane=plane,
        tape="T1",
    )


def opening(mark: str, room: str, kind: OpeningKind, read: OpeningReadings) -> Opening:
    is_window = kind is OpeningKind.WINDOW
    return Opening(
        mark=mark,
        room=room,
        kind=kind,
        layout=Layout.ALL_ROUND if is_window else Layout.LEGS_AND_HEAD,
        readings=read,
        quirk_mm=PerSide(head=QUIRK_MM, right=QUIRK_MM, bottom=QUIRK_MM, left=QUIRK_MM),
        profiles=PerSide(head="OG57", right="OG57", bottom="OG57", left="OG57"),
        method=Method.BATCH,
    )


OPENINGS = (
    opening(
        "W1",
        "Kitchen",
        OpeningKind.WINDOW,
        readings(1187, 1186, 462, 462, 1277, 1270, Plane(tl_mm=2.0, bl_mm=-1.0)),
    ),
    opening("W2", "Kitchen", OpeningKind.WINDOW, readings(886, 886, 1011, 1010, 1344, 1344)),
    opening("W3", "Loft", OpeningKind.WINDOW, readings(1187, 1178, 598, 599, 1322, 1322)),
    opening("D1", "Hall", OpeningKind.DOOR, readings(819, 819, 2034, 2031, 2188, 2197)),
)

RUN = Run(
    mark="S1",
    room="Loft",
    wall="W",
    profile="SK95",
    length_mm=2284.0,
    left=RunEnd.INTERNAL,
    right=RunEnd.EXTERNAL,
    tape="T1",
)

FINDINGS = (
    Finding(
        code="misclosure",
        severity=Severity.STOP,
        place="W3",
        read="W3 was read 1187 at the top and 1178 at the bottom.",
        wrong="The six readings fit no flat opening; 1178 at the top would.",
        do="Read the top again.",
    ),
    Finding(
        code="proud",
        severity=Severity.WARNING,
        place="W1",
        read="The lining stands 2 mm proud at the top left.",
        wrong="The mitre there will stand open at the face by about 0.9 mm.",
        do="Plane the lining flush, or pack behind the outer edge.",
    ),
    Finding(
        code="assumed-tape",
        severity=Severity.NOTE,
        place="Finch Rise",
        read="No tape was named.",
        wrong="A class II tape was taken for granted.",
        do="Write the class that stands on the blade.",
    ),
    Finding(
        code="unknown-key",
        severity=Severity.STOP,
        place="W4",
        read="An opening is written with the key 'heigth'.",
        wrong="No such key is known; 'height' is near.",
        do="Write it again.",
    ),
)


def fitted(mark: str) -> FittedOpening:
    corners = CORNERS[mark]
    read = next(o.readings for o in OPENINGS if o.mark == mark)
    return FittedOpening(
        mark=mark,
        corners=corners,
        corner_deg=Four(*interior_angles_deg(corners)),
        corner_u_deg=Four(0.08, 0.08, 0.08, 0.08),
        side_mm=Four(*side_lengths_mm(corners)),
        side_u_mm=Four(0.6, 0.6, 0.6, 0.6),
        residuals=tuple(
            Residual(
                name=r.place.value,
                read=r.value_mm,
                residual=0.3,
                u=0.55,
                over_u=0.9,
                redundancy=0.2,
            )
            for r in read.lengths
        ),
        misclosure=Misclosure(spare=1, chi_squared=0.8, normalised=0.9, misclosure_mm=1.2),
    )


def mitre(angle_deg: float) -> EndCut:
    return EndCut(kind=CutKind.MITRE, mitre_deg=angle_deg)


def mitred(mark: str, role: Role, side: int) -> Piece:
    """One architrave piece, its mitres half of each corner, its left end the side's second one."""
    shape = fitted(mark)
    ends = [90.0 - shape.corner_deg[corner % 4] / 2 for corner in (side + 1, side)]
    inner_mm = shape.side_mm[side] + QUIRK_MM * sum(math.tan(math.radians(a)) for a in ends)
    is_leg_on_floor = mark.startswith("D") and role is not Role.HEAD
    if is_leg_on_floor:
        foot = 0 if role is Role.LEFT_LEG else 1
        ends[foot] = 0.0
        inner_mm = shape.side_mm[side] + QUIRK_MM
    outer_mm = inner_mm + FACE * sum(math.tan(math.radians(a)) for a in ends)
    cuts = tuple(mitre(a) if a else SQUARE_CUT for a in ends)
    made = Piece(
        mark=f"{mark}-{role.value}",
        role=role,
        opening=mark,
        room=next(o.room for o in OPENINGS if o.mark == mark),
        profile="OG57",
        width_mm=FACE,
        thickness_mm=18.0,
        inner_mm=inner_mm,
        outer_mm=outer_mm,
        back_mm=max(inner_mm, outer_mm),
        left=cuts[0],
        right=cuts[1],
        u_mm=0.6,
        method=Method.BATCH,
    )
    slant_mm = (made.hook_mm or 0.0) - inner_mm - FACE
    hand = f"{shape.side_mm[side]:.1f} + 2 x 5 + 57 + {slant_mm:.1f} slant = {made.hook_mm:.1f}"
    return replace(made, hand_sum=hand)


def _window(mark: str) -> tuple[Piece, ...]:
    return (
        mitred(mark, Role.LEFT_LEG, 3),
        mitred(mark, Role.HEAD, 2),
        mitred(mark, Role.RIGHT_LEG, 1),
        mitred(mark, Role.SILL, 0),
    )


SKIRTING_PIECES = (
    Piece(
        mark="S1",
        role=Role.RUN,
        run="S1",
        room="Loft",
        profile="SK95",
        width_mm=95.0,
        thickness_mm=18.0,
        inner_mm=2284.0,
        outer_mm=2284.0,
        back_mm=2284.0,
        left=EndCut(kind=CutKind.SCRIBE, bevel_deg=45.0),
        right=EndCut(kind=CutKind.BEVEL, bevel_deg=-45.0),
    ),
    Piece(
        mark="S1-return",
        role=Role.RETURN,
        run="S1",
        room="Loft",
        profile="SK95",
        width_mm=95.0,
        thickness_mm=18.0,
        inner_mm=18.0,
        outer_mm=18.0,
        back_mm=0.0,
        left=EndCut(kind=CutKind.BEVEL, bevel_deg=-45.0),
        right=SQUARE_CUT,
    ),
)

PIECES = (
    *_window("W1"),
    *_window("W2"),
    mitred("D1", Role.LEFT_LEG, 3),
    mitred("D1", Role.HEAD, 2),
    mitred("D1", Role.RIGHT_LEG, 1),
    *SKIRTING_PIECES,
)


def stick(
    name: str,
    length_mm: float,
    pieces: tuple[Piece, ...],
    *,
    source: StickSource = StickSource.STOCK,
    keep_mm: float = 300.0,
) -> CutStick:
    """Pieces one after the other on a stick, each at least a slanted saw cut from the next."""
    at = 10.0
    laid = []
    for piece in pieces:
        laid.append(Laid(piece=piece.mark, start_mm=at, end_mm=at + piece.long_mm))
        at += piece.long_mm + KERF_MM * math.sqrt(2.0)
    left_mm = length_mm - at - 10.0
    return CutStick(
        name=name,
        profile=pieces[0].profile,
        length_mm=length_mm,
        source=source,
        laid=tuple(laid),
        used_mm=at,
        left_mm=left_mm if left_mm >= keep_mm else 0.0,
    )


def by_mark(*marks: str) -> tuple[Piece, ...]:
    found = {piece.mark: piece for piece in PIECES}
    return tuple(found[mark] for mark in marks)


STICKS = (
    stick("OG57-1", 5400.0, by_mark("D1-left-leg", "D1-right-leg", "D1-head")),
    stick(
        "OG57-2",
        5400.0,
        by_mark("W1-head", "W1-sill", "W2-left-leg", "W2-right-leg"),
    ),
    stick("OG57-3", 2700.0, by_mark("W2-sill")),
    stick(
        "OG57-4",
        2700.0,
        by_mark("W2-head", "W1-left-leg", "W1-right-leg"),
        source=StickSource.OFFCUT,
    ),
    stick("SK95-1", 4200.0, SKIRTING_PIECES),
)

HOUSE = House(
    name="Finch Rise",
    units=Units.MM,
    dialect=Dialect.UK,
    profiles=(ARCHITRAVE, SKIRTING),
    tapes=(Tape(name="T1", assumed=True),),
    saw=SAW,
    stock=(
        Stock(profile="OG57", length_mm=5400.0, price=Decimal("14.60")),
        Stock(profile="SK95", length_mm=4200.0, price=Decimal("15.30")),
    ),
    offcuts=(Offcut(profile="OG57", length_mm=2700.0),),
    openings=OPENINGS,
    runs=(RUN,),
    held=(HeldEntry(kind=EntryKind.OPENING, mark="W4", room="Loft"),),
    skirting_profile="SK95",
)


OUTLOOK = outlook_of(HOUSE)
FORECAST = OUTLOOK.forecast

SPARES = Spares(
    counts=(
        RecutCount(profile="OG57", pieces=11, sets=3, misfits_p90=1, p90=1),
        RecutCount(profile="SK95", pieces=2, sets=0, misfits_p90=0, p90=0),
    ),
    sticks=(
        SpareSticks(
            profile="OG57", covered=("D1-left-leg",), longest_mm=2096.4, buy=((5400.0, 1),)
        ),
        SpareSticks(profile="SK95"),
    ),
)

PLAN = HousePlan(
    house=HOUSE,
    shapes=Shapes(openings=tuple(fitted(mark) for mark in CORNERS)),
    pieces=PIECES,
    cut_plan=CutPlan(
        sticks=STICKS,
        code=plan_code(CutPlan(sticks=STICKS)),
        proofs=(
            Proof(
                profile="OG57",
                cost=29.2,
                lower_bound=29.2,
                optimal=True,
                unit="price",
                solver="by hand",
            ),
            Proof(
                profile="SK95", cost=4.2, lower_bound=2.4, optimal=False, unit="m", solver="by hand"
            ),
        ),
        reached=(
            Reached(goal=Goal.FEW_STICKS, profile="OG57", value=3, limit=3),
            Reached(goal=Goal.LONG_OFFCUT, profile="OG57", value=812.4, limit=1310.0),
            Reached(goal=Goal.TOGETHER, profile="OG57", value=1, limit=0),
            Reached(goal=Goal.BIG_FIRST, value=0, limit=0),
            Reached(goal=Goal.FEW_SETTINGS, value=7, limit=4),
        ),
        savings=(
            Saved(profile="OG57", can_turn=False, cost=29.2, long_point_bound=0.0, unit="price"),
            Saved(profile="SK95", can_turn=False, cost=4.2, long_point_bound=0.0),
        ),
    ),
    findings=FINDINGS,
    held=frozenset({"W3", "W4"}),
    readings_code="K7M2QX",
    outlook=OUTLOOK,
    spares=SPARES,
)


UNPROVED_SAW = replace(SAW, found_left_deg=None, found_right_deg=None)


def unproved() -> HousePlan:
    """The sample with a saw that nobody proved."""
    house = replace(HOUSE, saw=UNPROVED_SAW)
    return replace(PLAN, house=house, outlook=unproved_outlook(house, OUTLOOK))


def with_house(**changes: object) -> HousePlan:
    """The sample with some of the house's settings changed."""
    return replace(PLAN, house=replace(HOUSE, **changes))  # type: ignore[arg-type]

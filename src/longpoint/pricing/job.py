"""A job to be priced: from counts before the walls are lined, or from readings."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace

from longpoint.pieces.openings import plan_openings
from longpoint.pieces.piece import Piece
from longpoint.pieces.runs import plan_runs
from longpoint.pricing.counts_file import Counts
from longpoint.pricing.counts_tables import RUNNING
from longpoint.pricing.drawn_sizes import SizeDoubt
from longpoint.pricing.estimate import JOBS, Estimate, make_estimate
from longpoint.pricing.rates import ASSUMED_SURE, Rates
from longpoint.pricing.take_off import Limits, take_off
from longpoint.pricing.timber import NESTS, imagined_timber
from longpoint.pricing.work import Task, WorkKind
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house import House
from longpoint.survey.house_file import readings_code
from longpoint.survey.openings import Flush, Opening
from longpoint.survey.readings import Place, Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """A house with all that its price rests on.

    Attributes:
        house: The house, as counted or as read.
        tasks: Its work, place by place.
        estimate: What it will take.
        rates: The crew's rates; None: hours and timber alone.
        made_from: Short code of the readings or counts.
        doubt: How far sizes will differ from the drawing; None: they are read.
        is_spread_assumed: True when any of that is ours.
        held: Marks that are in doubt.
        stood_in: Those of them that are counted by what was read: openings by their mean width and
            height, runs by their length.
        uncounted: Those that can't be read at all, so that they aren't counted.
        left_alone: Marks with a corner proud or shy that the house file leaves as it is.
    """

    house: House
    tasks: tuple[Task, ...]
    estimate: Estimate
    rates: Rates | None
    made_from: str
    doubt: SizeDoubt | None = None
    is_spread_assumed: bool = False
    held: tuple[str, ...] = ()
    stood_in: tuple[str, ...] = ()
    uncounted: tuple[str, ...] = ()
    left_alone: tuple[str, ...] = ()

    @property
    def is_read(self) -> bool:
        """Tell whether it rests on readings."""
        return self.doubt is None

    @property
    def labour_only(self) -> tuple[WorkKind, ...]:
        """Return the kinds of trim that a counts file gives by length alone: no timber is known."""
        asked = {task.kind for task in self.tasks}
        return () if self.is_read else tuple(kind for kind in RUNNING if kind in asked)

    @property
    def sure(self) -> float:
        """Return the chance with which a quote's hours and timber are enough."""
        return ASSUMED_SURE if self.rates is None else self.rates.sure


def counted_job(
    counts: Counts, rates: Rates | None, *, nests: int = NESTS, jobs: int = JOBS
) -> Job:
    """Return the job of a house as counted: every opening as drawn and square.

    Args:
        counts: The counts.
        rates: The crew's rates; None: hours and timber alone.
        nests: Houses that are nested for the count of sticks.
        jobs: Jobs that are imagined for the range of hours.
    """
    house = counts.survey.house
    shapes = Shapes(openings=fit_openings(house)[0], outlines=(), rooms=())
    pieces = (*plan_openings(house, shapes, frozenset())[0], *plan_runs(house, shapes)[0])
    return _job(
        house,
        shapes,
        pieces,
        rates,
        counts.doubt,
        more=counts.tasks,
        is_spread_assumed=counts.is_spread_assumed,
        nests=nests,
        jobs=jobs,
    )


def read_job(
    house: House,
    shapes: Shapes,
    pieces: Sequence[Piece],
    rates: Rates | None,
    *,
    held: Iterable[str] = (),
    limits: Limits | None = None,
    running_units: Units | None = None,
    nests: int = NESTS,
    jobs: int = JOBS,
) -> Job:
    """Return the job of a house as read and planned.

    Args:
        house: The house.
        shapes: Its fitted openings.
        pieces: Its pieces.
        rates: The crew's rates; None: hours and timber alone.
        held: Marks that get no pieces.
        limits: From where on an opening is more work; None: as the rates say.
        running_units: Of running work; None: as the rates say, or as the house is read.
        nests: Houses that are nested for the count of sticks.
        jobs: Jobs that are imagined for the range of hours.
    """
    return _job(
        house,
        shapes,
        pieces,
        rates,
        None,
        held=held,
        limits=limits,
        running_units=running_units,
        nests=nests,
        jobs=jobs,
    )


def _job(
    house: House,
    shapes: Shapes,
    pieces: Sequence[Piece],
    rates: Rates | None,
    doubt: SizeDoubt | None,
    *,
    more: tuple[Task, ...] = (),
    is_spread_assumed: bool = False,
    held: Iterable[str] = (),
    limits: Limits | None = None,
    running_units: Units | None = None,
    nests: int,
    jobs: int,
) -> Job:
    marks = tuple(sorted(held))
    limits = limits or (rates.limits if rates is not None else Limits())
    units = running_units or (house.units if rates is None else rates.units)
    # Skirting in doubt is counted at the length that was read; nothing is cut to it.
    skirting = plan_runs(house, shapes)[0]
    runs = tuple(piece for piece in skirting if piece.place in marks)
    tasks = (*take_off(house, shapes, (*pieces, *runs), limits, units, marks), *more)
    stand_ins = (*_stand_ins(house, marks), *runs)
    timber = imagined_timber((*pieces, *stand_ins), house, doubt, nests=nests)
    stood_in = tuple(dict.fromkeys(piece.place for piece in stand_ins))
    sure = ASSUMED_SURE if rates is None else rates.sure
    return Job(
        house=house,
        tasks=tasks,
        estimate=make_estimate(tasks, timber, rates, sure, units, jobs=jobs),
        rates=rates,
        made_from=readings_code(house),
        doubt=doubt,
        is_spread_assumed=is_spread_assumed,
        held=marks,
        stood_in=stood_in,
        uncounted=tuple(
            mark
            for mark in marks
            if mark not in stood_in and not _is_counted(house, shapes, mark, skirting, stood_in)
        ),
        left_alone=_left_alone(house, limits),
    )


def _stand_ins(house: House, held: tuple[str, ...]) -> tuple[Piece, ...]:
    """Return pieces for openings in doubt, square and of their mean width and height.

    They are for counting sticks alone: nothing is cut from them, and no sheet shows them. A slip in
    a reading moves a mean by half of it, which rarely takes another stick.
    """
    plain = tuple(
        squared
        for opening in house.openings
        if opening.mark in held and (squared := _squared(opening)) is not None
    )
    if not plain:
        return ()
    alone = replace(house, openings=plain)
    shapes = Shapes(openings=fit_openings(alone)[0])
    return tuple(plan_openings(alone, shapes, frozenset())[0])


def _is_counted(
    house: House, shapes: Shapes, mark: str, skirting: Iterable[Piece], counted: Collection[str]
) -> bool:
    """Tell whether all that a room or wall in doubt holds back is counted all the same."""
    without = {piece.place for piece in plan_runs(house, shapes, frozenset({mark}))[0]}
    held_back = {piece.place for piece in skirting} - without
    return bool(held_back) and held_back <= set(counted)


def _squared(opening: Opening) -> Opening | None:
    sizes = []
    for place, sides in (
        (Place.WIDTH, (Place.TOP, Place.BOTTOM)),
        (Place.HEIGHT, (Place.LEFT, Place.RIGHT)),
    ):
        read = [mm for side in sides if (mm := opening.readings.side_mm(side)) is not None]
        if not read:
            return None
        mean_mm = sum(read) / len(read)
        sizes.append(Reading(place=place, value_mm=mean_mm, written=f"{mean_mm:g}"))
    readings = replace(opening.readings, lengths=tuple(sizes), angles=(), plane=None)
    return replace(opening, readings=readings, readings_b=None, arch=None, outline=None)


def _left_alone(house: House, limits: Limits) -> tuple[str, ...]:
    return tuple(
        opening.mark
        for opening in house.openings
        if opening.flush is Flush.LEAVE
        and opening.readings.plane is not None
        and any(abs(step) >= limits.proud_mm for step in opening.readings.plane.corners_mm())
    )

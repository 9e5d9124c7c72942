"""Small masters for the tests of the nester's parts."""

from longpoint.pieces.piece import Piece
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.bound import Floor, floor_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import cost_of, fit
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.search.master import Master
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of
from longpoint.survey.house import House


def nest(pieces: tuple[Piece, ...], house: House) -> tuple[Master, Floor, list[int], int]:
    """Return a master, the floor, the numbers of a first packing's patterns, and its cost."""
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    work = workload(demand.demands)
    bars = bars_of(house.profiles[0].name, house.stock, house.offcuts, house.saw)
    layout = Layout(work, bars.bars, groups_of(work))
    master = Master(layout, bars, HighsSolver())
    packing = fit(work, bars.bars, refills=0)
    patterns = [
        Pattern(stick.bar, layout.known(stick.places, bars.bars[stick.bar].room))
        for stick in packing.sticks
    ]
    numbers = list(dict.fromkeys(master.numbers_of(patterns)))
    return master, floor_of(work, bars.bars), numbers, cost_of(bars.bars, packing) // bars.step

"""Few pieces on few lengths, drawn at random: every plan of them can be looked at."""

import random
from decimal import Decimal

from longpoint.sticks.aims.every_plan import MOST_PIECES
from longpoint.sticks.aims.goal_program import Stock
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing
from longpoint.sticks.lay.laying import Workload, workload
from longpoint.sticks.search.patterns import Pattern
from tests.random_sticks import architrave_piece, house_of

_LENGTHS_MM = (2400.0, 2700.0, 3000.0, 3600.0, 4800.0, 5400.0)


def small_job(seed: int) -> tuple[Workload, Bars]:
    """Return two to seven pieces, and one to four lengths with some offcuts; some are counted."""
    draw = random.Random(seed)

    def end_deg() -> float:
        return draw.choice((0.0, 0.0, 45.0, 45.0, 22.5, -45.0, round(draw.uniform(43, 47), 2)))

    shortest_mm, longest_mm = draw.choice((300, 700)), draw.choice((1200, 2300))
    pieces = [
        architrave_piece(
            f"W{number}-head",
            round(draw.uniform(shortest_mm, longest_mm), draw.choice((0, 1))),
            end_deg(),
            end_deg(),
        )
        for number in range(draw.randint(2, MOST_PIECES))
    ]
    lengths_mm = tuple(sorted(draw.sample(_LENGTHS_MM, draw.randint(1, 4))))
    prices = tuple(
        str(Decimal(round(mm / 100 * draw.uniform(0.9, 1.1)) * 5) / 100) for mm in lengths_mm
    )
    house = house_of(
        reversible=draw.random() < 0.5,
        lengths_mm=lengths_mm,
        prices=prices if draw.random() < 0.5 else (),
        counts=tuple(draw.choice((None, None, 1, 2)) for _ in lengths_mm)
        if draw.random() < 0.2
        else (),
        offcuts=tuple(
            (draw.choice((500.0, 1310.0, 2050.0)), draw.randint(1, 2))
            for _ in range(draw.choice((0, 0, 1, 2)))
        ),
        kerf_mm=draw.choice((0.0, 1.8, 2.5, 3.0)),
        end_trim_mm=draw.choice((0.0, 10.0, 20.0)),
    )
    demands = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm).demands
    return workload(demands), bars_of("OG", house.stock, house.offcuts, house.saw)


def patterns_of(stock: Stock, packing: Packing) -> tuple[Pattern, ...]:
    """Return a packing as patterns."""
    rooms = [bar.room for bar in stock.bars.bars]
    return tuple(
        Pattern(stick.bar, stock.layout.known(stick.places, rooms[stick.bar]))
        for stick in packing.sticks
    )

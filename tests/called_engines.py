"""What the page's worker does when the core calls it, done in Python: arrays in, a text out."""

import json
from array import array
from itertools import chain, islice, pairwise
from math import inf

from longpoint.forecast.fitup.frame import FrameRow, RowKind
from longpoint.forecast.fitup.weighing import weighed_lines
from longpoint.forecast.lines import Line, LineGroup, LineHouse, LineOpening, Spread
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.stream import CENTRE, TAIL
from longpoint.linear.port import LinearColumn, LinearProblem, LinearRow
from longpoint.solvers.highs import HighsSolver
from longpoint.solvers.highs_options import highs_options

SPREADS = {"n": Spread.NORMAL, "r": Spread.RECTANGULAR}


def solve(
    costs: "array[float]",
    lowers: "array[float]",
    uppers: "array[float]",
    starts: "array[int]",
    rows: "array[int]",
    coefficients: "array[float]",
    row_lowers: "array[float]",
    row_uppers: "array[float]",
    start: "array[float]",
    told: str,
) -> str:
    settings = json.loads(told)
    options = settings["options"]
    problem = LinearProblem(
        columns=tuple(
            LinearColumn(
                cost=costs[number],
                rows=tuple(zip(rows[first:last], coefficients[first:last], strict=True)),
                lower=lowers[number],
                upper=None if uppers[number] == inf else uppers[number],
            )
            for number, (first, last) in enumerate(pairwise(starts))
        ),
        rows=tuple(
            LinearRow(lower=None if low == -inf else low, upper=None if high == inf else high)
            for low, high in zip(row_lowers, row_uppers, strict=True)
        ),
        integral=settings["integral"],
        start=tuple(start) or None,
        enough=options.get("objective_target"),
        node_limit=options.get("mip_max_nodes"),
        tolerance=options.get("dual_feasibility_tolerance"),
        central=options.get("solver") == "ipm",
        seconds=options.pop("time_limit", None),
    )
    assert options == highs_options(problem)
    found = HighsSolver().solve(problem)
    return json.dumps(
        {
            "status": found.status.value,
            "values": found.values,
            "duals": found.duals,
            "objective": None if found.objective == inf else found.objective,
            "bound": None if found.bound == -inf else found.bound,
            "solver": found.solver,
        }
    )


def tally(told: str, lines: "array[float]") -> str:
    house = json.loads(told)
    assert (house["centre"], house["tail"]) == (as_lists(CENTRE), as_lists(TAIL))
    shared = tuple(SPREADS[letter] for letter in house["shared"])
    left = iter(lines)
    openings = []
    for number, opening in enumerate(house["openings"]):
        own = tuple(SPREADS[letter] for letter in opening["own"])
        groups = tuple(
            LineGroup(
                name=str(group),
                lines=tuple(
                    Line(
                        offset=next(left),
                        shared=tuple(next(left) for _ in shared),
                        private=tuple(next(left) for _ in own),
                    )
                    for _ in range(count)
                ),
            )
            for group, count in enumerate(opening["groups"])
        )
        openings.append(LineOpening(mark=str(number), groups=groups, private=own))
    low, high = house["key"]
    again = LineHouse(
        openings=tuple(openings), shared=shared, draws=house["draws"], seed=low + (high << 32)
    )
    assert again.pool_rows == house["poolRows"]
    assert [again.first_row(n) for n in range(len(openings))] == [
        opening["firstRow"] for opening in house["openings"]
    ]
    assert next(left, None) is None
    found = PlainLines().tally(again)
    return json.dumps(
        {
            "openings": [{"fits": o.fits, "together": o.together} for o in found.openings],
            "misfits": found.misfits,
        }
    )


def weigh(
    rows: int,
    columns: "array[float]",
    errors: "array[float]",
    sizes: "array[int]",
    members: "array[int]",
) -> "array[float]":
    moves, slots = len(columns) // rows - 1, len(errors) // rows
    again = tuple(
        FrameRow(
            kind=RowKind.QUIRK,
            place=0,
            moves=tuple(columns[row * (moves + 1) :][:moves]),
            errors=tuple(errors[row * slots :][:slots]),
            limit_mm=columns[row * (moves + 1) + moves],
        )
        for row in range(rows)
    )
    left = iter(members)
    sets = [tuple(islice(left, size)) for size in sizes]
    assert next(left, None) is None
    return array("d", chain.from_iterable(weighed_lines(again, sets)))


def as_lists(pair: tuple[tuple[float, ...], tuple[float, ...]]) -> list[list[float]]:
    return [list(part) for part in pair]

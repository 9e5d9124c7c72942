"""Houses of lines as a forecast makes them: rows that few errors enter, lines that mix few rows."""

import random

from longpoint.forecast.lines import Line, LineGroup, LineHouse, LineOpening, Spread

# Lines, rows they are mixed from, and standard uncertainty of a line, group by group.
RESPECTS = (
    ("gaps", 2, 2, 0.45),
    ("quirk", 40, 10, 0.3),
    ("in-plane", 192, 16, 0.3),
    ("face step", 8, 4, 0.35),
)


def mixed_rows(draw: random.Random, rows: int, terms: int) -> list[list[float]]:
    return [
        [draw.gauss(0.0, 1.0) if draw.random() < 0.25 else 0.0 for _ in range(terms)]
        for _ in range(rows)
    ]


def mixed_line(
    draw: random.Random, rows: list[list[float]], terms: int, shared: int, u: float
) -> Line:
    total = [0.0] * terms
    for row in draw.sample(rows, min(5, len(rows))):
        weight = draw.uniform(-1.0, 1.0)
        total = [t + weight * x for t, x in zip(total, row, strict=True)]
    size = sum(x * x for x in total) ** 0.5 or 1.0
    u *= draw.uniform(0.5, 1.0)
    total = [x * u / size for x in total]
    return Line(
        offset=draw.uniform(0.0, 0.15),
        shared=tuple(total[:shared]),
        private=tuple(total[shared:]),
    )


def line_house(
    openings: int, draws: int, *, seed: int = 1, shared: int = 8, private: int = 32
) -> LineHouse:
    """A house of lines with the counts of a window: 242 lines in four respects."""
    draw = random.Random(seed)
    terms = shared + private
    kinds = [spreads(draw, private) for _ in range(2)]
    made = []
    for number in range(openings):
        groups = []
        for name, count, ranks, u in RESPECTS:
            rows = mixed_rows(draw, ranks, terms)
            groups.append(
                LineGroup(
                    name=name,
                    lines=tuple(mixed_line(draw, rows, terms, shared, u) for _ in range(count)),
                )
            )
        made.append(
            LineOpening(
                mark=f"W{number + 1}",
                groups=tuple(groups),
                private=kinds[number % 2],
            )
        )
    return LineHouse(openings=tuple(made), shared=spreads(draw, shared), draws=draws, seed=seed)


def spreads(draw: random.Random, count: int) -> tuple[Spread, ...]:
    return tuple(Spread.RECTANGULAR if draw.random() < 0.2 else Spread.NORMAL for _ in range(count))

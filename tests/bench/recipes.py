"""Cutting-stock instances drawn by published recipes, for those who haven't the public set.

They have the ranges of their classes, not their instances: those were drawn by other programs, and
the hardest were picked out of many. The recipes are told from memory of the papers, as nobody had
them at hand; ranges that the public instances themselves show were held against those.

References:
    E. Falkenauer, "A hybrid grouping genetic algorithm for bin packing", Journal of Heuristics 2
        (1996) 5-30: uniform lengths and triplets.
    A. Scholl, R. Klein, C. Juergens, "BISON: a fast hybrid procedure for exactly solving the
        one-dimensional bin packing problem", Computers & Operations Research 24 (1997) 627-645:
        three classes.
    P. Schwerin, G. Waescher, "The bin-packing problem: a problem generator and some numerical
        experiments with FFD packing and MTP", International Transactions in Operational Research 4
        (1997) 377-389.
    T. Gau, G. Waescher, "CUTGEN1: a problem generator for the standard one-dimensional cutting
        stock problem", European Journal of Operational Research 84 (1995) 572-579; the hard ones:
        G. Waescher, T. Gau, "Heuristics for the integer one-dimensional cutting stock problem: a
        computational study", OR Spektrum 18 (1996) 131-144.
    J. E. Schoenfield, "Fast, exact solution of open bin packing problems without linear
        programming", draft, US Army Space and Missile Defense Command (2002): the class Hard28.
    M. Delorme, M. Iori, S. Martello, "Bin packing and cutting stock problems: mathematical models
        and exact algorithms", European Journal of Operational Research 255 (2016) 1-20: random
        classes, and instances with and without the round-up property made larger by full sticks.
"""

import random
from collections.abc import Iterator
from typing import Final

from tests.bench.cutting_stock import CuttingStock

SCHOLL_1_STICKS: Final = (100, 120, 150)
SCHOLL_1_SHORTEST: Final = (1, 20, 30)
SCHOLL_2_PARTS: Final = (3, 5, 7, 9)
SCHOLL_2_SPREADS: Final = (0.2, 0.5, 0.9)
RANDOM_STICKS: Final = (50, 75, 100, 120, 125, 150, 200, 300, 400, 500, 750, 1000)
RANDOM_COUNTS: Final = (50, 100, 200, 300, 400, 500, 750, 1000)

NO_ROUND_UP: Final = ((44, 2), (33, 3), (12, 6))
"""On sticks of 132 the linear bound is 2/3 + 3/4 + 6/11 = 1.96, and three are needed (Gau's
example; from memory, and proved by trying all ways in a test)."""
NO_ROUND_UP_STICK: Final = 132


def uniform(seed: int, items: int) -> CuttingStock:
    """Return lengths drawn evenly from 20 to 100, sticks of 150 (Falkenauer)."""
    return _evenly(f"uniform-{items}-{seed}", seed, items, 150, (20, 100))


def triplets(seed: int, items: int) -> CuttingStock:
    """Return lengths that fill `items` / 3 sticks of 1000 without any waste (Falkenauer).

    The first of three takes 380 to 490, the second at least 250 and at most half of the rest.
    """
    draw = random.Random(seed)
    lengths: list[int] = []
    for _ in range(items // 3):
        first = draw.randint(380, 490)
        second = draw.randint(250, (1000 - first) // 2)
        lengths += (first, second, 1000 - first - second)
    return _counted(f"triplets-{items}-{seed}", 1000, lengths)


def scholl_1(seed: int, items: int, stick: int, shortest: int) -> CuttingStock:
    """Return lengths drawn evenly from the shortest to 100 (Scholl, first class)."""
    return _evenly(f"scholl1-{items}-{stick}-{seed}", seed, items, stick, (shortest, 100))


def scholl_2(seed: int, items: int, part: int, spread: float) -> CuttingStock:
    """Return lengths around 1000 / `part`, drawn evenly within a spread (Scholl, second class)."""
    mean = 1000 / part
    limits = (max(1, round(mean * (1 - spread))), round(mean * (1 + spread)))
    return _evenly(f"scholl2-{items}-{part}-{seed}", seed, items, 1000, limits)


def scholl_3(seed: int) -> CuttingStock:
    """Return 200 lengths from 20 000 to 35 000, sticks of 100 000 (Scholl, third class)."""
    return _evenly(f"scholl3-{seed}", seed, 200, 100_000, (20_000, 35_000))


def schwerin(seed: int, items: int) -> CuttingStock:
    """Return 100 or 120 lengths from 150 to 200, sticks of 1000 (Schwerin and Waescher)."""
    return _evenly(f"schwerin-{items}-{seed}", seed, items, 1000, (150, 200))


def cutgen(seed: int, kinds: int, mean_demand: float, longest: float) -> CuttingStock:
    """Return `kinds` lengths up to a part of 10 000, demands that split a total (CUTGEN1).

    Of lengths drawn twice the demands add up. With few to a stick, many kinds and small demands
    its instances look like those of Waescher and Gau; theirs are the hard ones among many.
    """
    draw = random.Random(seed)
    lengths = [draw.randint(1, round(longest * 10_000)) for _ in range(kinds)]
    shares = [draw.random() for _ in range(kinds)]
    total = round(mean_demand * kinds)
    demands = [max(1, round(total * share / sum(shares))) for share in shares]
    drawn = zip(lengths, demands, strict=True)
    pieces = [length for length, demand in drawn for _ in range(demand)]
    return _counted(f"cutgen-{kinds}-{seed}", 10_000, pieces)


def as_hard_28(seed: int, items: int) -> CuttingStock:
    """Return lengths from 1 to 800, sticks of 1000, 160 to 200 of them.

    The sizes of Hard28 only: what makes that class hard is that it was picked by hand.
    """
    return _evenly(f"hard28-sizes-{items}-{seed}", seed, items, 1000, (1, 800))


def evenly_random(
    seed: int, items: int, stick: int, shortest: float, longest: float
) -> CuttingStock:
    """Return lengths between two parts of the stick (Delorme, Iori and Martello)."""
    limits = (max(1, round(shortest * stick)), round(longest * stick))
    return _evenly(f"random-{items}-{stick}-{seed}", seed, items, stick, limits)


def full_sticks(seed: int, sticks: int) -> CuttingStock:
    """Return lengths that fill `sticks` to the last unit, three on each, all sizes mixed.

    In the manner of the class AI, where the round-up property holds and nothing is left over.
    """
    draw = random.Random(seed)
    stick = 4 * draw.randint(450, 650)
    return _counted(f"full-{sticks}-{seed}", stick, _full(draw, stick, sticks))


def no_round_up(seed: int, sticks: int) -> CuttingStock:
    """Return a small instance without the round-up property, with `sticks` full ones beside it.

    In the manner of the class ANI: the lengths of the small one are scaled, and pieces that fill
    whole sticks to the last unit are mixed in. The linear bound grows by one for each: it is 1.96
    and `sticks`. Whether one stick more than that rounded up is needed, as for the small one alone,
    isn't known beforehand. The papers take small ones of many lengths, and check each result.
    """
    draw = random.Random(seed)
    scale = draw.randint(15, 60)
    stick = NO_ROUND_UP_STICK * scale
    lengths = [scale * length for length, demand in NO_ROUND_UP for _ in range(demand)]
    return _counted(f"no-round-up-{sticks}-{seed}", stick, lengths + _full(draw, stick, sticks))


def _full(draw: random.Random, stick: int, sticks: int) -> list[int]:
    lengths = list[int]()
    for _ in range(sticks):
        first = draw.randint(stick * 9 // 20, stick * 9 // 10)
        second = draw.randint(1, stick - first - 1)
        lengths += (first, second, stick - first - second)
    return lengths


def sample(each: int) -> Iterator[tuple[str, CuttingStock]]:
    """Draw `each` instances of every class; yields (class, instance)."""
    draw = random.Random(each)
    for seed in range(each):
        yield "uniform", uniform(seed, (120, 250, 500, 1000)[seed % 4])
        yield "triplets", triplets(seed, (60, 120, 249, 501)[seed % 4])
        items, stick = draw.choice((50, 100, 200, 500)), draw.choice(SCHOLL_1_STICKS)
        yield "scholl-1", scholl_1(seed, items, stick, draw.choice(SCHOLL_1_SHORTEST))
        part, spread = draw.choice(SCHOLL_2_PARTS), draw.choice(SCHOLL_2_SPREADS)
        yield "scholl-2", scholl_2(seed, items, part, spread)
        yield "scholl-3", scholl_3(seed)
        yield "schwerin", schwerin(seed, (100, 120)[seed % 2])
        yield "cutgen", cutgen(seed, draw.randint(35, 65), 3.0, draw.choice((0.25, 0.5)))
        yield "hard28-sizes", as_hard_28(seed, draw.choice((160, 180, 200)))
        items, stick = draw.choice(RANDOM_COUNTS), draw.choice(RANDOM_STICKS)
        limits = draw.choice((0.1, 0.2)), draw.choice((0.7, 0.8))
        yield "random", evenly_random(seed, items, stick, *limits)
        yield "full", full_sticks(seed, 65)
        yield "no-round-up", no_round_up(seed, 63)


def _evenly(name: str, seed: int, items: int, stick: int, limits: tuple[int, int]) -> CuttingStock:
    draw = random.Random(f"{name} {seed}")
    return _counted(name, stick, [draw.randint(*limits) for _ in range(items)])


def _counted(name: str, stick: int, lengths: list[int]) -> CuttingStock:
    counts = {length: lengths.count(length) for length in sorted(set(lengths), reverse=True)}
    return CuttingStock(name=name, stick=stick, lengths=tuple(counts.items()))

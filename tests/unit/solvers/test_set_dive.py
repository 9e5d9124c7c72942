"""Dives in lists of sets: whole sets that hold every piece once, wherever there are any."""

import math
import random
from itertools import combinations

import numpy
import pytest
from numpy.typing import NDArray

from longpoint.solvers.set_dive import Taken, dived, is_whole
from longpoint.solvers.set_program import Relaxed, SetProgram
from longpoint.sticks.search.patterns import Pattern, pattern_list
from longpoint.sticks.search.sets_to_choose import SetChoice

PIECES = 8


def drawn(seed: int) -> SetChoice:
    """Draw sets of two or three of eight pieces; all cost nearly the same."""
    draw = random.Random(seed)
    sets = {tuple(sorted(draw.sample(range(PIECES), draw.randint(2, 3)))) for _ in range(16)}
    return SetChoice(
        patterns=pattern_list(Pattern(0, tuple((n, 1) for n in held)) for held in sorted(sets)),
        costs=(5,),
        pieces=(1,) * PIECES,
        limits=(None,),
        able=tuple(range(100)),
        prices=(1.0,) * PIECES,
        can_be_cut=lambda number: True,
        nodes=1,
        work=10**9,
        stop=lambda: False,
    )


def shares_all_out(choice: SetChoice) -> bool:
    """Try all choices of three and four sets."""
    sets = [choice.patterns.sets.of(place) for place in range(len(choice.patterns))]
    return any(
        sorted(sum(some, ())) == list(range(PIECES))
        for size in (3, 4)
        for some in combinations(sets, size)
    )


def dive(choice: SetChoice, tries: int) -> tuple[Relaxed, Relaxed | None, list[Taken]] | None:
    """Dive from the best solution in parts; return it, what was found and what was taken."""
    program = SetProgram(choice, numpy.ones(len(choice.patterns), dtype=bool))
    asked = list[Taken]()

    def solve(allowed: NDArray[numpy.bool_], taken: Taken) -> Relaxed | None:
        asked.append(dict(taken))
        return program.solve(allowed, (0, 0), (math.inf, math.inf), 1000.0, taken)

    allowed = numpy.ones(len(choice.patterns), dtype=bool)
    relaxed = program.solve(allowed, (0, 0), (math.inf, math.inf), 1000.0, {})
    if relaxed is None or relaxed.cost > 5 * PIECES:
        return None
    return relaxed, dived(program, solve, allowed, relaxed, tries), asked


@pytest.mark.parametrize("seed", range(60))
def test_what_is_found_holds_every_piece_once_and_is_found_where_there_is_any(seed: int) -> None:
    choice = drawn(seed)
    relaxed, whole, _ = dive(choice, 2000) or (None, None, [])
    assert (whole is not None) == shares_all_out(choice)
    if relaxed is not None and whole is not None:
        assert is_whole(whole)
        assert whole.cost >= relaxed.cost - 1e-6
        held = [number for n in whole.numbers for number in choice.patterns.sets.of(int(n))]
        assert sorted(held) == list(range(PIECES))


def test_a_dive_keeps_to_its_tries_and_goes_another_way_after_half_of_them() -> None:
    for seed in range(60):
        found = dive(drawn(seed), 4)
        if found is None or is_whole(found[0]):
            continue
        _, whole, asked = found
        assert len(asked) <= 4
        if whole is None and len(asked) == 4:
            # The third asks for the first choice to be left out.
            assert asked[2] == {}
            break
    else:
        pytest.fail("no dive came to an end by its tries")

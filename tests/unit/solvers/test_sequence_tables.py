import random
from collections.abc import Iterator

import numpy as np
import pytest

from longpoint.solvers.sequence_tables import MOST_VALUE, SequenceTables

Pieces = list[tuple[int, int, int, int]]
"""(need, class of the left end, of the right end, value)."""


def drawn(seed: int) -> tuple[Pieces, list[list[int]], list[int], list[int], int]:
    draw = random.Random(seed)
    classes = draw.randint(1, 3)
    pieces = [
        (draw.randint(2, 6), draw.randrange(classes), draw.randrange(classes), draw.randint(0, 9))
        for _ in range(draw.randint(1, 4))
    ]
    gaps = [[draw.randint(0, 3) for _ in range(classes)] for _ in range(classes)]
    tips = [[draw.randint(0, 2) for _ in range(classes)] for _ in range(2)]
    return pieces, gaps, tips[0], tips[1], draw.randint(5, 16)


def sequences(
    pieces: Pieces, gaps: list[list[int]], left_tips: list[int], longest: int
) -> Iterator[tuple[tuple[int, ...], int]]:
    """Every sequence that keeps within the length, with what it uses without its last tip."""
    stack: list[tuple[tuple[int, ...], int]] = [((), 0)]
    while stack:
        chosen, used = stack.pop()
        yield chosen, used
        for number, (need, left, _, _) in enumerate(pieces):
            joint = gaps[pieces[chosen[-1]][2]][left] if chosen else left_tips[left]
            if used + joint + need <= longest:
                stack.append(((*chosen, number), used + joint + need))


def tables_of(seed: int) -> SequenceTables:
    pieces, gaps, left_tips, right_tips, longest = drawn(seed)
    columns = [np.array(column) for column in zip(*pieces, strict=True)]
    return SequenceTables(
        columns[0],
        (columns[1], columns[2]),
        columns[3].astype(np.int32),
        np.array(gaps),
        (np.array(left_tips), np.array(right_tips)),
        longest,
    )


@pytest.mark.parametrize("seed", range(60))
def test_the_best_sequence_is_that_of_all_sequences(seed: int) -> None:
    pieces, gaps, left_tips, right_tips, longest = drawn(seed)
    tables = tables_of(seed)
    for room in range(longest + 1):
        worth = [
            sum(pieces[number][3] for number in chosen)
            for chosen, used in sequences(pieces, gaps, left_tips, longest)
            if not chosen or used + right_tips[pieces[chosen[-1]][2]] <= room
        ]
        assert tables.value(room) == max(worth)


@pytest.mark.parametrize("seed", range(60))
def test_what_stands_before_a_piece_is_worth_what_the_tables_say(seed: int) -> None:
    pieces, gaps, left_tips, _, longest = drawn(seed)
    tables = tables_of(seed)
    for kind in range(len(gaps)):
        for length in range(longest + 1):
            if tables.before[kind, length] < 0:
                assert length < left_tips[kind]
                continue
            chosen = tables.sequence(kind, length)
            assert sum(pieces[n][3] for n in chosen) == tables.before[kind, length]
            used, last = 0, None
            for need, left, right, _ in (pieces[n] for n in chosen):
                used += need + (left_tips[left] if last is None else gaps[last][left])
                last = right
            assert used + (left_tips[kind] if last is None else gaps[last][kind]) <= length


def test_values_that_the_tables_cannot_hold_are_refused() -> None:
    one = np.array([2]), (np.array([0]), np.array([0]))
    tips = (np.array([0]), np.array([0]))
    with pytest.raises(OverflowError, match="too large"):
        SequenceTables(*one, np.array([MOST_VALUE // 2], np.int32), np.array([[0]]), tips, 10)
    tables = SequenceTables(*one, np.array([MOST_VALUE // 5], np.int32), np.array([[0]]), tips, 10)
    assert tables.value(10) == 5 * (MOST_VALUE // 5)

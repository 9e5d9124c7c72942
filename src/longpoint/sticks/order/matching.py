"""The most pairs that can be made, each thing in one pair at most."""

from collections.abc import Sequence


def most_pairs(wanted: Sequence[Sequence[int]]) -> int:
    """Return how many of the left can be paired with one of the right each.

    Args:
        wanted: For each of the left, the numbers of those of the right that it may be paired with.

    Example:
        >>> most_pairs([[0, 1], [0], [0]])
        2

    References:
        Augmenting paths: C. Berge, Two theorems in graph theory, 1957.
    """
    paired: dict[int, int] = {}

    def found_for(left: int, tried: set[int]) -> bool:
        for right in wanted[left]:
            if right not in paired:
                paired[right] = left
                return True
        for right in wanted[left]:
            if right not in tried:
                tried.add(right)
                if found_for(paired[right], tried):
                    paired[right] = left
                    return True
        return False

    return sum(found_for(left, set()) for left in range(len(wanted)))

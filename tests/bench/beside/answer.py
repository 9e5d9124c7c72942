"""What a method says of an instance, and whether it is so."""

import time
from collections import Counter
from dataclasses import dataclass

from tests.bench.cutting_stock import CuttingStock


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A plan and a bound.

    Attributes:
        sticks: Lengths on each stick; empty where no plan was found.
        bound: No plan takes fewer sticks, as far as the method knows.
        seconds: Time from the instance to here, imports not counted. [s]
        cpu_seconds: Time on the processor. [s]
        peak_mb: Most memory held, imports counted. [MB]
    """

    sticks: tuple[tuple[int, ...], ...] = ()
    bound: int = 0
    seconds: float = 0.0
    cpu_seconds: float = 0.0
    peak_mb: float = 0.0

    @property
    def proved(self) -> bool:
        """True when the plan meets its bound."""
        return bool(self.sticks) and len(self.sticks) == self.bound


class Deadline:
    """A moment to be done by; building a model counts as well as solving it."""

    def __init__(self, seconds: float) -> None:
        self._until = time.perf_counter() + seconds

    @property
    def left(self) -> float:
        """Return the time left, never less than a hundredth. [s]"""
        return max(0.01, self._until - time.perf_counter())


def check_answer(instance: CuttingStock, answer: Answer, optimum: int | None = None) -> None:
    """Add up an answer by lengths alone, and hold it against a known optimum.

    Raises:
        ValueError: A stick is too full, a piece is missing, or the bound can't be.
    """
    if answer.sticks:
        fullest = max(sum(lengths) for lengths in answer.sticks)
        if fullest > instance.stick:
            raise ValueError(f"{instance.name}: {fullest} on a stick of {instance.stick}.")
        wanted = Counter[int]()
        for length, demand in instance.lengths:
            wanted[length] += demand
        missing = wanted - Counter(length for lengths in answer.sticks for length in lengths)
        if missing:
            raise ValueError(f"{instance.name}: missing are {dict(missing)}.")
        if answer.bound > len(answer.sticks):
            raise ValueError(f"{instance.name}: bound {answer.bound}, {len(answer.sticks)} sticks.")
    if optimum is None:
        return
    if answer.bound > optimum or (answer.sticks and len(answer.sticks) < optimum):
        raise ValueError(
            f"{instance.name}: {answer.bound} to {len(answer.sticks)} sticks, {optimum} are known."
        )


def first_fit(instance: CuttingStock) -> list[list[int]]:
    """Return the plan that lays every length, longest first, on the first stick with room."""
    sticks: list[list[int]] = []
    rooms: list[int] = []
    for length, demand in sorted(instance.lengths, reverse=True):
        for _ in range(demand):
            place = next((n for n, room in enumerate(rooms) if room >= length), len(rooms))
            if place == len(rooms):
                sticks.append([])
                rooms.append(instance.stick)
            sticks[place].append(length)
            rooms[place] -= length
    return sticks


def least_by_length(instance: CuttingStock) -> int:
    """Return how many sticks the lengths need end to end."""
    return -(-sum(length * demand for length, demand in instance.lengths) // instance.stick)

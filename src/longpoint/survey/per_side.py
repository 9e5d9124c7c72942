"""What is given for each side of an opening."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

T = TypeVar("T")
S = TypeVar("S")


@dataclass(frozen=True, slots=True, kw_only=True)
class PerSide(Generic[T]):
    """One value for each side of an opening."""

    head: T
    right: T
    bottom: T
    left: T

    def anticlockwise(self) -> tuple[T, T, T, T]:
        """Return bottom, right, head, left: the order of the sides."""
        return (self.bottom, self.right, self.head, self.left)

    def map(self, change: "Callable[[T], S]") -> "PerSide[S]":
        """Return the four values changed one by one."""
        return PerSide(
            head=change(self.head),
            right=change(self.right),
            bottom=change(self.bottom),
            left=change(self.left),
        )

    def mirrored(self) -> "PerSide[T]":
        """Return the same set as seen from the other face."""
        return PerSide(head=self.head, right=self.left, bottom=self.bottom, left=self.right)

"""Tapes and saws: what they may be out by."""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.quantities.uncertainty import combine, u_from_limit, u_from_resolution

REPEAT_U_MM: Final = 0.47
"""Parallax and repeat of one inside reading; assumed, to be replaced by the crew's own figure.

With a 1 mm graduation it makes 0.55 mm for one reading.
"""


WALL_READING_U_MM: Final = 1.5
"""What a reading from plastered corner to plastered corner adds to the tape's own doubt.

Corners full of stopping, a blade bent up the wall, a bowed wall: assumed, no source, to be
replaced by the crew's own figure.
"""


class TapeClass(StrEnum):
    """Accuracy class of a tape, printed on its blade."""

    I = "I"  # noqa: E741
    II = "II"
    III = "III"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassLimit:
    """Limit of error of a tape class: a + b L (+ c where the hook's end face is the zero).

    L is the length in metres, rounded up to a whole metre.

    References:
        Measuring Instruments Directive 2014/32/EU, Annex X (MI-008), Chapter I; transposed by
        UK SI 2016/1153, Schedule 1I.
    """

    a_mm: float
    b_mm_per_m: float
    c_mm: float


CLASS_LIMITS: Final = {
    TapeClass.I: ClassLimit(a_mm=0.1, b_mm_per_m=0.1, c_mm=0.1),
    TapeClass.II: ClassLimit(a_mm=0.3, b_mm_per_m=0.2, c_mm=0.2),
    TapeClass.III: ClassLimit(a_mm=0.6, b_mm_per_m=0.4, c_mm=0.3),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Tape:
    """One tape, known by the name the crew gives it.

    Attributes:
        name: The crew's name for it.
        tape_class: Its class; None when a limit is stated instead.
        max_error_mm: Stated limit of error, any length; None when the class is used.
        resolution_mm: Step to which it is read.
        take_off_mm: What it is known to read too much on an inside reading; taken off each.
        check_stick_mm: Length of the stick it was checked on, None if it wasn't.
        check_inside_mm: What it showed between two faces the stick's length apart.
        check_outside_mm: What it showed hooked over the stick.
        assumed: True when no tape was named and this one stands in.
    """

    name: str
    tape_class: TapeClass | None = TapeClass.II
    max_error_mm: float | None = None
    resolution_mm: float = 1.0
    take_off_mm: float = 0.0
    check_stick_mm: float | None = None
    check_inside_mm: float | None = None
    check_outside_mm: float | None = None
    assumed: bool = False

    def max_permissible_error_mm(self, length_mm: float, *, from_hook: bool = True) -> float:
        """Return the limit of error of this tape at a length.

        Args:
            length_mm: Length read. >= 0. [mm]
            from_hook: True when the hook is the zero, as in every reading of an opening.

        Returns:
            Limit, +/-. [mm]

        Example:
            >>> round(Tape(name="T1").max_permissible_error_mm(2350.0), 3)
            1.1
        """
        if self.max_error_mm is not None or self.tape_class is None:
            return self.max_error_mm or 0.0
        limit = CLASS_LIMITS[self.tape_class]
        metres = max(1, math.ceil(length_mm / 1000.0 - 1e-9))
        return limit.a_mm + limit.b_mm_per_m * metres + (limit.c_mm if from_hook else 0.0)

    def shared_u_mm(self, length_mm: float) -> float:
        """Return the standard uncertainty that all readings of this tape share at a length."""
        return u_from_limit(self.max_permissible_error_mm(length_mm))

    def private_u_mm(self, repeats: int = 1) -> float:
        """Return the standard uncertainty of the mean of `repeats` readings, its own part only.

        Example:
            >>> round(Tape(name="T1").private_u_mm(), 2)
            0.55
        """
        one = combine([u_from_resolution(self.resolution_mm), REPEAT_U_MM])
        return one / math.sqrt(repeats)

    def wall_u_mm(self) -> float:
        """Return the standard uncertainty of one reading along a wall, its own part only.

        Example:
            >>> round(Tape(name="T1").wall_u_mm(), 2)
            1.6
        """
        return combine((self.private_u_mm(), WALL_READING_U_MM))


class SkirtingCut(StrEnum):
    """How the crew holds skirting at the saw."""

    FLAT = "flat"
    STANDING = "standing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """One saw as set up today.

    Attributes:
        name: The crew's name for it.
        kerf_mm: Width of cut, square to the blade. > 0.
        end_trim_mm: Taken off both ends of a new stick; an offcut loses one kerf per end.
        found_left_deg: What a cut set to 45 with the saw swung left really gave; None: not proved.
        found_right_deg: The same, swung right.
        keep_mm: An offcut this long goes back on the rack.
        skirting: How skirting is held for its bevels.
        blade: Name of the blade in it; may be empty.
        setting: Name of the stop setting it stands at; may be empty.
        dialled_left_deg: What was dialled off the 45, swung left, for the gaps written down.
        dialled_right_deg: The same, swung right.
        assumed: True when no saw was named and this one stands in.
    """

    name: str
    kerf_mm: float = 3.0
    end_trim_mm: float = 10.0
    found_left_deg: float | None = None
    found_right_deg: float | None = None
    keep_mm: float = 300.0
    skirting: SkirtingCut = SkirtingCut.FLAT
    blade: str = ""
    setting: str = ""
    dialled_left_deg: float = 0.0
    dialled_right_deg: float = 0.0
    assumed: bool = False

    @property
    def is_proved(self) -> bool:
        """Tell whether both swings were proved by test cuts."""
        return self.found_left_deg is not None and self.found_right_deg is not None

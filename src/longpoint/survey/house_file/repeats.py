"""Readings that stand several times in a house file, but for those of an opening's four sides.

Two that contradict each other are never quietly put together: it is said, and what hangs on them
is held where they are further apart than a hand can shake. Where a third has decided, the odd one
is left out, and that is said too.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import compress

from longpoint.errors import Severity
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.speech.said import raised, say
from longpoint.survey.digits import SlipKind, slips
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.trouble import HouseFileTrouble, quoted
from longpoint.survey.house_file.written_numbers import WrittenLength
from longpoint.survey.instruments import Tape
from longpoint.survey.odd_one import (
    APART_DEG,
    apart_along_wall_mm,
    apart_mm,
    contradict,
    disagree,
    standing,
)
from longpoint.survey.repeated import (
    agreeing_slip,
    disagree_finding,
    figures_of,
    left_out_finding,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeats:
    """Puts repeated readings together, and says where they don't agree.

    Attributes:
        hand: The entry that they stand in.
        tape: The tape that read them.
        place: Mark or name where it is said; empty: the entry's own.
        along_wall: Whether they were read between plastered corners, which are less sharp.
    """

    hand: InHand
    tape: Tape
    place: str = ""
    along_wall: bool = False

    def length_mm(
        self, readings: Sequence[WrittenLength], path: str, worst: Severity = Severity.STOP
    ) -> float:
        """Return the mean of the readings that stand, the tape's known offset taken off.

        Args:
            readings: What was read, at least once.
            path: Where it stands in the entry.
            worst: What is said where one of them must be a slip.

        Raises:
            HouseFileTrouble: Nothing is left of it.
        """
        if all(one.value_mm == 0 for one in readings):
            return 0.0
        stands = self._standing_lengths([one.value_mm for one in readings], path, worst)
        mean_mm = _mean([one.value_mm for one in compress(readings, stands)])
        return round(true_mm(mean_mm, self.tape, path), 6)

    def two_agree(self, readings: Sequence[WrittenLength]) -> bool:
        """Tell whether a second reading bears out the first."""
        values = [one.value_mm for one in readings]
        return len(values) > 1 and not disagree(values, self._apart_mm)

    def contradicted_mm(self, readings: Sequence[WrittenLength]) -> tuple[float, ...]:
        """Return lengths that one is a slip among, as by a true tape; else none. [mm]"""
        values = [one.value_mm for one in readings]
        if not contradict(values, self._apart_mm):
            return ()
        true = tuple(round(value - self.tape.take_off_mm, 6) for value in values)
        return true if min(true) > 0 else ()

    def offset_mm(self, values_mm: Sequence[float] | None, path: str) -> float | None:
        """Return the mean of signed distances that stand, None where none was read. [mm]"""
        if values_mm is None:
            return None
        stands = self._standing_lengths(values_mm, path, Severity.WARNING)
        return _mean(list(compress(values_mm, stands)))

    def angle_deg(self, values_deg: Sequence[float] | None, path: str) -> float | None:
        """Return the mean of angles that stand, None where none was read. [deg]"""
        if values_deg is None:
            return None
        stands = standing(values_deg, APART_DEG)
        if disagree(values_deg, APART_DEG):
            self._disagree(values_deg, path, _degrees, Severity.WARNING)
        else:
            self._left_out(values_deg, path, _degrees, stands)
        return _mean(list(compress(values_deg, stands)))

    @property
    def _apart_mm(self) -> float:
        return (apart_along_wall_mm if self.along_wall else apart_mm)(self.tape)

    def _standing_lengths(
        self, values_mm: Sequence[float], path: str, worst: Severity
    ) -> tuple[bool, ...]:
        units, apart = self.hand.settings.remarks.units, self._apart_mm
        stands = standing(values_mm, apart)

        def figure(length_mm: float) -> str:
            return format_with_unit(length_mm, units)

        if disagree(values_mm, apart):
            meant = [slips(one_mm, units) if one_mm > 0 else () for one_mm in values_mm]
            slip = agreeing_slip(values_mm, meant, apart)
            severity = worst if contradict(values_mm, apart) else Severity.WARNING
            self._disagree(values_mm, path, figure, severity, slip)
        else:
            self._left_out(values_mm, path, figure, stands)
        return stands

    def _disagree(
        self,
        values: Sequence[float],
        path: str,
        figure: Callable[[float], str],
        severity: Severity,
        slip: SlipKind | None = None,
    ) -> None:
        self.hand.notes.append(
            disagree_finding(
                self.place or self.hand.place,
                say(
                    "{path} was read as {figures}.",
                    path=raised(path),
                    figures=figures_of(values, figure),
                ),
                figure(max(values) - min(values)),
                severity,
                say("Read it a third time and leave the wrong figure out"),
                slip,
            )
        )

    def _left_out(
        self,
        values: Sequence[float],
        path: str,
        figure: Callable[[float], str],
        stands: Sequence[bool],
    ) -> None:
        if all(stands):
            return
        stay = figures_of(list(compress(values, stands)), figure)
        left = figures_of(
            [one for one, stays in zip(values, stands, strict=True) if not stays], figure
        )
        read = say(
            "{path} was read as {stay}, and as {left}.", path=raised(path), stay=stay, left=left
        )
        self.hand.notes.append(left_out_finding(self.place or self.hand.place, read, stay, left))


def true_mm(shown_mm: float, tape: Tape, path: str) -> float:
    """Return a reading with the tape's known offset taken off.

    Raises:
        HouseFileTrouble: Nothing is left of it.
    """
    value_mm = shown_mm - tape.take_off_mm
    if value_mm <= 0:
        raise HouseFileTrouble(
            say(
                "{path} is shorter than what the tape {tape} reads too much.",
                path=path,
                tape=quoted(tape.name),
            ),
            say("Nothing is left of it once that is taken off."),
            say("Read it again, or mend take_off of the tape."),
        )
    return value_mm


def _mean(values: Sequence[float]) -> float:
    return round(math.fsum(values) / len(values), 6)


def _degrees(angle_deg: float) -> str:
    return say("{angle} degrees", angle=format_angle(angle_deg))

"""To what an error belongs: the saw as it stands, or the tape and the way of reading with it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class AngleKey:
    """What a saw's angle error belongs to: a new blade or a moved stop is another saw."""

    saw: str
    setting: str = ""
    blade: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeKey:
    """What an error of size belongs to: a tape and the way of reading with it."""

    tape: str
    mode: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupKey:
    """With what a frame was read and cut.

    Attributes:
        saw: The crew's name for the saw.
        setting: Name of the stop setting; a new one once the stop is moved.
        blade: Name of the blade; a new one once it is changed.
        tape: The crew's name for the tape.
        mode: How openings are read with it, in the crew's words.
    """

    saw: str
    setting: str = ""
    blade: str = ""
    tape: str = ""
    mode: str = ""

    @property
    def angle(self) -> AngleKey:
        """What the angle error of the frame belongs to."""
        return AngleKey(saw=self.saw, setting=self.setting, blade=self.blade)

    @property
    def size(self) -> SizeKey:
        """What the error of its size belongs to."""
        return SizeKey(tape=self.tape, mode=self.mode)

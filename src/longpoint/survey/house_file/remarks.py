"""What is to be said about a house file, gathered while it is read."""

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_tenth, format_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.assumptions import Assumption
from longpoint.survey.house_file.trouble import HouseFileTrouble


class Remarks:
    """Findings at the house's name, each said once, and findings at single places.

    Args:
        house_name: The place of what goes for the whole house.
        units: Unit in which lengths are told.
    """

    def __init__(self, house_name: str, units: Units) -> None:
        self.house_name = house_name
        self.units = units
        self._house_wide: dict[tuple[str, str], Finding] = {}
        self._at_places: list[Finding] = []

    def tell(self, length_mm: float) -> str:
        """Return a length with its unit, in tenths."""
        return say(
            "{length} {units}",
            length=format_tenth(length_mm, self.units),
            units=format_unit(self.units),
        )

    def house_wide(self, severity: Severity, *, code: str, read: str, wrong: str, do: str) -> None:
        """Say something about the whole house, once."""
        self._house_wide.setdefault(
            (code, read),
            Finding(
                code=code, severity=severity, place=self.house_name, read=read, wrong=wrong, do=do
            ),
        )

    def trouble(
        self,
        trouble: HouseFileTrouble,
        consequence: str,
        *,
        code: str,
        severity: Severity = Severity.STOP,
    ) -> None:
        """Say that a table of the house can't be used, and what follows from it."""
        self.house_wide(
            severity,
            code=code,
            read=trouble.read,
            wrong=say("{wrong} {consequence}", wrong=trouble.wrong, consequence=consequence),
            do=trouble.do,
        )

    def at_place(self, *findings: Finding) -> None:
        """Say something about single places."""
        self._at_places += findings

    def assume(self, assumption: Assumption) -> None:
        """Say that something was assumed."""
        self.house_wide(
            Severity.NOTE,
            code=assumption.code,
            read=assumption.read,
            wrong=assumption.wrong.format(length=self.tell(assumption.length_mm)),
            do=assumption.do,
        )

    def all(self) -> tuple[Finding, ...]:
        """Return everything, the whole house first, nothing twice."""
        return tuple(dict.fromkeys([*self._house_wide.values(), *self._at_places]))

"""One opening, room, run or trim while it is being read."""

from collections.abc import Mapping
from typing import Any

from longpoint.errors import Finding, Severity
from longpoint.speech.said import say
from longpoint.survey.house_file.assumptions import Assumption
from longpoint.survey.house_file.entry import Entry
from longpoint.survey.house_file.settings import Settings
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.instruments import Tape


class InHand:
    """An entry's own values in front of the house's settings.

    Args:
        entry: The entry as read.
        place: Its mark or name, or what stands in for it.
        settings: What the whole house shares.
        written: The entry as it stands in the file.
    """

    def __init__(
        self, entry: Entry, place: str, settings: Settings, written: Mapping[Any, object]
    ) -> None:
        self.values = entry.values
        self.troubles = list(entry.troubles)
        self.place = place
        self.settings = settings
        self.written = written
        self.notes: list[Finding] = []
        self.assumed: list[Assumption] = []

    def setting(self, key: str) -> Any:  # noqa: ANN401
        """Return the entry's own value, else the house's default, else None.

        Raises:
            HouseFileTrouble: The default is written in a way that can't be used.
        """
        return self.values[key] if key in self.values else self.settings.default(key)

    def assumable(self, key: str, assumed: float | str, assumption: Assumption) -> Any:  # noqa: ANN401
        """Return the setting, or what is assumed for it, which is then said once a house."""
        value = self.setting(key)
        if value is not None:
            return value
        self.assumed.append(assumption)
        return assumed

    def tape(self, own: str | None = None) -> Tape:
        """Return the tape that read the entry: the one named, else its own, else the default.

        Raises:
            HouseFileTrouble: It can't be used.
        """
        name = own or self.values.get("tape")
        if name is None and not self.settings.tape_name:
            raise HouseFileTrouble(
                say("No tape is named here, so the default tape read it."),
                say("The default tape can't be used as it is described."),
                say("Put it right under [tapes] and [defaults], or name another tape here."),
                code="tape-unreadable",
            )
        return self.settings.tapes.get(name or self.settings.tape_name, "tape")

    def profile(self, name: str, key: str) -> str:
        """Return the name of a profile that is described.

        Raises:
            HouseFileTrouble: None of that name can be used.
        """
        return self.settings.profiles.get(name, key).name

    def note(
        self, *, code: str, read: str, wrong: str, do: str, severity: Severity = Severity.NOTE
    ) -> None:
        """Say something about this entry."""
        self.notes.append(
            Finding(code=code, severity=severity, place=self.place, read=read, wrong=wrong, do=do)
        )

    def close(self) -> None:
        """Hand over what is to be said about an entry that could be read."""
        for assumption in self.assumed:
            self.settings.remarks.assume(assumption)
        self.settings.remarks.at_place(*self.notes)

    def hold(self, *troubles: HouseFileTrouble) -> None:
        """Hand over why the entry is held."""
        self.settings.remarks.at_place(*(trouble.finding(self.place) for trouble in troubles))

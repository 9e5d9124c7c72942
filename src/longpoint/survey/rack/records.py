"""What lies on the rack, and what came of what lay there."""

from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from typing import Final

from longpoint.errors import SurveyError
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.profiles import Profile
from longpoint.survey.rack.labels import MOST_LABELS, as_written, is_label, label, one_slip_away

SAME_SIZE_MM: Final = 0.25
"""Two sections whose faces and thicknesses differ by no more are one: half of what a tape shows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A moulding section as the crew knows it through all houses.

    Attributes:
        name: The crew's or the merchant's name, as in the house files.
        width_mm: Face width. > 0.
        thickness_mm: Thickness. > 0.
        reversible: True when it is the same from both edges.
        least_mm: Nothing shorter is worth a place on the rack; None: as the house's saw says.
    """

    name: str
    width_mm: float
    thickness_mm: float
    reversible: bool = False
    least_mm: float | None = None

    def is_of(self, profile: Profile) -> bool:
        """Tell whether a house's profile is this section: name, size and edges agree."""
        return (
            self.name.casefold() == profile.name.casefold()
            and abs(self.width_mm - profile.width_mm) <= SAME_SIZE_MM
            and abs(self.thickness_mm - profile.thickness_mm) <= SAME_SIZE_MM
            and self.reversible == profile.reversible
        )


class Out(StrEnum):
    """Why an offcut isn't on the rack any more."""

    USED = "used"
    THROWN = "thrown"
    MISSING = "missing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gone:
    """What came of an offcut.

    Attributes:
        why: Used, thrown away, or not found.
        on: When that was written down.
        house: For which house it was used; may be empty.
    """

    why: Out
    on: date
    house: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RackPiece:
    """One offcut with its label; it stays in the file after it is gone.

    Attributes:
        label: What is written on it.
        section: Key of its section.
        length_mm: Length that can be used, square across; a kerf is lost at each end. > 0.
        left: What its left end is, e.g. "rough", "square", "mitre 45.0".
        right: What its right end is.
        house: Where it was left over; may be empty.
        origin: Off which stick of which readings, so that it is put up once; may be empty.
        put_up: When it was put up.
        note: What else is to be said of it; may be empty.
        gone: What came of it; None: it is on the rack.
    """

    label: str
    section: str
    length_mm: float
    left: str = "rough"
    right: str = "rough"
    house: str = ""
    origin: str = ""
    put_up: date
    note: str = ""
    gone: Gone | None = None

    def age_days(self, today: date) -> int:
        """Return for how many days it has been there; 0 where its date is still to come."""
        return max(0, (today - self.put_up).days)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rack:
    """All offcuts that ever were on the crew's rack.

    Attributes:
        units: Unit in which it is read and printed.
        old_after_days: An offcut older than this is said to be old; None: none is.
        sections: Sections by key.
        pieces: Offcuts in the order in which they were put up, gone ones too; labels unique.
        spent: Labels whose putting up was taken back: they may stand on a board all the same.
    """

    units: Units = Units.MM
    old_after_days: int | None = None
    sections: tuple[tuple[str, Section], ...] = ()
    pieces: tuple[RackPiece, ...] = ()
    spent: frozenset[str] = frozenset()

    @property
    def there(self) -> tuple[RackPiece, ...]:
        """What is on the rack now, the oldest first."""
        return tuple(
            sorted(
                (piece for piece in self.pieces if piece.gone is None),
                key=lambda piece: piece.put_up,
            )
        )

    def section(self, key: str) -> Section:
        """Return the section of a key; the reader makes sure that there is one."""
        return dict(self.sections)[key]

    def piece(self, written: str) -> RackPiece:
        """Return the offcut with a label, however it is written.

        Raises:
            SurveyError: It is no label, a slip of the pen, or of none that is on the rack.
        """
        text = as_written(written)
        for piece in self.pieces:
            if piece.label == text and piece.gone is None:
                return piece
            if piece.label == text and piece.gone is not None:
                raise SurveyError(
                    say("The label {text} is named.", text=text),
                    say(
                        "That offcut isn't on the rack any more: {why}, {on}.",
                        why=piece.gone.why.value,
                        on=piece.gone.on.isoformat(),
                    ),
                    say("Look at the label again, or put the offcut up under a new one."),
                )
        alike = one_slip_away(text, (piece.label for piece in self.there))
        near = say("Alike on the rack: {alike}. ", alike=joined(", ", alike)) if alike else ""
        if not is_label(text):
            raise SurveyError(
                say("The label {text} is named.", text=text or "without a sign"),
                say(
                    "Its last sign doesn't agree with the others, so it was misread or miswritten."
                ),
                say("{near}Read it again on the offcut.", near=near),
            )
        raise SurveyError(
            say("The label {text} is named.", text=text),
            say("No offcut on this rack has it."),
            say("{near}Look whether it is of another rack.", near=near),
        )

    def with_section(self, profile: Profile) -> tuple["Rack", str]:
        """Return the rack with a section for a house's profile, and the key of that section."""
        for key, section in self.sections:
            if section.is_of(profile):
                return self, key
        taken = {key for key, _ in self.sections}
        names = (profile.name, *(f"{profile.name} {n}" for n in range(2, len(taken) + 3)))
        key = next(name for name in names if name not in taken)
        section = Section(
            name=profile.name,
            width_mm=profile.width_mm,
            thickness_mm=profile.thickness_mm,
            reversible=profile.reversible,
        )
        return replace(self, sections=(*self.sections, (key, section))), key

    def with_piece(self, piece: RackPiece) -> tuple["Rack", RackPiece]:
        """Return the rack with one offcut more, under a label that was never used.

        Args:
            piece: The offcut; its label is not looked at.

        Raises:
            SurveyError: There are no more labels.
        """
        taken = {each.label for each in self.pieces} | self.spent
        order = (*range(len(taken), MOST_LABELS), *range(len(taken)))
        free = next((each for number in order if (each := label(number)) not in taken), None)
        if free is None:
            raise SurveyError(
                say(
                    "There are {taken} offcuts in this file, gone ones included.",
                    taken=len(taken),
                ),
                say("There is no label left for one more."),
                say("Begin a new file, and keep this one for what is still on the rack."),
            )
        labelled = replace(piece, label=free)
        return replace(self, pieces=(*self.pieces, labelled)), labelled

    def without(self, label_written: str, gone: Gone) -> "Rack":
        """Return the rack after an offcut is gone; it stays in the file.

        Raises:
            SurveyError: As `piece`.
        """
        piece = self.piece(label_written)
        return replace(
            self,
            pieces=tuple(replace(p, gone=gone) if p is piece else p for p in self.pieces),
        )

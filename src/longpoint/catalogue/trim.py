"""What the catalogue knows of one kind of trim: what it asks for, and how it is made."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from longpoint.catalogue.sketch import Sketch
from longpoint.errors import Finding
from longpoint.pieces.piece import SQUARE_CUT, EndCut, Piece, Role
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House
from longpoint.survey.house_file.keys import Key
from longpoint.survey.profiles import Profile
from longpoint.survey.trims import TrimEntry

TRIM_WAITS: Final = "trim-waits"
"""A trim does without what is held beside it for now."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One entry of a kind, with the house it stands in.

    Attributes:
        house: The house.
        shapes: Fitted openings and rooms.
        entry: The entry.
        held: Places held back so far: marks of openings and runs, rooms, "room wall".
    """

    house: House
    shapes: Shapes
    entry: TrimEntry
    held: frozenset[str] = frozenset()

    @property
    def mark(self) -> str:
        """Mark of the entry."""
        return self.entry.mark

    @property
    def units(self) -> Units:
        """Unit in which the house is printed."""
        return self.house.units

    @property
    def profile(self) -> Profile:
        """Profile of the entry.

        Raises:
            SurveyError: It names none; kinds that need one never get here without.
        """
        return self.house.profile(self.entry.profile)

    def get(self, key: str, default: Any = None) -> Any:  # noqa: ANN401
        """Return what stands behind a key of this kind, or what holds when it is left out."""
        return self.entry.values.get(key, default)

    def piece(
        self,
        what: str,
        role: Role,
        inner_mm: float,
        *,
        outer_mm: float | None = None,
        back_mm: float | None = None,
        left: EndCut = SQUARE_CUT,
        right: EndCut = SQUARE_CUT,
        profile: Profile | None = None,
        room: str | None = None,
        u_mm: float = 0.0,
        hand_sum: str = "",
        notes: tuple[str, ...] = (),
    ) -> Piece:
        """Return a piece of this trim.

        Args:
            what: Stands behind the entry's mark in the piece's own: "N", "head".
            role: What it is in its place.
            inner_mm: Length along the inner (bottom) edge, at the face.
            outer_mm: Along the outer (top) edge; None: the same.
            back_mm: Longest length along the back; None: the longer of the two edges.
            left: Cut of its left end.
            right: Cut of its right end.
            profile: Its profile; None: the entry's.
            room: Its room; None: the entry's.
            u_mm: Standard uncertainty of its length.
            hand_sum: The sum a carpenter can follow.
            notes: What else is to be done to it.
        """
        section = profile or self.profile
        outer = inner_mm if outer_mm is None else outer_mm
        return Piece(
            mark=f"{self.mark}-{what}",
            role=role,
            trim=self.mark,
            room=self.entry.room if room is None else room,
            profile=section.name,
            width_mm=section.width_mm,
            thickness_mm=section.thickness_mm,
            inner_mm=inner_mm,
            outer_mm=outer,
            back_mm=max(inner_mm, outer) if back_mm is None else back_mm,
            left=left,
            right=right,
            u_mm=u_mm,
            hand_sum=hand_sum,
            notes=notes,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimPlan:
    """One entry, planned.

    Attributes:
        pieces: What to cut.
        findings: What is to be said; their place is the entry's mark.
        sketches: The drawing.
        lines: Plain sentences for the sheet: the convention of the settings, the order of work,
            what was assumed.
    """

    pieces: tuple[Piece, ...] = ()
    findings: tuple[Finding, ...] = ()
    sketches: tuple[Sketch, ...] = ()
    lines: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimKind:
    """One kind of trim.

    Attributes:
        name: What stands behind `kind` in the house file: "picture-rail".
        title: To stand in a sentence: "a picture rail".
        asks: Keys it asks for beyond those that every trim has.
        plan: Makes its pieces; may raise PieceError, which holds the entry.
        needs_profile: True when the entry must name a profile.
        needs_room: True when it must name a room described under [[rooms]].
        needs_openings: True when it must name one or more openings.
    """

    name: str
    title: str
    asks: tuple[Key, ...]
    plan: Callable[[Asked], TrimPlan]
    needs_profile: bool = True
    needs_room: bool = False
    needs_openings: bool = False

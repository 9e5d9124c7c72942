"""Cross-sections and the sticks of them that can be had."""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """One moulding section.

    Attributes:
        name: The crew's or the merchant's name.
        width_mm: Face across the wall; of skirting, its height. > 0.
        thickness_mm: Off the wall. > 0.
        reversible: True when the section is the same from both edges, so that a piece may be
            turned end for end.
        grain_matched: True when the pieces of one opening are wanted from one stick, so that their
            grain and colour go together: timber that stays visible.
        material: As written; may be empty.
        thin_edge_mm: Thickness at the edge to the opening where the section is thinner there, for
            the nails; None: as thick as the whole.
        section: Corners of its cross-section in order, its back down: across from one edge of the
            face, up from the back; empty where none was given. No length hangs on it. [mm]
    """

    name: str
    width_mm: float
    thickness_mm: float
    reversible: bool = False
    grain_matched: bool = False
    material: str = ""
    thin_edge_mm: float | None = None
    section: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """One length of one profile that can be bought.

    Attributes:
        profile: Name of the profile.
        length_mm: Length of a new stick. > 0.
        price: Price of one stick; None: lengths are compared by metres.
        count: How many there are; None: as many as needed.
        supplier: Who sells it; empty: not said.
        code: The supplier's own code for it; may be empty.
    """

    profile: str
    length_mm: float
    price: Decimal | None = None
    count: int | None = None
    supplier: str = ""
    code: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """Kept lengths on the rack, used first and at no cost.

    Attributes:
        profile: Name of the profile.
        length_mm: Length that can be used, square across; a kerf is lost at each end. > 0.
        count: How many there are; 1 where there is a label.
        label: What is written on it, from the crew's rack; empty where it has none.
    """

    profile: str
    length_mm: float
    count: int = 1
    label: str = ""

"""Windows, doors and cased openings as written down."""

from dataclasses import dataclass
from enum import StrEnum

from longpoint.survey.as_built import AsBuilt
from longpoint.survey.outlines import OutlineReadings
from longpoint.survey.per_side import PerSide as PerSide
from longpoint.survey.readings import OpeningReadings


class OpeningKind(StrEnum):
    """What kind of hole it is."""

    WINDOW = "window"
    DOOR = "door"
    CASED = "cased"
    """A lined opening without a door."""


class Layout(StrEnum):
    """Which pieces surround it."""

    ALL_ROUND = "all-round"
    LEGS_AND_HEAD = "legs-and-head"
    BOARD_AND_APRON = "board-and-apron"


class Method(StrEnum):
    """The way of fixing; every figure that depends on it names it."""

    BATCH = "batch"
    """All cut, legs nailed once each end, tapped, then head and sill piece."""
    IN_PLACE = "in-place"
    """Each piece marked off the pieces already up."""
    BENCH = "bench"
    """The frame joined on the bench with 45s, then shared over the opening."""


class Mitres(StrEnum):
    """What the saw is set to for the mitres of an opening cut in batch."""

    AS_READ = "as-read"
    """The angles that the readings give."""
    AT_STOP = "at-stop"
    """The saw's stop at 45; the quirk takes the difference."""


class Joint(StrEnum):
    """How the pieces of a set meet."""

    MITRE = "mitre"
    BUTT = "butt"
    """The head (and sill piece) runs through over square legs."""
    BLOCKS = "blocks"
    """Square pieces between corner blocks."""


class ApronEnds(StrEnum):
    """How the ends of an apron are finished."""

    SQUARE = "square"
    RETURN = "return"
    """Mitred, with a small piece back to the wall."""


class Flush(StrEnum):
    """What is done where the lining stands proud of the wall or sits shy of it; one thing only."""

    LEAVE = "leave"
    """Nothing: the trim is cut flat."""
    PACK = "pack"
    """The neighbour is packed to the same tilt."""
    BACK_BEVEL = "back-bevel"
    """The cuts are relieved at the back."""
    RE_SET = "re-set"
    """The reveal is put right first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arch:
    """An arched head as read over straight sides.

    Attributes:
        rise_mm: How far the crown stands above the springing line.
        crown_mm: Crown above the sill; None when it wasn't read.
        segments: How many straight-grained pieces make it; None: as few as the blank allows.
        blank: Name of the profile that the segments are cut from; may be empty.
        offsets: Points of the arch's edge: across from the left springing, up from its line. [mm]
    """

    rise_mm: float
    crown_mm: float | None = None
    segments: int | None = None
    blank: str = ""
    offsets: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardFit:
    """How a window board sits between the linings.

    Attributes:
        inside_mm: Between the linings at the board; None: the opening's fitted bottom.
        depth_left_mm: From the sash to the wall's face at the left end.
        depth_right_mm: The same at the right end.
        nosing_mm: How far the board stands out past the wall's face.
    """

    inside_mm: float | None = None
    depth_left_mm: float
    depth_right_mm: float
    nosing_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Nominal:
    """The size on the drawing: what siblings of a batch should share."""

    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """One opening with its settings resolved against the house's defaults.

    Attributes:
        mark: Its mark, unique in the house.
        room: Room it is read from; may be empty.
        kind: Window, door or cased opening.
        layout: Which pieces surround it.
        readings: What was read of the first face.
        readings_b: What was read of the second face; None: the mirror of the first.
        faces: 1 or 2 faces to trim.
        quirk_mm: Set-back of the trim from the lining's edge, per side.
        quirk_band_mm: Least and most quirk the crew accepts.
        profiles: Names of the profiles, per side (bottom: sill piece or apron).
        board: Name of the window board's profile; empty when there is none to cut.
        horn_mm: How far the window board runs past the architraves at each end.
        method: The way of fixing.
        mitres: Whether mitres cut in batch are set to the angles read, or left at the 45 stop.
        tap_room_mm: How far a leg can still be tapped once its nails are in; None: not limited.
        floor_cover_mm: Thickness still to be laid under the legs.
        max_gap_mm: The crew's own limit for an open joint.
        lining_edge_mm: Thickness of the reveal's edge seen; None when not read.
        raked: True when opposite sides are meant to differ.
        arch: An arched head; None for a straight one.
        outline: A shape told otherwise than by four sides; None for one with four, whose lengths
            are then in `readings`.
        joint: How the pieces of the set meet.
        head_horn_mm: How far a butt head runs past the legs at each end.
        corner_block: Name of the corner blocks' profile; empty where there are none.
        plinth: Name of the plinth blocks' profile; empty where there are none.
        plinth_height_mm: Their height.
        back_band: Name of the profile that goes round the set's outer edge; may be empty.
        board_fit: How the window board is notched between the linings; None when not read.
        apron_ends: How the apron's ends are finished.
        flush: What is done where the lining stands proud or sits shy.
        wedge: Name of the profile that small wedges are cut from; empty where none are wanted.
        nominal: Size on the drawing, where there is one.
        batch: Name of a group of openings made alike; may be empty.
        accept: Codes of findings that the crew has looked at and accepts here.
        as_built: The first face's set as it went up; None when nothing was written down.
        as_built_b: The second face's, seen from its own side.
    """

    mark: str
    room: str = ""
    kind: OpeningKind
    layout: Layout
    readings: OpeningReadings
    readings_b: OpeningReadings | None = None
    faces: int = 1
    quirk_mm: PerSide[float]
    quirk_band_mm: tuple[float, float] = (3.0, 7.0)
    profiles: PerSide[str]
    board: str = ""
    horn_mm: float = 0.0
    method: Method = Method.BATCH
    mitres: Mitres = Mitres.AS_READ
    tap_room_mm: float | None = None
    floor_cover_mm: float = 0.0
    max_gap_mm: float = 0.5
    lining_edge_mm: float | None = None
    raked: bool = False
    arch: Arch | None = None
    outline: OutlineReadings | None = None
    joint: Joint = Joint.MITRE
    head_horn_mm: float = 0.0
    corner_block: str = ""
    plinth: str = ""
    plinth_height_mm: float = 0.0
    back_band: str = ""
    board_fit: BoardFit | None = None
    apron_ends: ApronEnds = ApronEnds.SQUARE
    flush: Flush = Flush.LEAVE
    wedge: str = ""
    nominal: Nominal | None = None
    batch: str = ""
    accept: tuple[str, ...] = ()
    as_built: AsBuilt | None = None
    as_built_b: AsBuilt | None = None

    @property
    def stands_on_floor(self) -> bool:
        """Tell whether the legs run down to a floor."""
        return self.kind is not OpeningKind.WINDOW

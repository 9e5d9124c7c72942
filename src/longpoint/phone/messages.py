"""What a page asks and what it is answered, one record each; their TypeScript comes from here."""

from dataclasses import dataclass
from typing import Any, Literal

from longpoint.phone.entries import Entry, LineState, Place

Document = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """Something to be said of a place, in three sentences."""

    code: str
    severity: Literal["note", "warning", "stop"]
    place: str
    read: str
    wrong: str
    do: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why there is no other answer."""

    kind: Literal["refusal"] = "refusal"
    read: str
    wrong: str
    do: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLimits:
    """What can be checked at once, while a figure is typed?"""

    ask: Literal["limits"] = "limits"


@dataclass(frozen=True, slots=True, kw_only=True)
class LineLimits:
    """One line that is read of an opening.

    Attributes:
        line: Its key.
        short: In a word or two.
        words: In full.
        scale: "length" in the house's unit, "proud" in the same with a sign.
        least: Smallest reading taken. [mm]
        most: Largest. [mm]
        apart: Two readings of it further apart than this disagree. [mm]
        beside: Key of the line across, which is about as long; empty: none.
        beside_apart: Beyond this the two sides are looked at again. [mm]
        asked: False when the opening can be planned without it.
    """

    line: str
    short: str
    words: str
    scale: Literal["length", "proud"]
    least: float
    most: float
    apart: float
    beside: str
    beside_apart: float
    asked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KindLimits:
    """What is read of one kind of opening, in the order of the walk."""

    kind: str
    words: str
    lines: tuple[LineLimits, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of several, with what it is called."""

    value: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What can be checked at once, and what may be chosen.

    Attributes:
        mm_per_inch: Of the trade.
    """

    kind: Literal["limits"] = "limits"
    kinds: tuple[KindLimits, ...]
    dialects: tuple[Choice, ...]
    trims: tuple[Choice, ...]
    mm_per_inch: float


@dataclass(frozen=True, slots=True, kw_only=True)
class AskFold:
    """How does a house stand after these entries?"""

    ask: Literal["fold"] = "fold"
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadLine:
    """A line of an opening, as it stands.

    Attributes:
        texts: What counts, as typed; empty: unread.
        differs: True when its readings disagree.
    """

    line: str
    texts: tuple[str, ...]
    differs: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FoldedOpening:
    """An opening as it stands.

    Attributes:
        left: How many lines that are asked for are unread.
    """

    mark: str
    room: str
    what: str
    trim: str
    state: LineState
    left: int
    lines: tuple[ReadLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NextLine:
    """Where the walk goes on."""

    opening: str
    line: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CanUndo:
    """The last entry that counts, and what it was in words."""

    of: Place
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fold:
    """A house as it stands.

    Attributes:
        document: As a house file, after it was parsed.
        held: What holds an opening before anything is reckoned.
        saw: Where the cutting stands, for `plan` and `saw`; empty: nothing is cut.
        gaps: What was read of sets on the wall.
    """

    kind: Literal["fold"] = "fold"
    name: str
    units: Literal["mm", "in"]
    dialect: str
    document: Document
    openings: tuple[FoldedOpening, ...]
    next: NextLine | None
    read: int
    asked: int
    held: tuple[Said, ...]
    undo: CanUndo | None
    saw: str
    gaps: dict[str, dict[str, tuple[str, str]]]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLook:
    """How does one opening look by itself?"""

    ask: Literal["look"] = "look"
    document: Document
    opening: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One face of an opening, drawn, and the question that its drawing asks."""

    svg: str
    question: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceRow:
    """A piece of an opening.

    Attributes:
        figure: What it is cut to, and how that is read.
    """

    mark: str
    what: str
    figure: str
    how: str
    left: str
    right: str
    short: str
    long: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One opening by itself."""

    kind: Literal["look"] = "look"
    mark: str
    is_held: bool
    faces: tuple[Face, ...]
    pieces: tuple[PieceRow, ...]
    findings: tuple[Said, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPlan:
    """What is to be cut and bought, and will it close?

    Attributes:
        held: From the fold.
        saw: From the fold.
    """

    ask: Literal["plan"] = "plan"
    document: Document
    held: tuple[Said, ...]
    saw: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningState:
    """What to do with an opening."""

    mark: str
    verdict: Literal["batch", "read-first", "prove-saw", "cut-long", "hold", "none"]
    words: str
    why: str
    chance: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CutEnd:
    """One end of a piece as it lies at the saw."""

    setting: str
    remarks: tuple[str, ...]
    svg: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CutStep:
    """One piece to be cut, in the order of cutting.

    Attributes:
        aloud: To be read out, figure by figure.
        check: The word that is said back.
    """

    number: int
    piece: str
    what: str
    stick: str
    stick_words: str
    profile: str
    figure: str
    how: str
    how_words: str
    left: CutEnd
    right: CutEnd
    remarks: tuple[str, ...]
    svg: str
    aloud: str
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ToBuy:
    """Sticks of one profile and length."""

    profile: str
    section: str
    length: str
    count: int
    price: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProofLine:
    """How good the plan of a profile is known to be, in words."""

    profile: str
    is_proved: bool
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPage:
    """A sheet as a page of its own."""

    name: str
    title: str
    html: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A house planned.

    Attributes:
        code: Short code of the readings.
        summary: How many openings can be cut as planned.
        cuts: What is still to be cut.
        done: Marks of pieces that are cut and good.
        saw: Where the cutting stands, to be kept with the next piece of news.
        again: What changed against the first plan, in sentences.
        document: The plan for other programs.
    """

    kind: Literal["plan"] = "plan"
    code: str
    summary: str
    openings: tuple[OpeningState, ...]
    findings: tuple[Said, ...]
    cuts: tuple[CutStep, ...]
    done: tuple[str, ...]
    pieces: int
    to_buy: tuple[ToBuy, ...]
    money: str
    proofs: tuple[ProofLine, ...]
    saw: str
    again: tuple[str, ...]
    document: Document


@dataclass(frozen=True, slots=True, kw_only=True)
class AskSheets:
    """The sheets of a house, as pages."""

    ask: Literal["sheets"] = "sheets"
    document: Document
    held: tuple[Said, ...]
    saw: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheets:
    """The sheets."""

    kind: Literal["sheets"] = "sheets"
    sheets: tuple[SheetPage, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskSaw:
    """Where does the cutting stand after this?

    Attributes:
        told: One sentence, such as "spoiled W2-head 900".
    """

    ask: Literal["saw"] = "saw"
    document: Document
    held: tuple[Said, ...]
    saw: str
    told: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AtSaw:
    """Where the cutting stands, to be kept with what was told."""

    kind: Literal["saw"] = "saw"
    saw: str
    new: tuple[str, ...]
    findings: tuple[Said, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskWall:
    """What is to be tapped at a set on the wall?"""

    ask: Literal["wall"] = "wall"
    document: Document
    opening: str
    gaps: dict[str, tuple[str, str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """What to tap, in the order in which it is read."""

    kind: Literal["wall"] = "wall"
    says: tuple[str, ...]
    taps: tuple[str, ...]
    leaves: tuple[str, ...]
    then: tuple[str, ...]
    blind: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskFile:
    """A house as the text of a house file."""

    ask: Literal["file"] = "file"
    document: Document


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """The text, and a name for it."""

    kind: Literal["file"] = "file"
    name: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskOpen:
    """Is this the text of a house file, and of which house?"""

    ask: Literal["open"] = "open"
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """It is; a `opened-file` entry with the same text gives the house."""

    kind: Literal["open"] = "open"
    name: str
    openings: int
    findings: tuple[Said, ...]


Request = AskLimits | AskFold | AskLook | AskPlan | AskSheets | AskSaw | AskWall | AskFile | AskOpen
Answer = Limits | Fold | Look | Plan | Sheets | AtSaw | Wall | File | Opened | Refusal

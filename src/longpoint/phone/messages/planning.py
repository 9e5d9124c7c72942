"""What is to be cut and bought, and will it close; the sheets."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.messages.said import Document, Said


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPlan:
    """What is to be cut and bought, and will it close?

    Attributes:
        held: From the fold.
        saw: From the fold.
        is_first: Whether a first plan will do, made at once: its sticks are filled without a
            solver, and most not proved.
    """

    ask: Literal["plan"] = "plan"
    document: Document
    held: tuple[Said, ...]
    saw: str
    is_first: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningState:
    """What to do with an opening.

    Attributes:
        mark: Its mark.
        verdict: Whether it can be cut as planned.
        words: The same in words.
        why: What it hangs on.
        chance: How often it would close.
        pieces: How many pieces of it are planned; 0: none, as it is held or can't be worked out.
    """

    mark: str
    verdict: Literal["batch", "read-first", "prove-saw", "cut-long", "hold", "none"]
    words: str
    why: str
    chance: str
    pieces: int


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
    """Sticks of one profile and length; spares, for what has to be cut again, on their own."""

    profile: str
    section: str
    length: str
    count: int
    price: str
    is_spare: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ProofLine:
    """How good the plan of a profile is known to be, in words."""

    profile: str
    is_proved: bool
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalSaid:
    """How far the plan gets with a goal that follows the cost, in words."""

    words: str
    is_proved: bool


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
        cut_code: Short code of which piece lies on which stick.
        summary: How many openings can be cut as planned.
        held: What is held: marks, rooms, a room and its wall.
        cuts: What is still to be cut.
        done: Marks of pieces that are cut and good.
        saw: Where the cutting stands, to be kept with the next piece of news.
        again: What changed against the first plan, in sentences.
        document: The plan for other programs.
        is_first: Whether it is a first plan: what it says of openings stands, its sticks may still
            change.
    """

    kind: Literal["plan"] = "plan"
    code: str
    cut_code: str
    summary: str
    openings: tuple[OpeningState, ...]
    held: tuple[str, ...]
    findings: tuple[Said, ...]
    cuts: tuple[CutStep, ...]
    done: tuple[str, ...]
    pieces: int
    to_buy: tuple[ToBuy, ...]
    money: str
    proofs: tuple[ProofLine, ...]
    goals: tuple[GoalSaid, ...]
    saw: str
    again: tuple[str, ...]
    document: Document
    is_first: bool


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

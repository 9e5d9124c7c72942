"""What a page asks and what it is answered, one record each; their TypeScript comes from here."""

from longpoint.phone.messages.crew import (
    AskCame,
    AskPassing,
    Came,
    CameFrom,
    Passing,
    SeenUpTo,
)
from longpoint.phone.messages.files import (
    AskFile,
    AskHandOver,
    AskJoined,
    AskOpen,
    File,
    HandOver,
    Joined,
    Opened,
)
from longpoint.phone.messages.labels import AskLabelHouse, JournalHere, LabelHouse
from longpoint.phone.messages.limits import (
    AskLimits,
    Choice,
    DialectWords,
    Form,
    FormLine,
    KindLimits,
    Limits,
    LineLimits,
)
from longpoint.phone.messages.looking import AskLabel, AskLook, Face, LabelRead, Look, PieceRow
from longpoint.phone.messages.news import AskSaw, AskWall, AtSaw, Wall
from longpoint.phone.messages.planning import (
    AskPlan,
    AskSheets,
    CutEnd,
    CutStep,
    GoalSaid,
    OpeningState,
    Plan,
    ProofLine,
    SheetPage,
    Sheets,
    ToBuy,
)
from longpoint.phone.messages.said import Document, Refusal, Said
from longpoint.phone.messages.standing import (
    AskFold,
    CanUndo,
    Fold,
    FoldedOpening,
    FoldedPlace,
    NextLine,
    ReadLine,
)

Request = (
    AskLimits
    | AskFold
    | AskLook
    | AskLabel
    | AskPlan
    | AskSheets
    | AskSaw
    | AskWall
    | AskFile
    | AskOpen
    | AskHandOver
    | AskJoined
    | AskLabelHouse
    | AskPassing
    | AskCame
)
Answer = (
    Limits
    | Fold
    | Look
    | LabelRead
    | Plan
    | Sheets
    | AtSaw
    | Wall
    | File
    | Opened
    | HandOver
    | Joined
    | LabelHouse
    | Passing
    | Came
    | Refusal
)

__all__ = [
    "Answer",
    "AskCame",
    "AskFile",
    "AskFold",
    "AskHandOver",
    "AskJoined",
    "AskLabel",
    "AskLabelHouse",
    "AskLimits",
    "AskLook",
    "AskOpen",
    "AskPassing",
    "AskPlan",
    "AskSaw",
    "AskSheets",
    "AskWall",
    "AtSaw",
    "Came",
    "CameFrom",
    "CanUndo",
    "Choice",
    "CutEnd",
    "CutStep",
    "DialectWords",
    "Document",
    "Face",
    "File",
    "Fold",
    "FoldedOpening",
    "FoldedPlace",
    "Form",
    "FormLine",
    "GoalSaid",
    "HandOver",
    "Joined",
    "JournalHere",
    "KindLimits",
    "LabelHouse",
    "LabelRead",
    "Limits",
    "LineLimits",
    "Look",
    "NextLine",
    "Opened",
    "OpeningState",
    "Passing",
    "PieceRow",
    "Plan",
    "ProofLine",
    "ReadLine",
    "Refusal",
    "Request",
    "Said",
    "SeenUpTo",
    "SheetPage",
    "Sheets",
    "ToBuy",
    "Wall",
]

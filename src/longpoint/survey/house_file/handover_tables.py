"""The keys of handing over, and of what was found wrong."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.handover import DefectKind, Handover, Trade
from longpoint.survey.house_file.keys import Key, Kind, Table

ASSUMED_HANDOVER: Final = Handover(assumed=True)
PLACES: Final = ("au", "au-nsw", "au-vic", "nz", "uk", "ie", "us", "ca")


def _day(name: str, meaning: str, left_out: str) -> Key:
    return Key(name=name, kind=Kind.DATE, meaning=meaning, example="2026-03-01", left_out=left_out)


def _who(name: str, what: str) -> Key:
    return Key(
        name=name,
        kind=Kind.CHOICE,
        meaning=say("Who {what}.", what=what),
        example="painter",
        choices=tuple(each.value for each in Trade),
        left_out=say("not agreed, and there is a line to agree it on"),
    )


HANDOVER: Final = Table(
    title=say("the hand-over"),
    keys=(
        Key(
            name="place",
            kind=Kind.CHOICE,
            meaning=say("Whose guides the work is judged by."),
            example="uk",
            choices=PLACES,
            left_out=say("those of the dialect's country"),
        ),
        _day(
            "contract",
            say("Day of the contract; it chooses the edition."),
            say("the newest edition held"),
        ),
        _day(
            "handed_over", say("Day of handing over; limits grow with the months."), say("not yet")
        ),
        Key(
            name="bare_floor",
            kind=Kind.FLAG,
            meaning=say("True where floors have no covering."),
            example=False,
            default=False,
            left_out="false",
        ),
        _who("fills", say("fills nail holes")),
        _who("caulks", "caulks"),
        Key(
            name="fixed",
            kind=Kind.CODES,
            meaning=say("Openings, runs, other trim and whole rooms that are up."),
            example=["W1", "Kitchen"],
            left_out=say("those whose as_built was read"),
        ),
        Key(
            name="wet",
            kind=Kind.CODES,
            meaning=say("Rooms where glue, filler, caulk or paint is wet."),
            example=["Kitchen"],
            left_out="none",
        ),
    ),
)

DEFECT: Final = Table(
    title=say("a defect"),
    keys=(
        Key(
            name="place",
            kind=Kind.TEXT,
            meaning=say("Mark or room where it is."),
            example="S1",
            required=True,
        ),
        Key(
            name="what",
            kind=Kind.TEXT,
            meaning=say("What is wrong."),
            example=say("gap under the skirting"),
            required=True,
        ),
        Key(
            name="kind",
            kind=Kind.CHOICE,
            meaning=say("What a guide may have a figure for."),
            example="skirting",
            choices=tuple(each.value for each in DefectKind),
            left_out=say("no guide is asked"),
        ),
        Key(
            name="found",
            kind=Kind.LENGTH,
            meaning=say("How much it measured."),
            example=3,
            left_out=say("not measured"),
            high=200.0,
        ),
        Key(
            name="height",
            kind=Kind.LENGTH,
            meaning=say("Height of the wall, where a wall is judged."),
            example=2400,
            left_out=say("limits of every height count"),
            above=True,
            high=20_000.0,
        ),
        _day("seen", say("Day it was seen."), say("not printed")),
        _day("mended", say("Day it was mended."), say("not yet")),
    ),
)

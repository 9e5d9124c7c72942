"""Read how the set round one opening is put together."""

from typing import Any

from longpoint.speech.said import begun_small, say
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.repeats import Repeats
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.openings import (
    ApronEnds,
    Arch,
    BoardFit,
    Flush,
    Joint,
    Layout,
    OpeningKind,
)

CLASH_CODE = "keys-clash"


def read_set(hand: InHand, kind: OpeningKind, layout: Layout) -> dict[str, Any]:
    """Return the fields of an opening that tell how its set is put together.

    Raises:
        HouseFileTrouble: Two of them contradict each other, or one names nothing.
    """
    joint = Joint(hand.setting("joint") or Joint.MITRE.value)
    _refuse_unused(hand, joint, kind, layout)
    plinth = _named(hand, "plinth") if kind is not OpeningKind.WINDOW else ""
    height_mm = hand.setting("plinth_height")
    if plinth and height_mm is None:
        raise _missing("plinth", say("the height of the plinth blocks"), say("plinth_height = 150"))
    block = _named(hand, "corner_block") if joint is Joint.BLOCKS else ""
    if joint is Joint.BLOCKS and not block:
        raise _missing(
            say('joint = "blocks"'),
            say("the profile of the corner blocks"),
            say('corner_block = "CB70"'),
        )
    return {
        "joint": joint,
        "head_horn_mm": float(hand.setting("head_horn") or 0.0) if joint is Joint.BUTT else 0.0,
        "corner_block": block,
        "plinth": plinth,
        "plinth_height_mm": float(height_mm) if plinth else 0.0,
        "back_band": _named(hand, "back_band"),
        "board_fit": _board_fit(hand),
        "apron_ends": ApronEnds(hand.setting("apron_ends") or ApronEnds.SQUARE.value),
        "flush": Flush(hand.setting("flush") or Flush.LEAVE.value),
        "wedge": _named(hand, "wedge"),
    }


def read_arch(hand: InHand) -> Arch | None:
    """Return the arched head of an opening, None for a straight one.

    Raises:
        HouseFileTrouble: Its blank names no profile.
    """
    values = hand.values.get("arch")
    if values is None:
        return None
    blank = values.get("blank", "")
    return Arch(
        rise_mm=values["rise"],
        crown_mm=values.get("crown"),
        segments=values.get("segments"),
        blank=hand.profile(blank, "arch.blank") if blank else "",
        offsets=values.get("offsets", ()),
    )


def _named(hand: InHand, key: str) -> str:
    name = hand.setting(key)
    return hand.profile(name, key) if name else ""


def _board_fit(hand: InHand) -> BoardFit | None:
    values = hand.values.get("board_fit")
    if values is None:
        return None
    repeats = Repeats(hand=hand, tape=hand.tape())
    lengths = {
        key: repeats.length_mm(values[key], f"board_fit.{key}")
        for key in ("inside", "depth_left", "depth_right")
        if key in values
    }
    return BoardFit(
        inside_mm=lengths.get("inside"),
        depth_left_mm=lengths["depth_left"],
        depth_right_mm=lengths["depth_right"],
        nosing_mm=values.get("nosing", 0.0),
    )


def _refuse_unused(hand: InHand, joint: Joint, kind: OpeningKind, layout: Layout) -> None:
    """Refuse what was written at this very opening and can't come true there."""
    has_board = layout is Layout.BOARD_AND_APRON
    reasons = {
        "head_horn": (
            joint is Joint.BUTT,
            say('Only a head that runs through (joint = "butt") has horns.'),
        ),
        "corner_block": (joint is Joint.BLOCKS, say('Only joint = "blocks" has corner blocks.')),
        "plinth": (kind is not OpeningKind.WINDOW, say("A window's legs stand on no floor.")),
        "plinth_height": (
            kind is not OpeningKind.WINDOW,
            say("A window's legs stand on no floor."),
        ),
        "board_fit": (has_board, say("Only board-and-apron trim has a window board.")),
        "apron_ends": (has_board, say("Only board-and-apron trim has an apron.")),
    }
    for key, (is_used, why) in reasons.items():
        if key in hand.values and not is_used:
            raise HouseFileTrouble(
                say("The opening gives {key}.", key=key),
                say("Nothing here uses it: {why}", why=begun_small(why)),
                say("Take {key} out, or change what it belongs to.", key=key),
                code=CLASH_CODE,
            )


def _missing(given: str, what: str, example: str) -> HouseFileTrouble:
    return HouseFileTrouble(
        say("The opening has {given}.", given=given),
        say("It can't be done without {what}.", what=what),
        say("Write it here or under [defaults], for example {example}.", example=example),
        code="missing-key",
    )

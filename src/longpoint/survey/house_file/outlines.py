"""Read an opening whose shape is told by its corners, or by its sides and angles."""

from collections.abc import Sequence
from typing import Any, Final

from longpoint.speech.said import say
from longpoint.survey.house_file.entry import as_table, read_entry
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.opening_tables import ACROSS, MOST_CORNERS
from longpoint.survey.house_file.repeats import Repeats
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.outlines import Across, OutlineReadings

CLASH_CODE: Final = "keys-clash"

OUTLINE_KEYS: Final = ("corners", "sides", "angles", "across")
_FOUR_SIDED: Final = (
    "top",
    "bottom",
    "left",
    "right",
    "rising",
    "falling",
    "width",
    "height",
    "middle",
    "bevel",
    "plane",
    "arch",
    "b",
)


def read_outline(hand: InHand) -> OutlineReadings | None:
    """Return the outline that an opening gives; None when it is told by four sides.

    Raises:
        HouseFileTrouble: The shape is told in two ways, or not far enough.
    """
    values = hand.values
    given = [key for key in OUTLINE_KEYS if key in values]
    if not given:
        return None
    _refuse_two_ways(values, given)
    tape = hand.tape()
    repeats = Repeats(hand=hand, tape=tape)
    sides = tuple(
        repeats.length_mm(readings, say("sides {index}", index=index))
        for index, readings in enumerate(values.get("sides", ()), start=1)
    )
    corners = values.get("corners", ())
    count = len(corners) or len(sides)
    if not 3 <= count <= MOST_CORNERS:
        what = "corners" if "corners" in values else "sides"
        raise HouseFileTrouble(
            say("The opening gives {count} {what}.", count=count, what=what),
            say(
                "A shape has 3 of them at least, and {most_corners} are the most planned here.",
                most_corners=MOST_CORNERS,
            ),
            say("Write all of them, in order round the opening."),
            code="readings-missing",
        )
    if len(values.get("angles", ())) > count:
        raise HouseFileTrouble(
            say(
                "The opening gives {values} angles and {count} sides.",
                values=len(values["angles"]),
                count=count,
            ),
            say("There is one corner for each side."),
            say("Write the first angle between the first and the second side, and so on."),
            code=CLASH_CODE,
        )
    return OutlineReadings(
        corners=corners,
        sides_mm=sides,
        angles_deg=values.get("angles", ()),
        across=tuple(
            _across(repeats, index, written, count)
            for index, written in enumerate(values.get("across", ()), start=1)
        ),
        tape=tape.name,
        by=values.get("by", ""),
    )


def _refuse_two_ways(values: dict[str, Any], given: Sequence[str]) -> None:
    clash: list[str] = [key for key in _FOUR_SIDED if key in values]
    if "corners" in values:
        clash += [key for key in given if key != "corners"]
    if clash:
        raise HouseFileTrouble(
            say("The opening gives {given} and {clash}.", given=given[0], clash=clash[0]),
            say("Its shape is told in two ways at once."),
            say("Keep one of them and take the other out."),
            code=CLASH_CODE,
        )
    if "corners" not in values and "sides" not in values:
        raise HouseFileTrouble(
            say("The opening gives {given} without its sides.", given=given[0]),
            say("Its size can't be worked out from what is there."),
            say("Read its sides in order round it, and write them in as sides."),
            code="readings-missing",
        )


def _across(repeats: Repeats, index: int, written: object, count: int) -> Across:
    path = say("across {index}", index=index)
    units = repeats.hand.settings.remarks.units
    entry = read_entry(ACROSS, as_table(written, path), units, f"{path}, ")
    for trouble in entry.troubles:
        raise trouble
    start, end = int(entry.values["from"]), int(entry.values["to"])
    if max(start, end) > count or (end - start) % count in (0, 1, count - 1):
        raise HouseFileTrouble(
            say(
                "{path} runs from corner {start} to corner {end}.",
                path=path,
                start=start,
                end=end,
            ),
            say(
                "The shape has {count} corners, and a length across joins two that are "
                "not neighbours.",
                count=count,
            ),
            say("Count the corners from 1 in the order in which the sides are written."),
            code=CLASH_CODE,
        )
    return Across(
        start=start,
        end=end,
        length_mm=repeats.length_mm(entry.values["length"], say("{path}, length", path=path)),
    )

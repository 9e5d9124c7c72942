"""Read one room, wall by wall, and one run of a house file."""

from statistics import fmean
from typing import Any

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.survey.house_file.assumptions import FLOOR_COVER, FLOOR_GAP
from longpoint.survey.house_file.entry import Entry, as_table, read_entry
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.repeats import Repeats
from longpoint.survey.house_file.room_tables import (
    ASSUMED_CORNER_U_DEG,
    DIAGONAL,
    MOST_OFF_LEVEL_MM,
    WALL,
    WALL_OPENING,
)
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, quoted
from longpoint.survey.house_file.written_numbers import number_text
from longpoint.survey.instruments import Tape
from longpoint.survey.rooms import (
    FloorFit,
    FloorPoint,
    Room,
    RoomDiagonal,
    Run,
    RunEnd,
    Wall,
    WallOpening,
)


def build_room(hand: InHand) -> Room | None:
    """Return the room that an entry describes; None when one of its walls holds it.

    Args:
        hand: The entry; every key of it could be read, its walls not yet.

    Raises:
        HouseFileTrouble: Something needed isn't given anywhere, or names nothing.
    """
    values = hand.values
    tape = hand.tape()
    if not values["walls"]:
        raise HouseFileTrouble(
            say("The room is written with an empty list of walls."),
            say("There is nothing in it to be fitted or trimmed."),
            say("Write its walls in order as you turn to the right, or take the room out."),
            code="missing-key",
        )
    walls = _walls(hand, tape)
    if walls is None:
        return None
    return Room(
        name=values["name"],
        closed=values.get("closed", True),
        walls=walls,
        diagonals=tuple(
            _diagonal(hand, tape, index, written, [wall.mark for wall in walls])
            for index, written in enumerate(values.get("diagonals", ()), start=1)
        ),
        tape=tape.name,
        floor_cover_mm=float(hand.assumable("floor_cover", 0.0, FLOOR_COVER)),
        accept=values.get("accept", ()),
    )


def build_run(hand: InHand) -> Run:
    """Return the run that an entry describes.

    Raises:
        HouseFileTrouble: Something needed isn't given anywhere, or names nothing.
    """
    values = hand.values
    tape = hand.tape()
    repeats = Repeats(hand=hand, tape=tape, along_wall=True)
    return Run(
        mark=values["mark"],
        room=values.get("room", ""),
        wall=values.get("wall", ""),
        profile=_skirting(hand, values, "run"),
        length_mm=repeats.length_mm(values["length"], "length"),
        left=RunEnd(values["left"]),
        right=RunEnd(values["right"]),
        left_corner_deg=repeats.angle_deg(values.get("left_corner"), "left_corner"),
        right_corner_deg=repeats.angle_deg(values.get("right_corner"), "right_corner"),
        left_rake_deg=_rake(repeats, values, "left"),
        right_rake_deg=_rake(repeats, values, "right"),
        lean_deg=repeats.angle_deg(values.get("lean"), "lean"),
        left_lean_deg=repeats.angle_deg(values.get("left_lean"), "left_lean"),
        right_lean_deg=repeats.angle_deg(values.get("right_lean"), "right_lean"),
        floor=_floor(values),
        floor_fit=FloorFit(values["floor_fit"]) if "floor_fit" in values else None,
        tape=tape.name,
        accept=values.get("accept", ()),
    )


def _skirting(hand: InHand, values: dict[str, Any], what: str) -> str:
    name = values["profile"] if "profile" in values else hand.settings.default("skirting")
    if name is None:
        raise HouseFileTrouble(
            say("No skirting is named for this {what}.", what=what),
            say("Without its section no piece can be worked out."),
            say("Write profile here, or skirting under [defaults]."),
            code="no-skirting",
        )
    if "floor_gap" not in hand.settings.defaults:
        hand.assumed.append(FLOOR_GAP)
    return hand.profile(name, "profile" if "profile" in values else "defaults.skirting")


def _walls(hand: InHand, tape: Tape) -> tuple[Wall, ...] | None:
    room = hand.values["name"]
    walls: list[Wall] = []
    sound = True
    marks: set[str] = set()
    for index, written in enumerate(hand.values["walls"], start=1):
        place = say("{room} wall {index}", room=room, index=index)
        try:
            table = as_table(written, say("Wall {index}", index=index))
            entry = read_entry(WALL, table, hand.settings.remarks.units)
            place = (
                say("{room} {values}", room=room, values=entry.values["mark"])
                if "mark" in entry.values
                else place
            )
            troubles = entry.troubles or _twice(entry, marks)
            if not troubles:
                walls.append(_wall(hand, entry.values, tape))
        except HouseFileTrouble as trouble:
            troubles = (trouble,)
        if troubles:
            sound = False
            hand.settings.remarks.at_place(*(trouble.finding(place) for trouble in troubles))
    return tuple(walls) if sound else None


def _twice(entry: Entry, marks: set[str]) -> tuple[HouseFileTrouble, ...]:
    mark = entry.values["mark"]
    if mark not in marks:
        marks.add(mark)
        return ()
    return (
        HouseFileTrouble(
            say("Two walls of this room have the mark {mark}.", mark=quoted(mark)),
            say("Which one is meant can't be told."),
            say("Give each wall of the room its own mark."),
            code="mark-twice",
        ),
    )


def _wall(hand: InHand, values: dict[str, Any], tape: Tape) -> Wall:
    skirting = values.get("skirting", False)
    profile = _skirting(hand, values, "wall") if skirting or "profile" in values else ""
    lengths = values.get("length")
    place = say("{room} {mark}", room=hand.values["name"], mark=values["mark"])
    repeats = Repeats(hand=hand, tape=tape, place=place, along_wall=True)
    length_mm = repeats.length_mm(lengths, "length") if lengths else None
    contradicted_mm = repeats.contradicted_mm(lengths or ())
    return Wall(
        mark=values["mark"],
        # Of the figures as they are kept, so that a house written back has the same.
        length_mm=round(fmean(contradicted_mm), 6) if contradicted_mm else length_mm,
        read_twice=repeats.two_agree(lengths or ()),
        contradicted_mm=contradicted_mm,
        corner_deg=repeats.angle_deg(values.get("corner"), "corner"),
        corner_u_deg=values.get("corner_u", ASSUMED_CORNER_U_DEG),
        openings=tuple(
            _wall_opening(hand, repeats, index, written)
            for index, written in enumerate(values.get("openings", ()), start=1)
        ),
        skirting=skirting,
        profile=profile,
        bow_mm=repeats.offset_mm(values.get("bow"), "bow"),
        lean_deg=repeats.angle_deg(values.get("lean"), "lean"),
        floor=_floor(values),
        floor_fit=FloorFit(values.get("floor_fit", FloorFit.FOLLOW)),
    )


def _rake(repeats: Repeats, values: dict[str, Any], end: str) -> float | None:
    rake_deg = repeats.angle_deg(values.get(f"{end}_rake"), f"{end}_rake")
    if RunEnd(values[end]) is RunEnd.RAKE and not rake_deg:
        raise HouseFileTrouble(
            say("The {end} end of this run is a rake.", end=end),
            say("How steep the stair is there isn't written, so its cut can't be worked out."),
            say(
                "Write {end}_rake in degrees: + where the stair climbs away from the run.",
                end=end,
            ),
            code="missing-key",
        )
    return rake_deg


def _floor(values: dict[str, Any]) -> tuple[FloorPoint, ...]:
    """Return the floor's points from left to right."""
    points = tuple(sorted(values.get("floor", ())))
    for index, (at_mm, height_mm) in enumerate(points):
        is_twice = index > 0 and points[index - 1][0] == at_mm
        if at_mm < 0 or is_twice or abs(height_mm) > MOST_OFF_LEVEL_MM:
            raise HouseFileTrouble(
                say(
                    "floor has a point [{number}, {number_2}].",
                    number=number_text(at_mm),
                    number_2=number_text(height_mm),
                ),
                say("Two points stand at one place.")
                if is_twice
                else say(
                    "The first figure lies along the wall from its left end, the "
                    "second is a height of a few millimetres."
                ),
                say("Write how far along, then how high: [1900, 6]."),
            )
    return points


def _wall_opening(hand: InHand, repeats: Repeats, index: int, written: object) -> WallOpening:
    values = _inner(hand, WALL_OPENING, written, say("openings {index}", index=index))
    readings = values.get("from_left")
    path = say("openings {mark}, from_left", mark=values["mark"])
    return WallOpening(
        mark=values["mark"],
        from_left_mm=None if readings is None else repeats.length_mm(readings, path),
    )


def _diagonal(
    hand: InHand, tape: Tape, index: int, written: object, walls: list[str]
) -> RoomDiagonal:
    path = say("diagonals {index}", index=index)
    values = _inner(hand, DIAGONAL, written, path)
    for key in ("from", "to"):
        if values[key] not in walls:
            raise HouseFileTrouble(
                say(
                    "{path}, {key} names the wall {values}.",
                    path=path,
                    key=key,
                    values=quoted(values[key]),
                ),
                say("This room has no wall of that mark."),
                say(
                    "{instead} Name the wall whose right-hand end the corner is.",
                    instead=instead(values[key], walls),
                ),
                code="wall-unknown",
            )
    if values["from"] == values["to"]:
        raise HouseFileTrouble(
            say(
                "{path} runs from {values} to the same corner.",
                path=path,
                values=quoted(values["from"]),
            ),
            say("A diagonal joins two corners."),
            say("Name the walls at whose right-hand ends it starts and ends."),
            code="keys-clash",
        )
    return RoomDiagonal(
        start=values["from"],
        end=values["to"],
        # It checks the walls and is cut to by nobody.
        length_mm=Repeats(hand=hand, tape=tape, along_wall=True).length_mm(
            values["length"], say("{path}, length", path=path), worst=Severity.WARNING
        ),
    )


def _inner(hand: InHand, table: Table, written: object, path: str) -> dict[str, Any]:
    entry = read_entry(table, as_table(written, path), hand.settings.remarks.units, f"{path}, ")
    for trouble in entry.troubles:
        raise trouble
    return entry.values

"""Read one opening of a house file, its settings resolved against the defaults."""

from typing import Any, Final

from longpoint.errors import Severity
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.as_built import read_as_built
from longpoint.survey.house_file.assumptions import (
    FLOOR_COVER,
    HORN,
    MAX_GAP,
    METHOD,
    QUIRK,
    QUIRK_BAND,
    TRIM,
)
from longpoint.survey.house_file.default_tables import (
    ASSUMED_BAND_MM,
    ASSUMED_MAX_GAP_MM,
    ASSUMED_QUIRK_MM,
)
from longpoint.survey.house_file.face_readings import check_readings, read_face
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.keys import SIDES
from longpoint.survey.house_file.outlines import read_outline
from longpoint.survey.house_file.repeats import Repeats
from longpoint.survey.house_file.set_settings import read_arch, read_set
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_numbers import FINEST_DECIMALS, WrittenLength
from longpoint.survey.openings import (
    Layout,
    Method,
    Mitres,
    Nominal,
    Opening,
    OpeningKind,
    PerSide,
)
from longpoint.survey.readings import OpeningReadings

CLASH_CODE: Final = "keys-clash"


def build_opening(hand: InHand) -> Opening:
    """Return the opening that an entry describes.

    Args:
        hand: The entry; every key of it could be read.

    Raises:
        HouseFileTrouble: The keys contradict each other, or something needed isn't given anywhere.
    """
    values = hand.values
    kind = OpeningKind(values["kind"])
    outline = read_outline(hand)
    layout = _layout(hand, kind)
    if outline is None:
        check_readings(values, "")
    faces = _faces(hand)
    quirk_mm = _quirk(hand, layout)
    board = _board(hand, layout)
    return Opening(
        mark=values["mark"],
        room=values.get("room", ""),
        kind=kind,
        layout=layout,
        readings=read_face(hand, values, hand.tape()),
        readings_b=_face_b(hand),
        faces=faces,
        quirk_mm=quirk_mm,
        quirk_band_mm=_quirk_band(hand, quirk_mm, layout),
        profiles=_profiles(hand, layout),
        board=board,
        horn_mm=float(hand.assumable("horn", 0.0, HORN)) if board else 0.0,
        method=Method(hand.assumable("method", "batch", METHOD)),
        mitres=Mitres(hand.setting("mitres") or "as-read"),
        tap_room_mm=hand.setting("tap_room"),
        floor_cover_mm=_floor_cover(hand, kind),
        max_gap_mm=hand.assumable("max_gap", ASSUMED_MAX_GAP_MM, MAX_GAP),
        lining_edge_mm=_lining_edge_mm(hand),
        raked=values.get("raked", False),
        arch=read_arch(hand),
        outline=outline,
        **read_set(hand, kind, layout),
        nominal=_nominal(values),
        batch=values.get("batch", ""),
        accept=values.get("accept", ()),
        as_built=read_as_built(hand, values, layout, "as_built."),
        as_built_b=read_as_built(hand, values.get("b", {}), layout, "b.as_built."),
    )


def _layout(hand: InHand, kind: OpeningKind) -> Layout:
    values = hand.values
    on_floor = kind is not OpeningKind.WINDOW
    if "trim" in values:
        layout = Layout(values["trim"])
    elif on_floor:
        layout = Layout.LEGS_AND_HEAD
        hand.assumed.append(TRIM)
    elif "board" in values:
        layout = Layout.BOARD_AND_APRON
        hand.note(
            code="trim-assumed",
            read=say("The window names a board, but not which pieces surround it."),
            wrong=say("It is taken as board-and-apron."),
            do=say("Write trim where that is not so."),
        )
    else:
        layout = Layout.ALL_ROUND
        hand.assumed.append(TRIM)
    if on_floor and layout is not Layout.LEGS_AND_HEAD:
        raise HouseFileTrouble(
            say(
                "The opening is a {kind} one with {layout} trim.",
                kind=kind.value,
                layout=layout.value,
            )
            if kind is OpeningKind.CASED
            else say(
                "The opening is a {kind} with {layout} trim.",
                kind=kind.value,
                layout=layout.value,
            ),
            say("Its legs stand on the floor, so no piece can run along the bottom."),
            say("Write legs-and-head, or call it a window if it has a sill."),
            code=CLASH_CODE,
        )
    return layout


def _faces(hand: InHand) -> int:
    faces = int(hand.values.get("faces", 1))
    if "b" not in hand.values or faces == 2:
        return faces
    if "faces" in hand.values:
        raise HouseFileTrouble(
            say("The opening gives faces = 1 and readings of face b."),
            say("With one face there is no face b."),
            say("Write faces = 2, or take the readings of b out."),
            code=CLASH_CODE,
        )
    hand.note(
        code="faces-assumed",
        read=say("The opening has readings of face b, but not how many faces are trimmed."),
        wrong=say("Two are taken."),
        do=say("Write faces = 2; if one face only is trimmed, take b out."),
    )
    return 2


def _face_b(hand: InHand) -> OpeningReadings | None:
    values = hand.values.get("b", {})
    if not values.keys() - {"as_built"}:
        return None
    check_readings(values, "b.")
    return read_face(hand, values, hand.tape(values.get("tape")), path="b.")


def _needed(layout: Layout) -> tuple[str, ...]:
    return SIDES if layout is Layout.ALL_ROUND else SIDES[:3]


def _quirk(hand: InHand, layout: Layout) -> PerSide[float]:
    needed = _needed(layout)
    quirk: dict[str, float] = dict(hand.values.get("quirk", {}))
    if any(side not in quirk for side in needed):
        quirk = {**(hand.settings.default("quirk") or {}), **quirk}
    if any(side not in quirk for side in needed):
        hand.assumed.append(QUIRK)
    head, left, right = (quirk.get(side, ASSUMED_QUIRK_MM) for side in SIDES[:3])
    sill = quirk.get("sill", ASSUMED_QUIRK_MM if "sill" in needed else head)
    return PerSide(head=head, right=right, bottom=sill, left=left)


def _quirk_band(hand: InHand, quirk_mm: PerSide[float], layout: Layout) -> tuple[float, float]:
    quirks = [quirk_mm.head, quirk_mm.left, quirk_mm.right]
    if layout is Layout.ALL_ROUND:
        quirks.append(quirk_mm.bottom)
    around = (
        round(max(0.0, min(quirks) - ASSUMED_BAND_MM), FINEST_DECIMALS),
        round(max(quirks) + ASSUMED_BAND_MM, FINEST_DECIMALS),
    )
    band: tuple[float, float] | None = hand.setting("quirk_band")
    if band is None:
        hand.assumed.append(QUIRK_BAND)
        return around
    if band[0] <= min(quirks) and max(quirks) <= band[1]:
        return band
    tell = hand.settings.remarks.tell
    if "quirk_band" in hand.values:
        raise HouseFileTrouble(
            say(
                "quirk_band runs from {tell} to {tell_2}.",
                tell=tell(band[0]),
                tell_2=tell(band[1]),
            ),
            say("It does not hold the quirk itself, so a trim set as planned would be refused."),
            say("Widen the band, or change the quirk."),
            code=CLASH_CODE,
        )
    hand.note(
        code="quirk-outside-band",
        read=say(
            "The quirk here is outside the house's band of {tell} to {tell_2}.",
            tell=tell(band[0]),
            tell_2=tell(band[1]),
        ),
        wrong=say(
            "The band is taken as {tell} to {tell_2} here.",
            tell=tell(around[0]),
            tell_2=tell(around[1]),
        ),
        do=say("Write quirk_band at this opening if the crew is stricter or freer."),
        severity=Severity.WARNING,
    )
    return around


def _profiles(hand: InHand, layout: Layout) -> PerSide[str]:
    needed = SIDES[:3] if layout is Layout.LEGS_AND_HEAD else SIDES
    names: dict[str, str] = dict(hand.values.get("architrave", {}))
    if any(side not in names for side in needed):
        names = {**(hand.settings.default("architrave") or {}), **names}
    missing = [side for side in needed if side not in names]
    if missing:
        raise HouseFileTrouble(
            say(
                "No architrave is named for the {missing}.",
                missing=joined(say(" and "), missing),
            ),
            say("Without its width no length can be worked out."),
            say("Write architrave at the opening or under [defaults]."),
            code="no-architrave",
        )
    found = {side: hand.profile(names[side], "architrave") for side in needed}
    bottom = found.get("sill", found["head"])
    return PerSide(head=found["head"], right=found["right"], bottom=bottom, left=found["left"])


def _board(hand: InHand, layout: Layout) -> str:
    if layout is not Layout.BOARD_AND_APRON:
        for key in ("board", "horn"):
            if key in hand.values:
                raise HouseFileTrouble(
                    say(
                        "The opening gives {key}, and its trim is {layout}.",
                        key=key,
                        layout=layout.value,
                    ),
                    say("Only board-and-apron trim has a window board."),
                    say('Write trim = "board-and-apron", or take {key} out.', key=key),
                    code=CLASH_CODE,
                )
        return ""
    name = hand.setting("board")
    if name is None:
        hand.note(
            code="board-not-cut",
            read=say("The trim stands on a window board, but no profile of a board is named."),
            wrong=say("The board is taken as there already, so none is cut."),
            do=say("Write board here or under [defaults] if it is to be cut."),
        )
        return ""
    return hand.profile(name, "board")


def _floor_cover(hand: InHand, kind: OpeningKind) -> float:
    if kind is not OpeningKind.WINDOW:
        return float(hand.assumable("floor_cover", 0.0, FLOOR_COVER))
    if hand.values.get("floor_cover"):
        hand.note(
            code="key-unused",
            read=say("The opening is a window and gives floor_cover."),
            wrong=say("A window's trim doesn't reach the floor, so it changes nothing."),
            do=say("Take it out, or write door or cased if the legs stand on the floor."),
        )
    return 0.0


def _lining_edge_mm(hand: InHand) -> float | None:
    written: tuple[WrittenLength, ...] | None = hand.values.get("lining_edge")
    if written is None:
        return None
    repeats = Repeats(hand=hand, tape=hand.tape())
    return repeats.offset_mm([one.value_mm for one in written], "lining_edge")


def _nominal(values: dict[str, Any]) -> Nominal | None:
    if "nominal" not in values:
        return None
    return Nominal(width_mm=values["nominal"]["width"], height_mm=values["nominal"]["height"])

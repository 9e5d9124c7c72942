"""Read what was read of one face of an opening."""

from collections.abc import Iterator, Sequence
from typing import Any, Final

from longpoint.speech.said import joined, say
from longpoint.survey.house_file.face_tables import ASSUMED_BEVEL_U_DEG, ASSUMED_LEVEL_U_DEG
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.repeats import Repeats, true_mm
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_numbers import WrittenLength
from longpoint.survey.instruments import Tape
from longpoint.survey.odd_one import apart_mm, standing
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings, Place, Plane, Reading

PLACES: Final = tuple(
    place for place in Place if place not in (Place.MIDDLE_WIDTH, Place.MIDDLE_HEIGHT)
)
MIDDLES: Final = {"width": Place.MIDDLE_WIDTH, "height": Place.MIDDLE_HEIGHT}
GAUGES: Final = {
    "plumb": {"left": Gauge.PLUMB_LEFT, "right": Gauge.PLUMB_RIGHT},
    "level": {"head": Gauge.LEVEL_HEAD, "floor": Gauge.LEVEL_FLOOR},
    "bevel": {
        "bl": Gauge.BEVEL_BL,
        "br": Gauge.BEVEL_BR,
        "tr": Gauge.BEVEL_TR,
        "tl": Gauge.BEVEL_TL,
    },
}
ASSUMED_U_DEG: Final = {
    "plumb": ASSUMED_LEVEL_U_DEG,
    "level": ASSUMED_LEVEL_U_DEG,
    "bevel": ASSUMED_BEVEL_U_DEG,
}
CORNERS: Final = ("tl", "tr", "br", "bl")


def check_readings(values: dict[str, Any], path: str) -> None:
    """Check that the readings of a face tell one shape, and enough of it.

    Args:
        values: The face's values.
        path: "b." for the second face.

    Raises:
        HouseFileTrouble: They tell a width or height twice over, or not at all.
    """
    for one, others in (("width", ("top", "bottom")), ("height", ("left", "right"))):
        clash = [other for other in others if one in values and other in values]
        if clash:
            raise HouseFileTrouble(
                say(
                    "The opening gives {path}{one} and {path}{clash}.",
                    path=path,
                    one=one,
                    clash=clash[0],
                ),
                say(
                    "{path}{one} stands for {others}, so one of them is too many.",
                    path=path,
                    one=one,
                    others=joined(say(" and "), others),
                ),
                say("Keep what was read and take the other out."),
                code="keys-clash",
            )
    diagonal = "rising" in values or "falling" in values
    across = any(key in values for key in ("width", "top", "bottom"))
    up = any(key in values for key in ("height", "left", "right"))
    if (across and up) or (diagonal and (across or up)):
        return
    missing = "width" if not across else "height"
    raise HouseFileTrouble(
        say(
            "The opening is written without a {missing}{of}.",
            missing=missing,
            of=say(" of face b") if path else "",
        ),
        say("Its size can't be worked out from what is there."),
        say("Read top, bottom, left, right and both diagonals, and write them in."),
        code="readings-missing",
    )


def read_face(hand: InHand, values: dict[str, Any], tape: Tape, path: str = "") -> OpeningReadings:
    """Return the readings of a face.

    Args:
        hand: The opening.
        values: The face's values.
        tape: The tape that read it; what it is known to read too much is taken off.
        path: "b." for the second face.

    Raises:
        HouseFileTrouble: Nothing is left of a reading once the tape's offset is taken off.
    """
    lengths, left_out = _decided(tuple(_lengths(values, tape, path)), apart_mm(tape))
    return OpeningReadings(
        lengths=lengths,
        left_out=left_out,
        angles=tuple(_angles(hand, values)),
        plane=_plane(hand, values, tape, path),
        tape=tape.name,
        by=values.get("by", ""),
    )


def _decided(
    lengths: Sequence[Reading], apart_mm: float
) -> tuple[tuple[Reading, ...], tuple[Reading, ...]]:
    """Return the readings that stand, and those that others of their place decide against."""
    out = []
    for place in dict.fromkeys(reading.place for reading in lengths):
        found = [reading for reading in lengths if reading.place is place]
        stands = standing([reading.value_mm for reading in found], apart_mm)
        out += [reading for reading, stays in zip(found, stands, strict=True) if not stays]
    return tuple(r for r in lengths if r not in out), tuple(out)


def _lengths(values: dict[str, Any], tape: Tape, path: str) -> Iterator[Reading]:
    def at(place: Place, readings: Sequence[WrittenLength], key: str) -> Iterator[Reading]:
        for one in readings:
            value_mm = true_mm(one.value_mm, tape, f"{path}{key}")
            yield Reading(place=place, value_mm=value_mm, written=one.written)

    for key, value in values.items():
        if key in PLACES:
            yield from at(Place(key), value, key)
        elif key == "middle":
            for inner, readings in value.items():
                yield from at(MIDDLES[inner], readings, f"middle.{inner}")


def _angles(hand: InHand, values: dict[str, Any]) -> Iterator[AngleReading]:
    for key, gauges in GAUGES.items():
        own_u = f"{key}_u"
        u_deg = values.get(own_u, hand.values.get(own_u, ASSUMED_U_DEG[key]))
        for inner, gauge in gauges.items():
            for one in values.get(key, {}).get(inner, ()):
                yield AngleReading(gauge=gauge, value_deg=one, u_deg=u_deg)


def _plane(hand: InHand, values: dict[str, Any], tape: Tape, path: str) -> Plane | None:
    written = values.get("plane")
    if written is None:
        return None
    missing = [corner for corner in CORNERS if corner not in written]
    if missing:
        hand.note(
            code="plane-part-read",
            read=say(
                "{path}plane is given without {missing}.",
                path=path,
                missing=joined(", ", missing),
            ),
            wrong=say("The reveal is taken as flush with the lining there."),
            do=say("Lay a straightedge over those corners and write what it shows."),
        )
    repeats = Repeats(hand=hand, tape=tape)
    tl_mm, tr_mm, br_mm, bl_mm = (
        repeats.offset_mm(written.get(corner), f"{path}plane.{corner}") or 0.0 for corner in CORNERS
    )
    return Plane(tl_mm=tl_mm, tr_mm=tr_mm, br_mm=br_mm, bl_mm=bl_mm)

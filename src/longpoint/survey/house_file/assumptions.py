"""What is assumed where the house file says nothing, and how that is told."""

from dataclasses import dataclass
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.default_tables import (
    ASSUMED_BAND_MM,
    ASSUMED_MAX_GAP_MM,
    ASSUMED_QUIRK_MM,
)
from longpoint.survey.house_file.tool_tables import ASSUMED_END_TRIM_MM, ASSUMED_KERF_MM


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """One thing that is assumed, told once for the whole house.

    Attributes:
        code: Code of the finding that tells it.
        read: What was read.
        wrong: What is assumed; ``{length}`` stands for the length.
        do: What to write.
        length_mm: The length assumed, where it is one.
    """

    code: str
    read: str
    wrong: str
    do: str
    length_mm: float = 0.0


UNITS: Final = Assumption(
    code="units-assumed",
    read=say("The file gives no units."),
    wrong=say("Every bare number is taken as millimetres."),
    do=say('Write units = "mm", or "in" for inches.'),
)
DIALECT: Final = Assumption(
    code="dialect-assumed",
    read=say("The file gives no dialect."),
    wrong=say("The words of the United Kingdom stand on the sheets."),
    do=say('Write dialect = "uk", or the one you speak.'),
)
QUIRK: Final = Assumption(
    code="quirk-assumed",
    read=say("No quirk is given for some sides."),
    wrong=say("{{length}} is assumed there."),
    do=say("Write quirk under [defaults], or at the opening."),
    length_mm=ASSUMED_QUIRK_MM,
)
QUIRK_BAND: Final = Assumption(
    code="quirk-band-assumed",
    read=say("The quirk is given without the band that the crew accepts."),
    wrong=say(
        "It is taken to run from {{length}} under the quirk, but not under 0, to "
        "{{length}} over it."
    ),
    do=say("Write quirk_band under [defaults] if the crew is stricter or freer."),
    length_mm=ASSUMED_BAND_MM,
)
TRIM: Final = Assumption(
    code="trim-assumed",
    read=say("Some openings don't say which pieces surround them."),
    wrong=say("Windows are taken as all-round, doors and cased openings as legs-and-head."),
    do=say("Write trim at an opening where that is not so."),
)
MAX_GAP: Final = Assumption(
    code="max-gap-assumed",
    read=say("No limit for an open joint is given."),
    wrong=say("{{length}} is assumed."),
    do=say("Write max_gap under [defaults]."),
    length_mm=ASSUMED_MAX_GAP_MM,
)
METHOD: Final = Assumption(
    code="method-assumed",
    read=say("The way of fixing is not given."),
    wrong=say("It is taken as batch: all cut, legs nailed once, tapped, then head and sill."),
    do=say("Write method under [defaults] if the crew works in place or on the bench."),
)
FLOOR_COVER: Final = Assumption(
    code="floor-cover-assumed",
    read=say("No floor cover is given."),
    wrong=say("Nothing is taken as still to be laid under legs and skirting."),
    do=say("Write floor_cover under [defaults], 0 if the floor is finished."),
)
FLOOR_GAP: Final = Assumption(
    code="floor-gap-assumed",
    read=say("No gap under the skirting is given."),
    wrong=say("Skirting is taken to stand on the floor."),
    do=say("Write floor_gap under [defaults]."),
)
HORN: Final = Assumption(
    code="horn-assumed",
    read=say("A window board is to be cut, but its horns are not given."),
    wrong=say("It is taken to end flush with the architrave's outer edges."),
    do=say("Write horn under [defaults], or at the opening."),
)
CREW_NOT_TOLD: Final = Assumption(
    code="crew-assumed",
    read=say("No [crew] table says what time is worth here."),
    wrong=say(
        "12 minutes for a refit and 1.2 minutes saved at each opening by cutting "
        "in one batch are assumed, in new walls."
    ),
    do=say("Write walls, refit and batch_saves under [crew]."),
)
CREW_LEFT_OUT: Final = Assumption(
    code="crew-assumed",
    read=say("[crew] leaves out refit or batch_saves."),
    wrong=say("12 minutes for a refit, or 1.2 minutes saved at each opening, is assumed."),
    do=say("Write both under [crew]."),
)
SEASON_NOT_TOLD: Final = Assumption(
    code="season-assumed",
    read=say("No [season] table says how dry and how damp the house gets."),
    wrong=say(
        "A humidity of 55 percent at fitting, 35 in the driest season and 65 in "
        "the dampest, all at 20 degrees Celsius, is assumed."
    ),
    do=say("Write fitting or moisture, driest and dampest under [season]."),
)
SEASON_LEFT_OUT: Final = Assumption(
    code="season-assumed",
    read=say("[season] leaves out the air at fitting, the driest or the dampest."),
    wrong=say(
        "A humidity of 55 percent at fitting, 35 in the driest season or 65 in "
        "the dampest, at 20 degrees Celsius, is assumed for it."
    ),
    do=say("Write it under [season]."),
)
KERF: Final = Assumption(
    code="kerf-assumed",
    read=say("The saw is described without its kerf."),
    wrong=say("{{length}} is assumed."),
    do=say("Measure a test cut and write kerf under [saws]."),
    length_mm=ASSUMED_KERF_MM,
)
END_TRIM: Final = Assumption(
    code="end-trim-assumed",
    read=say("The saw is described without end_trim."),
    wrong=say("{{length}} is taken off both ends of a new stick."),
    do=say("Write end_trim under [saws]."),
    length_mm=ASSUMED_END_TRIM_MM,
)

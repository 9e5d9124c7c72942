"""What is assumed where the house file says nothing, and how that is told."""

from dataclasses import dataclass
from typing import Final

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
    read="The file gives no units.",
    wrong="Every bare number is taken as millimetres.",
    do='Write units = "mm", or "in" for inches.',
)
DIALECT: Final = Assumption(
    code="dialect-assumed",
    read="The file gives no dialect.",
    wrong="The words of the United Kingdom stand on the sheets.",
    do='Write dialect = "uk", or the one you speak.',
)
QUIRK: Final = Assumption(
    code="quirk-assumed",
    read="No quirk is given for some sides.",
    wrong="{length} is assumed there.",
    do="Write quirk under [defaults], or at the opening.",
    length_mm=ASSUMED_QUIRK_MM,
)
QUIRK_BAND: Final = Assumption(
    code="quirk-band-assumed",
    read="The quirk is given without the band that the crew accepts.",
    wrong="It is taken to run from {length} under the quirk, but not under 0, to {length} over it.",
    do="Write quirk_band under [defaults] if the crew is stricter or freer.",
    length_mm=ASSUMED_BAND_MM,
)
TRIM: Final = Assumption(
    code="trim-assumed",
    read="Some openings don't say which pieces surround them.",
    wrong="Windows are taken as all-round, doors and cased openings as legs-and-head.",
    do="Write trim at an opening where that is not so.",
)
MAX_GAP: Final = Assumption(
    code="max-gap-assumed",
    read="No limit for an open joint is given.",
    wrong="{length} is assumed.",
    do="Write max_gap under [defaults].",
    length_mm=ASSUMED_MAX_GAP_MM,
)
METHOD: Final = Assumption(
    code="method-assumed",
    read="The way of fixing is not given.",
    wrong="It is taken as batch: all cut, legs nailed once, tapped, then head and sill.",
    do="Write method under [defaults] if the crew works in place or on the bench.",
)
FLOOR_COVER: Final = Assumption(
    code="floor-cover-assumed",
    read="No floor cover is given.",
    wrong="Nothing is taken as still to be laid under legs and skirting.",
    do="Write floor_cover under [defaults], 0 if the floor is finished.",
)
FLOOR_GAP: Final = Assumption(
    code="floor-gap-assumed",
    read="No gap under the skirting is given.",
    wrong="Skirting is taken to stand on the floor.",
    do="Write floor_gap under [defaults].",
)
HORN: Final = Assumption(
    code="horn-assumed",
    read="A window board is to be cut, but its horns are not given.",
    wrong="It is taken to end flush with the architrave's outer edges.",
    do="Write horn under [defaults], or at the opening.",
)
CREW_NOT_TOLD: Final = Assumption(
    code="crew-assumed",
    read="No [crew] table says what time is worth here.",
    wrong="12 minutes for a refit and 1.2 minutes saved at each opening by cutting in one batch "
    "are assumed, in new walls.",
    do="Write walls, refit and batch_saves under [crew].",
)
CREW_LEFT_OUT: Final = Assumption(
    code="crew-assumed",
    read="[crew] leaves out refit or batch_saves.",
    wrong="12 minutes for a refit, or 1.2 minutes saved at each opening, is assumed.",
    do="Write both under [crew].",
)
SEASON_NOT_TOLD: Final = Assumption(
    code="season-assumed",
    read="No [season] table says how dry and how damp the house gets.",
    wrong="A humidity of 55 percent at fitting, 35 in the driest season and 65 in the dampest, "
    "all at 20 degrees Celsius, is assumed.",
    do="Write fitting or moisture, driest and dampest under [season].",
)
SEASON_LEFT_OUT: Final = Assumption(
    code="season-assumed",
    read="[season] leaves out the air at fitting, the driest or the dampest.",
    wrong="A humidity of 55 percent at fitting, 35 in the driest season or 65 in the dampest, "
    "at 20 degrees Celsius, is assumed for it.",
    do="Write it under [season].",
)
KERF: Final = Assumption(
    code="kerf-assumed",
    read="The saw is described without its kerf.",
    wrong="{length} is assumed.",
    do="Measure a test cut and write kerf under [saws].",
    length_mm=ASSUMED_KERF_MM,
)
END_TRIM: Final = Assumption(
    code="end-trim-assumed",
    read="The saw is described without end_trim.",
    wrong="{length} is taken off both ends of a new stick.",
    do="Write end_trim under [saws].",
    length_mm=ASSUMED_END_TRIM_MM,
)

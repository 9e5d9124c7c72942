"""A section as lines of a list to confirm."""

from pathlib import Path

from longpoint.exchange.bounded_files import shown_name
from longpoint.exchange.confirm.found_values import FoundValue, trouble_with
from longpoint.exchange.confirm.record_keys import RecordKind, cell_keys
from longpoint.exchange.sections.read_section import Section
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.written_numbers import number_text


def section_values(section: Section, drawing: Path, profile: str) -> tuple[FoundValue, ...]:
    """Return what a section tells of a profile: face, thickness, whether it turns, its corners.

    Args:
        section: The section, in mm.
        drawing: The file it came from.
        profile: Name of the profile.
    """
    corners = joined("; ", (f"{number_text(x)} {number_text(y)}" for x, y in section.outline))
    told = (
        ("face", number_text(round(section.width_mm, 2)), "mm", say("as drawn")),
        ("thickness", number_text(round(section.thickness_mm, 2)), "mm", say("as drawn")),
        ("reversible", "true" if section.reversible else "false", "", say("as drawn")),
        ("section", corners, "mm", say("{outline} corners", outline=len(section.outline))),
    )
    keys = cell_keys(RecordKind.PROFILE)
    return tuple(
        FoundValue(
            kind=RecordKind.PROFILE,
            mark=profile.strip(),
            path=path,
            value=value,
            unit=unit,
            written=written,
            source=shown_name(drawing),
            trouble=trouble_with(keys[path], value, unit, path),
        )
        for path, value, unit, written in told
    )

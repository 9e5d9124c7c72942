"""A nailed section in words, for who can't see its picture."""

from longpoint.fixing.nail_lines import into_words
from longpoint.fixing.nailing import Section
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say


def described_section(section: Section, units: Units) -> str:
    """Return what a section's picture shows, in the house's unit."""
    lines = []
    for number, line in enumerate(section.lines, start=1):
        nail = (
            say("no nail")
            if line.nail is None
            else say(
                "a nail {length} long",
                length=format_with_unit(line.nail.length_mm, units),
            )
        )
        lines.append(
            say(
                "line {number}, {from_edge} from the edge, {nail} into {into}",
                number=number,
                from_edge=format_with_unit(line.from_edge_mm, units),
                nail=nail,
                into=into_words(line.bed.into),
            )
        )
    return say(
        "Section {section}, {profile}: {lines}",
        section=section.name,
        profile=section.profile,
        lines=joined("; ", lines),
    )

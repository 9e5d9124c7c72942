"""A nailed section in words, for who can't see its picture."""

from longpoint.fixing.nail_lines import into_words
from longpoint.fixing.nailing import Section
from longpoint.speech.said import joined, say


def described_section(section: Section) -> str:
    """Return what a section's picture shows."""
    lines = []
    for number, line in enumerate(section.lines, start=1):
        nail = (
            say("no nail")
            if line.nail is None
            else say(
                "a nail {length_mm:g} mm long",
                length_mm=line.nail.length_mm,
            )
        )
        lines.append(
            say(
                "line {number}, {from_edge_mm:.0f} mm in, {nail} into {into}",
                number=number,
                from_edge_mm=line.from_edge_mm,
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
